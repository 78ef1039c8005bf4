"""What is reckoned for a booking so that its plan survives."""

import sqlalchemy as sa
from alembic import op

revision = "0019"
down_revision = "0018"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("bookings", sa.Column("surviving", sa.Double(), nullable=True))
