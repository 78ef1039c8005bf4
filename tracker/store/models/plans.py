"""Plans and their bookings, kept for ever."""

from datetime import date, datetime
from typing import Any

from sqlalchemy import JSON, ForeignKey, ForeignKeyConstraint
from sqlalchemy.orm import Mapped, mapped_column

from tracker.store.base import AppendOnly, Base


class PlanRow(AppendOnly, Base):
    __tablename__ = "plans"
    id: Mapped[int] = mapped_column(primary_key=True)
    made_at: Mapped[datetime]
    who: Mapped[str]
    published: Mapped[bool]
    scenario: Mapped[str | None]
    status: Mapped[str]
    objective: Mapped[float]
    bound: Mapped[float]
    seconds: Mapped[float]
    currency: Mapped[str]
    as_of: Mapped[datetime]
    horizon_end: Mapped[datetime]
    start: Mapped[date | None]
    reasons: Mapped[list[Any]]
    """{code, params} each; a text where the plan was made before messages were kept by their codes."""
    terms: Mapped[dict[str, Any]]
    crew_changes: Mapped[int | None]
    """None = made before crews were named."""


class OfPlan(AppendOnly):
    id: Mapped[int] = mapped_column(primary_key=True)
    plan_id: Mapped[int] = mapped_column(ForeignKey("plans.id"), index=True)


class BookingRow(OfPlan, Base):
    __tablename__ = "bookings"
    __table_args__ = (ForeignKeyConstraint(["hall", "loom"], ["looms.hall", "looms.loom"]),)
    hall: Mapped[str]
    loom: Mapped[str]
    window: Mapped[int]
    kind: Mapped[str]
    choices: Mapped[list[Any]]
    start: Mapped[datetime]
    end: Mapped[datetime]
    beam_out_p50: Mapped[datetime | None]
    slots: Mapped[int]
    labour_h: Mapped[float]
    parts: Mapped[dict[str, Any]]
    firm: Mapped[bool]
    pilot: Mapped[bool]
    lost_production: Mapped[float]
    late_beam_out: Mapped[float]
    labour: Mapped[float]
    parts_cost: Mapped[float]
    saving_foregone: Mapped[float]
    moves: Mapped[float]
    surviving: Mapped[float | None]
    """None = made before there was such a term."""
    crews: Mapped[list[Any] | None] = mapped_column(JSON)
    """[crew, from, to] each; None as in `crew_changes`."""
    needs: Mapped[list[Any] | None] = mapped_column(JSON)
    """[trade or tool, its name, how many, from, to] each."""
    attended: Mapped[bool | None]
    """Whether somebody stays with a pilot throughout; None = made before that was planned."""
    pause_from: Mapped[datetime | None]
    pause_to: Mapped[datetime | None]
    """Between the two parts of the conversion; None = in one piece."""


class LeftOverRow(OfPlan, Base):
    __tablename__ = "plan_left_over"
    __table_args__ = (ForeignKeyConstraint(["hall", "loom"], ["looms.hall", "looms.loom"]),)
    hall: Mapped[str]
    loom: Mapped[str]
    why: Mapped[str]
    """The code of the reason; its words where `params` is None."""
    params: Mapped[dict[str, Any] | None] = mapped_column(JSON)
    """None = made before messages were kept by their codes."""
    cost: Mapped[float]


class PriceRow(OfPlan, Base):
    __tablename__ = "plan_prices"
    what: Mapped[str]
    params: Mapped[dict[str, Any] | None] = mapped_column(JSON)
    """Of `what`, as in `plan_left_over`."""
    week: Mapped[str]
    price: Mapped[float]


class OtherDateRow(OfPlan, Base):
    __tablename__ = "plan_other_dates"
    __table_args__ = (ForeignKeyConstraint(["hall", "loom"], ["looms.hall", "looms.loom"]),)
    hall: Mapped[str]
    loom: Mapped[str]
    window: Mapped[int]
    kind: Mapped[str]
    choices: Mapped[list[Any]]
    start: Mapped[datetime]
    end: Mapped[datetime]
    extra_cost: Mapped[float]
