"""One crew, work of exponential length, beam-outs at random: the queue M/G/1, whose mean wait the formula of Pollaczek and
Khinchine gives: λ E[S²] / (2 (1 - ρ)) (L. Kleinrock, Queueing Systems I, Wiley 1975, chapter 5)."""

from dataclasses import replace
from datetime import time, timedelta
from math import exp, log, sqrt
from statistics import fmean

import numpy as np
import pytest
from two_looms import FITTERS, LOOMS, MONDAY, ONE, content, problem, window

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Plan, PlanStatus
from tracker.domain.windows import WindowKind
from tracker.domain.work import StepLoad
from tracker.rehearsal.drawing import World
from tracker.rehearsal.hall import Hall
from tracker.rehearsal.policies import rule_of_thumb
from tracker.rehearsal.results import interval
from tracker.rehearsal.sources import STILL
from tracker.rehearsal.world import play

MEAN_SLOTS = 40
"""Half hours that a conversion takes on average: 20 h."""
BETWEEN_H = 40.0
"""Mean time from one beam-out to the next: the crew is at work half of the time."""
WARMING_UP = 20
"""Looms of each run that are not counted, since it begins with an idle crew."""
LOOMS_A_RUN, RUNS = 150, 40


def mean_wait_h() -> float:
    """Work takes so many hundredths of the mean as are drawn, rounded, and then whole half hours."""
    hundredths = range(5, 3000)
    share = [exp(-(k - 0.5) / 100) - exp(-(k + 0.5) / 100) for k in hundredths]
    share[0] += 1 - exp(-0.045)  # nothing takes less than five hundredths
    hours = [-(-MEAN_SLOTS * k // 100) / 2 for k in hundredths]
    mean, square = (sum(p * h**power for p, h in zip(share, hours, strict=True)) for power in (1, 2))
    return square / BETWEEN_H / (2 * (1 - mean / BETWEEN_H))


def waits_h(seed: int) -> list[float]:
    """Of the looms of one run, from the beam-out to the start."""
    drawn = np.random.default_rng(seed)
    at = np.cumsum(drawn.exponential(BETWEEN_H, LOOMS_A_RUN))
    keys = [LoomKey("Hall 1", f"{i:03}") for i in range(LOOMS_A_RUN)]
    outs = {key: MONDAY + timedelta(hours=float(hours)) for key, hours in zip(keys, at, strict=True)}
    work = replace(
        content(), steps=(StepLoad(10, MEAN_SLOTS * 30.0, {"fitter": 2}, {}),), on_loom_min=MEAN_SLOTS * 30.0, parts={}
    )
    day_and_night = replace(FITTERS, weekdays=frozenset(range(7)), shift_start=time(0), shift_end=time(0))
    given = problem(
        {key: (window(key, out),) for key, out in outs.items()}, crews=(day_and_night,), soak_days=0, watch_h=0.0,
        horizon_days=int(at[-1] / 24) + 60, looms={key: replace(LOOMS[ONE], loom=key.loom) for key in keys},
        contents={key: {WindowKind.REPEAT: (work,)} for key in keys},
    )  # fmt: skip
    hall = Hall(given, Plan(PlanStatus.FEASIBLE, 0, 0, 0, "EUR", MONDAY, MONDAY))
    # the factor of a standard normal value z at a variation of 1 is exp(σz - σ²/2) with σ² = ln 2: turned round, z of a factor
    spread = sqrt(log(2))
    factors = {key: ((log(drawn.exponential()) + spread**2 / 2) / spread,) for key in keys}
    done = play(hall, World({}, factors, {}, {}, {}), rule_of_thumb(100_000), replace(STILL, work_cv=1.0)).done
    assert len(done) == LOOMS_A_RUN
    order = sorted(done, key=lambda one: one.start)
    return [(hall.case.begin(one.start) - outs[one.key]).total_seconds() / 3600 for one in order[WARMING_UP:]]


@pytest.mark.long
def test_one_crew_waits_as_the_queue_of_the_textbook_says() -> None:
    """A start is made at a half hour, a quarter of an hour after the beam-out on average. The interval of the mean wait, twice as
    wide, is to hold the formula's, and to be so narrow that work of even length, which waits half as long, would be found."""
    found = interval([fmean(waits_h(seed)) for seed in range(RUNS)])
    half = found.high - found.mean
    assert 2 * half < mean_wait_h() / 2
    assert found.mean - 0.25 == pytest.approx(mean_wait_h(), abs=2 * half)
