"""What was done and read at the looms: fields as in `tracker.domain.record_tables`. All of it history: a row that is completed
later stands there again, whole, and the last row of a key is the one in force."""

from datetime import datetime
from typing import Any

from sqlalchemy import JSON, ForeignKeyConstraint, Index
from sqlalchemy.orm import Mapped, mapped_column

from tracker.store.base import Base
from tracker.store.models.progress import OfLoomHistory


def _of_loom(table: str) -> tuple[Any, ...]:
    return (
        ForeignKeyConstraint(["hall", "loom"], ["looms.hall", "looms.loom"]),
        Index(f"ix_{table}_hall_loom", "hall", "loom"),
    )


class Waived:
    """Columns that let a value pass as it is."""

    waived_because: Mapped[str | None]
    waived_by: Mapped[str | None]
    waived_at: Mapped[datetime | None]


class WorkDoneRow(OfLoomHistory, Base):
    __tablename__ = "work_done"
    __table_args__ = _of_loom("work_done")
    card: Mapped[str | None]
    operation: Mapped[str | None]
    started_at: Mapped[datetime | None]
    ended_at: Mapped[datetime | None]
    crew: Mapped[str | None]
    stage: Mapped[str | None]
    beam_out_at: Mapped[datetime | None]
    locked_at: Mapped[datetime | None]
    unlocked_at: Mapped[datetime | None]
    first_pick_at: Mapped[datetime | None]
    at_speed_at: Mapped[datetime | None]
    minutes: Mapped[float | None]
    heads: Mapped[int | None]
    torque_nm: Mapped[float | None]
    done_by: Mapped[str | None]
    remark: Mapped[str | None]
    hand_over: Mapped[str | None]


class SetValueRow(Waived, OfLoomHistory, Base):
    __tablename__ = "set_values"
    __table_args__ = _of_loom("set_values")
    side: Mapped[str | None]
    setting: Mapped[str]
    value: Mapped[Any] = mapped_column(JSON(none_as_null=True), nullable=True)
    at: Mapped[datetime]
    who: Mapped[str | None]
    why: Mapped[str | None]
    article: Mapped[str | None]


class CheckResultRow(Waived, OfLoomHistory, Base):
    __tablename__ = "check_results"
    __table_args__ = _of_loom("check_results")
    side: Mapped[str | None]
    check: Mapped[str]
    result: Mapped[Any] = mapped_column(JSON(none_as_null=True), nullable=True)
    at: Mapped[datetime]
    who: Mapped[str | None]


class PartUsedRow(OfLoomHistory, Base):
    __tablename__ = "parts_used"
    __table_args__ = _of_loom("parts_used")
    card: Mapped[str | None]
    part: Mapped[str]
    used: Mapped[float]
    left_over: Mapped[float | None]
    broken: Mapped[float | None]


class StopsRow(OfLoomHistory, Base):
    __tablename__ = "stops"
    __table_args__ = _of_loom("stops")
    from_at: Mapped[datetime]
    to_at: Mapped[datetime]
    article: Mapped[str | None]
    cause: Mapped[str | None]
    stops: Mapped[int]
    picks: Mapped[float]
    hours_h: Mapped[float | None]
    efficiency: Mapped[float | None]


class WasteRow(OfLoomHistory, Base):
    __tablename__ = "waste"
    __table_args__ = _of_loom("waste")
    from_at: Mapped[datetime]
    to_at: Mapped[datetime]
    side: Mapped[str | None]
    waste_width_mm: Mapped[float]
    article: Mapped[str | None]


class BobbinRow(OfLoomHistory, Base):
    __tablename__ = "bobbins"
    __table_args__ = _of_loom("bobbins")
    side: Mapped[str]
    at: Mapped[datetime]
    grams_left: Mapped[float]
    tex: Mapped[float | None]
