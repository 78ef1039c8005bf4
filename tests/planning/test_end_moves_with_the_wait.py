"""What a stop really costs: each of the 99 quantiles of a beam-out is played through by plain Python, half hour by half hour,
on the mill of two looms (fitters and electrician from 6 to 14 o'clock, two hours of work, the second of them with the
electrician; a stopped hour loses 5, a day of saving is 24). The planned expectation must be their mean.
"""

from dataclasses import replace
from datetime import datetime, time, timedelta
from statistics import fmean
from typing import Any

import numpy as np
import pytest
from said import texts
from scipy.stats import invgauss
from two_looms import CONTENTS, ELECTRICIAN, FITTERS, LOOMS, MONDAY, ONE, at, problem, window

from tracker.domain.plan import Booking
from tracker.domain.windows import WindowKind
from tracker.domain.work import WorkContent
from tracker.planning.planner import plan
from tracker.planning.problem import PlanningProblem
from tracker.planning.verify import verify

HOUR = timedelta(hours=1)
HALF = HOUR / 2
MEAN_H, SPREAD_H = 32.0, 0.25
"""Out on Tuesday at 8:00 by the mean, give or take √(32 · 0.25) = 2.8 h."""


def quantiles() -> list[datetime]:
    """Of an inverse Gaussian of mean 32 h and variance 32 × 0.25, by scipy."""
    shape = MEAN_H**2 / SPREAD_H
    return [MONDAY + hours * HOUR for hours in invgauss(MEAN_H / shape, scale=shape).ppf(np.arange(1, 100) / 100)]


def in_shift(moment: datetime, last: float = 14) -> bool:
    return 6 <= moment.hour + moment.minute / 60 < last


def played(booking: Booking, out: datetime, electrician_to: float, change_h: float | None) -> tuple[datetime, datetime]:
    """(since when the loom is stopped, when it runs again) where its beam comes at a moment."""
    stopped = min(out, booking.start + 2 * HOUR)  # the crew waits two hours, then the rest of the warp is cut
    now = booking.start
    while now < stopped or not in_shift(now):
        now += HALF
    for minute in (0, 30, 60, 90):
        if minute == 60 and change_h is not None:
            warp_in = now + change_h * HOUR
            while now < warp_in:
                now += HALF
        while not in_shift(now, electrician_to if minute >= 60 else 14):
            now += HALF
        now += HALF
    return stopped, now


def asked(electrician_to: float, change_h: float | None, start: datetime) -> PlanningProblem:
    """Loom 1 starts at that moment: its only crew is there from then on."""
    fitters = replace(FITTERS, rate_per_head_h=0.0)
    electrician = replace(ELECTRICIAN, shift_end=time(int(electrician_to), int(electrician_to % 1 * 60)))
    contents = {kind: tuple(placed(c) if change_h else c for c in of) for kind, of in CONTENTS.items()}
    out = replace(window(ONE, at(1, 8)), spread_h=SPREAD_H, warp_value_per_m=0.0, ordinary_change_h=change_h or 0.0)
    given: dict[str, Any] = {
        "crews": (fitters, electrician),
        "contents": dict.fromkeys(LOOMS, contents),
        "soak_days": 0,
    }
    return problem({ONE: (out,)}, as_of=start, **given)


def placed(content: WorkContent) -> WorkContent:
    out, into = content.steps
    return replace(content, steps=(replace(out, warp="out"), replace(into, warp="in")))


@pytest.mark.parametrize("change_h", [None, 1.5])
@pytest.mark.parametrize("electrician_to", [14, 11.5])
@pytest.mark.parametrize("hour", [5, 7.5, 9, 9.5, 11])
def test_the_planned_expectation_is_the_mean_of_what_is_played(hour, electrician_to, change_h):
    said = asked(electrician_to, change_h, at(1, hour))
    found = plan(said, gap=0.0)
    assert verify(found, said) == ()
    (booking,) = found.bookings
    assert booking.kind is WindowKind.REPEAT
    ends = [played(booking, out, electrician_to, change_h) for out in quantiles()]
    # the change takes its hours anyway
    lost = fmean((end - stopped) / HOUR - (change_h or 0.0) for stopped, end in ends) * 5
    assert booking.cost.lost_production == pytest.approx(lost, abs=0.01)
    assert booking.cost.saving_foregone == pytest.approx(fmean((end - MONDAY) / HOUR for _, end in ends), abs=0.01)


def test_a_start_at_the_edge_of_a_shift_is_as_dear_as_it_is():
    # a booking from 12:00 to 14:00 whose beam comes at 12:30 in one case of two would end on Wednesday at 6:30
    said = asked(14, None, at(1, 12))
    late = replace(said.windows[ONE][0], mean_at=at(1, 12.5), mean_running_h=36.5, spread_h=0.0)
    said = replace(said, windows={ONE: (late,)})
    (booking,) = plan(said, gap=0.0).bookings
    # begun at 12:30 as well as at 12:00 it ends on Wednesday at 6:30: stopped for 18 h
    assert booking.cost.lost_production == pytest.approx(90.0)


def test_the_plan_names_who_a_usual_wait_pushes_past_the_shift():
    # out at 10:30 in the mean, standard deviation √(34.5 · 0.25) = 2.9 h: the 80 % quantile is 0.84 of it later, at about 12:55.
    # Booked from 12:00 to 14:00 it would begin at 13:00 and be done on Wednesday at 7:00
    said = asked(14, None, at(1, 12))
    said = replace(said, windows={ONE: (replace(said.windows[ONE][0], mean_at=at(1, 10.5), mean_running_h=34.5),)})
    found = plan(said, gap=0.0)
    assert found.bookings[0].start == at(1, 12)
    assert [reason for reason in texts(found.reasons) if "one in five" in reason] == [
        "Where the beam comes as late as one in five does, the wait pushes the end past the shift of 1 (Hall 1) "
        "(Wed 6 Jan 2027 07:00); overtime would end it the same day."
    ]
    # with nothing to vary nothing is pushed
    still = replace(said, windows={ONE: (replace(said.windows[ONE][0], spread_h=0.0),)})
    assert not [reason for reason in texts(plan(still, gap=0.0).reasons) if "one in five" in reason]
