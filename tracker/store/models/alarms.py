"""Alarms of settings that somebody has seen, kept for ever."""

from datetime import datetime
from typing import Any

from sqlalchemy import JSON, ForeignKeyConstraint
from sqlalchemy.orm import Mapped, mapped_column

from tracker.store.base import AppendOnly, Base


class SeenAlarmRow(AppendOnly, Base):
    __tablename__ = "seen_alarms"
    __table_args__ = (ForeignKeyConstraint(["hall", "loom"], ["looms.hall", "looms.loom"]),)
    id: Mapped[int] = mapped_column(primary_key=True)
    hall: Mapped[str]
    loom: Mapped[str]
    setting: Mapped[str]
    side: Mapped[str | None]
    kind: Mapped[str]
    value: Mapped[Any] = mapped_column(JSON)
    why: Mapped[str]
    at: Mapped[datetime]
    who: Mapped[str]
