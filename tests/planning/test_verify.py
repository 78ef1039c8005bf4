"""A plan of two looms worked out by hand, then spoilt in one way at a time.

Both looms are of one type; loom 1 is its pilot. Loom 1 is out on Tuesday 08:00 and starts at 09:00; loom 2 is out on
Thursday of the week after at 10:00 and starts at 09:00, an hour too early.
"""

from dataclasses import replace
from datetime import date, datetime, time, timedelta
from typing import Any

import numpy as np
import pytest
from scipy.stats import invgauss
from two_looms import (
    CONTENTS,
    ELECTRICIAN,
    FITTERS,
    LOOMS,
    MONDAY,
    ONE,
    TWO,
    WINDOWS,
    at,
    content,
    problem,
    still,
    window,
)
from worded import verify

from tracker.domain.mill import Closure, Crew, LoomKey, Part, Receipt, Running, Tool
from tracker.domain.plan import Booking, CostTerms, LeftOver, Plan, PlanStatus
from tracker.domain.windows import WindowKind
from tracker.errors import as_it_stands
from tracker.planning.problem import InWork

# labour: 240 min of fitters at 30 + 60 min of the electrician at 40 = 120 + 40 = 160; parts: 1 × 100
# loom 1: waits 1 h + 2 h of conversion at 5 = 15; saving 24 a day = 1 an hour, 35 h from the start to Tuesday 11:00
BOOKING_1 = Booking(
    key=ONE,
    window=1,
    kind=WindowKind.REPEAT,
    choices=(("rail", "new"),),
    start=at(1, 9),
    end=at(1, 11),
    beam_out_p50=at(1, 8),
    slots=4,
    labour_h=5.0,
    parts={"RAIL": 1.0},
    cost=CostTerms(lost_production=15.0, labour=160.0, parts=100.0, saving_foregone=35.0),
    pilot=True,
)
# loom 2: no waiting, 2 h of conversion at 5 = 10; out an hour after the start: the crew (2 × 30) waits 1 h = 60, and the
# conversion ends an hour later than booked: 252 h from the start to Thursday 12:00 of the second week
BOOKING_2 = replace(
    BOOKING_1,
    key=TWO,
    start=at(10, 9),
    end=at(10, 11),
    beam_out_p50=at(10, 10),
    cost=CostTerms(lost_production=10.0, late_beam_out=60.0, labour=160.0, parts=100.0, saving_foregone=252.0),
    pilot=False,
)
# left over: 24 a day × 28 days + 5000 + 160 + 100
LEFT_COST = 24 * 28 + 5000 + 260.0


def plan(*bookings: Booking, left_over: tuple[LeftOver, ...] = ()) -> Plan:
    total = sum(b.cost.total for b in bookings) + sum(item.cost for item in left_over)
    return Plan(
        PlanStatus.OPTIMAL, total, total, 0.1, "EUR", MONDAY, at(28, 0), bookings, left_over, start=date(2027, 1, 4)
    )


SOUND = plan(BOOKING_1, BOOKING_2)


def test_the_plan_worked_out_by_hand_is_sound() -> None:
    assert verify(SOUND, problem()) == ()


def test_a_loom_left_over_costs_saving_penalty_and_its_cheapest_work() -> None:
    assert verify(plan(BOOKING_1, left_over=(LeftOver(TWO, as_it_stands("no crew"), LEFT_COST),)), problem()) == ()
    found = verify(plan(BOOKING_1, left_over=(LeftOver(TWO, as_it_stands("no crew"), 5000.0),)), problem())
    assert found == ("loom 2 (Hall 1): left over at 5000.00 EUR, the data give 5932.00",)


# ---- one fault at a time in the plan


def second(**changes: Any) -> Plan:
    """The sound plan with loom 2 booked otherwise."""
    return plan(BOOKING_1, replace(BOOKING_2, **changes))


@pytest.mark.parametrize(
    ("spoilt", "says"),
    [
        (plan(BOOKING_1), "loom 2 (Hall 1) is neither booked nor left over"),
        (plan(BOOKING_1, BOOKING_2, BOOKING_2), "loom 2 (Hall 1) is booked 2 times"),
        (
            plan(BOOKING_1, BOOKING_2, left_over=(LeftOver(TWO, as_it_stands(""), LEFT_COST),)),
            "loom 2 (Hall 1) is booked and left over",
        ),
        (
            plan(BOOKING_1, BOOKING_2, replace(BOOKING_2, key=LoomKey("Hall 1", "9"))),
            "loom 9 (Hall 1) is booked but not in the list of looms",
        ),
        (second(window=2), "loom 2 (Hall 1): there is no repeat window 2"),
        (second(kind=WindowKind.STYLE), "loom 2 (Hall 1): there is no style window 1"),
        (
            second(choices=(("rail", "welded"),)),
            "loom 2 (Hall 1): the method has no conversion in a repeat window with rail = welded",
        ),
        (second(parts={"RAIL": 2.0}), "loom 2 (Hall 1): the parts booked are not those of its scope"),
        (second(labour_h=4.0), "loom 2 (Hall 1): 4.00 person-hours booked, its scope has 5.00"),
        (second(beam_out_p50=at(10, 12)), "loom 2 (Hall 1): the booking names another beam-out than its window 1"),
        (second(slots=3), "loom 2 (Hall 1): 3 half hours booked, its scope has 4"),
        (
            second(end=at(10, 10.5)),
            "loom 2 (Hall 1) ends Thu 14 Jan 2027 10:30, but 4 working half hours end Thu 14 Jan 2027 11:00",
        ),
        (
            second(start=at(10, 9.25)),
            "loom 2 (Hall 1) starts Thu 14 Jan 2027 09:15, not on a half hour",
        ),
        (
            second(start=at(10, 14), end=at(10, 16)),
            "loom 2 (Hall 1) starts Thu 14 Jan 2027 14:00, when no fitter crew is at work",
        ),
        (
            second(start=at(10, 13), end=at(10, 15)),
            "loom 2 (Hall 1) ends Thu 14 Jan 2027 15:00, but 4 working half hours end Fri 15 Jan 2027 07:00",
        ),
    ],
)
def test_a_fault_in_the_plan_is_found(spoilt: Plan, says: str) -> None:
    assert says in verify(spoilt, problem())


def shifted(start: datetime, end: datetime, beam_out: datetime) -> tuple[Plan, dict]:
    """Loom 2 booked at another time, its window at another beam-out."""
    windows = WINDOWS | {TWO: (window(TWO, beam_out),)}
    return second(start=start, end=end, beam_out_p50=beam_out), windows


@pytest.mark.parametrize(
    ("start", "beam_out", "says"),
    [
        # 4 clock hours before the beam-out is allowed, half an hour earlier is not
        (at(10, 9), at(10, 13), ""),
        (
            at(10, 8.5),
            at(10, 13),
            "starts Thu 14 Jan 2027 08:30, more than 4 h before its beam-out Thu 14 Jan 2027 13:00",
        ),
        # out on Wednesday 06:00: 16 half hours that day, the 32nd is Thursday 13:30
        (at(10, 12), at(9, 6), ""),
        (
            at(11, 6),
            at(9, 6),
            "starts Fri 15 Jan 2027 06:00, after the 32nd working half hour from its beam-out Wed 13 Jan 2027 06:00",
        ),
    ],
)
def test_starts_lie_between_4_hours_before_and_32_working_half_hours_after(
    start: datetime, beam_out: datetime, says: str
) -> None:
    spoilt, windows = shifted(start, start + timedelta(hours=2), beam_out)
    found = [s for s in verify(spoilt, problem(windows)) if "beam-out" in s and "late" not in s]
    assert found == ([f"loom 2 (Hall 1) {says}"] if says else [])


def test_far_windows_have_full_hours_only() -> None:
    # 14 days after as of is Monday 18 January, 00:00
    says = "not on a full hour, in a window more than 14 days off"
    for day, wrong in ((11, False), (15, True)):
        spoilt, windows = shifted(at(day, 8.5), at(day, 10.5), at(day, 9))
        assert any(says in s for s in verify(spoilt, problem(windows))) is wrong


def test_full_hours_are_local_hours() -> None:
    """India is 5 h 30 min ahead of UTC: 08:30 UTC is 14:00 there, 09:00 UTC is 14:30 (by hand)."""
    says = "not on a full hour, in a window more than 14 days off"
    for hour, wrong in ((8.5, False), (9, True)):
        spoilt, windows = shifted(at(15, hour), at(15, hour + 2), at(15, 9))
        found = verify(spoilt, problem(windows, time_zone="Asia/Kolkata"))
        assert any(says in s for s in found) is wrong


@pytest.mark.parametrize(("start_h", "in_time"), [(7.5, True), (8, False)])
def test_an_overdue_beam_out_keeps_its_32_working_slots(start_h: float, in_time: bool) -> None:
    # out on Tuesday 08:00; the shift ends at 14:00: 12 half hours on Tuesday, 16 on Wednesday, 4 on Thursday from 06:00
    late = replace(BOOKING_1, start=at(3, start_h), end=at(3, start_h + 2))
    found = verify(plan(late, BOOKING_2), problem(as_of=at(3, 5)))
    says = "after the 32nd working half hour from its beam-out Tue 5 Jan 2027 08:00"
    assert any(says in s for s in found) is not in_time


def kinds(kind: WindowKind, start: datetime, starts_at: datetime, ends_at: datetime) -> tuple[str, ...]:
    windows = WINDOWS | {TWO: (still(TWO, kind, starts_at, ends_at, 7),)}
    booked = second(kind=kind, window=7, start=start, end=start + timedelta(hours=2), beam_out_p50=None)
    return verify(booked, problem(windows))


def test_a_standing_window_has_every_working_slot_inside_and_none_outside() -> None:
    assert not [s for s in kinds(WindowKind.STANDING, at(10, 9), at(10, 9), at(10, 12)) if "outside" in s]
    assert (
        "loom 2 (Hall 1) starts Thu 14 Jan 2027 09:00, outside its standing window Thu 14 Jan 2027 06:00 to Thu 14 Jan 2027 09:00"
        in (kinds(WindowKind.STANDING, at(10, 9), at(10, 6), at(10, 9)))
    )


def test_a_mid_warp_stop_starts_with_the_day() -> None:
    says = "not in the first working half hour of the day, as a mid-warp stop does"
    assert not [s for s in kinds(WindowKind.MID_WARP, at(10, 6), MONDAY, at(28, 0)) if says in s]
    assert [s for s in kinds(WindowKind.MID_WARP, at(10, 9), MONDAY, at(28, 0)) if says in s]


def test_standing_and_mid_warp_cost_no_waiting_and_no_late_beam_out() -> None:
    # 2 h of conversion at 5; end on Thursday 08:00: 248 h of saving
    windows = WINDOWS | {TWO: (still(TWO, WindowKind.MID_WARP, MONDAY, at(28, 0), 0),)}
    cost = CostTerms(lost_production=10.0, labour=160.0, parts=100.0, saving_foregone=248.0)
    booked = second(kind=WindowKind.MID_WARP, window=0, start=at(10, 6), end=at(10, 8), beam_out_p50=None, cost=cost)
    assert verify(booked, problem(windows)) == ()


# ---- one fault at a time in the data: the same plan does not hold any more


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"as_of": at(1, 9.5)}, "loom 1 (Hall 1) starts Tue 5 Jan 2027 09:00, before Tue 5 Jan 2027 09:30"),
        ({"start": date(2027, 1, 6)}, "loom 1 (Hall 1) starts Tue 5 Jan 2027 09:00, before Wed 6 Jan 2027 00:00"),
        ({"horizon_days": 10}, "loom 2 (Hall 1) ends Thu 14 Jan 2027 11:00, past the horizon Thu 14 Jan 2027 00:00"),
        (
            {"looms": LOOMS | {TWO: replace(LOOMS[TWO], protected_until=date(2027, 1, 14))}},
            "loom 2 (Hall 1) starts Thu 14 Jan 2027 09:00, but is protected until Thu 14 Jan 2027 included",
        ),
        (
            {"closures": (Closure(date(2027, 1, 14), "work"),)},
            "loom 2 (Hall 1) starts Thu 14 Jan 2027 09:00, when no fitter crew is at work",
        ),
        (
            {"crews": (replace(FITTERS, shift_end=time(10)), ELECTRICIAN)},
            "loom 2 (Hall 1) ends Thu 14 Jan 2027 11:00, but 4 working half hours end Fri 15 Jan 2027 07:00",
        ),
        (
            {"crews": (FITTERS,)},
            "Thu 14 Jan 2027 10:00 to Thu 14 Jan 2027 11:00: more electrician heads wanted than there are",
        ),
        (
            {"crews": (FITTERS, replace(ELECTRICIAN, hall="Hall 2"))},
            "Thu 14 Jan 2027 10:00 to Thu 14 Jan 2027 11:00: more electrician heads wanted than there are",
        ),
        (
            {"crews": (FITTERS, replace(ELECTRICIAN, shift_end=time(10, 30)))},
            "Thu 14 Jan 2027 10:30 to Thu 14 Jan 2027 11:00: more electrician heads wanted than there are",
        ),
        ({"tools": {}}, "Thu 14 Jan 2027 10:00 to Thu 14 Jan 2027 11:00: more than 0 of tool hoist in use"),
        ({"receipts": ()}, "part RAIL: 2 needed by Thu 14 Jan 2027, 1 usable"),
        (
            {"receipts": (Receipt("4500-10", "RAIL", 1.0, date(2027, 1, 14)),)},
            "part RAIL: 2 needed by Thu 14 Jan 2027, 1 usable",
        ),
        (
            {"parts": {"RAIL": Part("RAIL", 1.0, safety_stock=1.0, price=100.0)}},
            "part RAIL: 1 needed by Tue 5 Jan 2027, 0 usable",
        ),
        ({"taken": {"RAIL": 1.0}}, "part RAIL: 1 needed by Tue 5 Jan 2027, 0 usable"),
        (
            {"soak_days": 9.0},
            "loom 2 (Hall 1) starts Thu 14 Jan 2027 09:00, before the pilot of AJ has run 9 days (Thu 14 Jan 2027 11:00)",
        ),
        ({"pilots": {"AJ": "2"}}, "AJ: loom 1 (Hall 1) is the pilot, the mill names 2"),
        (
            {"unplannable": {TWO: as_it_stands("to survey: rail unknown")}},
            "loom 2 (Hall 1) is booked, though to survey: rail unknown",
        ),
        ({"put_off": {TWO: as_it_stands("put off: trial")}}, "loom 2 (Hall 1) is booked, though it is put off"),
        ({"left_out": frozenset({TWO})}, "loom 2 (Hall 1) is booked, though it is left out of the programme"),
        ({"converted": {TWO: MONDAY}}, "loom 2 (Hall 1) is booked, though it is converted already"),
        ({"in_work": (InWork(TWO, 2),)}, "loom 2 (Hall 1) is booked, though it is in work"),
    ],
)
def test_data_that_do_not_carry_the_plan_are_found(changes: dict[str, Any], says: str) -> None:
    assert says in verify(SOUND, problem(**changes))


def test_a_receipt_due_the_day_before_is_in_time() -> None:
    assert verify(SOUND, problem(receipts=(Receipt("4500-10", "RAIL", 1.0, date(2027, 1, 13)),))) == ()


def test_issued_parts_are_not_needed_again() -> None:
    assert verify(SOUND, problem(receipts=(), issued={ONE: {"RAIL": 1.0}})) == ()


# ---- looms side by side: loom 2 is converted while loom 1 is, in the second week

SIDE_BY_SIDE = {ONE: (window(ONE, at(10, 8)),), TWO: (window(TWO, at(10, 10)),)}
AT_ONCE = plan(replace(BOOKING_1, start=at(10, 9), end=at(10, 11), beam_out_p50=at(10, 8)), BOOKING_2)
SECOND_CREW = replace(FITTERS, crew="Fitters 2")
SECOND_ELECTRICIAN = replace(ELECTRICIAN, crew="Electrician 2")


def shortages(**changes: Any) -> list[str]:
    words = ("wanted", "in use", "stopped")
    found = verify(AT_ONCE, problem(SIDE_BY_SIDE, soak_days=0.0, **changes))
    return [s for s in found if any(word in s for word in words)]


def test_two_conversions_at_once_want_two_of_everything() -> None:
    assert shortages() == [
        "Thu 14 Jan 2027 09:00 to Thu 14 Jan 2027 11:00: more fitter crews wanted than there are",
        "Thu 14 Jan 2027 10:00 to Thu 14 Jan 2027 11:00: more electrician heads wanted than there are",
        "Thu 14 Jan 2027 10:00 to Thu 14 Jan 2027 11:00: more than 1 of tool hoist in use",
    ]
    enough = (FITTERS, SECOND_CREW, ELECTRICIAN, SECOND_ELECTRICIAN)
    assert shortages(crews=enough, tools={"hoist": Tool("hoist", 2)}) == []
    assert shortages(crews=enough, tools={"hoist": Tool("hoist", 2)}, looms_stopped_at_once=1) == [
        "Hall 1: 2 looms stopped at Thu 14 Jan 2027 09:00, the limit is 1"
    ]


def test_calling_a_booking_firm_does_not_excuse_it() -> None:
    called = plan(*(replace(booking, firm=True) for booking in AT_ONCE.bookings))
    found = verify(called, problem(SIDE_BY_SIDE, soak_days=0.0))
    assert "Thu 14 Jan 2027 09:00 to Thu 14 Jan 2027 11:00: more fitter crews wanted than there are" in found


def test_a_crew_bound_to_another_hall_does_not_help() -> None:
    bound = (FITTERS, replace(SECOND_CREW, hall="Hall 2"), ELECTRICIAN, SECOND_ELECTRICIAN)
    assert shortages(crews=bound, tools={"hoist": Tool("hoist", 2)}) == [
        "Thu 14 Jan 2027 09:00 to Thu 14 Jan 2027 11:00: more fitter crews wanted than there are"
    ]


def test_a_loom_in_work_holds_its_crew_and_its_tools() -> None:
    # loom 3 has 2 of its 4 half hours to go from Tuesday 09:00 on: the hour with the electrician and the hoist
    three = LoomKey("Hall 1", "3")
    looms = LOOMS | {three: replace(LOOMS[ONE], loom="3")}
    work = (InWork(three, 2, content()),)
    found = verify(SOUND, problem(looms=looms, in_work=work, as_of=at(1, 9), contents=dict.fromkeys(looms, CONTENTS)))
    assert "Tue 5 Jan 2027 09:00 to Tue 5 Jan 2027 10:00: more fitter crews wanted than there are" in found
    later = plan(replace(BOOKING_1, start=at(1, 9.5), end=at(1, 11.5)), BOOKING_2)
    found = verify(later, problem(looms=looms, in_work=work, as_of=at(1, 9), contents=dict.fromkeys(looms, CONTENTS)))
    assert "Tue 5 Jan 2027 09:30 to Tue 5 Jan 2027 10:00: more fitter crews wanted than there are" in found


def test_a_stopped_loom_counts_through_the_night() -> None:
    # loom 1: Wednesday 13:00–14:00 and Thursday 06:00–07:00; loom 2 by another crew in between, 22:00–24:00
    nights = Crew("Nights", "fitter", 2, shift_start=time(22), shift_end=time(23, 59), rate_per_head_h=30.0)
    first = replace(BOOKING_1, start=at(9, 13), end=at(10, 7), beam_out_p50=at(9, 12))
    other = replace(BOOKING_2, start=at(9, 22), end=at(10, 6.5), beam_out_p50=at(9, 22))
    windows = {ONE: (window(ONE, at(9, 12)),), TWO: (window(TWO, at(9, 22)),)}
    found = verify(plan(first, other), problem(windows, crews=(FITTERS, nights, ELECTRICIAN), looms_stopped_at_once=1))
    assert "Hall 1: 2 looms stopped at Wed 13 Jan 2027 22:00, the limit is 1" in found


# ---- pilots


def test_a_type_without_a_pilot_is_found() -> None:
    spoilt = plan(replace(BOOKING_1, pilot=False), BOOKING_2)
    assert "AJ: no pilots booked, one is needed before 2 bookings" in verify(spoilt, problem())
    assert verify(spoilt, problem(soak_days=0.0)) == ()


def test_a_converted_loom_is_the_pilot_of_its_type() -> None:
    three = LoomKey("Hall 1", "3")
    looms = LOOMS | {three: replace(LOOMS[ONE], loom="3")}
    both = plan(replace(BOOKING_1, pilot=False), BOOKING_2)
    run_in = problem(looms=looms, converted={three: at(-3, 12)})  # Friday 12:00: open from Friday the 8th on
    assert verify(both, run_in) == (
        "loom 1 (Hall 1) starts Tue 5 Jan 2027 09:00, before the pilot of AJ has run 7 days (Fri 8 Jan 2027 12:00)",
    )
    assert verify(both, problem(looms=looms, converted={three: at(-3, 12)}, signed_off=frozenset({three}))) == ()


# ---- firm bookings and moves


def test_firm_bookings_stay_and_moves_are_charged() -> None:
    # published: loom 1 on Tuesday 09:00, 33 running hours ahead; loom 2 a day earlier than now
    old = plan(BOOKING_1, replace(BOOKING_2, start=at(9, 9), end=at(9, 11)))
    moved = replace(BOOKING_2, cost=replace(BOOKING_2.cost, moves=60.0))
    firm = replace(BOOKING_1, firm=True)
    assert verify(plan(firm, moved), problem(previous=old)) == ()
    assert "loom 2 (Hall 1): moves 0.00 EUR booked, the data give 60.00" in verify(SOUND, problem(previous=old))


def test_a_firm_booking_that_moved_is_found() -> None:
    old = plan(replace(BOOKING_1, start=at(1, 10), end=at(1, 12)), BOOKING_2)
    says = "loom 1 (Hall 1): the firm booking of Tue 5 Jan 2027 10:00 was moved to Tue 5 Jan 2027 09:00, though it could stay"
    assert says in verify(SOUND, problem(previous=old))
    assert says not in verify(SOUND, problem(previous=old, hold_firm=False))
    assert says not in verify(SOUND, problem(previous=old, released=frozenset({ONE})))
    gone = plan(BOOKING_2, left_over=(LeftOver(ONE, as_it_stands(""), LEFT_COST),))
    assert "loom 1 (Hall 1): the firm booking of Tue 5 Jan 2027 10:00 is gone, though it could stay" in verify(
        gone, problem(previous=old)
    )


def test_what_firm_bookings_overrun_is_not_the_plans_fault() -> None:
    # both in the firm period and at the same time, published when there were two crews
    early = {ONE: (window(ONE, at(1, 8)),), TWO: (window(TWO, at(1, 8)),)}
    other = replace(BOOKING_2, start=at(1, 9), end=at(1, 11), beam_out_p50=at(1, 8), cost=BOOKING_1.cost)
    both = (replace(BOOKING_1, firm=True), replace(other, firm=True))
    assert verify(plan(*both), problem(early, previous=plan(BOOKING_1, other))) == ()


def test_a_firm_booking_outlives_a_sick_crew_and_its_window() -> None:
    early = {ONE: (), TWO: WINDOWS[TWO]}
    away = (replace(FITTERS, from_on=date(2027, 1, 6)), ELECTRICIAN)
    old = plan(BOOKING_1, BOOKING_2)
    assert verify(plan(replace(BOOKING_1, firm=True), BOOKING_2), problem(early, crews=away, previous=old)) == ()


# ---- costs


@pytest.mark.parametrize(
    ("term", "says"),
    [
        ("lost_production", "lost production 11.00 EUR booked, the data give 10.00"),
        ("late_beam_out", "late beam out 61.00 EUR booked, the data give 60.00"),
        ("labour", "labour 161.00 EUR booked, the data give 160.00"),
        ("parts", "parts 101.00 EUR booked, the data give 100.00"),
        ("saving_foregone", "saving foregone 253.00 EUR booked, the data give 252.00"),
        ("moves", "moves 1.00 EUR booked, the data give 0.00"),
    ],
)
def test_a_wrong_cost_term_is_found(term: str, says: str) -> None:
    wrong = replace(BOOKING_2.cost, **{term: getattr(BOOKING_2.cost, term) + 1})
    assert verify(second(cost=wrong), problem()) == (f"loom 2 (Hall 1): {says}",)


def cost_of(beam_out: datetime, start: datetime, spread_h: float = 0.0, **changes: Any) -> dict[str, str]:
    """What the data give for loom 2, told by booking every term at -1."""
    windows = WINDOWS | {TWO: (replace(window(TWO, beam_out), spread_h=spread_h),)}
    nothing = CostTerms(-1, -1, -1, -1, -1, -1)
    spoilt = second(start=start, end=start + timedelta(hours=2), beam_out_p50=beam_out, cost=nothing)
    found = [s for s in verify(spoilt, problem(windows, **changes)) if "the data give" in s]
    return {s.split(": ")[1].split(" -1.00")[0]: s.rsplit(" ", 1)[1] for s in found}


def test_a_warp_later_than_the_patience_is_cut() -> None:
    # out 3.5 h after the start: 2 h of the crew at 60 = 120, then 1.5 h × 10 m × 3 = 45
    assert cost_of(at(10, 12.5), at(10, 9))["late beam out"] == "165.00"


def test_lost_production_counts_running_hours_only() -> None:
    # out on Wednesday 13:00, start on Thursday 09:00, the hall weaves 06:00–22:00 only: 9 + 3 h of waiting, 2 h of work
    day_only = (Running("Hall 1", frozenset(range(7)), time(6), time(22)),)
    assert cost_of(at(9, 13), at(10, 9), running=day_only)["lost production"] == "70.00"
    assert cost_of(at(9, 13), at(10, 9))["lost production"] == "110.00"


def test_unsold_capacity_loses_nothing() -> None:
    unsold = LOOMS | {TWO: replace(LOOMS[TWO], capacity_unsold=True)}
    assert cost_of(at(9, 13), at(10, 9), looms=unsold)["lost production"] == "0.00"


def test_costs_are_means_over_the_99_quantiles_of_the_firmed_spread() -> None:
    """72 running hours from firming, variance 72 × 0.5; quantiles by scipy's `invgauss.ppf` (computed)."""
    mean, spread = 72.0, 0.5
    shape = mean**2 / spread
    late_h = invgauss(mu=mean / shape, scale=shape).ppf(np.arange(1, 100) / 100) - mean + 1  # out at 10:00, start 09:00
    # it begins with the half hour after the beam-out, at the latest at 11:00, and lasts two hours; until the beam is out (or
    # the rest of the warp is cut, at 11:00) the loom weaves
    ends_h = 2 + np.ceil(np.clip(late_h, 0, 2) / 0.5) * 0.5
    lost = 5 * (ends_h - np.minimum(late_h, 2)).mean()
    late = (60 * np.clip(late_h, 0, 2) + 30 * np.maximum(0, late_h - 2)).mean()
    found = cost_of(at(10, 10), at(10, 9), spread_h=spread)
    assert float(found["lost production"]) == pytest.approx(lost, abs=0.006)
    assert float(found["late beam out"]) == pytest.approx(late, abs=0.006)


def test_a_booking_dearer_than_leaving_its_loom_over_is_found() -> None:
    # loom 2 costs 10 + 60 + 160 + 100 + 252 = 582 booked; left over 24 × 28 + 160 + 100 = 932 without a penalty. Its
    # contribution at 5,000 instead of 5 an hour: 2 h of conversion cost 10,000
    dear = {TWO: (replace(window(TWO, at(10, 10)), contribution_per_h=5000.0),)}
    booked = replace(BOOKING_2, cost=replace(BOOKING_2.cost, lost_production=10_000.0))
    left = 24 * 28 + 5000 + 260
    says = f"loom 2 (Hall 1) is booked at 10572.00 EUR, leaving it over costs {left:.2f} EUR"
    assert verify(plan(BOOKING_1, booked), problem(WINDOWS | dear)) == (says,)
    # a firm booking may be as dear as it is, and so may the pilot, for which its type waits
    kept = problem(WINDOWS | dear, previous=plan(booked), as_of=at(8, 12), converted={ONE: at(1, 11)}, receipts=())
    assert says not in verify(plan(booked), kept)
    pilot, waits = replace(booked, pilot=True), LeftOver(ONE, as_it_stands("no window"), LEFT_COST)
    assert says not in verify(plan(pilot, left_over=(waits,)), problem(WINDOWS | dear))
    # calling it a pilot does not help where its type has one, or where there are none
    assert says in verify(plan(pilot), problem(WINDOWS | dear, converted={ONE: at(1, 11)}))
    assert says in verify(plan(BOOKING_1, pilot), problem(WINDOWS | dear, soak_days=0))


@pytest.mark.parametrize(
    ("status", "bound", "says"),
    [
        # 892.00 in all; a thousandth of it is 0.892
        (PlanStatus.OPTIMAL, 891.2, ""),
        (
            PlanStatus.OPTIMAL,
            891.0,
            "the status is proven optimal within tolerance, but the gap of 0.112% is above 0.100%",
        ),
        (PlanStatus.FEASIBLE, 891.0, ""),
        (PlanStatus.TIMED_OUT, 891.0, ""),
        (PlanStatus.FEASIBLE, 891.2, "the status is feasible with gap, but the gap of 0.090% is not above 0.100%"),
        (PlanStatus.INFEASIBLE, 0.0, "the status is infeasible, and yet 2 looms are booked"),
    ],
)
def test_the_status_fits_the_gap(status: PlanStatus, bound: float, says: str) -> None:
    assert verify(replace(SOUND, status=status, bound=bound), problem()) == ((says,) if says else ())


def test_sums_that_do_not_agree_are_found() -> None:
    assert verify(replace(SOUND, objective=900.0, bound=899.5), problem()) == (
        "the objective is 900.00, bookings and left-over looms add up to 892.00",
    )
    assert verify(replace(SOUND, bound=893.0), problem()) == ("the bound 893.00 lies above the objective 892.00",)
