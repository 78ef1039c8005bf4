"""Plans made anew on the way: what a person knows by then, what is booked elsewhere, and what is not.

Two looms (two_looms.py): Monday 4 January 2027 is day 0, the crew works 6:00 to 14:00 from Monday to Friday, warps are read at
14:00 on days of work. A conversion takes two hours. What is read and what is planned was worked out on paper.
"""

from dataclasses import replace
from datetime import date
from statistics import fmean, variance
from typing import Any

import pytest
from made_problems import problem_of
from test_played_by_hand import STOCKED, booked, planned, world
from two_looms import ELECTRICIAN, FITTERS, ONE, TWO, at, problem, window

from tracker.domain.mill import Absence, Part, Tool
from tracker.domain.plan import CrewTurn, Plan
from tracker.planning.planner import plan, renew
from tracker.planning.problem import PlanningProblem
from tracker.planning.verify import verify
from tracker.rehearsal.drawing import Noise
from tracker.rehearsal.hall import Hall
from tracker.rehearsal.known import KnownByThen
from tracker.rehearsal.policies import KEPT, REPLANNED
from tracker.rehearsal.readings import Readings
from tracker.rehearsal.sources import STILL, Source, Spreads
from tracker.rehearsal.world import Play, play

EARLY = {(ONE, 1): -49.0}
"""Loom 1 lasts 223 running hours instead of 272: its beam is out on Wednesday, day 9, at 7:00. On Friday, day 4, at 14:00 (hour
110) 113 are to go. What is left of a warp that runs out evenly would by its mean last 272 x 113 / 223 = 137.83 h: to Thursday
7:50."""


def alone(**changes: Any) -> PlanningProblem:
    """Loom 1 runs out on Friday, day 11, at 8:00, 272 running hours from the outset, and is the only one to convert."""
    given = {"soak_days": 0, "parts": STOCKED, "left_out": frozenset({TWO})} | changes
    return problem({ONE: (window(ONE, at(11, 8)),)}, **given)


def test_a_reading_on_friday_shows_a_beam_early_and_the_monday_plan_takes_it() -> None:
    """On Monday, day 7, it is booked on Thursday at 8:00: as expected then, Friday would cost 24 h x 5 and a day's saving of 24
    more, a move 60. The beam comes on Wednesday at 7:00 and the loom stands until Thursday at 10:00, 27 h x 5; kept, until
    Friday at 10:00, 51 h x 5."""
    hall = planned(alone(), booked(ONE, 11, 8))
    (kept,) = play(hall, world(warps=EARLY), KEPT, STILL).done
    (anew,) = play(hall, world(warps=EARLY), REPLANNED, STILL, renew).done
    assert [hall.case.begin(done.start) for done in (kept, anew)] == [at(11, 8), at(10, 8)]
    assert [done.cost.lost_production for done in (kept, anew)] == [pytest.approx(255.0), pytest.approx(135.0)]
    assert kept.cost.saving_foregone - anew.cost.saving_foregone == pytest.approx(24.0)
    assert (kept.cost.moves, anew.cost.moves) == (0.0, 60.0)


def test_what_is_expected_follows_the_newest_reading() -> None:
    """Before the first reading as at the outset; on Monday, day 7, Thursday 7:50 less 0.17 h x 60 = 10 min."""
    hall = planned(alone(), booked(ONE, 11, 8))
    readings = Readings(hall, world(warps=EARLY))
    (before,) = readings.windows(ONE, at(0, 6), 0.0, None)
    (after,) = readings.windows(ONE, at(7, 6), 0.0, None)
    assert before.mean_at == at(11, 8)
    assert after.reading_at == at(4, 14)
    assert after.mean_running_h == pytest.approx(272 * 113 / 223)
    assert (after.mean_at - at(10, 7.5)).total_seconds() / 60 == pytest.approx(19.8, abs=0.1)


def test_a_loom_that_stands_is_known_to_stand_and_its_next_beam_comes_so_much_later() -> None:
    """It stands since day 1 at 8:00; on day 2 at 8:00 it has lost 24 h, and its next beam is expected on day 16 at 8:00."""
    hall = planned(problem({ONE: (window(ONE, at(1, 8)), window(ONE, at(15, 8), 2))}, soak_days=0), booked(ONE, 1, 8))
    out, later = Readings(hall, world()).windows(ONE, at(2, 8), 0.0, 1)
    assert (out.number, out.mean_at, out.state) == (1, at(1, 8), "overdue")
    assert (later.number, later.mean_at) == (2, at(16, 8))


def test_readings_on_the_way_are_right_on_average_and_vary_as_the_forecast_says() -> None:
    """Over beam-outs as they are drawn, what a reading says is left has the mean that the model gives: 272 less the hours woven,
    110 by Friday at 14:00, and their variance is spread x hours woven. 500 draws: the mean within 3 standard errors, the
    variance within 19 % (a sample variance of 500 has a standard error of 6.3 %)."""
    given = alone()
    spread_h = 1.5
    given = replace(given, windows={ONE: (replace(given.windows[ONE][0], spread_h=spread_h),)})
    hall = planned(given, booked(ONE, 11, 8))
    drawing = hall.drawing(Spreads(reading_error=0.0, off=frozenset(Source) - {Source.BEAM_OUTS}))
    left = []
    for number in range(500):
        (seen,) = Readings(hall, drawing.world(3, number)).windows(ONE, at(7, 6), 0.0, None)
        left.append(seen.mean_running_h)
    assert fmean(left) == pytest.approx(272 - 110, abs=3 * (spread_h * 110 / 500) ** 0.5)
    assert variance(left) == pytest.approx(spread_h * 110, rel=0.19)


def test_a_crew_that_falls_ill_breaks_a_firm_booking_and_only_that_is_moved() -> None:
    """Both looms run out on Wednesday at 8:00; crew 1 is to convert loom 1 then, crew 2 loom 2, each with an electrician. Crew 1 is
    ill from Tuesday to Friday. On Tuesday loom 1 is booked at 10:00, after loom 2, which stays: 4 h x 5 instead of 2 h x 5."""
    crews = (FITTERS, replace(FITTERS, crew="Fitters 2"), replace(ELECTRICIAN, heads=2))
    given = problem({key: (window(key, at(2, 8)),) for key in (ONE, TWO)}, soak_days=0, parts=STOCKED, crews=crews,
                    tools={"hoist": Tool("hoist", 2)})  # fmt: skip
    bookings = [replace(booked(key, 2, 8), crews=(CrewTurn(crew, at(2, 8), at(2, 10)),))
                for key, crew in ((ONE, "Fitters 1"), (TWO, "Fitters 2"))]  # fmt: skip
    hall, made = planned(given, *bookings), []

    def planner(known: PlanningProblem) -> Plan:
        made.append((known.as_of, known.mill.absences))
        return renew(known)

    ill = world(away={("Fitters 1", -1): frozenset({1, 2, 3, 4})})
    one, two = sorted(play(hall, ill, REPLANNED, STILL, planner).done, key=lambda done: done.key)
    assert made == [(at(1, 6), (Absence("Fitters 1", date(2027, 1, 5), date(2027, 1, 8)),))]
    assert (hall.case.begin(one.start), hall.case.begin(two.start)) == (at(2, 10), at(2, 8))
    assert one.cost.lost_production == pytest.approx(20.0)


def test_what_does_not_come_on_its_day_is_known_only_then() -> None:
    """A rail is due on Friday, day 4, and comes on day 10. Until Friday it is promised for Friday; on Saturday it is reckoned with
    after the usual five days, on day 10; each later day the same again."""
    given = alone(parts={"RAIL": Part("RAIL", 0.0, price=100.0, lead_time_days=60)})
    hall = planned(given, booked(ONE, 11, 8))
    run = Play(hall, world(late={"RAIL 0": 6}), KEPT, STILL)
    known = KnownByThen(hall, run.world, STILL)
    promised = {day: min(known.promises(run, hall.slot(at(day, 6))))[0] for day in (3, 4, 5, 7)}
    assert promised == {3: 4, 4: 4, 5: 10, 7: 12}


@pytest.mark.parametrize("number", [0, *(pytest.param(n, marks=pytest.mark.long) for n in range(1, 8))])
def test_each_plan_on_the_way_holds_and_nothing_is_done_twice(number: int) -> None:
    """Every plan passes the solver-free check of the data that people had; everybody keeps to it."""
    given = problem_of(8, 4, 2, halls=2, seed=4)
    hall, made = Hall(given, plan(given, gap=0.02)), []
    lively = Spreads(away_share=0.15, fail_share=0.1, late_share=0.5, short_share=0.3, protected_per_week=3)

    def planner(known: PlanningProblem) -> Plan:
        made.append(renew(known))
        assert verify(made[-1], known) == ()
        return made[-1]

    run = Play(hall, hall.drawing(lively).world(7, number), REPLANNED, lively, planner)
    own, shared = run.people.own, run.people.shared
    for t in hall.active:
        run.step(t)
        for pool, used in enumerate(run.people.used):
            assert sum(used) <= sum(mine[t] for mine in own[pool]) + shared[pool][t], (pool, t)
        keys = (
            [work.key for work in run.going]
            + [loom.key for loom in (*run.waiting, *run.never)]
            + [d.key for d in run.done]
        )
        assert len(keys) == len(set(keys))
        assert all(left >= -1e-6 for left in run.stock.values())
    assert len(made) >= 3  # four weeks have three Mondays after the first
    assert run.done


def test_noise_of_more_days_leaves_the_earlier_ones() -> None:
    noise = Noise(1, 2, 0.0)
    assert (noise.of(ONE, 1, 3) == noise.of(ONE, 1, 9)[:3]).all()
