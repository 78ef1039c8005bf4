"""Which rows of what was done were withdrawn, by whom and why; they stay where they are."""

import sqlalchemy as sa
import tracker.store.base
from alembic import op

revision = "0014"
down_revision = "0013"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "withdrawals",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("hall", sa.String(), nullable=False),
        sa.Column("loom", sa.String(), nullable=False),
        sa.Column("table", sa.String(), nullable=False),
        sa.Column("row_id", sa.Integer(), nullable=False),
        sa.Column("at", tracker.store.base.UtcDateTime(), nullable=False),
        sa.Column("who", sa.String(), nullable=False),
        sa.Column("why", sa.String(), nullable=False),
        sa.ForeignKeyConstraint(
            ["hall", "loom"], ["looms.hall", "looms.loom"], name=op.f("fk_withdrawals_hall_looms")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_withdrawals")),
    )
    op.create_index(op.f("ix_withdrawals_table"), "withdrawals", ["table"])
