"""Rehearsals of plans, kept for ever."""

from datetime import datetime
from typing import Any

from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from tracker.store.base import AppendOnly, Base


class RehearsalRow(AppendOnly, Base):
    __tablename__ = "rehearsals"
    id: Mapped[int] = mapped_column(primary_key=True)
    plan_id: Mapped[int] = mapped_column(ForeignKey("plans.id"), index=True)
    made_at: Mapped[datetime]
    who: Mapped[str]
    result: Mapped[dict[str, Any]]
    """As `beamslot rehearse --json` writes it."""
