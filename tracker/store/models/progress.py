"""What was done: stages, conversions and their minutes. All of it history."""

from datetime import datetime
from typing import Any

from sqlalchemy import ForeignKey, ForeignKeyConstraint
from sqlalchemy.orm import Mapped, mapped_column

from tracker.store.base import AppendOnly, Base


class OfLoomHistory(AppendOnly):
    id: Mapped[int] = mapped_column(primary_key=True)
    hall: Mapped[str]
    loom: Mapped[str]


class StageRow(OfLoomHistory, Base):
    __tablename__ = "stage_changes"
    __table_args__ = (ForeignKeyConstraint(["hall", "loom"], ["looms.hall", "looms.loom"]),)
    stage: Mapped[str]
    at: Mapped[datetime]
    who: Mapped[str]
    reason: Mapped[str | None]


class ConversionRow(OfLoomHistory, Base):
    __tablename__ = "conversions"
    __table_args__ = (ForeignKeyConstraint(["hall", "loom"], ["looms.hall", "looms.loom"]),)
    machine_type: Mapped[str]
    crew: Mapped[str]
    method_version: Mapped[int] = mapped_column(ForeignKey("method_versions.version"))
    started_at: Mapped[datetime]
    ended_at: Mapped[datetime | None]
    total_min: Mapped[float | None]
    kind: Mapped[str | None]
    choices: Mapped[list[Any]]
    worked_out: Mapped[bool | None]
    """Whether `total_min` was worked out from the six times."""


class OperationMinutesRow(AppendOnly, Base):
    __tablename__ = "conversion_operations"
    id: Mapped[int] = mapped_column(primary_key=True)
    conversion_id: Mapped[int] = mapped_column(ForeignKey("conversions.id"), index=True)
    operation: Mapped[str]
    minutes: Mapped[float]
    worked_out: Mapped[bool | None]
    """Whether nobody took them."""


class WithdrawalRow(OfLoomHistory, Base):
    """That a row of another table of history was withdrawn: it counts no more, and stays."""

    __tablename__ = "withdrawals"
    __table_args__ = (ForeignKeyConstraint(["hall", "loom"], ["looms.hall", "looms.loom"]),)
    table: Mapped[str] = mapped_column(index=True)
    row_id: Mapped[int]
    at: Mapped[datetime]
    who: Mapped[str]
    why: Mapped[str]
