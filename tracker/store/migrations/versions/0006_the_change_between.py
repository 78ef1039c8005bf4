"""From when to when the ordinary change stands between the two parts of a booked conversion."""

import sqlalchemy as sa
import tracker.store.base
from alembic import op

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None


def upgrade() -> None:
    for name in ("pause_from", "pause_to"):
        op.add_column("bookings", sa.Column(name, tracker.store.base.UtcDateTime(), nullable=True))
