"""Each limit on a hall of two looms, with the answer worked out by hand.

A conversion takes four half hours: two with the fitters alone, then two with the electrician and the hoist beside them
(`two_looms`). Unless a test says otherwise both looms are out on Tuesday 5 January at 08:00, there are two of
everything, no limit on stopped looms, and two rails in stock. Waiting costs 5 an hour of contribution and 1 an hour of
saving, so nobody waits without need.
"""

from dataclasses import replace
from datetime import date, datetime, time
from typing import Any

import pytest
from refusals import refused
from said import texts
from two_looms import CONTENTS, ELECTRICIAN, FITTERS, LOOMS, ONE, TWO, at, content, problem, window
from worded import verify

from tracker.domain.method import KitLine
from tracker.domain.mill import Closure, Crew, LoomKey, Part, Receipt, Tool
from tracker.domain.plan import Plan, PlanStatus
from tracker.domain.windows import WindowKind
from tracker.domain.work import StepLoad
from tracker.errors import DataError
from tracker.planning.planner import plan
from tracker.words import ENGLISH

SECOND = replace(FITTERS, crew="Fitters 2")
DEAR = replace(FITTERS, rate_per_head_h=200.0)
BOTH = {key: (window(key, at(1, 8)),) for key in (ONE, TWO)}
PLENTY: dict[str, Any] = {
    "crews": (FITTERS, SECOND, replace(ELECTRICIAN, heads=2)),
    "tools": {"hoist": Tool("hoist", 2)},
    "parts": {"RAIL": Part("RAIL", 2.0, price=100.0)},
    "soak_days": 0,
}


def made(windows=BOTH, **changes: Any) -> Plan:
    asked = problem(windows, **{**PLENTY, **changes})
    found = plan(asked, gap=0.0)
    assert verify(found, asked) == ()
    assert found.status is PlanStatus.OPTIMAL
    return found


def starts(found: Plan) -> list[datetime]:
    return [booking.start for booking in found.bookings]


def test_nothing_short_both_start_when_their_warps_are_out() -> None:
    # each: conversion 2 h × 5 = 10, labour 160, parts 100, saving 1 an hour for 34 h until Tuesday 10:00
    found = made()
    assert starts(found) == [at(1, 8), at(1, 8)]
    assert found.objective == pytest.approx(2 * (10 + 160 + 100 + 34))


def test_one_crew_the_second_loom_waits_two_hours() -> None:
    # 2 h × (5 + 1) = 12 more; starting at 06:00 instead would keep the crew waiting 2 h at 60
    found = made(crews=(FITTERS, replace(ELECTRICIAN, heads=2)))
    assert starts(found) == [at(1, 8), at(1, 10)]
    assert found.objective == pytest.approx(608 + 12)


def test_a_crew_in_two_overlapping_rows_is_one_crew() -> None:
    # Monday to Friday 06:00-14:00, and Monday and Tuesday 08:00-16:00, too: one crew, which has until 16:00 on Tuesday
    more = replace(FITTERS, weekdays=frozenset((0, 1)), shift_start=time(8), shift_end=time(16))
    one: dict[str, Any] = {"crews": (FITTERS, more, replace(ELECTRICIAN, heads=2))}
    found = made(**one)
    assert starts(found) == [at(1, 8), at(1, 10)]
    assert found.objective == pytest.approx(608 + 12)
    assert texts(found.reasons) == (
        "Crew Fitters 1 stands in two rows whose hours overlap, first on Mon 4 Jan 2027 08:00; it counts as one crew there.",
    )
    # both out at 11:00: the second starts at 13:00 and ends by 15:00, an hour after the first row is over; the electrician
    # is there until 16:00, too
    later = {key: (window(key, at(1, 11)),) for key in (ONE, TWO)}
    long = {"crews": (FITTERS, more, replace(ELECTRICIAN, heads=2, shift_end=time(16)))}
    assert starts(made(later, **long)) == [at(1, 11), at(1, 13)]
    # two plans at once are seen by the check that knows nothing of the planner
    at_once = made()
    assert "Tue 5 Jan 2027 08:00 to Tue 5 Jan 2027 10:00: more fitter crews wanted than there are" in verify(
        at_once, problem(BOTH, **{**PLENTY, **one})
    )


def test_electricians_in_two_overlapping_rows_are_as_many_as_the_larger_row_says() -> None:
    # two heads 06:00-14:00 and one of them listed again 08:00-16:00: two, not three; three looms would wait
    again = replace(ELECTRICIAN, shift_start=time(8), shift_end=time(16))
    assert starts(made(crews=(FITTERS, SECOND, replace(ELECTRICIAN, heads=1), again))) == [at(1, 8), at(1, 9)]


def test_a_crew_in_two_halls_at_once_is_refused() -> None:
    rows = (replace(FITTERS, hall="Hall 1"), replace(FITTERS, hall="Hall 2", shift_start=time(8)), ELECTRICIAN)
    says = (
        "crew Fitters 1 is in Hall 1 and in Hall 2 on Mon 4 Jan 2027 08:00; change the hours of one row in the sheet Crews, "
        "or leave the hall empty where the crew works in any"
    )
    with refused(DataError, f"^{says}$"):
        problem(BOTH, crews=rows)


def test_one_electrician_the_second_loom_waits_one_hour() -> None:
    # he is held in the second hour only, so the conversions overlap by one
    assert starts(made(crews=(FITTERS, SECOND, ELECTRICIAN))) == [at(1, 8), at(1, 9)]


def test_one_hoist_the_second_loom_waits_one_hour() -> None:
    assert starts(made(tools={"hoist": Tool("hoist", 1)})) == [at(1, 8), at(1, 9)]


def test_an_electrician_who_goes_home_at_ten() -> None:
    # needed in the second hour: a start at 08:00 needs him 09:00 to 10:00
    short = replace(ELECTRICIAN, heads=2, shift_end=time(10))
    assert starts(made(crews=(FITTERS, SECOND, short))) == [at(1, 8), at(1, 8)]
    shorter = replace(short, shift_end=time(9, 30))
    # 07:30 would need him from 08:30 to 09:30, but the warp is out at 08:00 only: he would be gone with half an hour to do,
    # and the loom run again on Wednesday at 06:30: half an hour of waiting at 60, 22.5 h at 6 (saving too) = 165. Begun at
    # 13:00, with his hour on Wednesday at 06:00, it is stopped for 23 h: 138
    assert starts(made(crews=(FITTERS, SECOND, shorter))) == [at(1, 13), at(1, 13)]


def test_one_loom_stopped_at_once() -> None:
    assert starts(made(looms_stopped_at_once=1)) == [at(1, 8), at(1, 10)]


def test_a_loom_stays_stopped_over_night() -> None:
    # out at 13:00: the first is converted 13:00 to 14:00 and 06:00 to 07:00 of Wednesday, and is stopped all the while
    # (18 h × 6 = 108; an hour earlier the crew of 400 an hour would wait), so the other begins on Wednesday at 07:00
    # (20 h × 6 = 120; both on Wednesday, at 06:00 and 08:00, would cost 114 + 126)
    late = {key: (window(key, at(1, 13)),) for key in (ONE, TWO)}
    crews = (DEAR, replace(DEAR, crew="Fitters 2"), replace(ELECTRICIAN, heads=2))
    assert starts(made(late, crews=crews, looms_stopped_at_once=1)) == [at(1, 13), at(2, 7)]
    assert starts(made(late, crews=crews)) == [at(1, 13), at(1, 13)]


def test_a_conversion_passes_to_the_next_shift() -> None:
    # crews 06:00 to 09:00 and 09:00 to 14:00: one crew at any time, so one after the other, the first across 09:00
    early, late = replace(FITTERS, shift_end=time(9)), replace(SECOND, shift_start=time(9))
    assert starts(made(crews=(early, late, replace(ELECTRICIAN, heads=2)))) == [at(1, 8), at(1, 10)]


def test_a_crew_of_one_hall_does_not_help_the_other() -> None:
    # loom 2 in Hall 2; Fitters 1 anywhere, Fitters 2 in Hall 1 only: both halls have a crew
    other = LoomKey("Hall 2", "2")
    looms = {ONE: LOOMS[ONE], other: replace(LOOMS[TWO], hall="Hall 2")}
    halls: dict[str, Any] = {"looms": looms, "contents": dict.fromkeys(looms, CONTENTS)}
    windows = {key: (window(key, at(1, 8)),) for key in looms}
    own = (FITTERS, replace(SECOND, hall="Hall 1"), replace(ELECTRICIAN, heads=2))
    assert starts(made(windows, crews=own, **halls)) == [at(1, 8), at(1, 8)]
    # three looms, two of them in Hall 2, where only Fitters 1 can go
    third = LoomKey("Hall 2", "3")
    looms = looms | {third: replace(looms[other], loom="3")}
    windows = {key: (window(key, at(1, 8)),) for key in looms}
    halls = {"looms": looms, "contents": dict.fromkeys(looms, CONTENTS), "parts": {"RAIL": Part("RAIL", 3.0)}}
    many = (*own[:2], replace(ELECTRICIAN, heads=3))
    found = made(windows, crews=many, tools={"hoist": Tool("hoist", 3)}, **halls)
    assert {b.key: b.start for b in found.bookings if b.key.hall == "Hall 1"} == {ONE: at(1, 8)}
    assert sorted(b.start for b in found.bookings if b.key.hall == "Hall 2") == [at(1, 8), at(1, 10)]


def test_a_receipt_is_usable_from_the_next_working_day() -> None:
    # one rail in stock, one due on Friday 8 January: usable on Monday 11th; the second loom is out again on the 12th
    windows = {key: (window(key, at(1, 8)), window(key, at(8, 8), 2)) for key in (ONE, TWO)}
    found = made(windows, parts={"RAIL": Part("RAIL", 1.0, price=100.0)})
    assert starts(found) == [at(1, 8), at(8, 8)]
    # due on Monday 11th it is usable on Tuesday 12th, still in time; due on Tuesday it is not, nor in the 32 working
    # half hours after 08:00 on Tuesday (until Thursday) if due on Thursday 14th
    due = replace(Receipt("4500-10", "RAIL", 1.0, date(2027, 1, 8)), due=date(2027, 1, 11))
    assert starts(made(windows, parts={"RAIL": Part("RAIL", 1.0)}, receipts=(due,))) == [at(1, 8), at(8, 8)]
    due = replace(due, due=date(2027, 1, 12))
    assert starts(made(windows, parts={"RAIL": Part("RAIL", 1.0)}, receipts=(due,))) == [at(1, 8), at(9, 6)]
    due = replace(due, due=date(2027, 1, 14))
    found = made(windows, parts={"RAIL": Part("RAIL", 1.0)}, receipts=(due,))
    assert starts(found) == [at(1, 8)]
    assert [ENGLISH.line(item.why) for item in found.left_over] == [
        "no kit: part RAIL is taken in its windows by looms for which that saves more"
    ]


def test_safety_stock_is_filled_up_before_a_receipt_helps() -> None:
    # none on hand, one of safety stock: of two that come on Monday 4th one can be used
    parts = {"RAIL": Part("RAIL", 0.0, safety_stock=1.0)}
    found = made(parts=parts, receipts=(Receipt("4500-10", "RAIL", 2.0, date(2027, 1, 4)),))
    assert starts(found) == [at(1, 8)]
    assert len(found.left_over) == 1


def test_parts_issued_to_a_loom_are_not_taken_again() -> None:
    one_rail: dict[str, Any] = {"parts": {"RAIL": Part("RAIL", 1.0)}, "receipts": ()}
    assert len(made(**one_rail).bookings) == 1
    assert len(made(**one_rail, issued={TWO: {"RAIL": 1.0}}).bookings) == 2
    assert len(made(**one_rail, taken={"RAIL": 1.0}, issued={TWO: {"RAIL": 1.0}}).bookings) == 1


def test_a_protected_loom_starts_on_the_day_after() -> None:
    looms = LOOMS | {TWO: replace(LOOMS[TWO], protected_until=date(2027, 1, 5))}
    assert starts(made(looms=looms)) == [at(1, 8), at(2, 6)]


def test_a_day_without_work_is_passed_over_by_the_conversion() -> None:
    # out at 13:00 on Tuesday; Wednesday nobody converts: the second half is done on Thursday. 42 h × 6 = 252; waiting
    # for Thursday 06:00 would cost 43 h × 6 = 258, an hour earlier the crew would wait at 400 an hour
    late = {ONE: (window(ONE, at(1, 13)),)}
    found = made(
        late, crews=(DEAR, ELECTRICIAN), closures=(Closure(date(2027, 1, 6), "work"),), open_over_closed_days=True
    )
    assert [(b.start, b.end) for b in found.bookings] == [(at(1, 13), at(3, 7))]


def test_the_cheaper_alternative_is_taken() -> None:
    # drilling saves the rail (100) and costs half an hour more of two fitters (30): the waiting for it costs 3
    drilled = content(rail="drilled")
    slow = replace(
        drilled,
        steps=(StepLoad(10, 90.0, {"fitter": 2}, {}), drilled.steps[1]),
        on_loom_min=150.0,
        labour_min={"fitter": 300.0, "electrician": 60.0},
        parts={},
    )
    contents = {key: {WindowKind.REPEAT: (content(), slow)} for key in (ONE, TWO)}
    assert [b.choices for b in made(contents=contents).bookings] == [(("rail", "drilled"),)] * 2
    dear = {"RAIL": Part("RAIL", 2.0, price=20.0)}
    assert [b.choices for b in made(contents=contents, parts=dear).bookings] == [(("rail", "new"),)] * 2


def test_the_pool_of_a_crew_in_two_rows_counts_once() -> None:
    # an absence is two rows of one crew, with the days between left out
    rows = (replace(FITTERS, to_on=date(2027, 1, 4)), replace(FITTERS, from_on=date(2027, 1, 7)))
    found = made(crews=(*rows, replace(ELECTRICIAN, heads=2)))
    # out on Tuesday 08:00, 32 working half hours later is Friday 14:00: the next working day is Thursday 7th
    assert starts(found) == [at(3, 6), at(3, 8)]


def test_looms_that_cost_more_than_leaving_them_over_are_left() -> None:
    # converted each costs 304 at least; left over 24 × 28 + 260 and a penalty of -632 (a reward) make 300
    found = made(left_over_penalty=-632.0)
    assert (found.bookings, found.objective) == ((), pytest.approx(600))
    assert {ENGLISH.line(item.why) for item in found.left_over} == {"every date costs more than leaving it over"}
    assert len(made(left_over_penalty=-627.0).bookings) == 2


def late_shift(crew: Crew) -> Crew:
    return replace(crew, shift_start=time(22), shift_end=time(4))


def test_a_shift_past_midnight_belongs_to_the_day_on_which_it_starts() -> None:
    # Friday's shift runs until Saturday 04:00; a warp out on Saturday 01:00 is converted 01:00 to 03:00
    crews = tuple(late_shift(crew) for crew in (FITTERS, replace(ELECTRICIAN, heads=2)))
    found = made({ONE: (window(ONE, at(5, 1)),)}, crews=crews)
    assert [(b.start, b.end) for b in found.bookings] == [(at(5, 1), at(5, 3))]


@pytest.mark.parametrize(("as_of", "start"), [(at(3, 7), at(3, 7)), (at(3, 8), at(10, 8))])
def test_an_overdue_beam_out_is_gone_after_its_32nd_working_slot(as_of: datetime, start: datetime) -> None:
    # out on Tuesday 08:00, shift 06:00 to 14:00: 12 half hours on Tuesday, 16 on Wednesday, so the 32nd is Thursday 07:30
    # (and waiting costs nothing but the saving, so that nobody would rather wait a week)
    outs = {key: (window(key, at(1, 8)), window(key, at(10, 8), 2)) for key in (ONE, TWO)}
    windows = {key: tuple(replace(out, contribution_per_h=0.0) for out in both) for key, both in outs.items()}
    assert starts(made(windows, as_of=as_of)) == [start, start]


def test_what_it_costs_that_parts_that_come_back_count_as_used_up_is_told() -> None:
    # one frame, which cannot be ordered, comes back after use: loom 2 could have it on Tuesday at 10:00, and is left over
    frame = KitLine("FRAME", 1.0, comes_back=True)
    of = {
        kind: tuple(replace(c, parts={"RAIL": 1.0, "FRAME": 1.0}, kit_lines=(frame,)) for c in contents)
        for kind, contents in CONTENTS.items()
    }
    parts = PLENTY["parts"] | {"FRAME": Part("FRAME", 1.0, price=1.0)}
    never: dict[str, Any] = {"contents": dict.fromkeys(LOOMS, of), "lead_time_none_given_days": 0}
    found = made(**never, parts=parts)
    assert len(found.bookings) == 1
    says = "Part FRAME comes back after use, but is planned as used up: the looms booked need {} in all, {} left over for want of "
    says += "it."
    assert says.format(1, "1 are there or on order; 1 loom is") in texts(found.reasons)
    # with an order to come in a week both are booked, and two frames are counted where one would do
    ordered = made(
        {key: (window(key, at(8, 8)),) for key in LOOMS}, **never | {"lead_time_none_given_days": 1}, parts=parts
    )
    assert len(ordered.bookings) == 2
    assert says.format(2, "1 are there or on order; no loom is") in texts(ordered.reasons)
    # two are there: nothing to tell
    parts["FRAME"] = Part("FRAME", 2.0, price=1.0)
    assert not any("comes back" in reason for reason in texts(made(**never, parts=parts).reasons))
