"""Find by rehearsal which terms let a plan survive, and make them the mill's once the planner accepts them."""

from collections.abc import Callable
from dataclasses import asdict, dataclass, replace
from datetime import datetime
from typing import Any

from tracker.domain.plan import Plan
from tracker.domain.rehearsal import KeptRehearsal
from tracker.domain.rows import ReadResult, SourceTable, TypedRow
from tracker.domain.tables import TERM_COLUMNS
from tracker.domain.terms import Care
from tracker.errors import DataError, Message, UsageError, message
from tracker.intake.rows.compare import compare
from tracker.planning.planner import plan as solve
from tracker.rehearsal.rehearsing import Progress
from tracker.rehearsal.tuning import AskTuning, tune
from tracker.services.context import Context
from tracker.services.people.permissions import May
from tracker.services.plans.plan import PlanRequest, PlanTask, check, plan_task, save_in
from tracker.services.plans.rehearse import RehearsalRequest, asked_of, played_by, with_own
from tracker.services.plans.tuning_record import candidate_of, tuning_record
from tracker.services.plans.tuning_says import tuning_said
from tracker.store import UnitOfWork

MOST_WORLDS = 10_000
TUNE_ON = AskTuning().tune_on
"""Worlds in which each candidate is played, where nobody says."""
A_CENT = 0.01
SOURCE = SourceTable("", "", "terms", 0)


@dataclass(frozen=True, slots=True)
class TuningReport:
    number: int
    result: dict[str, Any]
    lines: tuple[Message, ...]

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        return {"number": self.number} | self.result


@dataclass(frozen=True, slots=True)
class TuningTask:
    """All that a tuning is made from, as the mill was at one moment: pure, so that another process can do it."""

    number: int
    """Of the plan in force."""
    plans: PlanTask
    request: RehearsalRequest
    ask: AskTuning

    def run(self, progress: Progress | None = None, stop: Callable[[], bool] | None = None) -> dict[str, Any]:
        """What came of it, as it is kept. DataError where it was stopped before anything was compared."""
        problem = self.plans.problem
        with played_by(self.request) as playing:
            found = tune(problem, self.ask, playing, progress, stop)
        if found.best is None:
            raise DataError("tuning-stopped-early")
        return tuning_record(found, self.ask, self.plans, self.number)


def tune_plan(
    context: Context,
    request: RehearsalRequest,
    tune_on: int = TUNE_ON,
    progress: Progress | None = None,
    stop: Callable[[], bool] | None = None,
) -> TuningReport:
    """Look for terms that let the plan in force survive, and keep what was found with it; terms and plans stay as they are.
    `request` says in how many other worlds the best is judged, what varies, and who plays.

    UsageError for a source that there is not or too many worlds, DataError where there is no published plan or where it was stopped
    before anything was compared; nothing is written then.
    """
    task = tuning_task(context, request, tune_on)
    result = task.run(progress, stop)
    with context.unit_of_work(May.PLAN) as uow:
        number = uow.save_rehearsal(task.number, result)
        uow.commit()
    return TuningReport(number, result, tuning_said(result))


def tuning_task(context: Context, request: RehearsalRequest, tune_on: int = TUNE_ON) -> TuningTask:
    """What is to be tuned, read from the database. Raises as `tune_plan` for what is known at once."""
    context.require(May.PLAN)
    if not 2 <= tune_on <= MOST_WORLDS or not 2 <= request.runs <= MOST_WORLDS:
        raise UsageError("tuning-worlds", least=2, most=MOST_WORLDS)
    spreads = asked_of(request).spreads
    with context.reading() as uow:
        number = uow.published_number()
    if number is None:
        raise DataError("no-published-plan")
    plans = _plans(context, request.as_of)
    ask = AskTuning(with_own(context, spreads, plans.data, plans.as_of), request.seed, tune_on, request.runs)
    return TuningTask(number, plans, request, ask)


def _plans(context: Context, as_of: datetime | None) -> PlanTask:
    """What plans are made from: as if nothing had been published where the programme has not begun, since then nothing of the plan
    in force binds anybody; else as a replan."""
    task = plan_task(context, PlanRequest(as_of=as_of))
    begun = bool(task.data.stages) or (task.published and any(b.start <= task.as_of for b in task.published.bookings))
    if begun:
        return task
    ruled_out = task.published.asked.ruled_out if task.published else ()
    return plan_task(context, PlanRequest(as_of=as_of, afresh=True, ruled_out=ruled_out))


def last_tuning(context: Context) -> KeptRehearsal | None:
    """The newest of the plan in force; None where it was never tuned."""
    with context.reading() as uow:
        number = uow.published_number()
        return uow.last_tuning(number) if number is not None else None


@dataclass(frozen=True, slots=True)
class Accepted:
    care: Care
    plan: Plan
    number: int
    """Of the plan made by these terms; it is not published."""
    result: dict[str, Any]

    @property
    def message(self) -> Message:
        return message("tuning-accepted", plan=str(self.number), looms=len(self.plan.bookings), cost=self.plan.paid,
                       currency=self.plan.currency)  # fmt: skip

    def record(self) -> dict[str, Any]:
        return {"plan": self.number, "terms": asdict(self.care)}


def accept_tuning(context: Context) -> Accepted:
    """Make the terms that the newest tuning of the plan in force found the mill's, and the plan by them, which is not published.

    DataError where it was never tuned, the best that was found helps nothing for sure, or the same plan is not to be had any more
    as the data stand, since then nothing is known of the one that would be made; PlanRefused as `plan`; nothing is
    written then.
    """
    context.require(May.PLAN)
    kept = last_tuning(context)
    if kept is None:
        raise DataError("not-tuned")
    if not kept.result["helps"]:
        raise DataError("tuning-helps-nothing")
    candidate = candidate_of(kept.result)
    task = _plans(context, datetime.fromisoformat(kept.result["as_of"]))
    mill = task.data.mill
    with_care = replace(mill, terms=mill.terms.with_care(candidate.care))
    task = replace(task, data=task.data.with_mill(with_care))
    problem = task.problem
    made = solve(problem, seed=candidate.variant)
    check(made, problem)
    if abs(made.paid - kept.result["best"]["paper"]) > A_CENT:
        raise DataError("tuning-overtaken", then=kept.result["best"]["paper"], now=made.paid, currency=made.currency)
    afresh = task.request.afresh
    made = replace(
        made, asked=replace(made.asked, afresh=afresh), reasons=(*tuning_said(kept.result)[1:2], *made.reasons)
    )
    with context.unit_of_work(May.PLAN) as uow:
        number = save_in(uow, made, False, None, task.published, None)
        uow.commit()
    with context.unit_of_work(May.PLAN) as uow:  # by itself, so that it can be undone: plans cannot
        _write_terms(uow, mill.terms.care, candidate.care)
        uow.commit()
    return Accepted(candidate.care, made, number, dict(kept.result))


def _write_terms(uow: UnitOfWork, before: Care, care: Care) -> None:
    """What is other than before, as a recorded change of terms."""
    titles = {column.field: column.title for column in TERM_COLUMNS}
    changed = {
        name: value for name, value in asdict(care).items() if value is not None and value != getattr(before, name)
    }
    rows = tuple(TypedRow("terms", {"term": titles[name], "value": value}) for name, value in changed.items())
    writer = uow.load_writer()
    writer.begin([], ())
    writer.write(compare(ReadResult((SOURCE,), rows, ()), {"terms": uow.rows("terms")}).changes, {})
