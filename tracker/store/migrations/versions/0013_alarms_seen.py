"""Which alarms of settings somebody has seen, and what they said."""

import sqlalchemy as sa
import tracker.store.base
from alembic import op

revision = "0013"
down_revision = "0012"
branch_labels = None
depends_on = None


def upgrade() -> None:
    texts = [sa.Column(name, sa.String(), nullable=name == "side") for name in ("hall", "loom", "setting", "side", "kind")]
    op.create_table(
        "seen_alarms",
        sa.Column("id", sa.Integer(), nullable=False),
        *texts,
        sa.Column("value", sa.JSON(), nullable=False),
        sa.Column("why", sa.String(), nullable=False),
        sa.Column("at", tracker.store.base.UtcDateTime(), nullable=False),
        sa.Column("who", sa.String(), nullable=False),
        sa.ForeignKeyConstraint(["hall", "loom"], ["looms.hall", "looms.loom"], name=op.f("fk_seen_alarms_hall_looms")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_seen_alarms")),
    )
