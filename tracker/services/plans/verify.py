"""Hold the published plan against the data, without the solver."""

from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any

from tracker.domain.clock import planning_moment
from tracker.domain.mill import LoomKey
from tracker.domain.plan import Plan
from tracker.domain.progress import StageChange
from tracker.errors import DataError, Message, message
from tracker.mill_state.planning import PlanningData, prepare
from tracker.planning.verify import CHECKS, no_longer
from tracker.planning.verify import verify as check
from tracker.services.context import Context
from tracker.services.plans.planning_data import read_planning_data
from tracker.store.history import touched
from tracker.words import ENGLISH


@dataclass(frozen=True, slots=True)
class VerifyReport:
    plan: Plan
    violations: tuple[Message, ...]
    """What does not hold; nothing where the plan is sound."""
    touched: tuple[Message, ...] = ()
    """What was done to history behind the program's back, likewise."""

    @property
    def sound(self) -> bool:
        return not self.violations and not self.touched

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        return {
            "sound": self.sound,
            "violations": [ENGLISH.line(each) for each in self.violations],
            "history_touched": [ENGLISH.say(each) for each in self.touched],
            "bookings": len(self.plan.bookings),
            "left_over": len(self.plan.left_over),
            "objective": self.plan.objective,
            "currency": self.plan.currency,
        }

    def messages(self) -> list[Message]:
        return [*self._of_the_plan(), *self._of_history()]

    def _of_the_plan(self) -> list[Message]:
        plan = self.plan
        if self.violations:
            return [message("plan-fails", many=len(self.violations)), *self.violations, message("plan-again")]
        return [message("plan-holds", bookings=len(plan.bookings), left_over=len(plan.left_over), checks=len(CHECKS),
                        cost=plan.objective, currency=plan.currency)]  # fmt: skip

    def _of_history(self) -> list[Message]:
        if not self.touched:
            return []
        return [message("history-touched", many=len(self.touched)), *self.touched, message("history-restore")]


def verify(context: Context) -> VerifyReport:
    """Recompute the published plan as of its own moment from what the database holds now, and hold history against its
    seals.

    Stages and conversions recorded since are progress, not faults, and left aside; changed data (a receipt put off, a crew away, a
    loom protected) show. Raises DataError where no plan is published.
    """
    with context.reading() as uow:
        found = tuple(touched(uow.session.connection()))
    data = read_planning_data(context)
    plan = data.previous
    if plan is None:
        raise (DataError("no-published-plan-touched", touched=found) if found else DataError("no-published-plan"))
    prepared = prepare(as_it_was(context, data, plan), plan.as_of)
    with context.reading() as uow:
        again = uow.plan(plan.asked.again) if plan.asked.again else None
    return VerifyReport(plan, check(plan, prepared.asked(plan.asked, again)), found)


def faults(context: Context, as_of: datetime | None = None) -> tuple[Message, ...]:
    """What keeps bookings of the published plan that lie ahead from staying, as the data stand; nothing where no plan is
    published. That costs have moved on with the forecast is no fault. Data that cannot be planned at all are one."""
    data = read_planning_data(context)
    if data.previous is None:
        return ()
    try:
        problem = prepare(data, planning_moment(data.mill.terms, as_of, context.now())).problem
    except DataError as fault:
        return (fault.message,)
    return tuple(finding for findings in no_longer(data.previous, problem).values() for finding in findings)


def as_it_was(context: Context, data: PlanningData, plan: Plan) -> PlanningData:
    """The data as the published plan was made from: the plan before it, and the stages and conversions up to its moment;
    the mill is as it is now."""
    with context.reading() as uow:
        before, history = uow.published_plan(before_it=1), uow.stage_history()
    then: dict[LoomKey, StageChange] = {change.key: change for change in history if change.at <= plan.as_of}
    learnt = tuple(done for done in data.conversions if (done.ended_at or done.started_at) <= plan.as_of)
    return replace(data, previous=None if plan.asked.afresh else before, stages=then, conversions=learnt)
