"""Hold a plan against the data, without the solver: every constraint and every cost worked out again.

Nothing is saved that this rejects. It shares no arithmetic with the planner: plain loops over bookings.
"""

from collections.abc import Callable, Iterator
from dataclasses import replace

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Plan
from tracker.errors import Message
from tracker.planning.checks import costs, coverage, names, order, parts, shared, times
from tracker.planning.checks.case import Case
from tracker.planning.problem import PlanningProblem

Check = Callable[[Case], Iterator[Message]]

CHECKS: tuple[Check, ...] = (
    coverage.one_answer_per_loom,
    coverage.only_looms_to_plan,
    times.scope_known,
    times.within_horizon,
    times.not_protected,
    times.not_ruled_out,
    times.starts_when_a_crew_works,
    times.lasts_as_long_as_its_work,
    times.starts_in_its_window,
    times.not_open_over_closed_days,
    times.watched_after_its_restart,
    shared.crews,
    shared.room_between,
    shared.hours_of_a_week,
    shared.heads_of_other_trades,
    shared.tools,
    shared.stopped_at_once,
    shared.stopped_per_section,
    parts.parts_are_there,
    order.pilots_first,
    order.pilots_attended,
    order.firm_bookings_stay,
    order.held_bookings_stay,
    order.moves_as_stated,
    names.named_as_stated,
    names.needs_as_stated,
    costs.costs_of_bookings,
    costs.costs_of_left_over,
    costs.no_booking_dearer_than_leaving,
    costs.sums_agree,
    costs.status_fits_gap,
)
"""In the order in which their findings are told."""


STAYS: tuple[Check, ...] = (
    times.not_protected,
    times.not_ruled_out,
    times.starts_when_a_crew_works,
    times.is_done_by_its_end,
    times.not_open_over_closed_days,
    times.watched_after_its_restart,
    order.pilots_first,
    shared.crews,
    shared.heads_of_other_trades,
    shared.tools,
    shared.stopped_at_once,
    shared.stopped_per_section,
    parts.parts_are_there,
)
"""What may keep a booking of an earlier plan from staying, whatever else is booked elsewhere."""


def verify(plan: Plan, problem: PlanningProblem) -> tuple[Message, ...]:
    """What is wrong with a plan; nothing where it is sound.

    Firm bookings and looms in work are given: what they alone overrun is not the plan's fault.
    """
    case = Case(plan, problem)
    return tuple(finding for check in CHECKS for finding in check(case))


def no_longer(previous: Plan, problem: PlanningProblem) -> dict[LoomKey | None, tuple[Message, ...]]:
    """What of an earlier plan the data do not allow any more, by loom; under None what several looms share.

    Only bookings that lie ahead and whose looms are still to be planned are looked at.
    """
    to_plan = set(problem.planned)
    ahead = tuple(b for b in previous.bookings if b.key in to_plan and b.start >= problem.as_of)
    case = Case(replace(previous, bookings=ahead), replace(problem, hold_firm=False))
    found: dict[LoomKey | None, tuple[Message, ...]] = {}
    for finding in (finding for check in STAYS for finding in check(case)):
        key = finding.params.get("loom")
        assert key is None or isinstance(key, LoomKey)
        found[key] = (*found.get(key, ()), finding)
    return found
