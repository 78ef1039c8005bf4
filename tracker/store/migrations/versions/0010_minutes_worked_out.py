"""Whether minutes of a conversion were taken, or worked out from its times."""

import sqlalchemy as sa
from alembic import op

revision = "0010"
down_revision = "0009"
branch_labels = None
depends_on = None


def upgrade() -> None:
    for table in ("conversions", "conversion_operations"):
        op.add_column(table, sa.Column("worked_out", sa.Boolean(), nullable=True))
