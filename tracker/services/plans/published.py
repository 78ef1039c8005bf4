"""The published plan as it stands: what it books, what it weighed, and what other dates would cost."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.clock import planning_moment
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking, LeftOver, OtherDate, Plan
from tracker.errors import DataError
from tracker.export.late_sheet import late_sheet
from tracker.export.plan_workbook import BesideThePlan, write_plan
from tracker.export.wording import Wording
from tracker.forecast.beam_outs import forecast
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.services.parts.needs import net_needs
from tracker.services.plans.late_list import late_now
from tracker.services.plans.plan_record import in_json
from tracker.services.work.hours import sheets_of
from tracker.services.work.scope import scope


@dataclass(frozen=True, slots=True)
class DatesReport:
    """Where a loom stands in the published plan, and its other dates."""

    key: LoomKey
    zone: ZoneInfo
    currency: str
    booking: Booking | None
    left_over: LeftOver | None
    dates: tuple[OtherDate, ...]
    """Cheapest first."""

    def record(self) -> dict[str, Any]:
        """As `--json` writes it; moments local with offset."""
        return {
            "hall": self.key.hall,
            "loom": self.key.loom,
            "currency": self.currency,
            "booked": None if self.booking is None else self._span(self.booking),
            "left_over": None if self.left_over is None else in_json(self.left_over.why),
            "other_dates": [self._span(date) | {"extra_cost": date.extra_cost} for date in self.dates],
        }

    def _span(self, one: Booking | OtherDate) -> dict[str, Any]:
        start, end = (at.astimezone(self.zone).isoformat(timespec="minutes") for at in (one.start, one.end))
        return {"start": start, "end": end, "window": one.window, "kind": one.kind.value, "choices": dict(one.choices)}


def published_plan(context: Context) -> tuple[Plan, Mill]:
    """The last published plan, and the mill as it is now. DataError where there is none."""
    with context.reading() as uow:
        plan, mill = uow.published_plan(), uow.mill()
    if plan is None:
        raise DataError("no-published-plan")
    return plan, mill


def write_plan_workbook(context: Context, target: Path) -> Plan:
    """Write the published plan as a workbook (.xlsx): bookings, kit needs, hours, costs, left-over looms, other
    dates, and what is late now."""
    plan, mill = published_plan(context)
    windows, scoped = forecast(mill, plan.as_of, plan.horizon_end), scope(context)
    contents = {key: scope.contents for key, scope in scoped.scopes.items()}
    at = planning_moment(mill.terms, None, context.now())
    write = Wording(context.language, mill.terms.zone)
    more = [*sheets_of(scoped, write), late_sheet(late_now(context, at), write)]
    beside = BesideThePlan(net_needs(context, plan.as_of).weeks, windows, contents, more)
    write_plan(target, plan, mill, beside, context.language)
    return plan


def other_dates(context: Context, loom: str, hall: str | None = None) -> DatesReport:
    """The other dates of a loom. DataError where it is neither booked nor left over in the published plan."""
    plan, mill = published_plan(context)
    key = find_loom(mill, loom, hall)
    booking = next((b for b in plan.bookings if b.key == key), None)
    left_over = next((item for item in plan.left_over if item.key == key), None)
    if booking is None and left_over is None:
        raise DataError("loom-not-planned", loom=key)
    dates = sorted((o for o in plan.other_dates if o.key == key), key=lambda o: (o.extra_cost, o.start))
    return DatesReport(key, mill.terms.zone, plan.currency, booking, left_over, tuple(dates))
