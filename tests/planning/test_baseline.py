"""The baseline worked out on paper, on the two looms of `two_looms.py`."""

from dataclasses import replace
from datetime import date, time
from typing import Any

import pytest
from two_looms import CONTENTS, ELECTRICIAN, FITTERS, LOOMS, MONDAY, ONE, TWO, at, content, problem, still, window

from sample_data.mill import sample_mill
from tracker.domain.clock import horizon_end
from tracker.domain.mill import Crew, LoomKey, Part, Receipt, Tool
from tracker.domain.plan import Booking, Plan, PlanStatus
from tracker.domain.windows import WindowKind
from tracker.errors import as_it_stands
from tracker.forecast.beam_outs import forecast, unforecast
from tracker.planning.baseline.walk import baseline
from tracker.planning.problem import InWork, PlanningProblem
from tracker.planning.verify import verify
from tracker.scope.content import scope_looms
from tracker.words import ENGLISH

STOCK = {"RAIL": Part("RAIL", 9.0, price=100.0)}


def starts(plan: Plan) -> dict[str, Any]:
    return {booking.key.loom: booking.start for booking in plan.bookings}


def booking(plan: Plan, key: LoomKey) -> Booking:
    return next(b for b in plan.bookings if b.key == key)


def test_each_beam_out_is_taken_at_the_first_working_slot() -> None:
    # loom 1 out on Tuesday 08:00: at once; loom 2 out on Thursday of the second week at 16:00, after the shift:
    # Friday 06:00
    windows = {ONE: (window(ONE, at(1, 8)),), TWO: (window(TWO, at(10, 16)),)}
    known = problem(windows, parts=STOCK)
    plan = baseline(known)
    assert starts(plan) == {"1": at(1, 8), "2": at(11, 6)}
    assert booking(plan, ONE).pilot
    assert not booking(plan, TWO).pilot
    assert verify(plan, known) == ()


def test_costs_are_those_of_the_plan() -> None:
    # loom 1 waits 0 h, 2 h of conversion at 5; 34 h of saving at 1; loom 2 waits 14 h; 11 days and 8 h of saving
    windows = {ONE: (window(ONE, at(1, 8)),), TWO: (window(TWO, at(10, 16)),)}
    plan = baseline(problem(windows, parts=STOCK))
    one, two = booking(plan, ONE).cost, booking(plan, TWO).cost
    assert (one.lost_production, one.labour, one.parts, one.saving_foregone) == pytest.approx((10, 160, 100, 34))
    assert (two.lost_production, two.saving_foregone) == pytest.approx((5 * 16, 11 * 24 + 8))
    assert plan.objective == pytest.approx(one.total + two.total)
    assert (plan.status, plan.bound) == (PlanStatus.FEASIBLE, 0)


def test_a_loom_that_would_wait_too_long_weaves_on_to_its_next_beam_out() -> None:
    # out on Friday 13:00 of the second week: 2 h do not fit before the weekend without its crew waiting; with a limit
    # of 8 h that is Friday 13:00 itself (ending Monday 07:00); with parts from Monday on only, the next beam-out is taken
    windows = {ONE: (window(ONE, at(1, 8)),), TWO: (window(TWO, at(11, 13)), window(TWO, at(16, 9), 2))}
    late = {
        "parts": {"RAIL": Part("RAIL", 1.0, price=100.0)},
        "receipts": (Receipt("1", "RAIL", 1.0, date(2027, 1, 15)),),
    }
    assert starts(baseline(problem(windows, **late), [8.0]))["2"] == at(16, 9)
    # waiting 3 days is allowed: Monday 06:00, 65 h after the beam-out
    assert starts(baseline(problem(windows, **late), [72.0]))["2"] == at(14, 6)
    # both tried: waiting 65 h at 5 costs more than 51 h of saving at 1
    assert starts(baseline(problem(windows, **late), [8.0, 72.0]))["2"] == at(16, 9)


def test_two_looms_at_once_share_one_crew() -> None:
    windows = {ONE: (window(ONE, at(10, 8)),), TWO: (window(TWO, at(10, 8.5)),)}
    assert starts(baseline(problem(windows, parts=STOCK, soak_days=0.0), [8.0])) == {"1": at(10, 8), "2": at(10, 10)}
    crews = (FITTERS, replace(FITTERS, crew="Fitters 2"), ELECTRICIAN)
    # the electrician and the hoist are wanted in the second hour: two crews and two hoists, but one electrician
    found = baseline(
        problem(windows, parts=STOCK, soak_days=0.0, crews=crews, tools={"hoist": Tool("hoist", 2)}), [8.0]
    )
    assert starts(found) == {"1": at(10, 8), "2": at(10, 9)}
    one_at_once = problem(windows, parts=STOCK, soak_days=0.0, crews=crews, looms_stopped_at_once=1)
    assert starts(baseline(one_at_once, [8.0])) == {"1": at(10, 8), "2": at(10, 10)}


def test_a_crew_bound_to_another_hall_stays_there() -> None:
    windows = {ONE: (window(ONE, at(10, 8)),), TWO: (window(TWO, at(10, 8.5)),)}
    crews = (FITTERS, replace(FITTERS, crew="Fitters 2", hall="Hall 2"), ELECTRICIAN)
    found = baseline(
        problem(windows, parts=STOCK, soak_days=0.0, crews=crews, tools={"hoist": Tool("hoist", 2)}), [8.0]
    )
    assert starts(found) == {"1": at(10, 8), "2": at(10, 10)}


def test_the_others_of_a_type_wait_for_its_pilot() -> None:
    # loom 2 is out first, so it is the pilot: Tuesday 08:00–10:00 + 7 days; loom 1 is out too early, then again
    windows = {ONE: (window(ONE, at(6, 8)), window(ONE, at(9, 8), 2)), TWO: (window(TWO, at(1, 8)),)}
    found = baseline(problem(windows, parts=STOCK), [8.0])
    assert starts(found) == {"2": at(1, 8), "1": at(9, 8)}
    assert booking(found, TWO).pilot
    # the mill names loom 1: it goes first, and loom 2 is left over, for it has one window only
    named = problem(windows, parts=STOCK, pilots={"AJ": "1"})
    found = baseline(named, [48.0])
    assert starts(found) == {"1": at(7, 6)}  # out on Sunday
    assert [item.key for item in found.left_over] == [TWO]
    assert verify(found, named) == ()


def test_protected_looms_wait_and_dear_ones_are_left_over() -> None:
    windows = {ONE: (window(ONE, at(1, 8)), window(ONE, at(8, 8), 2)), TWO: (window(TWO, at(10, 8)),)}
    looms = LOOMS | {ONE: replace(LOOMS[ONE], protected_until=date(2027, 1, 5))}
    assert starts(baseline(problem(windows, parts=STOCK, looms=looms, soak_days=0.0), [8.0]))["1"] == at(8, 8)
    # leaving over costs 24 · 28 + 260 without the penalty; a saving of 24 a day foregone until then is less
    cheap = baseline(problem(windows, parts=STOCK, left_over_penalty=-700.0, soak_days=0.0), [8.0])
    assert cheap.bookings == ()
    assert len(cheap.left_over) == 2


def test_a_standing_loom_is_taken_as_soon_as_everything_is_free() -> None:
    windows = {ONE: (still(ONE, WindowKind.STANDING, at(9, 10), at(10, 12), 3),), TWO: (window(TWO, at(9, 9)),)}
    known = problem(windows, parts=STOCK, soak_days=0.0)
    assert starts(baseline(known, [4.0])) == {"2": at(9, 9), "1": at(9, 11)}
    assert verify(baseline(known, [4.0]), known) == ()


def test_firm_bookings_and_looms_in_work_come_first() -> None:
    three = LoomKey("Hall 1", "3")
    looms = LOOMS | {three: replace(LOOMS[ONE], loom="3")}
    windows = {ONE: (window(ONE, at(1, 8)),), TWO: (window(TWO, at(1, 8)),)}
    old = baseline(problem({TWO: (window(TWO, at(1, 8)),)}, parts=STOCK, soak_days=0.0), [0.0])
    known = problem(
        windows,
        looms=looms,
        contents=dict.fromkeys(looms, CONTENTS),
        parts=STOCK,
        soak_days=0.0,
        previous=replace(old, bookings=tuple(replace(b, start=at(1, 9), end=at(1, 11)) for b in old.bookings)),
        in_work=(InWork(three, 4, content()),),
        as_of=at(1, 6),
    )
    # loom 3 has the crew from 06:00 to 08:00, loom 2 is firm from 09:00 to 11:00, loom 1 takes what is left
    found = baseline(known, [8.0])
    assert starts(found) == {"2": at(1, 9), "1": at(1, 11)}
    assert booking(found, TWO).firm


def test_cheaper_choices_are_taken_where_both_can_start() -> None:
    cheap = replace(content(rail="drilled"), parts={})
    contents = {kind: (content(kind), cheap) for kind in WindowKind}
    windows = {ONE: (window(ONE, at(1, 8)),), TWO: (window(TWO, at(10, 8)),)}
    found = baseline(problem(windows, parts=STOCK, contents=dict.fromkeys(LOOMS, contents)), [8.0])
    assert {b.choices for b in found.bookings} == {(("rail", "drilled"),)}
    # without a rail in stock only the drilled one can start
    none = {"RAIL": Part("RAIL", 0.0, price=100.0)}
    found = baseline(problem(windows, parts=none, receipts=(), contents=dict.fromkeys(LOOMS, contents)), [8.0])
    assert {b.choices for b in found.bookings} == {(("rail", "drilled"),)}


def test_without_any_window_everything_is_left_over() -> None:
    found = baseline(problem({}, unplannable={ONE: as_it_stands("to survey: rail unknown")}), [8.0])
    assert {item.key.loom: ENGLISH.line(item.why) for item in found.left_over} == {
        "1": "to survey: rail unknown", "2": "no beam-out with everything free in time"
    }  # fmt: skip


def test_a_night_shift_converts_too() -> None:
    nights = Crew("Nights", "fitter", 2, shift_start=time(22), shift_end=time(6), rate_per_head_h=30.0)
    electricians = replace(ELECTRICIAN, shift_start=time(22), shift_end=time(6))
    windows = {ONE: (window(ONE, at(1, 20)),), TWO: (window(TWO, at(10, 23)),)}
    known = problem(windows, parts=STOCK, crews=(nights, electricians))
    found = baseline(known, [8.0])
    assert starts(found) == {"1": at(1, 22), "2": at(10, 23)}
    assert verify(found, known) == ()


def test_the_baseline_of_the_sample_mill_passes_the_check() -> None:
    mill, as_of = sample_mill(), MONDAY.replace(hour=5)
    scopes = scope_looms(mill)
    known = PlanningProblem(
        mill=mill,
        windows=forecast(mill, as_of, horizon_end(mill.terms, as_of)),
        contents={key: scope.contents for key, scope in scopes.items() if scope.contents},
        as_of=as_of,
        unplannable=unforecast(mill, as_of)
        | {k: s.obstacle for k, s in scopes.items() if s.obstacle and not s.contents},
    )
    plan = baseline(known, [12.0])
    assert verify(plan, known) == ()
    assert len(plan.bookings) + len(plan.left_over) == 96


def test_an_overdue_beam_out_is_gone_after_its_32nd_working_slot() -> None:
    # loom 1 out on Tuesday 08:00: the 32nd working half hour from there begins on Thursday at 07:30 (see test_limits)
    windows = {ONE: (window(ONE, at(1, 8)),), TWO: (window(TWO, at(10, 16)),)}
    assert starts(baseline(problem(windows, parts=STOCK, as_of=at(3, 7)), [48.0]))["1"] == at(3, 7)
    assert "1" not in starts(baseline(problem(windows, parts=STOCK, as_of=at(3, 8)), [48.0]))
