from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import numpy as np
import pytest

from tracker.domain.calendars import Calendar, weekly_calendar
from tracker.forecast.running import Clock, moments

VIENNA = ZoneInfo("Europe/Vienna")
SHIFTS = weekly_calendar(
    [(frozenset(range(6)), time(6), time(14)), (frozenset(range(5)), time(22), time(6))],
    [date(2027, 4, 1)],
    VIENNA,
    date(2027, 3, 20),
    date(2027, 4, 20),
)
"""Early and night shifts over the change of clocks on 28 March, with a day off."""


def test_arrays_and_single_moments_agree() -> None:
    clock = Clock(SHIFTS)
    begin = datetime(2027, 3, 19, 12, tzinfo=UTC)
    starts = [begin + timedelta(hours=7 * i) for i in range(100)]
    hours = np.array([0.0, 0.25, 8.0, 16.0, 100.0 / 3, 500.0])
    found = clock.after(np.array([s.timestamp() for s in starts])[:, None], hours)
    for start, row in zip(starts, found, strict=True):
        expected = [SHIFTS.after(start, float(h)).timestamp() for h in hours]
        assert row.tolist() == pytest.approx(expected, abs=2e-6)


def test_elapsed_hours_agree_with_hours_between() -> None:
    clock = Clock(SHIFTS)
    begin = datetime(2027, 3, 19, 12, tzinfo=UTC)
    moments_ = [begin + timedelta(hours=5.5 * i) for i in range(150)]
    found = clock.elapsed_h([m.timestamp() for m in moments_])
    first = SHIFTS.spans[0][0]
    assert found.tolist() == pytest.approx([max(0.0, SHIFTS.hours_between(first, m)) for m in moments_])


def test_a_run_that_fills_a_shift_ends_with_it() -> None:
    # three thirds of an hour and the like must not spill into the next shift: 24 × 8 h one after the other
    clock = Clock(SHIFTS)
    start = SHIFTS.spans[0][0].timestamp()
    ends = {end.timestamp() for _, end in SHIFTS.spans}
    first_shift_h = (SHIFTS.spans[0][1] - SHIFTS.spans[0][0]) / timedelta(hours=1)
    assert float(clock.after(start, sum([first_shift_h / 7] * 7))) in ends


def test_without_a_calendar_the_clock_runs() -> None:
    assert Clock(Calendar()).after([0.0, 3600.0], 2.0).tolist() == [7200.0, 10800.0]
    assert Clock(Calendar()).elapsed_h([5.0]).tolist() == [0.0]


def test_seconds_become_utc_moments() -> None:
    assert moments([0.0, 1.5]) == [
        datetime(1970, 1, 1, tzinfo=UTC), datetime(1970, 1, 1, 0, 0, 1, 500_000, tzinfo=UTC)
    ]  # fmt: skip
