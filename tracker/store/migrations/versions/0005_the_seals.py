"""Seals of history: by them it shows when something was changed or removed behind the program's back."""

import sqlalchemy as sa
import tracker.store.base
from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "history_seals",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("at", tracker.store.base.UtcDateTime(), nullable=False),
        sa.Column("table", sa.String(), nullable=False),
        sa.Column("last_id", sa.Integer(), nullable=False),
        sa.Column("hash", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_history_seals")),
    )
    op.create_index("ix_history_seals_table_last_id", "history_seals", ["table", "last_id"])
