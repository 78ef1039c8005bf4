"""The kinds of jobs: what each is started with, what of it goes to the process that does it, and what is kept of it."""

import os
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, fields, is_dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

from tracker.domain.jobs import JobKind
from tracker.domain.mill import LoomKey
from tracker.domain.plan import Placed, Plan, RuledOut
from tracker.errors import DataError, Message, message
from tracker.services.cluster import require_there, run_there
from tracker.services.context import Context
from tracker.services.jobs.work import Arguments, JobWork, Kept, Progress, Stop
from tracker.services.loading.readings import ReadingTask, Said, reading_task
from tracker.services.plans.plan import Firm, PlanRequest, PlanTask, Search, plan_task, save_in
from tracker.services.plans.rehearse import RehearsalRequest, RehearsalTask, rehearsal_task
from tracker.services.plans.scenario import changes_nothing, scenario_of
from tracker.services.plans.tune import TuningTask, tuning_task
from tracker.services.plans.tuning_says import tuning_verdict
from tracker.store import UnitOfWork

CLUSTER = "BEAMSLOT_CLUSTER"
"""Names the scheduler of a Dask cluster whose workers then do the work."""


def cluster_address() -> str | None:
    """Of the cluster that does the work; None where this machine does it. Raises where nobody listens there."""
    if address := os.environ.get(CLUSTER):
        require_there(address)
    return address or None


@dataclass(frozen=True, slots=True)
class PlanWork:
    task: PlanTask
    time_limit_s: float | None = None
    cluster: str | None = None
    """Address of the scheduler whose worker makes the plan; None = the job's own process makes it."""

    def run(self, progress: Progress, stop: Stop) -> Plan:
        if self.cluster:
            return run_there(self.cluster, self.plan, progress, stop)
        return self.plan(progress, stop)

    def plan(self, progress: Progress, stop: Stop) -> Plan:
        return self.task.run(Search(self.time_limit_s, progress, stop))

    def keep(self, uow: UnitOfWork, found: Plan, stopped: bool) -> Kept:
        task = self.task
        publish = task.request.publish and not stopped
        number = save_in(uow, found, publish, task.scenario, task.published, task.entries)
        how = "scenario" if task.scenario else "published" if publish else "made"
        moves = sum(booking.cost.moves for booking in found.bookings) if task.scenario else 0
        notes = list(changes_nothing(task.mill, task.data.mill))
        says = message(
            "job-planned", how=how, number=str(number), scenario=task.scenario, booked=len(found.bookings),
            left_over=len(found.left_over), cost=found.paid - moves, currency=found.currency, gap=found.gap * 100,
            stopped=stopped, notes=notes or None,
        )  # fmt: skip
        return Kept(says, {"plan": number})


@dataclass(frozen=True, slots=True)
class RehearsalWork:
    task: RehearsalTask

    def run(self, progress: Progress, stop: Stop) -> dict[str, Any]:
        return self.task.run(progress, stop)

    def keep(self, uow: UnitOfWork, found: dict[str, Any], stopped: bool) -> Kept:
        number = uow.save_rehearsal(self.task.number, found)
        says = message("job-rehearsed", plan=str(self.task.number), runs=found["runs"], stopped=found["stopped"])
        return Kept(says, {"rehearsal": number})


@dataclass(frozen=True, slots=True)
class TuningWork:
    task: TuningTask

    def run(self, progress: Progress, stop: Stop) -> dict[str, Any]:
        return self.task.run(progress, stop)

    def keep(self, uow: UnitOfWork, found: dict[str, Any], stopped: bool) -> Kept:
        number = uow.save_rehearsal(self.task.number, found)
        return Kept(tuning_verdict(found), {"rehearsal": number})


@dataclass(frozen=True, slots=True)
class ReadingWork:
    """Nothing of it is written but that it was done: what the files say is kept in the server's memory, for whoever loads them."""

    task: ReadingTask

    def run(self, progress: Progress, stop: Stop) -> Said:
        def tell(what: Message, part: float) -> None:
            if stop():
                raise DataError("reading-stopped")
            progress(what, part)

        return self.task.said(tell)

    def keep(self, uow: UnitOfWork, found: Said, stopped: bool) -> Kept:
        self.task.keep(found)
        return Kept(message("job-read", files=[file.name for file in self.task.files]))


def plan_arguments(request: PlanRequest, time_limit_s: float | None = None) -> dict[str, Any]:
    """The arguments of a job that plans what a request asks for; those of a scenario are its text."""
    asked = {f.name: getattr(request, f.name) for f in fields(request) if getattr(request, f.name) != f.default}
    given = asked | ({"time_limit_s": time_limit_s} if time_limit_s else {})
    return {name: _plain(value) for name, value in given.items()}


def _plain(value: Any) -> Any:
    """In JSON's types."""
    match value:
        case datetime():
            return value.isoformat()
        case LoomKey():
            return [value.hall, value.loom]
        case tuple() | list():
            return [_plain(one) for one in value]
        case _ if is_dataclass(value):
            return {f.name: _plain(getattr(value, f.name)) for f in fields(value)}
    return value


def _plan(context: Context, time_limit_s: float | None = None, **asked: Any) -> JobWork:
    return PlanWork(plan_task(context, _request(asked)), time_limit_s, cluster_address())


def _request(asked: Arguments) -> PlanRequest:
    """What `plan_arguments` gave."""
    given = _tuples(asked)
    if firm := given.pop("firm", None):
        given["firm"] = Firm(**_tuples(firm))
    if (spans := given.pop("ruled_out", None)) is not None:
        given["ruled_out"] = tuple(
            RuledOut(LoomKey(*s["key"]), _moment(s["from_at"]), _moment(s["until_at"])) for s in spans
        )
    if placed := given.pop("placed", None):
        given["placed"] = tuple(
            Placed(LoomKey(*one["key"]), _moment(one["start"]), tuple((c, t) for c, t in one["choices"]))
            for one in placed
        )
    if as_of := given.pop("as_of", None):
        given["as_of"] = _moment(as_of)
    return PlanRequest(**given)


def _scenario(context: Context, text: str, as_of: str | None = None, time_limit_s: float | None = None) -> JobWork:
    request = _request({"as_of": as_of})
    return PlanWork(plan_task(context, request, scenario_of(text)), time_limit_s, cluster_address())


def _rehearsal(context: Context, as_of: str | None = None, **asked: Any) -> JobWork:
    request = RehearsalRequest(as_of=_moment(as_of) if as_of else None, cluster=cluster_address(), **_tuples(asked))
    return RehearsalWork(rehearsal_task(context, request))


def _tuning(context: Context, tune_on: int, as_of: str | None = None, **asked: Any) -> JobWork:
    request = RehearsalRequest(as_of=_moment(as_of) if as_of else None, cluster=cluster_address(), **_tuples(asked))
    return TuningWork(tuning_task(context, request, tune_on))


def _reading(context: Context, files: Sequence[str], answers: Mapping[str, str] | None = None) -> JobWork:
    return ReadingWork(reading_task(context, [Path(file) for file in files], answers or {}))


def _moment(text: str) -> datetime:
    return datetime.fromisoformat(text)


def _tuples(given: Arguments) -> dict[str, Any]:
    """Lists as the requests have them."""
    return {name: tuple(value) if isinstance(value, list | tuple) else value for name, value in given.items()}


KINDS: Mapping[JobKind, Callable[..., JobWork]] = {
    JobKind.PLAN: _plan,
    JobKind.SCENARIO: _scenario,
    JobKind.REHEARSAL: _rehearsal,
    JobKind.TUNING: _tuning,
    JobKind.READING: _reading,
}
"""Each reads its snapshot of the mill: context and arguments in, work out."""
