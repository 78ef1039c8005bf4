"""Tokens for programs and for the calendars of phones, and the answers that posts by them got."""

import sqlalchemy as sa
import tracker.store.base
from alembic import op

revision = "0016"
down_revision = "0015"
branch_labels = None
depends_on = None

MOMENT = tracker.store.base.UtcDateTime()


def upgrade() -> None:
    op.create_table(
        "tokens",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("may", sa.String(), nullable=False),
        sa.Column("crew", sa.String(), nullable=True),
        sa.Column("token_hash", sa.String(), nullable=False),
        sa.Column("made_at", MOMENT, nullable=False),
        sa.Column("made_by", sa.String(), nullable=False),
        sa.Column("expires_at", MOMENT, nullable=False),
        sa.Column("ended_at", MOMENT, nullable=True),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_tokens")),
        sa.UniqueConstraint("token_hash", name=op.f("uq_tokens_token_hash")),
    )
    op.create_table(
        "answered_posts",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("token_id", sa.Integer(), nullable=False),
        sa.Column("key", sa.String(), nullable=False),
        sa.Column("body_hash", sa.String(), nullable=False),
        sa.Column("answer", sa.JSON(), nullable=False),
        sa.Column("at", MOMENT, nullable=False),
        sa.ForeignKeyConstraint(["token_id"], ["tokens.id"], name=op.f("fk_answered_posts_token_id_tokens")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_answered_posts")),
        sa.UniqueConstraint("token_id", "key", name=op.f("uq_answered_posts_token_id")),
    )
