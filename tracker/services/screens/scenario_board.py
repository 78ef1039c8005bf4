"""Scenarios side by side with the published plan, and what a scenario may change."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from tracker.domain.mill import Mill, Receipt
from tracker.domain.plan import CostTerms, Plan
from tracker.domain.shifts import running_calendars
from tracker.mill_state.stockroom import part_units
from tracker.services.context import Context
from tracker.services.screens.status import total_cost
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
        """What the plan costs without the price of moves: a plan is held against others by it, since only a plan made after
        a published one has any."""
        return self.plan.objective - self.cost.moves

    @property
    def left_over_cost(self) -> float:
        return self.plan.objective - self.cost.total


@dataclass(frozen=True, slots=True)
class ScenarioBoard:
    zone: ZoneInfo
    currency: str
    lines: tuple[PlanLine, ...]
    """The published plan first, where there is one, then the newest plan of each scenario by name."""
    heads: Mapping[str, int]
    """Crew → heads as they are: what a scenario may change, as are the next three."""
    horizon_days: int
    target_finish: date | None
    receipts: tuple[Receipt, ...]
    """By day."""
    units: Mapping[str, str]
    """Part → unit."""


@dataclass(frozen=True, slots=True)
class Wishes:
    """What a scenario changes; None or empty = as it is."""

    name: str
    heads: Mapping[str, int]
    horizon_days: int | None = None
    target_finish: date | None = None
    receipt: Receipt | None = None
    """An order line with the day on which it comes instead."""
    closed_on: date | None = None
    """A day on which nobody converts."""


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
        heads={crew.crew: crew.heads for crew in mill.crews},
        horizon_days=mill.terms.horizon_days,
        target_finish=mill.terms.target_finish,
        receipts=tuple(sorted(mill.receipts, key=lambda receipt: (receipt.due, receipt.order))),
        units=part_units(mill),
    )


def scenario_text(wishes: Wishes) -> str:
    """The wishes as a scenario file (TOML), which `beamslot plan --scenario` takes as well."""
    lines = [f"name = {_quoted(wishes.name)}"]
    terms = [f'"horizon (days)" = {wishes.horizon_days}'] if wishes.horizon_days else []
    terms += [f'"target finish" = {wishes.target_finish}'] if wishes.target_finish else []
    lines += ["[terms]", *terms] if terms else []
    lines += (
        ["[heads]", *(f"{_quoted(crew)} = {heads}" for crew, heads in wishes.heads.items())] if wishes.heads else []
    )
    if line := wishes.receipt:
        lines += ["[[receipt]]", f"order = {_quoted(line.order)}", f"part = {_quoted(line.part)}", f"due = {line.due}"]
    if wishes.closed_on:
        lines += ["[[closure]]", f"date = {wishes.closed_on}", 'stops = "work"']
    return "\n".join(lines) + "\n"


def later_receipt(receipt: Receipt, weeks: int) -> Receipt:
    """The order line, coming so many weeks later."""
    return replace(receipt, due=receipt.due + timedelta(weeks=weeks))


def _quoted(text: str) -> str:
    """A TOML basic string: its escapes are those of JSON."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")


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
