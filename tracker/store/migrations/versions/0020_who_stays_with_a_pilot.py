"""Whether somebody stays with a booked pilot from its start to its end."""

import sqlalchemy as sa
from alembic import op

revision = "0020"
down_revision = "0019"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("bookings", sa.Column("attended", sa.Boolean(), nullable=True))
