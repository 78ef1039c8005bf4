"""The mark by which a database of ours is known."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    about = op.create_table(
        "about",
        sa.Column("what", sa.String(), nullable=False),
        sa.Column("value", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("what", name=op.f("pk_about")),
    )
    op.bulk_insert(about, [{"what": "program", "value": "beamslot"}])
    if op.get_bind().dialect.name == "sqlite":
        op.execute(f"PRAGMA application_id = {int.from_bytes(b'beam', 'big')}")
