"""The method, versioned: loading a changed method adds a version; conversions keep the one they were done by."""

from datetime import datetime
from typing import Any

from sqlalchemy import JSON, ForeignKey
from sqlalchemy.orm import Mapped, mapped_column

from tracker.store.base import AppendOnly, Base


class MethodVersion(AppendOnly, Base):
    __tablename__ = "method_versions"
    version: Mapped[int] = mapped_column(primary_key=True)
    at: Mapped[datetime]
    who: Mapped[str]


class OfMethod(AppendOnly):
    """Columns of a row of the method: its version, place in the sheet, and conditions."""

    id: Mapped[int] = mapped_column(primary_key=True)
    version: Mapped[int] = mapped_column(ForeignKey("method_versions.version"), index=True)
    conditions: Mapped[dict[str, Any]] = mapped_column(default=dict)
    sheet: Mapped[str] = mapped_column(default="")
    number: Mapped[int] = mapped_column(default=0)
    columns: Mapped[dict[str, Any]] = mapped_column(default=dict)


class OperationRow(OfMethod, Base):
    __tablename__ = "method_operations"
    step: Mapped[int]
    operation: Mapped[str]
    minutes: Mapped[float]
    minutes_low: Mapped[float | None]
    minutes_high: Mapped[float | None]
    trade: Mapped[str]
    heads: Mapped[int]
    tool: Mapped[str | None]
    place: Mapped[str | None]
    caution: Mapped[str | None]
    torque_nm: Mapped[float | None]
    warp: Mapped[str | None]
    learns: Mapped[bool | None]
    stops_neighbours: Mapped[bool | None]
    waivable: Mapped[bool | None]


class KitLineRow(OfMethod, Base):
    __tablename__ = "method_kit_lines"
    part: Mapped[str]
    quantity: Mapped[float]
    comes_back: Mapped[bool | None]


class AlternativeRow(OfMethod, Base):
    __tablename__ = "method_choices"
    choice: Mapped[str]
    alternative: Mapped[str]


class SetpointRow(OfMethod, Base):
    __tablename__ = "method_setpoints"
    setting: Mapped[str]
    side: Mapped[str | None]
    unit: Mapped[str | None]
    target: Mapped[Any] = mapped_column(JSON, nullable=True)
    low: Mapped[float | None]
    high: Mapped[float | None]
    repeatability: Mapped[float | None]


class CheckRow(OfMethod, Base):
    __tablename__ = "method_checks"
    check: Mapped[str]
    side: Mapped[str | None]
    kind: Mapped[str | None]
    low: Mapped[float | None]
    high: Mapped[float | None]
    safety: Mapped[bool | None]
    waivable: Mapped[bool | None]
