"""What the database says of itself, and the seals of its history."""

from datetime import datetime

from sqlalchemy import Index
from sqlalchemy.orm import Mapped, mapped_column

from tracker.store.base import AppendOnly, Base


class AboutRow(Base):
    """`program` = `beamslot` marks the database as ours; `clock` is the moment (ISO 8601, UTC) at which the programme's own
    clock stands, where it has one."""

    __tablename__ = "about"
    what: Mapped[str] = mapped_column(primary_key=True)
    value: Mapped[str]


class SealRow(AppendOnly, Base):
    """Rows of one table that were added together, up to the number `last_id`; see `tracker/store/history.py`."""

    __tablename__ = "history_seals"
    __table_args__ = (Index("ix_history_seals_table_last_id", "table", "last_id"),)
    id: Mapped[int] = mapped_column(primary_key=True)
    at: Mapped[datetime]
    table: Mapped[str]
    last_id: Mapped[int]
    hash: Mapped[str]
    """SHA-256, hexadecimal."""
