"""Nobody restarts a loom and goes home. Fitters and electrician of the mill of two looms work from 6 to 14 o'clock; a
conversion takes two hours, a stopped hour loses 5, and waiting is dear (400 an hour).
"""

from dataclasses import replace
from datetime import time
from typing import Any

import pytest
from small_halls import TriedOut, seeds, small_problem
from two_looms import CONTENTS, ELECTRICIAN, FITTERS, LOOMS, ONE, at, problem, window
from worded import verify

from tracker.domain.work import StepLoad
from tracker.planning.baseline.walk import baseline
from tracker.planning.planner import plan
from tracker.planning.problem import PlanningProblem
from tracker.words import ENGLISH

DEAR = replace(FITTERS, rate_per_head_h=200.0)


def asked(out_h: float, after: tuple[StepLoad, ...] = (), **changes: Any) -> PlanningProblem:
    """Loom 1 runs out on Tuesday."""
    given: dict[str, Any] = {"soak_days": 0, "crews": (DEAR, ELECTRICIAN)}
    contents = {kind: tuple(replace(c, after_steps=after) for c in of) for kind, of in CONTENTS.items()}
    return problem({ONE: (window(ONE, at(1, out_h)),)}, contents=dict.fromkeys(LOOMS, contents), **{**given, **changes})


def booked(said: PlanningProblem):
    found = plan(said, gap=0.0)
    assert verify(found, said) == ()
    assert verify(baseline(said), said) == ()
    (booking,) = found.bookings
    return booking.start, booking.end


def test_the_crew_watches_as_long_as_the_term_says():
    assert booked(asked(12.0)) == (at(1, 12), at(1, 14))
    # with an hour of watching it would have to end by 13:00: the last half hour of it is left for Wednesday (18.5 h lost;
    # begun on Wednesday 20 h)
    assert booked(asked(12.0, watch_h=1)) == (at(1, 12.5), at(2, 6.5))
    assert booked(asked(11.0, watch_h=1)) == (at(1, 11), at(1, 13))
    unwatched = plan(asked(12.0), gap=0.0)
    assert verify(unwatched, asked(12.0, watch_h=1)) == (
        "loom 1 (Hall 1) ends Tue 5 Jan 2027 14:00, and no fitter is at work as long as its restart needs",
    )


def test_a_break_of_an_hour_is_within_the_shift_and_a_longer_one_is_not():
    # out at 8:00, done at 10:00, watched to 12:00
    hour = replace(DEAR, breaks="10:30-11:30")
    assert booked(asked(8.0, watch_h=2, crews=(hour, ELECTRICIAN))) == (at(1, 8), at(1, 10))
    longer = replace(DEAR, breaks="10:30-12:00")
    # whatever ends by 10:30 is watched over that break, whatever ends after 12:00 beyond 14:00: half an hour is left for
    # Wednesday
    assert booked(asked(8.0, watch_h=2, crews=(longer, ELECTRICIAN))) == (at(1, 12.5), at(2, 6.5))


def test_the_trades_of_the_steps_after_the_restart_are_there_in_their_time():
    # 45 minutes of a fitter, then 30 of the electrician, who goes at 13:00: the step touches the half hours from 30 to 90
    # minutes after the end, so that it must end by 11:30
    after = (StepLoad(30, 45.0, {"fitter": 1}, {}), StepLoad(40, 30.0, {"electrician": 1}, {}))
    gone = replace(ELECTRICIAN, shift_end=time(13))
    assert booked(asked(9.5, after, crews=(DEAR, gone))) == (at(1, 9.5), at(1, 11.5))
    # out at 10:00 it does not: the hour with him is left for Wednesday (21 h lost; begun on Wednesday 22 h)
    assert booked(asked(10.0, after, crews=(DEAR, gone))) == (at(1, 13), at(2, 7))
    # without the steps he is needed to the end only
    assert booked(asked(11.0, crews=(DEAR, gone))) == (at(1, 11), at(1, 13))


def test_nobody_has_the_trade_that_a_restart_needs():
    said = asked(9.0, (StepLoad(30, 45.0, {"weaver": 1}, {}),))
    left = next(item for item in plan(said, gap=0.0).left_over if item.key == ONE)
    assert (
        ENGLISH.line(left.why)
        == "the people whom its restart needs after it would not be at work (steps after restart, term 'watch')"
    )


@pytest.mark.parametrize("seed", seeds([0, 15], [1, 4, 3, 8, 10]))
def test_no_plan_that_passes_the_check_is_cheaper(seed):
    small = small_problem(seed)
    after = (StepLoad(30, 20.0, {"electrician": 1}, {}),)
    contents = {
        kind: tuple(replace(c, after_steps=after) for c in of)
        for kind, of in next(iter(small.contents.values())).items()
    }
    terms = replace(small.mill.terms, watch_h=0.5)
    said = replace(small, contents=dict.fromkeys(small.contents, contents), mill=replace(small.mill, terms=terms))
    found = plan(said, gap=0.0)
    assert verify(found, said) == ()
    assert found.objective == pytest.approx(TriedOut(said).best(), abs=0.01)
    assert verify(baseline(said, [8.0]), said) == ()
