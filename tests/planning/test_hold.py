"""Bookings that are held keep start and choices, whatever that costs; what does not let one stay is named.

Two looms, one crew, as in `test_replanning`: both out on Tuesday 12 January, booked at 08:00 and 10:00, more than 72 hours
ahead of Monday 4 January and so not firm.
"""

from dataclasses import replace
from datetime import date
from typing import Any

import pytest
from refusals import refused
from small_halls import TriedOut, days_later, seeds, small_problem
from two_looms import CONTENTS, ELECTRICIAN, FITTERS, LOOMS, MONDAY, ONE, TWO, at, problem, window
from worded import verify

from tracker.domain.mill import Absence, LoomKey, Part
from tracker.domain.plan import Keeping, Plan, PlanStatus
from tracker.domain.windows import WindowKind
from tracker.errors import PlanRefused
from tracker.planning.planner import plan
from tracker.planning.problem import InWork, PlanningProblem
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
"""The loom booked for 08:00 is out at 12:00 now: the crew would cut four hours of warp. It moves to 12:00, and the other
comes at 08:00."""


def test_what_is_published_is_what_the_others_start_from() -> None:
    assert starts(PUBLISHED) == {FIRST: at(8, 8), SECOND: at(8, 10)}
    free = made(asked(LATER, previous=PUBLISHED, move_cost=0.0))
    assert starts(free) == {SECOND: at(8, 8), FIRST: at(8, 12)}


def test_a_held_booking_stays_though_another_date_costs_less() -> None:
    held = made(asked(LATER, previous=PUBLISHED, move_cost=0.0, held=frozenset({SECOND})))
    assert starts(held) == {SECOND: at(8, 10), FIRST: at(8, 12)}
    both = made(asked(LATER, previous=PUBLISHED, move_cost=0.0, held=frozenset(LOOMS)))
    assert starts(both) == starts(PUBLISHED)
    assert both.asked.held == frozenset(LOOMS)
    assert both.status is PlanStatus.OPTIMAL


def test_holding_costs_what_the_sums_say() -> None:
    # free (moves cost nothing): loom out at 08:00 starts then, the other at 12:00, both without waiting. Held at 10:00 the
    # one waits two hours more: 2 × (5 contribution + 1 saving) = 12
    free = made(asked(LATER, previous=PUBLISHED, move_cost=0.0))
    held = made(asked(LATER, previous=PUBLISHED, move_cost=0.0, held=frozenset({SECOND})))
    assert held.objective - free.objective == pytest.approx(12)
    assert held.bound == pytest.approx(held.objective, abs=0.01)


def test_a_held_booking_may_cost_more_than_leaving_its_loom_over() -> None:
    # leaving it over costs nothing but labour and parts (260) by these terms; the booking waits in vain for half a warp
    cheap: dict[str, Any] = {
        "left_over_penalty": 0.0, "move_cost": 0.0,
        "looms": {key: replace(loom, saving_per_day=0.0) for key, loom in LOOMS.items()},
    }  # fmt: skip
    before = made(asked(**cheap))
    assert starts(before) == {}, "10 of lost production more than leaving it over"
    told = asked(LATER, previous=PUBLISHED, held=frozenset({FIRST}), **cheap)
    found = made(told)
    assert starts(found) == {FIRST: at(8, 8)}
    assert found.bookings[0].cost.total > 260


def test_the_check_sees_a_held_booking_that_moved_or_went() -> None:
    told = asked(LATER, previous=PUBLISHED, move_cost=0.0)
    free = made(told)
    moved = replace(free, keeping=Keeping(2, 0.0))
    found = verify(moved, replace(told, held=frozenset({SECOND})))
    assert found == (
        f"loom {SECOND}: the booking of Tue 12 Jan 2027 10:00, which was to be held, was moved to Tue 12 Jan 2027 08:00",
    )
    gone = replace(free, bookings=tuple(b for b in free.bookings if b.key != SECOND))
    assert any(
        "which was to be held, is gone" in line for line in verify(gone, replace(told, held=frozenset({SECOND})))
    )


OTHER = CONTENTS[WindowKind.REPEAT][1:]
ILL = (Absence("Fitters 1", date(2027, 1, 12), date(2027, 1, 12)),)


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        ({"absences": ILL}, "no crew of the trade 'fitter' works in Hall 1 then"),
        (
            {"looms": LOOMS | {FIRST: replace(LOOMS[FIRST], protected_until=date(2027, 1, 12))}},
            "the loom is protected until Tue 12 Jan 2027 included",
        ),
        ({"windows": {key: (window(key, at(20, 8)),) for key in LOOMS}},
         "its beam-out is now expected on Sun 24 Jan 2027 08:00, too far from that start"),
        ({"windows": {}}, "no beam-out, no standing span and no warp to stop is known for it before the horizon"),
        ({"parts": {"RAIL": Part("RAIL", 0.0, price=100.0)}, "receipts": ()},
         "it needs 1 of part RAIL, 0 can be there"),
        ({"crews": (FITTERS, replace(ELECTRICIAN, to_on=date(2027, 1, 8)))}, "too little electrician from"),
        ({"contents": {key: {WindowKind.REPEAT: OTHER} for key in LOOMS}}, "its choices any more"),
        ({"contents": {}, "unplannable": {}}, "its work is not known any more"),
        ({"as_of": at(8, 9)}, "that moment is past"),
        ({"in_work": (InWork(FIRST, 3),)}, "it is done, in work, put off or left out"),
        ({"converted": {FIRST: MONDAY}}, "it is done, in work, put off or left out"),
        ({"previous": None}, "the published plan does not book it"),
    ],
)  # fmt: skip
def test_what_cannot_stay_is_refused_with_its_limit(changes: dict[str, Any], why: str) -> None:
    # the choices published are the first of the menu unless another is cheaper: both cost the same here
    told = {"previous": PUBLISHED, "held": frozenset({FIRST})} | changes
    with refused(PlanRefused, f"loom {FIRST.loom} .*cannot stay.*{why}".replace("(", "[(]").replace(")", "[)]")):
        plan(asked(told.pop("windows", NEXT_WEEK), **told))


def test_several_that_cannot_stay_are_all_named_by_their_start() -> None:
    with pytest.raises(PlanRefused) as caught:
        plan(asked(previous=PUBLISHED, held=frozenset(LOOMS), absences=ILL))
    assert [ENGLISH.line(each).split(":")[0] for each in caught.value.findings] == [
        f"loom {FIRST} cannot stay on Tue 12 Jan 2027 08",
        f"loom {SECOND} cannot stay on Tue 12 Jan 2027 10",
    ]
    assert "and 1 more, named below" in ENGLISH.line(caught.value)


def test_two_that_cannot_stay_together_leave_the_later_one_out() -> None:
    # a booking by hand puts both at 08:00, with one crew: the second of them lacks it
    together = replace(PUBLISHED, bookings=tuple(replace(b, start=at(8, 8), end=at(8, 10)) for b in PUBLISHED.bookings))
    with pytest.raises(PlanRefused) as caught:
        plan(asked(previous=together, held=frozenset(LOOMS)))
    (only,) = caught.value.findings
    assert ENGLISH.line(only).startswith(f"loom {TWO} cannot stay on Tue 12 Jan 2027 08:00: too little fitter")


# ---- pilots


LONG: dict[str, Any] = {"soak_days": 3, "horizon_days": 42}
APART = {
    ONE: (window(ONE, at(7, 8)), window(ONE, at(14, 8), 2)),
    TWO: (window(TWO, at(11, 8)), window(TWO, at(21, 8), 2)),
}


def test_a_pilot_is_found_in_time_for_what_is_held() -> None:
    # loom 1 is the pilot on Monday 11 January, loom 2 follows on Friday. Loom 1 is given up to the warp after: free, loom 2
    # becomes the pilot on Friday; with it held as no pilot was asked for, it stays and is the pilot
    before = made(asked(APART, **LONG))
    assert starts(before) == {ONE: at(7, 8), TWO: at(11, 8)}
    assert [b.key for b in before.bookings if b.pilot] == [ONE]
    held = made(asked(APART, previous=before, held=frozenset({TWO}), **LONG))
    assert starts(held) == starts(before)
    assert [b.key for b in held.bookings if b.pilot] == [ONE]


def test_held_is_the_pilot_where_no_other_can_be_in_time() -> None:
    before = made(asked(APART, **LONG))
    gone = {ONE: APART[ONE][1:], TWO: APART[TWO]}
    found = made(asked(gone, previous=before, held=frozenset({TWO}), **LONG))
    assert starts(found)[TWO] == at(11, 8)
    assert [b.key for b in found.bookings if b.pilot] == [TWO]
    # the mill names loom 1, which cannot have run three days before Friday 15 January 08:00
    with refused(PlanRefused, "the pilot of AJ will have run 3 days only on Thu 21 Jan 2027 10:00"):
        plan(asked(gone, previous=before, held=frozenset({TWO}), **LONG, pilots={"AJ": ONE.loom}))


# ---- against every plan there is


@pytest.mark.parametrize("seed", seeds([15], [5, 12, 16, 21, 27, 29, 30, 34, 37, 38]))
def test_no_plan_with_these_bookings_held_is_cheaper(seed: int) -> None:
    first = small_problem(seed)
    before = plan(first, gap=0.0)
    if not before.bookings:
        pytest.skip("this hall books nothing")
    later = days_later(first, before, seed)
    for key in (b.key for b in before.bookings):
        told = replace(later, held=frozenset({key}))
        best = TriedOut(told).best_or_none()
        if best is None:
            with pytest.raises(PlanRefused):
                plan(told, gap=0.0)
            continue
        found = plan(told, gap=0.0)
        assert verify(found, told) == ()
        assert found.objective == pytest.approx(best, abs=0.01)
        assert found.bound == pytest.approx(found.objective, abs=0.02)
