"""What came of rehearsing a plan."""

import sqlalchemy as sa
import tracker.store.base
from alembic import op

revision = "0009"
down_revision = "0008"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "rehearsals",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("plan_id", sa.Integer(), nullable=False),
        sa.Column("made_at", tracker.store.base.UtcDateTime(), nullable=False),
        sa.Column("who", sa.String(), nullable=False),
        sa.Column("result", sa.JSON(), nullable=False),
        sa.ForeignKeyConstraint(["plan_id"], ["plans.id"], name=op.f("fk_rehearsals_plan_id_plans")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_rehearsals")),
    )
    op.create_index(op.f("ix_rehearsals_plan_id"), "rehearsals", ["plan_id"])
