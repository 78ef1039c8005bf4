"""The mill: halls, looms, warps, articles, calendars, crews, tools, terms; fields as in `tracker.domain.tables`."""

from datetime import date, datetime, time
from typing import Any

from sqlalchemy import JSON, ForeignKey, ForeignKeyConstraint, UniqueConstraint
from sqlalchemy.orm import Mapped, mapped_column

from tracker.store.base import Base


class HallRow(Base):
    __tablename__ = "halls"
    hall: Mapped[str] = mapped_column(primary_key=True)


class LoomRow(Base):
    __tablename__ = "looms"
    hall: Mapped[str] = mapped_column(ForeignKey("halls.hall"), primary_key=True)
    loom: Mapped[str] = mapped_column(primary_key=True)
    row: Mapped[str | None]
    place: Mapped[str | None]
    section: Mapped[str | None]
    machine_type: Mapped[str]
    insertion: Mapped[str | None]
    year: Mapped[int | None]
    reed_width_cm: Mapped[float | None]
    frames: Mapped[int | None]
    speed_ppm: Mapped[float | None]
    efficiency: Mapped[float | None]
    saving_per_day: Mapped[float | None]
    capacity_unsold: Mapped[bool | None]
    protected_until: Mapped[date | None]
    notes: Mapped[str | None]
    attributes: Mapped[dict[str, Any]] = mapped_column(default=dict)


class OfLoom:
    """Columns of a row that belongs to a loom."""

    id: Mapped[int] = mapped_column(primary_key=True)
    hall: Mapped[str]
    loom: Mapped[str]


def _of_loom(*unique: str) -> tuple[Any, ...]:
    return (
        ForeignKeyConstraint(["hall", "loom"], ["looms.hall", "looms.loom"]),
        UniqueConstraint("hall", "loom", *unique),
    )


class WarpRow(OfLoom, Base):
    __tablename__ = "warps"
    __table_args__ = _of_loom("sequence")
    sequence: Mapped[int]
    article: Mapped[str]
    set_length_m: Mapped[float | None]
    warp_left_m: Mapped[float | None]
    read_at: Mapped[datetime | None]
    tail_m: Mapped[float | None]
    change: Mapped[str | None]
    speed_ppm: Mapped[float | None]
    efficiency: Mapped[float | None]
    ready_on: Mapped[date | None]


class ReadingRow(OfLoom, Base):
    __tablename__ = "readings"
    __table_args__ = _of_loom("read_at")
    read_at: Mapped[datetime]
    warp_left_m: Mapped[float | None]
    speed_ppm: Mapped[float | None]
    efficiency: Mapped[float | None]
    picks: Mapped[float | None]


class StandingRow(OfLoom, Base):
    __tablename__ = "standing"
    __table_args__ = _of_loom("from_at")
    from_at: Mapped[datetime]
    to_at: Mapped[datetime]
    reason: Mapped[str | None]


class ArticleRow(Base):
    __tablename__ = "articles"
    article: Mapped[str] = mapped_column(primary_key=True)
    pick_density_per_cm: Mapped[float]
    take_up: Mapped[float]
    take_up_basis: Mapped[str | None]
    contribution_per_m: Mapped[float | None]
    warp_value_per_m: Mapped[float | None]
    family: Mapped[str | None]
    weft_tex: Mapped[float | None]
    weft_price_per_kg: Mapped[float | None]


class ChangeRow(Base):
    __tablename__ = "changes"
    id: Mapped[int] = mapped_column(primary_key=True)
    kind: Mapped[str]
    hours_h: Mapped[float]
    machine_type: Mapped[str | None]
    meanwhile_h: Mapped[float | None]
    trade: Mapped[str | None]
    heads: Mapped[int | None]


class CrewRow(Base):
    __tablename__ = "crews"
    id: Mapped[int] = mapped_column(primary_key=True)
    crew: Mapped[str]
    trade: Mapped[str]
    heads: Mapped[int]
    weekdays: Mapped[frozenset[int] | None]
    shift_start: Mapped[time | None]
    shift_end: Mapped[time | None]
    rate_per_head_h: Mapped[float | None]
    hall: Mapped[str | None]
    from_on: Mapped[date | None]
    to_on: Mapped[date | None]
    breaks: Mapped[str | None]
    language: Mapped[str | None]


class AbsenceRow(Base):
    __tablename__ = "absences"
    id: Mapped[int] = mapped_column(primary_key=True)
    crew: Mapped[str]
    from_on: Mapped[date]
    to_on: Mapped[date]
    heads: Mapped[int | None]
    reason: Mapped[str | None]


class OvertimeRow(Base):
    __tablename__ = "overtime"
    id: Mapped[int] = mapped_column(primary_key=True)
    crew: Mapped[str]
    on: Mapped[date]
    start: Mapped[time]
    end: Mapped[time]


class RunningRow(Base):
    __tablename__ = "running"
    id: Mapped[int] = mapped_column(primary_key=True)
    hall: Mapped[str]
    weekdays: Mapped[frozenset[int]]
    start: Mapped[time | None]
    end: Mapped[time | None]


class ClosureRow(Base):
    __tablename__ = "closures"
    id: Mapped[int] = mapped_column(primary_key=True)
    on: Mapped[date]
    hall: Mapped[str | None]
    stops: Mapped[str | None]
    reason: Mapped[str | None]
    start: Mapped[time | None]
    end: Mapped[time | None]


class ToolRow(Base):
    __tablename__ = "tools"
    tool: Mapped[str] = mapped_column(primary_key=True)
    how_many: Mapped[int]


class TermRow(Base):
    __tablename__ = "terms"
    term: Mapped[str] = mapped_column(primary_key=True)
    value: Mapped[Any] = mapped_column(JSON)
