"""A mill of 84 looms whose shelves are empty: a plan for all of them and an order list that carries it."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

import pytest
from made_problems import problem_of

from tracker.domain.mill import Mill, Part, Receipt
from tracker.domain.needs import OrderLine
from tracker.domain.plan import Plan
from tracker.kits.falls import fallen
from tracker.kits.needs import needs
from tracker.kits.orders import order_lines
from tracker.planning.planner import plan
from tracker.planning.problem import PlanningProblem
from tracker.planning.verify import no_longer, verify

LEAD_TIMES = {"rail": 21.0, "other": 10.0}
WEEKS, CREWS = 12, 3


def empty(problem: PlanningProblem) -> PlanningProblem:
    mill = problem.mill
    parts = {
        name: replace(part, on_hand=0.0, safety_stock=0.0, lead_time_days=_lead(name))
        for name, part in mill.parts.items()
    }
    return replace(problem, mill=replace(mill, parts=parts, receipts=()))


def _lead(part: str) -> float:
    return LEAD_TIMES["rail" if "RAIL" in part.upper() else "other"]


@pytest.fixture(scope="module")
def asked() -> PlanningProblem:
    return empty(problem_of(84, WEEKS, CREWS))


@pytest.fixture(scope="module")
def made(asked: PlanningProblem) -> Plan:
    return plan(asked, gap=0.01)


@pytest.fixture(scope="module")
def lines(asked: PlanningProblem, made: Plan) -> tuple[OrderLine, ...]:
    return order_lines(needs(made, asked.mill, asked.as_of), asked.mill, asked.as_of)


def test_all_are_booked_by_orders_that_can_still_be_placed(asked: PlanningProblem, made: Plan, lines) -> None:
    assert verify(made, asked) == ()
    assert (len(made.bookings), made.left_over) == (84, ())
    assert lines
    assert not any(line.late for line in lines)


def test_ordered_as_the_list_says_and_received_as_promised_nothing_falls(asked, made, lines) -> None:
    assert fallen(made, _with(asked.mill, {}, lines)) == ()


def test_each_line_names_who_falls_without_it(asked: PlanningProblem, made: Plan, lines) -> None:
    for line in lines:
        others = [other for other in lines if other is not line]
        fall = {item.key for item in fallen(made, _with(asked.mill, {}, others)) if line.part in item.lacks}
        assert set(line.falls) == fall
        assert fall


@pytest.mark.parametrize("days", [8, pytest.param(29, marks=pytest.mark.long)])
def test_planned_again_later_nothing_falls(asked: PlanningProblem, made: Plan, lines, days: int) -> None:
    """What was to be ordered by then is ordered, what was due is received, what was to start is converted."""
    later = empty(problem_of(84, WEEKS, CREWS, days=days))
    today = later.as_of.astimezone(later.mill.terms.zone).date()
    done = [booking for booking in made.bookings if booking.start < later.as_of]
    used: dict[str, float] = {}
    for booking in done:
        for part, quantity in booking.parts.items():
            used[part] = used.get(part, 0.0) + quantity
    placed = [line for line in lines if line.order_by <= today]
    stock = {part: sum(line.quantity for line in placed if line.part == part and line.due < today) - used.get(part, 0.0)
             for part in later.mill.parts}  # fmt: skip
    problem = replace(
        later,
        mill=_with(later.mill, stock, [line for line in placed if line.due >= today]),
        previous=made,
        converted={booking.key: booking.end for booking in done},
        signed_off=frozenset(booking.key for booking in done),
    )
    assert no_longer(made, problem) == {}
    again = plan(problem, gap=0.01)
    assert verify(again, problem) == ()
    assert (len(again.bookings), again.left_over) == (84 - len(done), ())


def _with(mill: Mill, stock: Mapping[str, float], lines: Iterable[OrderLine]) -> Mill:
    """The mill with this on hand, and these lines placed and promised for the day on which they must be in."""
    parts: dict[str, Part] = {name: replace(part, on_hand=stock.get(name, 0.0)) for name, part in mill.parts.items()}
    receipts = tuple(Receipt(line.order, line.part, line.quantity, line.due) for line in lines)
    return replace(mill, parts=parts, receipts=receipts)


def test_by_stock_and_open_orders_alone_nobody_is_converted(asked: PlanningProblem) -> None:
    terms = replace(asked.mill.terms, plan_with_orders=False)
    starved = plan(replace(asked, mill=replace(asked.mill, terms=terms)), gap=0.01)
    assert len(starved.bookings) < 84
