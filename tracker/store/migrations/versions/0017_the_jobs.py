"""Long work: that it began, and how it ended."""

import sqlalchemy as sa
import tracker.store.base
from alembic import op

revision = "0017"
down_revision = "0016"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "jobs",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("arguments", sa.JSON(), nullable=False),
        sa.Column("who", sa.String(), nullable=False),
        sa.Column("began_at", tracker.store.base.UtcDateTime(), nullable=False),
        sa.Column("server", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_jobs")),
    )
    op.create_table(
        "job_ends",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("job_id", sa.Integer(), nullable=False),
        sa.Column("state", sa.String(), nullable=False),
        sa.Column("message", sa.JSON(), nullable=False),
        sa.Column("at", tracker.store.base.UtcDateTime(), nullable=False),
        sa.Column("stopped_by", sa.String(), nullable=True),
        sa.Column("result", sa.JSON(), nullable=False),
        sa.ForeignKeyConstraint(["job_id"], ["jobs.id"], name=op.f("fk_job_ends_job_id_jobs")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_job_ends")),
        sa.UniqueConstraint("job_id", name=op.f("uq_job_ends_job_id")),
    )
