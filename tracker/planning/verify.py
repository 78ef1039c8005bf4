"""Hold a plan against the data, without the solver: every constraint and every cost worked out again.

Nothing is saved that this rejects. It shares no arithmetic with the planner: plain loops over bookings.
"""

from collections.abc import Callable, Iterator

from tracker.domain.plan import Plan
from tracker.planning.checks import costs, coverage, order, parts, shared, times
from tracker.planning.checks.case import Case
from tracker.planning.problem import PlanningProblem

Check = Callable[[Case], Iterator[str]]

CHECKS: tuple[Check, ...] = (
    coverage.one_answer_per_loom,
    coverage.only_looms_to_plan,
    times.scope_known,
    times.within_horizon,
    times.not_protected,
    times.works_when_the_hall_works,
    times.starts_in_its_window,
    shared.crews,
    shared.heads_of_other_trades,
    shared.tools,
    shared.stopped_at_once,
    parts.parts_are_there,
    order.pilots_first,
    order.firm_bookings_stay,
    costs.costs_of_bookings,
    costs.costs_of_left_over,
    costs.sums_agree,
)
"""In the order in which their findings are told."""


def verify(plan: Plan, problem: PlanningProblem) -> tuple[str, ...]:
    """What is wrong with a plan, as plain sentences; nothing where it is sound.

    Firm bookings and looms in work are given: what they alone overrun is not the plan's fault.
    """
    case = Case(plan, problem)
    return tuple(finding for check in CHECKS for finding in check(case))
