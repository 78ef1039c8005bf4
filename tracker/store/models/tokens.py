"""Tokens for programs and for the calendars of phones, and the answers that posts by them got."""

from datetime import datetime
from typing import Any

from sqlalchemy import ForeignKey, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from tracker.store.base import Base


class TokenRow(Base):
    __tablename__ = "tokens"
    id: Mapped[int] = mapped_column(primary_key=True)
    name: Mapped[str]
    may: Mapped[str]
    crew: Mapped[str | None]
    """Whose calendar it opens; None for a program's."""
    token_hash: Mapped[str] = mapped_column(unique=True)
    """SHA-256, hexadecimal; the token itself is kept nowhere."""
    made_at: Mapped[datetime]
    made_by: Mapped[str]
    expires_at: Mapped[datetime]
    ended_at: Mapped[datetime | None]


class AnsweredPostRow(Base):
    """What a program posted under a key of its own, so that the same post twice is written once."""

    __tablename__ = "answered_posts"
    __table_args__ = (UniqueConstraint("token_id", "key"),)
    id: Mapped[int] = mapped_column(primary_key=True)
    token_id: Mapped[int] = mapped_column(ForeignKey("tokens.id"))
    key: Mapped[str]
    body_hash: Mapped[str]
    """SHA-256, hexadecimal."""
    answer: Mapped[dict[str, Any]]
    at: Mapped[datetime]
