"""Make a plan, hold it against the last published one, check it without the solver, and publish it."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from functools import reduce
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.clock import planning_moment
from tracker.domain.late import Late
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.needs import OrderLine
from tracker.domain.plan import Asked, Placed, Plan, PlanStatus, RuledOut
from tracker.errors import DataError, Message, PlanRefused, UsageError, message
from tracker.mill_state.happened import Happened
from tracker.mill_state.planning import PlanningData, prepare
from tracker.planning.planner import Progress
from tracker.planning.planner import plan as solve
from tracker.planning.problem import PlanningProblem
from tracker.planning.verify import no_longer, verify
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.services.parts.needs import order_record, orders_relied_on
from tracker.services.parts.reservations import reserve_plan
from tracker.services.people.permissions import May
from tracker.services.plans.late_list import late_now, late_record
from tracker.services.plans.moves import Move, differences
from tracker.services.plans.overtaking import overtaken
from tracker.services.plans.plan_record import in_json, local, plan_record
from tracker.services.plans.planning_data import read_happened, read_planning_data
from tracker.services.plans.scenario import apply_scenario, changes_nothing, read_scenario
from tracker.services.plans.scenario_changes import rows_changed
from tracker.services.plans.scenario_entries import Scenario
from tracker.store import UnitOfWork

MOST_REASONS = 3
"""Why there is no plan, told in one message."""


@dataclass(frozen=True, slots=True)
class Firm:
    """Which bookings of the firm period stay."""

    stay: bool = True
    """False = none."""
    release: tuple[str | LoomKey, ...] = ()
    """Looms, or their numbers, whose bookings may move all the same."""
    hall: str | None = None
    """Says which, where a number stands in several."""


FIRM = Firm()


@dataclass(frozen=True, slots=True)
class PlanRequest:
    """What is to be planned."""

    publish: bool = False
    """Whether it becomes the plan in force and its kits are reserved."""
    scenario: Path | None = None
    """A file that changes the mill; what is planned by it is never published."""
    as_of: datetime | None = None
    """None = now, or the start of a programme that lies ahead."""
    firm: Firm = FIRM
    """Which firm bookings stay."""
    hold: tuple[str | LoomKey, ...] = ()
    """Looms, or their numbers, whose bookings stay where they are, firm or not; `firm.hall` says which."""
    calm: int | None = None
    """At most so many moves more than the data need; None = as many as pay."""
    afresh: bool = False
    """As if nothing had been published before."""
    ruled_out: tuple[RuledOut, ...] | None = None
    """Spans in which looms are not to be booked; None = what the plan in force keeps to, as far as it lies ahead."""
    placed: tuple[Placed, ...] = ()
    """Bookings that are to stand elsewhere; every other that can be held is held then."""


@dataclass(frozen=True, slots=True)
class Search:
    """How long to search, and who follows it."""

    time_limit_s: float | None = None
    progress: Progress | None = None
    stop: Callable[[], bool] | None = None
    """Asked now and then; true ends the search, and a plan that was stopped is not published."""


AS_IT_STANDS, TO_THE_END = PlanRequest(), Search()


@dataclass(frozen=True, slots=True)
class Saved:
    """How a plan stands in the database."""

    number: int
    published: bool = True
    scenario: str | None = None


@dataclass(frozen=True, slots=True)
class PlanReport:
    plan: Plan
    previous: Plan | None
    moves: tuple[Move, ...]
    """Looms whose booking differs from the last published plan, by the new start; empty where there was none."""
    broken: tuple[Message, ...]
    """What of the last published plan the data do not allow any more."""
    number: int | None
    """Of the plan in the database."""
    published: bool
    scenario: str | None
    zone: ZoneInfo
    orders: tuple[OrderLine, ...] = ()
    """Orders not placed yet that bookings rely on, by the day on which to place them."""
    notes: tuple[Message, ...] = ()
    """What of a scenario changes nothing."""
    late: tuple[Late, ...] = ()
    """What should have been by the plan in force and was not, when this one was made."""

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        return plan_record(self.plan, self.zone) | {
            "number": self.number,
            "published": self.published,
            "scenario": self.scenario,
            "broken": [in_json(each) for each in self.broken],
            "notes": [in_json(note) for note in self.notes],
            "late": [late_record(one, self.zone) for one in self.late],
            "orders": [order_record(line) for line in self.orders],
            "moves": [
                {"hall": m.key.hall, "loom": m.key.loom, "what": m.what, "why": in_json(m.why), "dearer": m.dearer,
                 "staying_would_cost": m.price,
                 "before": local(m.before.start, self.zone) if m.before else None,
                 "after": local(m.after.start, self.zone) if m.after else None}
                for m in self.moves
            ],
        }  # fmt: skip


@dataclass(frozen=True, slots=True)
class PlanTask:
    """All that one plan is made from, as the mill was at one moment: pure, so that another process can make it."""

    mill: Mill
    """As it is, before a scenario changed it."""
    data: PlanningData
    """To plan from; its last published plan is missing where the plan is made afresh."""
    published: Plan | None
    request: PlanRequest
    as_of: datetime
    scenario: str | None = None
    """Its name; None where the plan is no scenario."""
    entries: Mapping[str, Any] | None = None
    """What the scenario has otherwise."""

    @property
    def problem(self) -> PlanningProblem:
        """DataError where the data cannot carry a plan."""
        prepared = prepare(self.data, self.as_of)
        return prepared.asked(_asked(self.request, self.data, prepared.problem))

    def run(self, search: Search) -> Plan:
        """The plan, checked without the solver. Raises as `problem`, and PlanRefused."""
        return self.made(self.problem, search)

    def made(self, problem: PlanningProblem, search: Search) -> Plan:
        result = solve(problem, time_limit_s=search.time_limit_s, progress=search.progress, stop=search.stop)
        check(result, problem)
        afresh = self.request.afresh and self.published is not None
        return replace(result, asked=replace(result.asked, afresh=afresh))


def plan(context: Context, request: PlanRequest = AS_IT_STANDS, search: Search = TO_THE_END) -> PlanReport:
    """Plan from what the database holds.

    The plan is saved beside the earlier ones, and published where that is asked for, unless the search was stopped. Raises
    PlanRefused where the solver-free check objects, and DataError where the data cannot carry a plan; nothing is written
    then.
    """
    task = plan_task(context, request, read_scenario(request.scenario) if request.scenario else None)
    problem = task.problem
    result = task.made(problem, search)
    publish = request.publish and not (search.stop and search.stop())
    overdue = () if task.scenario else late_now(context, problem.as_of)
    assumed = rows_changed(task.mill, task.data.mill) if task.scenario else ()
    news = read_happened(context, task.data, problem.as_of, assumed)
    number = save(context, result, publish, task.scenario, task.published, task.entries)
    report = report_of(result, task.data, problem, news, Saved(number, publish, task.scenario))
    notes = tuple(changes_nothing(task.mill, task.data.mill))
    return replace(report, orders=orders_relied_on(context, result, task.data.mill), notes=notes, late=overdue)


def plan_task(context: Context, request: PlanRequest, scenario: Scenario | None = None) -> PlanTask:
    """What is to be planned, read from the database. Raises as `plan` for what is known at once."""
    context.require(May.PLAN)
    if scenario is not None and request.publish:
        raise PlanRefused("scenario-not-published")
    data = read_planning_data(context)
    mill, published = data.mill, data.previous
    data = replace(data, mill=apply_scenario(mill, scenario or {}), previous=None if request.afresh else published)
    _named(request, data)
    at = planning_moment(data.mill.terms, request.as_of, context.now())
    name = None if scenario is None else str(scenario.get("name") or Path(scenario.file).stem)
    return PlanTask(mill, data, published, request, at, name, scenario)


def _meant(mill: Mill, loom: str | LoomKey, hall: str | None) -> LoomKey:
    """The loom by its number; one that is named with its hall (as two texts where it was kept) needs no other word."""
    return find_loom(mill, loom, hall) if isinstance(loom, str) else find_loom(mill, loom[1], loom[0])


def _named(request: PlanRequest, data: PlanningData) -> tuple[frozenset[LoomKey], frozenset[LoomKey]]:
    """The looms that are released and those that are held. DataError where one is not known or there is nothing to keep, UsageError
    where one is named for both or fewer moves are wanted than the data need."""
    if request.calm is not None and request.calm < 0:
        raise UsageError("calm-below-0", moves=request.calm)
    firm = request.firm
    released, held = (
        frozenset(_meant(data.mill, loom, firm.hall) for loom in looms) for looms in (firm.release, request.hold)
    )
    for key in sorted(released & held):
        raise UsageError("hold-and-release", loom=key)
    if (held or request.calm is not None) and data.previous is None:
        raise DataError("nothing-to-keep")
    return released, held


def _asked(request: PlanRequest, data: PlanningData, problem: PlanningProblem) -> Asked:
    """What the planner is asked for. Raises as `_named`, and DataError where a booking that is placed does not lie ahead."""
    firm, (released, held) = request.firm, _named(request, data)
    ruled_out = _ruled_out(request, data, problem.as_of)
    if request.placed:
        return _placed(request.placed, released, problem, ruled_out)
    return Asked(firm.stay, released, held=held, calm=request.calm, ruled_out=ruled_out)


def _ruled_out(request: PlanRequest, data: PlanningData, as_of: datetime) -> tuple[RuledOut, ...]:
    """What was asked for, else what the plan in force keeps to; spans that are over are left out."""
    before = data.previous.asked.ruled_out if data.previous else ()
    given = before if request.ruled_out is None else request.ruled_out
    return tuple(span for span in given if span.until_at > as_of)


def _placed(
    placed: tuple[Placed, ...], released: frozenset[LoomKey], problem: PlanningProblem, ruled_out: tuple[RuledOut, ...]
) -> Asked:
    """Bookings at another start, and all others that lie ahead where they are."""
    moved, ahead = {one.key for one in placed}, {key for key, b in problem.to_move.items() if b.start >= problem.as_of}
    for key in sorted(moved - ahead):
        raise DataError("placed-not-ahead", loom=key)
    return Asked(True, released | moved, held=frozenset(ahead), placed=placed, ruled_out=ruled_out)


def report_of(
    result: Plan, data: PlanningData, problem: PlanningProblem, news: Sequence[Happened], saved: Saved
) -> PlanReport:
    """A plan beside the published one that it was made after; `news`: what has happened since that."""
    broken = no_longer(data.previous, problem) if data.previous else {}
    moves = differences(data.previous, result, data.mill, data.stages, broken, news) if data.previous else ()
    told = tuple(finding for findings in broken.values() for finding in findings)
    zone = data.mill.terms.zone
    return PlanReport(result, data.previous, moves, told, saved.number, saved.published, saved.scenario, zone)


def check(result: Plan, problem: PlanningProblem) -> None:
    """Refuse a plan that books nothing because nothing can be, or that the solver-free check rejects."""
    if result.status is PlanStatus.INFEASIBLE:
        more = max(0, len(result.reasons) - MOST_REASONS)
        raise PlanRefused("plan-impossible", reasons=_together(result.reasons[:MOST_REASONS]), more=more)
    if violations := verify(result, problem):
        raise PlanRefused("plan-fails-check", finding=violations[0], more=len(violations) - 1)


def _together(reasons: Sequence[Message]) -> Message:
    return reduce(lambda one, other: message("one-after-another", one=one, other=other), reasons)


def save(
    context: Context,
    result: Plan,
    publish: bool,
    scenario: str | None,
    previous: Plan | None,
    entries: Mapping[str, Any] | None = None,
) -> int:
    """Append a plan, and reserve its kits where it is published; gives its number. `previous`: the published plan that it
    was made after; PlanRefused where another one has been published since. `entries`: what the scenario has otherwise."""
    with context.unit_of_work(May.PLAN) as uow:
        number = save_in(uow, result, publish, scenario, previous, entries)
        uow.commit()
    return number


def save_in(
    uow: UnitOfWork,
    result: Plan,
    publish: bool,
    scenario: str | None,
    previous: Plan | None,
    entries: Mapping[str, Any] | None = None,
) -> int:
    """The same in a unit of work that is open; the caller commits."""
    if publish and uow.published_plan() != previous:
        raise overtaken(uow, result)
    number = uow.save_plan(result, published=publish, scenario=scenario, entries=entries)
    if publish:
        reserve_plan(uow, result)
    return number
