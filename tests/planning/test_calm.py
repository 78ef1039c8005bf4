"""At most so many moves more than the data need: what is kept, what that costs, and that no other plan does better.

Two looms, one crew, as in `test_hold`: both out on Tuesday 12 January, booked at 08:00 and 10:00; then the one booked for
08:00 is out at 12:00.
"""

from dataclasses import replace
from datetime import date, time
from typing import Any

import pytest
from small_halls import TriedOut, days_later, seeds, small_problem
from two_looms import ELECTRICIAN, FITTERS, LOOMS, ONE, TWO, at, problem, window
from worded import verify

from tracker.domain.mill import Absence, LoomKey, Part
from tracker.domain.plan import Plan, PlanStatus
from tracker.errors import Message
from tracker.planning.planner import plan
from tracker.planning.problem import PlanningProblem
from tracker.services.plans.kept import keeping_told
from tracker.words import ENGLISH

PARTS = {"RAIL": Part("RAIL", 2.0, price=100.0)}
NEXT_WEEK = {key: (window(key, at(8, 8)),) for key in (ONE, TWO)}


def asked(windows=NEXT_WEEK, **changes: Any) -> PlanningProblem:
    return problem(windows, **{"parts": PARTS, "soak_days": 0, **changes})


def made(asked: PlanningProblem) -> Plan:
    found = plan(asked, gap=0.0)
    assert verify(found, asked) == ()
    return found


def starts(found: Plan) -> dict[LoomKey, Any]:
    return {booking.key: booking.start for booking in found.bookings}


PUBLISHED = made(asked())
FIRST, SECOND = (booking.key for booking in PUBLISHED.bookings)
LATER = NEXT_WEEK | {FIRST: (window(FIRST, at(8, 12)),)}


def test_progress_tells_what_leaving_bookings_would_cost_and_which_plan_is_looked_for() -> None:
    # one move is allowed and the first takes it; then the plan free to move any is looked for beside it
    told: list[Message] = []
    plan(asked(LATER, previous=PUBLISHED, move_cost=0.0, calm=1), gap=0.0, progress=lambda what, _: told.append(what))
    steps = [(what.params["step"], what.params["beside"]) for what in told]
    first = steps.index(("bound", True))
    assert {("stay", False), ("price", False)} <= set(steps[:first]) and all(beside for _, beside in steps[first:])
    lines = [ENGLISH.say(what) for what in told]
    assert lines[first].startswith("the plan free to move any, how cheap a plan could be: ")
    assert any(line.startswith("what leaving each moved one would cost: ") for line in lines[:first])


@pytest.mark.parametrize(
    ("calm", "moves", "now"),
    [
        # both can stay: 08:00 is four hours before the beam-out, the earliest that it may be
        (0, 0, {FIRST: at(8, 8), SECOND: at(8, 10)}),
        # the dearer of the two: the crew would wait 2 h at 60 and cut 2 h of warp; the other waits 2 h at 6
        (1, 1, {FIRST: at(8, 12), SECOND: at(8, 10)}),
        (2, 2, {FIRST: at(8, 12), SECOND: at(8, 8)}),
        (9, 2, {FIRST: at(8, 12), SECOND: at(8, 8)}),
    ],
)
def test_so_many_moves_and_no_more(calm: int, moves: int, now: dict[LoomKey, Any]) -> None:
    found = made(asked(LATER, previous=PUBLISHED, move_cost=0.0, calm=calm))
    assert starts(found) == now
    assert found.keeping is not None
    assert (found.keeping.moves, found.keeping.fewest, found.keeping.most) == (moves, 0, calm)
    assert found.status is PlanStatus.OPTIMAL
    assert found.bound == pytest.approx(found.objective, abs=0.01)


def test_what_calmness_costs_stands_beside_the_free_plan() -> None:
    # one move less: loom SECOND waits two hours at 5 contribution and 1 saving
    found = made(asked(LATER, previous=PUBLISHED, move_cost=1.0, calm=1))
    assert found.keeping is not None and found.keeping.free is not None
    free = found.keeping.free
    assert (free.moves, free.moves_cost, found.keeping.moves_cost) == (2, 2.0, 1.0)
    dearer = (found.objective - found.keeping.moves_cost) - (free.objective - free.moves_cost)
    assert dearer == pytest.approx(12)


def test_what_the_data_move_is_not_counted_against_it() -> None:
    # the fitters are away on that Tuesday: both must move, and with no move more than that both may
    away = (Absence("Fitters 1", date(2027, 1, 12), date(2027, 1, 12)),)
    found = made(asked(previous=PUBLISHED, absences=away, calm=0))
    assert found.keeping is not None
    assert (found.keeping.moves, found.keeping.fewest, found.keeping.most) == (2, 2, 2)
    assert sorted(starts(found).values()) == [at(9, 6), at(9, 8)]


def test_a_loom_left_over_for_few_moves_is_named() -> None:
    # the crews now go at 12:00 and are away from Wednesday on; FIRST is out at 14:00, so it may start from 10:00 on, and must, to
    # end by 12:00: where SECOND is. Few moves leave it over; the plan that is free to gives SECOND 08:00 and FIRST 10:00
    short = {"crews": (replace(FITTERS, shift_end=time(12)), replace(ELECTRICIAN, shift_end=time(12)))}
    away = tuple(Absence(crew, date(2027, 1, 13), date(2027, 2, 10)) for crew in ("Fitters 1", "Electrician"))
    given: dict[str, Any] = {**short, "absences": away, "previous": PUBLISHED, "horizon_days": 28}
    late = NEXT_WEEK | {FIRST: (window(FIRST, at(8, 14)),)}
    found = made(asked(late, calm=0, **given))
    assert starts(found) == {SECOND: at(8, 10)}
    assert starts(made(asked(late, calm=1, **given))) == {SECOND: at(8, 8), FIRST: at(8, 10)}
    assert found.keeping is not None and found.keeping.free is not None
    assert found.keeping.free.books == (FIRST,)
    assert (
        "booked by the plan that is free to move any: " + str(FIRST) + "."
        in [ENGLISH.line(m) for m in keeping_told(found)][-1]
    )


def test_where_not_both_can_stay_the_dearer_one_does() -> None:
    # one rail for two published bookings: one goes, whichever; leaving TWO over costs more by its saving
    few: dict[str, Any] = {
        "parts": {"RAIL": Part("RAIL", 1.0, price=100.0)}, "receipts": (), "lead_time_none_given_days": 0,
        "looms": {ONE: LOOMS[ONE], TWO: replace(LOOMS[TWO], saving_per_day=30.0)},
    }  # fmt: skip
    found = made(asked(previous=PUBLISHED, calm=0, **few))
    assert found.keeping is not None
    assert (found.keeping.moves, found.keeping.fewest) == (1, 1)
    assert list(starts(found)) == [TWO]


def test_the_check_sees_more_moves_than_asked_for_and_a_false_count() -> None:
    told = asked(LATER, previous=PUBLISHED, move_cost=0.0, calm=1)
    found, free = made(told), made(replace(told, calm=None))
    assert verify(replace(free, keeping=None), told) == (
        "the plan was to keep bookings and does not say how many it moves",
    )
    assert verify(replace(free, keeping=replace(found.keeping, moves=2)), told) == (
        "2 bookings are moved, where at most 1 were to be (1 more than needed)",
    )
    assert verify(replace(found, keeping=replace(found.keeping, moves=3)), told) == (
        "1 booking is moved, the plan states 3 and that no plan moves fewer than 0",
    )


def test_the_pilot_that_moves_fewest_is_chosen() -> None:
    # loom 1 is the pilot on Monday 11 January, loom 2 follows on Friday, three days of soak. Loom 1's warp now runs out a day
    # later: on Tuesday it would have run until Friday 10:00, two hours too short for loom 2. Free, loom 1 stays the pilot and
    # loom 2 waits two hours; calm, loom 2 is the pilot, and only loom 1, which finds no date after it, is given up
    soak: dict[str, Any] = {"soak_days": 3, "horizon_days": 42}
    windows = {ONE: (window(ONE, at(7, 8)),), TWO: (window(TWO, at(11, 8)),)}
    before = made(asked(windows, **soak))
    assert starts(before) == {ONE: at(7, 8), TWO: at(11, 8)}
    late = windows | {ONE: (window(ONE, at(8, 8)),)}
    free = made(asked(late, previous=before, **soak))
    assert starts(free) == {ONE: at(8, 8), TWO: at(11, 10)}
    calm = made(asked(late, previous=before, calm=0, **soak))
    assert calm.keeping is not None and calm.keeping.moves == 1
    assert starts(calm)[TWO] == at(11, 8)


@pytest.mark.parametrize("seed", seeds([5, 15], [21, 27, 30, 2, 12, 16, 29, 34, 37, 38]))
def test_no_plan_with_so_few_moves_is_cheaper(seed: int) -> None:
    first = small_problem(seed)
    before = plan(first, gap=0.0)
    later = days_later(first, before, seed)
    tried = TriedOut(later)
    fewest = tried.fewest_moves()
    for calm in (0, 1):
        told = replace(later, calm=calm)
        found = plan(told, gap=0.0)
        assert verify(found, told) == ()
        assert found.keeping is not None and found.keeping.fewest == fewest
        assert found.objective == pytest.approx(tried.best(fewest + calm), abs=0.01)
        assert found.bound == pytest.approx(found.objective, abs=0.02)
