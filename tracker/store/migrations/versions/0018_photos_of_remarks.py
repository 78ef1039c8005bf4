"""Photos that were told with remarks."""

import sqlalchemy as sa
import tracker.store.base
from alembic import op

revision = "0018"
down_revision = "0017"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "remark_photos",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("hall", sa.String(), nullable=False),
        sa.Column("loom", sa.String(), nullable=False),
        sa.Column("card", sa.String(), nullable=True),
        sa.Column("begun_at", tracker.store.base.UtcDateTime(), nullable=False),
        sa.Column("operation", sa.String(), nullable=True),
        sa.Column("remark", sa.String(), nullable=False),
        sa.Column("at", tracker.store.base.UtcDateTime(), nullable=False),
        sa.Column("who", sa.String(), nullable=False),
        sa.Column("picture", sa.LargeBinary(), nullable=False),
        sa.ForeignKeyConstraint(
            ["hall", "loom"], ["looms.hall", "looms.loom"], name=op.f("fk_remark_photos_hall_looms")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_remark_photos")),
    )
    op.create_index("ix_remark_photos_hall_loom", "remark_photos", ["hall", "loom"])
