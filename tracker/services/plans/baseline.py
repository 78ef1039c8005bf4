"""What planning is worth: the same data planned by taking each beam-out as it comes."""

from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any

from tracker.domain.clock import planning_moment
from tracker.domain.plan import Plan
from tracker.domain.terms import NO_CARE
from tracker.errors import Message, message
from tracker.mill_state.planning import PlanningData, prepare
from tracker.planning.baseline.walk import WAITING_LIMIT
from tracker.planning.baseline.walk import baseline as walk
from tracker.planning.problem import PlanningProblem
from tracker.services.context import Context
from tracker.services.plans.planning_data import read_planning_data
from tracker.services.plans.verify import as_it_was


@dataclass(frozen=True, slots=True)
class BaselineReport:
    baseline: Plan
    published: Plan | None
    """The published plan, where it was made for the same moment; else there is nothing to compare."""

    @property
    def worth(self) -> float | None:
        """What the published plan saves against the baseline, currency; None without one of the same moment."""
        return None if self.published is None else self.baseline.paid - self.published.paid

    @property
    def waiting_limit_h(self) -> float:
        """The limit on waiting that came out cheapest, clock hours."""
        return float(str(self.baseline.terms[WAITING_LIMIT]))

    def record(self) -> dict[str, Any]:
        plan = self.baseline
        return {
            "objective": plan.objective,
            "currency": plan.currency,
            "bookings": len(plan.bookings),
            "left_over": len(plan.left_over),
            "waiting_limit_h": self.waiting_limit_h,
            "published_objective": self.published.paid if self.published else None,
            "worth": self.worth,
        }

    def messages(self) -> list[Message]:
        plan = self.baseline
        found = [message("baseline-found", limit_h=self.waiting_limit_h, bookings=len(plan.bookings),
                         left_over=len(plan.left_over), cost=plan.objective, currency=plan.currency)]  # fmt: skip
        if self.worth is not None and self.published:
            published = self.published.paid
            found.append(message("baseline-worth", published=published, worth=self.worth, currency=plan.currency))
        return found


def baseline(context: Context, as_of: datetime | None = None) -> BaselineReport:
    """Plan without planning, as of a moment (default: now, or the start of a programme that lies ahead); nothing is
    saved. Where the published plan is of the same moment, both start from the plan before it, so that neither pays for
    moves that the other does not. Raises DataError where the data cannot carry a plan."""
    data = read_planning_data(context)
    at, published = planning_moment(data.mill.terms, as_of, context.now()), data.previous
    if published is None or published.as_of != at:
        return BaselineReport(walk(_without_care(data, at)), None)
    return BaselineReport(walk(_without_care(as_it_was(context, data, published), at)), published)


def _without_care(data: PlanningData, at: datetime) -> PlanningProblem:
    """The problem of a mill that asks nothing of its plans so that they survive."""
    terms = data.mill.terms.with_care(NO_CARE)
    return prepare(data.with_mill(replace(data.mill, terms=terms)), at).problem
