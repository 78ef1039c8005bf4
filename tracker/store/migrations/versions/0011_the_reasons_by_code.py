"""The parameters of what a plan says by code; plans made before keep their words."""

import sqlalchemy as sa
from alembic import op

revision = "0011"
down_revision = "0010"
branch_labels = None
depends_on = None


def upgrade() -> None:
    for table in ("plan_left_over", "plan_prices"):
        op.add_column(table, sa.Column("params", sa.JSON(), nullable=True))
