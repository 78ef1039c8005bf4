"""The planner as a whole: statuses, reasons, other dates, prices, repeatability, and ends by limit or interrupt."""

from dataclasses import replace
from datetime import date, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from made_problems import problem_of
from refusals import refused
from said import texts
from two_looms import CONTENTS, ELECTRICIAN, FITTERS, LOOMS, MONDAY, ONE, TWO, at, problem, still, window

from tracker.domain.mill import Closure, Part, Receipt, Tool
from tracker.domain.plan import Plan, PlanStatus
from tracker.domain.windows import WindowKind
from tracker.errors import DataError, Message, as_it_stands
from tracker.planning.planner import plan
from tracker.planning.verify import verify
from tracker.words import ENGLISH

BOTH = {key: (window(key, at(1, 8)),) for key in (ONE, TWO)}
PARTS = {"RAIL": Part("RAIL", 2.0, price=100.0)}


WITH_BENCH = {
    kind: tuple(replace(c, labour_min={**c.labour_min, "assistant": 30.0}, bench_min=30.0) for c in contents)
    for kind, contents in CONTENTS.items()
}


def made(windows=BOTH, **changes: Any) -> Plan:
    asked = problem(windows, **{"parts": PARTS, "soak_days": 0, **changes})
    found = plan(asked, gap=0.0)
    assert verify(found, asked) == ()
    return found


# ---- statuses and ends


def test_the_same_data_and_seed_give_the_same_plan() -> None:
    asked = problem_of(20, 5, 1)
    first, second = (replace(plan(asked, seed=3), seconds=0.0) for _ in range(2))
    assert first == second


def test_a_time_limit_that_strikes_at_once_still_gives_a_plan() -> None:
    asked = problem_of(30, 6, 1)
    found = plan(asked, time_limit_s=0.0)
    assert found.status is PlanStatus.TIMED_OUT
    assert found.bookings
    assert verify(found, asked) == ()
    assert found.bound <= plan(asked).objective


def test_a_stop_keeps_the_best_plan_so_far() -> None:
    asked = problem_of(30, 6, 1)
    calls = 0

    def stop() -> bool:
        nonlocal calls
        calls += 1
        return calls > 20

    found = plan(asked, gap=0.0, stop=stop)
    assert found.status is PlanStatus.TIMED_OUT
    assert verify(found, asked) == ()
    assert found.objective <= plan(asked, time_limit_s=0.0).objective


def test_an_interrupt_keeps_the_best_plan_so_far() -> None:
    asked = problem_of(30, 6, 1)
    told: list[Message] = []

    def progress(what: Message, fraction: float) -> None:
        told.append(what)
        if len(told) == 8:
            raise KeyboardInterrupt

    found = plan(asked, gap=0.0, progress=progress)
    assert found.bookings
    assert verify(found, asked) == ()


def test_progress_tells_the_falling_gap() -> None:
    told: list[tuple[str, float]] = []
    found = plan(problem_of(20, 5, 1), progress=lambda what, fraction: told.append((ENGLISH.say(what), fraction)))
    assert all(0 < fraction < 1 and "gap" in text for text, fraction in told)
    assert told[-1][1] > told[0][1]
    assert told[-1][0].endswith(f": {found.objective:,.0f} EUR, gap {found.gap:.2%}")


def test_a_plan_within_the_gap_is_called_optimal_and_its_bound_holds() -> None:
    asked = problem_of(24, 5, 1)
    loose, exact = plan(asked, gap=0.05), plan(asked, gap=0.0)
    assert loose.status is exact.status is PlanStatus.OPTIMAL
    assert loose.gap <= 0.05
    assert loose.bound <= exact.objective + 0.01
    assert exact.objective <= loose.objective + 0.01


def test_no_loom_to_plan_is_an_empty_plan() -> None:
    found = made(left_out=frozenset(LOOMS))
    assert (found.bookings, found.left_over, found.objective, found.status) == ((), (), 0.0, PlanStatus.OPTIMAL)


# ---- why looms are left over


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        ({"windows": {}}, "no beam-out, no standing span and no warp to stop before the horizon"),
        ({"unplannable": dict.fromkeys(LOOMS, as_it_stands("to survey: rail unknown"))}, "to survey: rail unknown"),
        (
            {"looms": {k: replace(v, protected_until=date(2027, 3, 1)) for k, v in LOOMS.items()}},
            "protected until Mon 1 Mar 2027",
        ),
        (
            {"parts": {"RAIL": Part("RAIL", 0.0)}, "receipts": ()},
            "no kit before the horizon: part RAIL, 1 needed and 0 to be had",
        ),
        ({"crews": (FITTERS,)}, "there is never 1 × electrician before the horizon"),
        (
            {"crews": (FITTERS, replace(ELECTRICIAN, shift_start=time(13, 30)))},
            "1 × electrician not there at the hours in which its work needs it",
        ),
        ({"tools": {"hoist": Tool("hoist", 0)}}, "there is never 1 × hoist before the horizon"),
        (
            {"looms_stopped_at_once": 0},
            "there is never a place among the looms stopped at once (a term) before the horizon",
        ),
        ({"horizon_days": 1}, "no working time of a crew in its windows"),
    ],
)
def test_why_nothing_could_be_booked(changes: dict[str, Any], why: str) -> None:
    found = made(changes.pop("windows", BOTH), **changes)
    assert {ENGLISH.line(item.why) for item in found.left_over} == {why}
    assert found.status is PlanStatus.INFEASIBLE
    assert ENGLISH.line(found.reasons[0]) == (
        f"No loom can be booked; for 2 of 2 the reason is: {why}. "
        "Lift that limit (a later horizon, more people, an earlier receipt) and plan again."
    )


def test_a_loom_that_gave_way_to_another_is_told_what_was_taken() -> None:
    # one crew for the half hours 08:00 to 10:00 of one day: one of the two is left over
    short = (replace(FITTERS, shift_start=time(8), shift_end=time(10), to_on=date(2027, 1, 5)), ELECTRICIAN)
    found = made({key: (window(key, at(1, 8)),) for key in LOOMS}, crews=short, as_of=at(1, 0))
    assert len(found.bookings) == 1
    assert [ENGLISH.line(item.why) for item in found.left_over] == [
        "no crew: every fitter crew is taken in its windows by looms for which that saves more"
    ]


# ---- bad input


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"crews": (ELECTRICIAN,)}, "no crew of the lead trade 'fitter' is listed"),
        ({"as_of": at(40, 0)}, "the horizon of 28 days ends on Mon 1 Feb 2027 00:00, and as of is Sat 13 Feb 2027"),
        ({"as_of": MONDAY.replace(tzinfo=None)}, "has no time zone"),
        ({"parts": {}}, "needs part RAIL, which is not in the sheet Parts"),
        ({"crews": (replace(FITTERS, to_on=date(2027, 1, 3)), ELECTRICIAN)}, "works before the horizon"),
        (
            {"closures": tuple(Closure(MONDAY.date() + timedelta(days=i)) for i in range(28))},
            "works before the horizon",
        ),
    ],
)
def test_data_that_cannot_carry_a_plan_are_refused_by_name(changes: dict[str, Any], message: str) -> None:
    with refused(DataError, message):
        plan(problem(BOTH, **{"parts": PARTS, **changes}))


def test_what_was_taken_for_granted_is_told() -> None:
    found = made(
        crews=(FITTERS, ELECTRICIAN),
        contents=dict.fromkeys(LOOMS, WITH_BENCH),
        as_of=MONDAY,
        receipts=(Receipt("4500-10", "RAIL", 1.0, date(2027, 1, 2)),),
    )
    assert texts(found.reasons) == (
        "No crew of the trade 'assistant' is listed: its hours cost nothing here, and what needs it on the loom cannot be "
        "booked.",
        "Order 4500-10: 1 of RAIL were due on Sat 2 Jan 2027 and have not come; they count like an order placed today, due on "
        "Mon 1 Feb 2027. Receive them, or give the receipt its new date.",
    )


# ---- other dates and prices


def test_other_dates_cost_what_moving_this_loom_alone_would_cost() -> None:
    # out on Tuesday 08:00 and booked then; on Wednesday 06:00 it has waited 22 h at 5 + 1, on Thursday 46 h
    found = made({ONE: BOTH[ONE]})
    assert [(o.start, o.extra_cost) for o in found.other_dates] == [
        (at(2, 6), pytest.approx(132)),
        (at(3, 6), pytest.approx(276)),
    ]


def test_a_second_crew_saves_what_its_price_says() -> None:
    # one crew, two looms out at 08:00: the second waits 2 h at 6 a hour. Four half hours in which one crew more would
    # save 12 in all, as there are a hoist and an electrician for each: the prices of the week's half hours sum up to 12 (and no
    # less can be shared among them)
    found = made(crews=(FITTERS, replace(ELECTRICIAN, heads=2)), tools={"hoist": Tool("hoist", 2)})
    [price] = found.prices
    half_hours = 5 * 16
    assert (ENGLISH.say(price.what), price.week) == ("fitter crew-hour", "2027-W01")
    assert 0 < price.price / 2 * half_hours <= 12 + 1e-6


def test_one_more_rail_saves_what_its_price_says() -> None:
    # one rail: the other loom is left over (24 × 28 + 5260 = 5932) instead of being booked at 304 + 12
    found = made(parts={"RAIL": Part("RAIL", 1.0, price=100.0)}, receipts=())
    prices = {price.week: price.price for price in found.prices if ENGLISH.say(price.what) == "RAIL"}
    assert prices == {"2027-W01": pytest.approx(5932 - 304, abs=13)}


# ---- windows of other kinds


def test_a_standing_loom_is_converted_while_it_stands() -> None:
    # stands on Wednesday from 09:00 to 12:00: it starts at once, loses no production, and costs 59 h of saving
    found = made({ONE: (still(ONE, WindowKind.STANDING, at(2, 9), at(2, 12), 1),)})
    [booking] = found.bookings
    assert (booking.start, booking.kind, booking.beam_out_p50) == (at(2, 9), WindowKind.STANDING, None)
    assert booking.cost.lost_production == 0


def test_a_mid_warp_stop_begins_the_day() -> None:
    # as of Monday 07:00: the first working half hour of a day comes on Tuesday
    found = made({ONE: (still(ONE, WindowKind.MID_WARP, at(0, 7), at(28, 0), 0),)}, as_of=at(0, 7))
    assert [b.start for b in found.bookings] == [at(1, 6)]


def test_a_beam_out_that_should_have_been_is_expected_now() -> None:
    # out since Friday 1 January by the forecast: planned at once on Monday
    found = made({ONE: (window(ONE, at(-3, 8)),)}, as_of=at(0, 6))
    assert [b.start for b in found.bookings] == [at(0, 6)]


@pytest.mark.parametrize("zone", ["Asia/Kathmandu", "Asia/Kolkata", "America/St_Johns", "Australia/Lord_Howe"])
def test_shifts_begin_on_the_local_half_hour_in_zones_with_odd_offsets(zone: str) -> None:
    """Offsets 5:45, 5:30, -3:30 and 11:00 (10:30 from April on): a warp out at 08:00 local starts at 08:00 local."""
    local = MONDAY.replace(tzinfo=ZoneInfo(zone))
    as_of = local.astimezone(MONDAY.tzinfo)
    out = as_of + timedelta(days=1, hours=8)
    found = made({ONE: (window(ONE, out),)}, time_zone=zone, as_of=as_of)
    assert [b.start for b in found.bookings] == [out]
    assert found.bookings[0].start.astimezone(ZoneInfo(zone)).time() == time(8)


def test_the_clocks_go_forward_between_start_and_end() -> None:
    """Europe/Vienna, 28 March 2027: a night shift from 22:00 to 06:00 has seven hours. Out on Saturday 23:00 local
    (22:00 UTC): 12 half hours of work end at 06:00 local (04:00 UTC)."""
    steps = (replace(CONTENTS[WindowKind.REPEAT][0].steps[0], minutes=360.0),)
    night = replace(CONTENTS[WindowKind.REPEAT][0], steps=steps, on_loom_min=360.0)
    crew = replace(
        FITTERS, weekdays=frozenset(range(7)), shift_start=time(22), shift_end=time(6), rate_per_head_h=500.0
    )
    found = made(
        {ONE: (window(ONE, at(82, 22)),)}, time_zone="Europe/Vienna", horizon_days=100, crews=(crew, ELECTRICIAN),
        contents={ONE: {WindowKind.REPEAT: (night,)}}, as_of=at(80, 0),
    )  # fmt: skip
    assert [(b.start, b.end) for b in found.bookings] == [(at(82, 22), at(83, 4))]


def test_what_has_no_price_or_rate_is_told() -> None:
    assert texts(made(parts={"RAIL": Part("RAIL", 2.0)}).reasons) == (
        "No price is given for part RAIL: what is used of them costs nothing here.",
    )
    assert texts(made(crews=(replace(FITTERS, rate_per_head_h=0.0), ELECTRICIAN)).reasons) == (
        "No rate is given for Fitters 1: their hours cost nothing here.",
    )


def test_a_loom_without_a_forecast_is_left_over_at_the_cost_of_its_known_work_too() -> None:
    # 24 a day × 28 days + the penalty of 5000 + labour 160 + parts 100; to be surveyed, its work is not known
    (left,) = made({TWO: BOTH[TWO]}, unplannable={ONE: as_it_stands("the warp left was never read")}).left_over
    assert (left.key, left.cost) == (ONE, 672 + 5000 + 260)
    (left,) = made(
        {TWO: BOTH[TWO]}, unplannable={ONE: as_it_stands("to survey: rail unknown")}, contents={TWO: CONTENTS}
    ).left_over
    assert (left.key, left.cost) == (ONE, 672 + 5000)
