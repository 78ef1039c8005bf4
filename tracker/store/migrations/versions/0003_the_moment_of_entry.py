"""Beside the moment at which stock moved, the moment at which that was written down."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("stock_movements", sa.Column("entered_at", sa.DateTime(), nullable=True))
