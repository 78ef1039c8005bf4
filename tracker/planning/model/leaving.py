"""What it costs to leave a loom over, and to move a published booking (MODEL.md, sections 5 and 7)."""

from collections.abc import Iterable, Mapping
from datetime import timedelta

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking
from tracker.domain.windows import WindowKind
from tracker.domain.work import WorkContent, labour_cost, parts_cost
from tracker.planning.model.pools import trade_rates
from tracker.planning.problem import PlanningProblem

MOVES_SOON, MOVES_LATER = timedelta(days=14), 0.25
"""Moving a booking that starts so soon costs the move cost, any other this share of it."""
_UNKNOWN: Mapping[WindowKind, tuple[WorkContent, ...]] = {}


def left_costs(problem: PlanningProblem, looms: Iterable[LoomKey]) -> dict[LoomKey, float]:
    """What it costs to leave looms over: saving over the horizon, the penalty, the cheapest labour and parts, which are 0
    where the scope is not known, and the move, where the last published plan books a loom that could be booked."""
    mill, terms, rates = problem.mill, problem.mill.terms, trade_rates(problem.mill)
    known: dict[int, float] = {}
    booked = {b.key: b for b in problem.previous_bookings if b.key not in problem.put_off}

    def cheapest(kinds: Mapping[WindowKind, tuple[WorkContent, ...]]) -> float:
        if id(kinds) not in known:
            works = (content for contents in kinds.values() for content in contents)
            known[id(kinds)] = min((labour_cost(c, rates) + parts_cost(c, mill.parts) for c in works), default=0.0)
        return known[id(kinds)]

    return {
        key: mill.saving_per_day(key) * terms.horizon_days
        + terms.left_over_penalty
        + cheapest(problem.contents.get(key, _UNKNOWN))
        + (move_cost(problem, booked[key]) if key in booked else 0.0)
        for key in looms
    }


def move_cost(problem: PlanningProblem, old: Booking | None) -> float:
    """What moving a booking of the last published plan costs, currency."""
    near = old is not None and old.start <= problem.as_of + MOVES_SOON
    return problem.mill.terms.move_cost * (1.0 if near else MOVES_LATER)


def moved(problem: PlanningProblem, bookings: Iterable[Booking]) -> list[Booking]:
    """The published bookings that a plan moves: another start, other choices, or gone."""
    now = {booking.key: (booking.start, booking.choices) for booking in bookings}
    return [old for key, old in problem.to_move.items() if now.get(key) != (old.start, old.choices)]
