"""Accounts, sessions, and the account of who did what."""

from datetime import datetime
from typing import Any

from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from tracker.store.base import AppendOnly, Base


class PersonRow(Base):
    __tablename__ = "people"
    id: Mapped[int] = mapped_column(primary_key=True)
    name: Mapped[str]
    folded: Mapped[str] = mapped_column(unique=True)
    """The name without case and accents, by which it is found."""
    roles: Mapped[list[Any]]
    password_hash: Mapped[str]
    """Argon2id, in its own text form; empty where the identity provider looks after the sign-in."""
    added_at: Mapped[datetime]
    ended_at: Mapped[datetime | None]
    subject: Mapped[str | None] = mapped_column(index=True, unique=True)
    """By which the identity provider knows who it is: its address and its own name for them; from their first sign-in on."""


class SessionRow(Base):
    """Somebody who is, or was, signed in; of the token in the browser only its hash is kept."""

    __tablename__ = "sessions"
    id: Mapped[int] = mapped_column(primary_key=True)
    person_id: Mapped[int] = mapped_column(ForeignKey("people.id"), index=True)
    token_hash: Mapped[str] = mapped_column(unique=True)
    """SHA-256, hexadecimal."""
    since: Mapped[datetime]
    seen_at: Mapped[datetime]
    address: Mapped[str]
    ended_at: Mapped[datetime | None]


class ActRow(AppendOnly, Base):
    """What somebody did in one unit of work. The rows of history that it added are those of the seals that follow its own."""

    __tablename__ = "acts"
    id: Mapped[int] = mapped_column(primary_key=True)
    at: Mapped[datetime]
    who: Mapped[str]
    roles: Mapped[list[Any]]
    through: Mapped[str]
    what: Mapped[str]
    details: Mapped[dict[str, Any]]
