"""The ordinary change between the two parts of a conversion, on the mill of two looms: an hour of the fitters with the warp
out, an hour with electrician and hoist once the new one is in; the change takes two hours, a stopped hour loses 5. Fitters
and electrician work from 6 to 14 o'clock. Waiting is dear (400 an hour), so that no start lies before its beam-out.
"""

from dataclasses import replace
from datetime import date, time
from typing import Any

import pytest
from two_looms import CONTENTS, ELECTRICIAN, FITTERS, LOOMS, ONE, TWO, at, problem, still, window
from worded import verify

from tracker.domain.mill import Closure, Part, Running
from tracker.domain.plan import Booking, CrewTurn, Need, Plan
from tracker.domain.windows import Window, WindowKind
from tracker.domain.work import WorkContent
from tracker.planning.baseline.walk import baseline
from tracker.planning.planner import plan
from tracker.planning.problem import InWork, PlanningProblem

DEAR = replace(FITTERS, rate_per_head_h=200.0)


def placed(content: WorkContent) -> WorkContent:
    out, into = content.steps
    return replace(content, steps=(replace(out, warp="out"), replace(into, warp="in")))


PLACED = {kind: tuple(map(placed, contents)) for kind, contents in CONTENTS.items()}


def asked(*windows: Window, **changes: Any) -> PlanningProblem:
    given: dict[str, Any] = {
        "soak_days": 0, "crews": (DEAR, ELECTRICIAN), "parts": {"RAIL": Part("RAIL", 2.0, price=100.0)},
        "contents": dict.fromkeys(LOOMS, PLACED),
    }  # fmt: skip
    return problem({w.key: (w,) for w in windows}, **{**given, **changes})


def made(said: PlanningProblem) -> Plan:
    found = plan(said, gap=0.0)
    assert verify(found, said) == ()
    return found


def one(*windows: Window, **changes: Any) -> Booking:
    """The booking of loom 1; who takes each beam-out as it comes finds the same."""
    said = asked(*windows, **changes)
    booking = next(b for b in made(said).bookings if b.key == ONE)
    walked = baseline(said)
    assert verify(walked, said) == ()
    again = next(b for b in walked.bookings if b.key == ONE)
    assert (again.start, again.pause, again.end, again.cost) == (
        booking.start,
        booking.pause,
        booking.end,
        booking.cost,
    )
    return booking


def test_the_change_stands_between_the_parts():
    booking = one(window(ONE, at(1, 8)))
    assert (booking.start, booking.pause, booking.end) == (at(1, 8), (at(1, 9), at(1, 11)), at(1, 12))
    assert booking.slots == 4
    # stopped for 4 h, less the 2 h that the change takes anyway: 2 h × 5; the saving of 24 a day for 36 h
    assert booking.cost.lost_production == pytest.approx(10.0)
    assert booking.cost.saving_foregone == pytest.approx(36.0)
    assert booking.crews == (CrewTurn("Fitters 1", at(1, 8), at(1, 9)), CrewTurn("Fitters 1", at(1, 11), at(1, 12)))
    assert booking.needs == (
        Need("electrician", "trade", 1, at(1, 11), at(1, 12)), Need("hoist", "tool", 1, at(1, 11), at(1, 12)),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("meanwhile_h", "again", "lost"),
    [
        (0.5, 10.5, 7.5),  # half an hour of the change is done in the first part: stopped 3.5 h less 2
        (2.0, 10, 5.0),  # never more than the first part's hour
    ],
)
def test_others_may_do_some_of_the_change_meanwhile(meanwhile_h, again, lost):
    booking = one(replace(window(ONE, at(1, 8)), meanwhile_h=meanwhile_h))
    assert booking.pause == (at(1, 9), at(1, again))
    assert booking.cost.lost_production == pytest.approx(lost)


def test_the_second_part_waits_for_the_crews():
    # the warp is in at 14:30, when nobody is there: 6:00 on Wednesday. Stopped 11:30 to 7:00 is 19.5 h, less 2
    booking = one(window(ONE, at(1, 11.5)))
    assert (booking.start, booking.pause, booking.end) == (at(1, 11.5), (at(1, 12.5), at(2, 6)), at(2, 7))
    assert booking.cost.lost_production == pytest.approx(87.5)


def test_the_change_goes_on_while_the_hall_weaves():
    # nobody weaves, nor changes warps, from 10 to 16 o'clock: an hour until 10, another until 17
    running = tuple(
        Running("Hall 1", frozenset(range(7)), *span) for span in ((time(0), time(10)), (time(16), time(0)))
    )
    booking = one(window(ONE, at(1, 8)), running=running)
    assert (booking.pause, booking.end) == ((at(1, 9), at(2, 6)), at(2, 7))
    # of the 23 h until Wednesday 7:00 the hall weaves 17; less 2
    assert booking.cost.lost_production == pytest.approx(75.0)


def test_parts_round_up_to_half_hours_each_for_itself():
    longer = {
        kind: tuple(
            replace(c, steps=(replace(c.steps[0], minutes=70.0), replace(c.steps[1], minutes=40.0)), on_loom_min=110.0)
            for c in of
        )
        for kind, of in PLACED.items()
    }
    booking = one(window(ONE, at(1, 8)), contents=dict.fromkeys(LOOMS, longer))
    # 110 minutes would be four half hours; 70 are three of them, 40 two
    assert (booking.slots, booking.pause, booking.end) == (5, (at(1, 9.5), at(1, 11.5)), at(1, 12.5))


def test_nobody_is_held_in_between_but_the_loom_is_stopped():
    both = window(ONE, at(1, 8)), window(TWO, at(1, 8))
    # loom 2 has the one crew from 9 to 10 and from 12 to 13: it waits an hour
    found = made(asked(*both))
    assert sorted((b.start, b.pause, b.end) for b in found.bookings) == [
        (at(1, 8), (at(1, 9), at(1, 11)), at(1, 12)), (at(1, 9), (at(1, 10), at(1, 12)), at(1, 13)),
    ]  # fmt: skip
    assert sum(b.cost.lost_production for b in found.bookings) == pytest.approx(10.0 + 15.0)
    # where one loom may be stopped at once, the other begins when it runs again
    apart = made(asked(*both, looms_stopped_at_once=1))
    first, second = sorted(apart.bookings, key=lambda b: b.start)
    assert second.start >= first.end
    assert verify(found, asked(*both, looms_stopped_at_once=1)) == (
        "Hall 1: 2 looms stopped at Tue 5 Jan 2027 09:00, the limit is 1",
    )


@pytest.mark.parametrize("kind", [WindowKind.STANDING, WindowKind.MID_WARP])
def test_with_the_warp_in_the_parts_follow_each_other(kind):
    said = asked(still(ONE, kind, at(1, 6), at(1, 20), 1))
    (booking,) = made(said).bookings
    assert (booking.start, booking.pause, booking.end) == (at(1, 6), None, at(1, 8))


def test_a_loom_that_stands_without_a_warp_has_its_second_part_when_that_is_in():
    # it stands to Wednesday 9:00, then the new warp comes in until 11:00
    stands = replace(
        still(ONE, WindowKind.STANDING, at(1, 9), at(2, 9), 1), warp_in_at=at(2, 11), ordinary_change_h=2.0
    )
    booking = one(stands)
    assert booking.pause and booking.pause[1] == at(2, 11)
    assert booking.end == at(2, 12)
    # it would weave from 11:00 on
    assert booking.cost.lost_production == pytest.approx(5.0)
    # with a first part that ends late the change is late, too
    late = one(stands, closures=(Closure(date(2027, 1, 5), "work"),), as_of=at(2, 8.5))
    assert (late.start, late.pause, late.end) == (at(2, 8.5), (at(2, 9.5), at(2, 11.5)), at(2, 12.5))
    assert late.cost.lost_production == pytest.approx(7.5)


def test_the_loom_does_not_stand_half_done_over_a_closed_day():
    # Wednesday is closed: begun on Tuesday at 11:30 the second part would be on Thursday
    shut = (Closure(date(2027, 1, 6), "work"),)
    booking = one(window(ONE, at(1, 11.5)), closures=shut)
    assert (booking.start, booking.end) == (at(3, 6), at(3, 10))


def test_another_crew_may_have_the_second_part():
    # A goes at 9:00, B comes at 11:00
    crews = (
        replace(DEAR, crew="A", shift_end=time(9)), replace(DEAR, crew="B", shift_start=time(11), shift_end=time(19)),
        ELECTRICIAN,
    )  # fmt: skip
    said = asked(window(ONE, at(1, 8)), crews=crews)
    found = made(said)
    assert [(t.crew, t.start) for t in found.bookings[0].crews] == [("A", at(1, 8)), ("B", at(1, 11))]
    assert found.crew_changes == 0


def test_the_check_finds_what_is_wrong_with_a_pause():
    said = asked(window(ONE, at(1, 8)))
    found = made(said)
    (booking,) = found.bookings

    def says(**wrong: Any) -> tuple[str, ...]:
        return verify(replace(found, bookings=(replace(booking, **wrong),)), said)

    due = "by its scope and the ordinary change it is with a pause from Tue 5 Jan 2027 09:00 to Tue 5 Jan 2027 11:00"
    assert f"loom 1 (Hall 1): booked in one piece; {due}" in says(pause=None, end=at(1, 10))
    early = "with a pause from Tue 5 Jan 2027 09:00 to Tue 5 Jan 2027 10:00"
    assert f"loom 1 (Hall 1): booked {early}; {due}" in says(pause=(at(1, 9), at(1, 10)), end=at(1, 11))
    assert "loom 1 (Hall 1) ends Tue 5 Jan 2027 13:00, but 4 working half hours end Tue 5 Jan 2027 12:00" in says(
        end=at(1, 13)
    )


# ---- what is settled


def test_a_firm_booking_keeps_its_parts_whatever_the_change_takes_by_now():
    said = asked(window(ONE, at(1, 8)))
    published = made(said)
    now = replace(said, previous=published, as_of=at(0, 12))
    slow = replace(window(ONE, at(1, 8)), ordinary_change_h=3.0)
    for data in (now, replace(now, windows={ONE: (slow,)})):
        (kept,) = made(data).bookings
        assert kept.firm
        assert (kept.start, kept.pause, kept.end, kept.slots) == (at(1, 8), (at(1, 9), at(1, 11)), at(1, 12), 4)
        assert kept.crews == published.bookings[0].crews


def test_its_crew_is_free_in_its_pause():
    said = asked(window(ONE, at(1, 8)))
    both = replace(said, previous=made(said), as_of=at(0, 12), windows={**said.windows, TWO: (window(TWO, at(1, 9)),)})
    assert {b.key: (b.start, b.end) for b in made(both).bookings} == {
        ONE: (at(1, 8), at(1, 12)),
        TWO: (at(1, 9), at(1, 13)),
    }


def test_so_is_that_of_a_loom_in_work():
    # loom 1 was begun at 8:00; at 8:30 it has half an hour of its first part and all of its second to go
    work = InWork(ONE, 3, PLACED[WindowKind.REPEAT][0], "Fitters 1", (at(1, 9), at(1, 11)))
    said = replace(asked(window(TWO, at(1, 9))), in_work=(work,), as_of=at(1, 8.5))
    (booking,) = made(said).bookings
    # loom 2: 9 to 10, the change to 12, 12 to 13
    assert (booking.start, booking.pause, booking.end) == (at(1, 9), (at(1, 10), at(1, 12)), at(1, 13))
    # were it out at 10:00, its first part would be done at 11:00 when loom 1 goes on
    later = replace(said, windows={TWO: (window(TWO, at(1, 10.5)),)})
    (booking,) = made(later).bookings
    assert booking.start == at(1, 12)
