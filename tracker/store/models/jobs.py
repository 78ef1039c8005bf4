"""Long work: that it began, and how it ended. How far it is stands nowhere in the database."""

from datetime import datetime
from typing import Any

from sqlalchemy import ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from tracker.store.base import AppendOnly, Base


class JobRow(AppendOnly, Base):
    __tablename__ = "jobs"
    id: Mapped[int] = mapped_column(primary_key=True)
    kind: Mapped[str]
    arguments: Mapped[dict[str, Any]]
    who: Mapped[str]
    began_at: Mapped[datetime]
    server: Mapped[str]
    """The process that looks after it."""


class JobEndRow(AppendOnly, Base):
    __tablename__ = "job_ends"
    id: Mapped[int] = mapped_column(primary_key=True)
    job_id: Mapped[int] = mapped_column(ForeignKey("jobs.id"), unique=True)
    state: Mapped[str]
    message: Mapped[dict[str, Any]]
    at: Mapped[datetime]
    stopped_by: Mapped[str | None]
    result: Mapped[dict[str, Any]]
