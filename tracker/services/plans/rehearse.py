"""Play the published plan many times before it happens, and keep what came of it with the plan."""

import os
from collections.abc import Callable, Iterator
from concurrent.futures.process import BrokenProcessPool
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.clock import planning_moment
from tracker.domain.plan import Plan
from tracker.domain.rehearsal import KeptRehearsal
from tracker.domain.shifts import crews_of
from tracker.errors import DataError, Message, TrackerError, UsageError
from tracker.mill_state.planning import PlanningData, prepare
from tracker.rehearsal.policies import KEPT, NEVER_CUT, REPLANNED, RULE
from tracker.rehearsal.rehearsing import Ask, Players, Progress
from tracker.rehearsal.rehearsing import rehearse as play
from tracker.rehearsal.rests_on import rests_on
from tracker.rehearsal.sources import OF_SOURCE, Source, Spreads
from tracker.services.cluster import cluster
from tracker.services.context import Context
from tracker.services.people.permissions import May
from tracker.services.plans.own_spreads import own_spreads
from tracker.services.plans.planning_data import read_planning_data
from tracker.services.plans.players import players
from tracker.services.plans.rehearsal_record import Basis, record_of
from tracker.services.plans.rehearsal_says import said

POLICIES = {policy.name: policy for policy in (KEPT, REPLANNED, NEVER_CUT, RULE)}
RUNS, MOST_RUNS = 100, 100_000
SPREADS = {name.replace("_", " "): name for name in OF_SOURCE}
"""How much a source varies, as a person names it → the field."""


@dataclass(frozen=True, slots=True)
class RehearsalRequest:
    """What is to be played."""

    runs: int = RUNS
    """Of the first policy; half as many of each other one and of each worry, twenty at most of the plan made anew each Monday."""
    policies: tuple[str, ...] = (KEPT.name, RULE.name)
    """The first is held against the others."""
    seed: int = 1
    spreads: tuple[tuple[str, float], ...] = ()
    """What varies otherwise than usual, by the names of `SPREADS`."""
    off: tuple[str, ...] = ()
    """Sources that do not vary."""
    worries: bool | None = None
    """None = unless the first policy plans anew each Monday, which takes a hundred times as long as keeping a plan."""
    until_sure: float | None = None
    """Currency: no more runs once the mean cost is known as closely as this."""
    jobs: int | None = None
    """Processes; None = as many as the machine has cores."""
    cluster: str | None = None
    """Address of a Dask scheduler whose workers play instead of processes here."""
    as_of: datetime | None = None


@dataclass(frozen=True, slots=True)
class RehearsalReport:
    number: int
    result: dict[str, Any]
    zone: ZoneInfo
    lines: tuple[Message, ...] = field(default=())

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        return {"number": self.number} | self.result


@dataclass(frozen=True, slots=True)
class RehearsalTask:
    """All that one rehearsal is played from, as the mill was at one moment: pure, so that another process can play it."""

    number: int
    """Of the plan in force."""
    plan: Plan
    data: PlanningData
    request: RehearsalRequest
    ask: Ask
    now: datetime

    def run(self, progress: Progress | None = None, stop: Callable[[], bool] | None = None) -> dict[str, Any]:
        """What came of it, as it is kept. Raises as `rehearse`."""
        mill = self.data.mill
        at = planning_moment(mill.terms, self.request.as_of, self.now)
        problem = prepare(replace(self.data, previous=None), at).problem
        to_do = set(problem.planned)
        bookings = tuple(b for b in self.plan.bookings if b.key in to_do)
        if not bookings:
            raise DataError("nothing-to-rehearse")
        ask = replace(self.ask, crews=tuple(dict.fromkeys(c.crew for c in crews_of(mill, mill.terms.lead_trade))))
        grounds = rests_on(problem, ask.spreads)
        with played_by(self.request) as playing:
            found = play(problem, self.plan, ask, playing, progress, stop)
        if not found.runs.get((ask.policies[0].name, None, None)):
            raise DataError("rehearsal-stopped-early")
        return record_of(found, ask, Basis(self.number, self.plan, bookings, mill.terms, at, grounds))


def rehearse(
    context: Context,
    request: RehearsalRequest,
    progress: Progress | None = None,
    stop: Callable[[], bool] | None = None,
) -> RehearsalReport:
    """Play the plan in force from today to its horizon and keep what came of it. `stop` ends it with what is done.

    UsageError for a policy or source that there is not, DataError where there is no published plan, nothing left to do, a
    rate or share out of range, or where it was stopped before the first run, TrackerError where who plays is not there or
    lost; nothing is written then.
    """
    task = rehearsal_task(context, request)
    result = task.run(progress, stop)
    with context.unit_of_work(May.PLAN) as uow:
        kept = uow.save_rehearsal(task.number, result)
        uow.commit()
    return RehearsalReport(kept, result, task.data.mill.terms.zone, said(result))


def rehearsal_task(context: Context, request: RehearsalRequest) -> RehearsalTask:
    """What is to be played, read from the database. Raises as `rehearse` for what is known at once."""
    context.require(May.PLAN)
    ask = asked_of(request)
    with context.reading() as uow:
        number = uow.published_number()
    data = read_planning_data(context)
    if data.previous is None or number is None:
        raise DataError("no-published-plan")
    now = context.now()
    ask = replace(
        ask, spreads=with_own(context, ask.spreads, data, planning_moment(data.mill.terms, request.as_of, now))
    )
    return RehearsalTask(number, data.previous, data, request, ask, now)


def with_own(context: Context, spreads: Spreads, data: PlanningData, at: datetime) -> Spreads:
    """With what the mill's records say of how much things vary."""
    return replace(spreads, own=own_spreads(context, data, at))


@contextmanager
def played_by(request: RehearsalRequest) -> Iterator[Players]:
    """Who plays. TrackerError where they are not there or lost."""
    if request.cluster:
        with cluster(request.cluster) as (ready, workers):
            yield Players(ready, workers)
        return
    jobs = request.jobs or os.cpu_count() or 1
    try:
        with players(jobs) as ready:
            yield Players(ready, jobs)
    except BrokenProcessPool as error:
        raise TrackerError("rehearsal-process-lost", jobs=jobs) from error


def last_rehearsal(context: Context) -> KeptRehearsal | None:
    """The newest of the plan in force; None where it was never rehearsed."""
    with context.reading() as uow:
        number = uow.published_number()
        return uow.last_rehearsal(number) if number is not None else None


def asked_of(request: RehearsalRequest) -> Ask:
    """What is to be rehearsed. UsageError for a policy or source that there is not, DataError for a rate or share out of range."""
    if not 1 <= request.runs <= MOST_RUNS:
        raise UsageError("rehearsal-runs", runs=request.runs, most=MOST_RUNS)
    for name in request.policies:
        if name not in POLICIES:
            raise UsageError("rehearsal-no-policy", name=name, names=tuple(POLICIES))
    for name, _ in request.spreads:
        if name not in SPREADS:
            raise UsageError("rehearsal-no-spread", name=name, names=tuple(SPREADS))
    sources = {source.value for source in Source}
    for name in request.off:
        if name not in sources:
            raise UsageError("rehearsal-no-source", name=name, names=tuple(source.value for source in Source))
    off = frozenset(Source(name) for name in request.off)
    changed: dict[str, Any] = {SPREADS[name]: value for name, value in request.spreads}
    spreads = Spreads(off=off, asked=frozenset(changed), **changed)
    policies = tuple(POLICIES[name] for name in dict.fromkeys(request.policies))
    return Ask(policies, spreads, request.runs, request.seed, request.worries, until_sure=request.until_sure)
