"""What falls is what the planner's solver-free check objects to: two separate readings of one rule."""

from dataclasses import replace
from datetime import date, timedelta

from hypothesis import given
from hypothesis import strategies as st
from kit_samples import AS_OF, TERMS, booking, mill, plan

from tracker.domain.mill import Part, Receipt
from tracker.domain.ordering import as_expected
from tracker.kits.falls import fallen
from tracker.planning.checks.case import Case
from tracker.planning.checks.parts import parts_are_there
from tracker.planning.problem import PlanningProblem

FIRST = date(2027, 1, 4)
days = st.integers(-3, 20).map(lambda n: FIRST + timedelta(days=n))
few = st.integers(0, 4).map(float)


@given(
    on_hand=few,
    safety=st.integers(0, 2).map(float),
    receipts=st.lists(st.tuples(days, few), max_size=4),
    needs=st.lists(st.tuples(st.integers(0, 20), st.integers(6, 12), st.integers(1, 3)), max_size=6),
)
def test_nothing_falls_exactly_where_the_check_finds_nothing(on_hand, safety, receipts, needs):
    looms = tuple(str(i) for i in range(len(needs)))
    lines = tuple(Receipt(str(i), "RAIL", quantity, due) for i, (due, quantity) in enumerate(receipts))
    stock_and_orders = replace(TERMS, plan_with_orders=False)
    hall = mill(Part("RAIL", on_hand, safety_stock=safety), receipts=lines, looms=looms, terms=stock_and_orders)
    made = plan(
        *(
            booking(loom, FIRST + timedelta(days=day), hour, RAIL=float(quantity))
            for loom, (day, hour, quantity) in zip(looms, needs, strict=True)
        )
    )
    objections = list(parts_are_there(Case(made, PlanningProblem(hall, {}, {}, AS_OF))))
    assert bool(objections) == bool(fallen(made, as_expected(hall, AS_OF)))
