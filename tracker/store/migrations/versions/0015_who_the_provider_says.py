"""Whom the mill's identity provider knows an account by."""

import sqlalchemy as sa
from alembic import op

revision = "0015"
down_revision = "0014"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("people", sa.Column("subject", sa.String(), nullable=True))
    op.create_index(op.f("ix_people_subject"), "people", ["subject"], unique=True)
