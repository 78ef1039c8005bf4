"""All plans that were made, and publishing one of them as it is."""

from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.clock import planning_moment
from tracker.domain.plan import Asked, Plan, PlanEntry
from tracker.errors import DataError, PlanRefused
from tracker.mill_state.planning import PlanningData, prepare
from tracker.planning.planner import plan as solve
from tracker.services.context import Context
from tracker.services.parts.needs import orders_relied_on
from tracker.services.people.permissions import May
from tracker.services.plans.overtaking import overtaken
from tracker.services.plans.plan import PlanReport, Saved, check, report_of, save
from tracker.services.plans.plan_record import local
from tracker.services.plans.planning_data import read_happened, read_planning_data


@dataclass(frozen=True, slots=True)
class MadePlans:
    entries: tuple[PlanEntry, ...]
    """The newest first."""
    zone: ZoneInfo

    def record(self) -> list[dict[str, Any]]:
        """As `--json` writes it; moments local with offset."""
        return [
            {
                "number": e.number, "made_at": local(e.made_at, self.zone), "who": e.who, "published": e.published,
                "scenario": e.scenario, "as_of": local(e.as_of, self.zone), "status": e.status.value,
                "objective": e.objective, "bound": e.bound, "currency": e.currency, "bookings": e.bookings,
                "left_over": e.left_over,
            }
            for e in self.entries
        ]  # fmt: skip


def made_plans(context: Context) -> MadePlans:
    """Every plan that was made here, published or not."""
    with context.reading() as uow:
        return MadePlans(tuple(uow.plan_entries()), uow.terms().zone)


def made_plan(context: Context, number: int) -> tuple[Plan, ZoneInfo]:
    """The plan of that number. DataError where there is none."""
    with context.reading() as uow:
        found, zone = uow.plan(number), uow.terms().zone
    if found is None:
        raise DataError("no-such-plan", number=str(number))
    return found, zone


def publish_made(context: Context, number: int, as_of: datetime | None = None, after: int | None = None) -> PlanReport:
    """Publish a plan as it was made, without planning anew; it is saved once more, under a new number. One that was in force
    before, or was made before the one in force, is put in its place as far as it lies ahead: what its moves cost was reckoned
    beside another. `after`: the number of the plan in force as the asker saw it.

    Raises PlanRefused where it is a scenario's, is in force already, begins before `as_of` (default: now, or the start
    of a programme that lies ahead), or does not hold any more as the data stand, and where another plan than `after` is in
    force by now.
    """
    context.require(May.PLAN)
    found, zone = made_plan(context, number)
    entry = next(e for e in made_plans(context).entries if e.number == number)
    if entry.scenario is not None:
        raise PlanRefused("plan-of-scenario", number=str(number), scenario=entry.scenario)
    data = read_planning_data(context)
    at = planning_moment(data.mill.terms, as_of, context.now())
    _refuse_overtaken(context, found, after)
    now = in_force(context) or 0
    if number == now:
        raise PlanRefused("plan-published-already", number=str(number))
    if entry.published:
        return _again(context, data, number, found, at)
    for booking in found.bookings:
        if booking.start < at and not booking.firm:
            start = booking.start.astimezone(zone)
            raise PlanRefused("plan-past", number=str(number), loom=booking.key, start=start)
    if number < now:
        return _again(context, data, number, found, at)
    before = replace(data, previous=None) if found.asked.afresh else data
    problem = prepare(before, found.as_of).asked(found.asked)
    check(found, problem)
    news = read_happened(context, data, at)
    report = report_of(found, data, problem, news, Saved(save(context, found, True, None, data.previous)))
    return replace(report, orders=orders_relied_on(context, found, data.mill))


def _refuse_overtaken(context: Context, found: Plan, after: int | None) -> None:
    with context.reading() as uow:
        if after is not None and uow.published_number() != after:
            raise overtaken(uow, found)


def in_force(context: Context) -> int | None:
    """The number of the plan in force."""
    with context.reading() as uow:
        return uow.published_number()


def _again(context: Context, data: PlanningData, number: int, found: Plan, at: datetime) -> PlanReport:
    """An earlier plan in force, or once more: what is done, in work or past comes from the records, every other booking keeps its
    start and its choices, firm or not by the plan between, or is named in the refusal; the other looms are planned anew."""
    prepared = prepare(data, at)
    ahead = frozenset(b.key for b in found.bookings if b.start >= at) & frozenset(prepared.problem.planned)
    problem = prepared.asked(Asked(released=ahead, held=ahead, again=number), found)
    made = solve(problem)
    check(made, problem)
    news = read_happened(context, data, at)
    report = report_of(made, data, problem, news, Saved(save(context, made, True, None, data.previous)))
    return replace(report, orders=orders_relied_on(context, made, data.mill))
