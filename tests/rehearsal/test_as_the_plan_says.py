"""Where nothing varies the played programme costs what the plan says; and beam-out by beam-out what the plan expects."""

from dataclasses import astuple, replace
from statistics import fmean

import numpy as np
import pytest
from made_problems import problem_of
from two_looms import ONE, TWO, at, problem

from tracker.domain.plan import Plan
from tracker.planning.planner import plan
from tracker.planning.problem import PlanningProblem
from tracker.rehearsal.course import Course
from tracker.rehearsal.drawing import BEAM_OUTS, World
from tracker.rehearsal.hall import Hall
from tracker.rehearsal.policies import AS_RECKONED, KEPT
from tracker.rehearsal.sources import STILL
from tracker.rehearsal.world import play


def still(given: PlanningProblem, made: Plan, policy=KEPT) -> Course:
    hall = Hall(given, made)
    return play(hall, hall.drawing(STILL).world(1, 0), policy, STILL)


def test_two_looms_cost_what_was_worked_out_by_hand() -> None:
    """Loom 1 runs out on Tuesday at 8, loom 2 on Thursday week at 10; both have a rail. Each conversion takes 8:00-10:00 (10:00-
    12:00): lost 2 h × 5 = 10 less nothing meanwhile; fitters 4 h × 30 + electrician 1 h × 40 = 160; rail 100; saving 24 a
    day to Tuesday 10:00 = 24 × 34/24 = 34, to Thursday week 12:00 = 24 × 10.5 = 252. In all 304 + 522 = 826."""
    given = problem(soak_days=0)
    course = still(given, plan(given))
    assert {done.key for done in course.done} == {ONE, TWO}
    assert course.cost == pytest.approx(826.0, abs=0.005)


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_where_nothing_varies_a_plan_costs_what_it_says(seed: int) -> None:
    given, made = planned_without_spread(seed)
    course = still(given, made, AS_RECKONED)
    assert len(course.done) == len(made.bookings)
    assert course.cost == pytest.approx(made.objective, abs=0.01)


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_people_who_look_ahead_keep_it_too_where_no_crew_is_booked_before_its_beam(seed: int) -> None:
    """A plan may book a start before the expected beam-out: it then holds crews and trades from the booked start and reckons
    the end from the beam, which others may have in the way. Without those bookings every slot is as planned."""
    given, made = planned_without_spread(seed)
    hall = Hall(given, made)
    early = {b.key for b in made.bookings if b.start < hall.window_of(b).mean_at and b.kind in BEAM_OUTS}
    kept = tuple(booking for booking in made.bookings if booking.key not in early)
    assert len(kept) > len(made.bookings) // 2
    course = still(given, replace(made, bookings=kept))
    assert {done.key: hall.case.begin(done.start) for done in course.done} == {b.key: b.start for b in kept}
    assert sum(done.cost.total for done in course.done) == pytest.approx(sum(b.cost.total for b in kept), abs=0.01)


def planned_without_spread(seed: int) -> tuple[PlanningProblem, Plan]:
    given = problem_of(24, 6, 2, seed=seed, soak_days=0)
    given = replace(given, windows={k: tuple(replace(w, spread_h=0.0) for w in ws) for k, ws in given.windows.items()})
    return given, plan(given)


def test_the_mean_over_a_plans_own_beam_outs_is_what_it_expects() -> None:
    """The plan expects the mean over 99 quantiles of each beam-out; played one by one, each loom alone, they cost that."""
    given = problem_of(12, 4, 2, seed=5)
    made = plan(given)
    assert any(booking.cost.late_beam_out > 1 for booking in made.bookings)
    for booking in made.bookings:
        hall = Hall(given, replace(made, bookings=(booking,), left_over=()))
        window = hall.window_of(booking)
        assert window
        outs = hall.prices._beam_outs(window) or [window.mean_at]
        running = hall.case.running(window.key.hall)
        costs = []
        for out in outs:
            later_h = running.hours_between(window.mean_at, out)
            world = World({(window.key, window.number): later_h}, {}, {}, {}, {})
            (done,) = play(hall, world, AS_RECKONED, STILL).done
            costs.append(astuple(done.cost))
        mean = [fmean(term) for term in zip(*costs, strict=True)]
        assert mean == pytest.approx(astuple(booking.cost), abs=0.01), booking.key


def test_a_beam_two_hours_late_is_waited_for_by_the_crew() -> None:
    """Loom 1's beam comes at 9:30 instead of 8:00, within the patience of 2 h: the crew (2 heads at 30) waits 1.5 h = 90, the
    conversion lies 9:30-11:30, and nothing more is lost than the 2 h of work."""
    given = problem(soak_days=0)
    hall = Hall(given, plan(given))
    (one, _) = sorted(play(hall, World({(ONE, 1): 1.5}, {}, {}, {}, {}), KEPT, STILL).done, key=lambda done: done.key)
    assert hall.case.begin(one.start) == at(1, 9.5)
    assert hall.case.begin(one.end) == at(1, 11.5)
    assert one.cost.late_beam_out == pytest.approx(90.0)
    assert one.cost.lost_production == pytest.approx(10.0)
    assert one.cause == "beam-out"


@pytest.mark.long
def test_over_20_000_draws_of_its_beam_out_a_booking_costs_what_the_plan_expects() -> None:
    """Drawn by NumPy's inverse Gaussian (`wald`: mean µ, shape λ, variance µ³/λ), which knows nothing of the planner's quantiles;
    each loom alone, so without knock-on. 3.29 standard errors: 999 of 1,000 such intervals hold the truth.

    The plan's 99 quantiles leave half a hundredth out at each end, and the dearest draws are among these: the first loom costs 2.54
    more than its 2,755 (lost production 121.23, not 119.50; late beam-out 3.58, not 2.79). That much, 0.1 %, is let pass."""
    given = problem_of(12, 4, 2, seed=5)
    made = plan(given)
    late = [booking for booking in made.bookings if booking.cost.late_beam_out > 1]
    assert late
    for booking in late[:3]:
        hall = Hall(given, replace(made, bookings=(booking,), left_over=()))
        window = hall.window_of(booking)
        assert window
        mean_h, spread_h = hall.prices._firmed(window)
        later = np.random.default_rng(7).wald(mean_h, mean_h**2 / spread_h, 20_000) - mean_h
        worlds = (World({(window.key, window.number): later_h}, {}, {}, {}, {}) for later_h in later.tolist())
        costs = np.array([astuple(play(hall, world, AS_RECKONED, STILL).done[0].cost) for world in worlds])
        totals = costs.sum(axis=1)
        error = 3.29 * totals.std(ddof=1) / np.sqrt(len(totals))
        assert abs(totals.mean() - booking.cost.total) <= error + booking.cost.total / 1000, booking.key
        alike = [i for i, term in enumerate(astuple(booking.cost)) if term and not costs[:, i].std() > 0.001]
        assert costs[0, alike] == pytest.approx(np.array(astuple(booking.cost))[alike], abs=0.01)  # labour and parts
