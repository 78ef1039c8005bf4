"""Scenarios side by side with the published plan, and what the mill has that a scenario may change."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.mill import Mill, Receipt
from tracker.domain.plan import CostTerms, Plan
from tracker.domain.shifts import running_calendars
from tracker.domain.tables import TERM_COLUMNS
from tracker.domain.words import natural_key
from tracker.mill_state.stockroom import part_units
from tracker.services.context import Context
from tracker.services.screens.status import total_cost
from tracker.services.screens.terms_board import as_the_sheet
from tracker.store.plans import scenario_plans


@dataclass(frozen=True, slots=True)
class PlanLine:
    """One plan in the comparison."""

    name: str
    """Of the scenario; `published plan` for the one in force."""
    made_at: datetime | None
    plan: Plan
    cost: CostTerms
    """Of its bookings."""
    stopped_h: float
    """Weaving hours of the halls that fall into its conversions, all looms together."""
    finish_on: date | None
    """Local day on which the last booking ends."""

    @property
    def comparable(self) -> float:
        """By it a plan is held against others."""
        return self.plan.without_moves

    @property
    def left_over_cost(self) -> float:
        return self.plan.objective - self.cost.total


@dataclass(frozen=True, slots=True)
class ScenarioBoard:
    zone: ZoneInfo
    currency: str
    lines: tuple[PlanLine, ...]
    """The published plan first, where there is one, then the newest plan of each scenario by name, also of one set aside."""
    now: Mapping[str, Mapping[str, Any]]
    """Of `terms`, `heads` and `tools`: name → value, as the sheet would have it."""
    names: Mapping[str, tuple[str, ...]]
    """Field of an entry → what the mill has of it."""
    receipts: tuple[Receipt, ...]
    """By day."""
    units: Mapping[str, str]
    """Part → unit."""


def scenario_board(context: Context) -> ScenarioBoard:
    """Every plan to be compared, as far as it is saved."""
    with context.reading() as uow:
        mill, published, others = uow.mill(), uow.published_plan(), scenario_plans(uow.session)
    lines = [plan_line(mill, "published plan", None, published)] if published else []
    lines += [plan_line(mill, name, made_at, plan) for name, made_at, plan in others]
    return ScenarioBoard(
        zone=mill.terms.zone,
        currency=mill.terms.currency,
        lines=tuple(lines),
        now=_now(mill),
        names=_names(mill),
        receipts=tuple(sorted(mill.receipts, key=lambda receipt: (receipt.due, receipt.order))),
        units=part_units(mill),
    )


def _now(mill: Mill) -> dict[str, dict[str, Any]]:
    return {
        "terms": {column.title: as_the_sheet(column, getattr(mill.terms, column.field)) for column in TERM_COLUMNS},
        "heads": {crew.crew: crew.heads for crew in mill.crews},
        "tools": {name: tool.how_many for name, tool in mill.tools.items()},
    }


def _names(mill: Mill) -> dict[str, tuple[str, ...]]:
    found = {
        "crew": {crew.crew for crew in mill.crews},
        "trade": {crew.trade for crew in mill.crews} | {row.trade for row in mill.method.operations},
        "part": set(mill.parts),
        "hall": {key.hall for key in mill.looms},
        "loom": {key.loom for key in mill.looms},
    }
    return {field: tuple(sorted(names, key=natural_key)) for field, names in found.items()}


def plan_line(mill: Mill, name: str, made_at: datetime | None, plan: Plan) -> PlanLine:
    """A plan as the comparison shows it."""
    ends = [booking.end.astimezone(mill.terms.zone).date() for booking in plan.bookings]
    return PlanLine(name, made_at, plan, total_cost(plan.bookings), _stopped_h(mill, plan), max(ends, default=None))


def _stopped_h(mill: Mill, plan: Plan) -> float:
    if not plan.bookings:
        return 0.0
    zone = mill.terms.zone
    first = min(booking.start for booking in plan.bookings).astimezone(zone).date() - timedelta(days=1)
    last = max(booking.end for booking in plan.bookings).astimezone(zone).date()
    calendars = running_calendars(mill, first, last)
    return sum(calendars[b.key.hall].hours_between(b.start, b.end) for b in plan.bookings if b.key.hall in calendars)
