from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from statistics import mean, stdev
from zoneinfo import ZoneInfo

import pytest

from tracker.domain.calendars import weekly_calendar
from tracker.domain.mill import Reading
from tracker.forecast.variation import default_spread_h, own_spread_h

ZONE = ZoneInfo("UTC")
START = datetime(2027, 1, 4, 6, tzinfo=UTC)
ALWAYS = weekly_calendar([], [], ZONE, date(2027, 1, 1), date(2027, 3, 1))


def readings(used_m: list[float], left_m: float = 3000, start: datetime = START) -> list[Reading]:
    """One a day, the warp used in between as given."""
    found = [Reading("H", "1", start, left_m)]
    for i, used in enumerate(used_m, start=1):
        left_m -= used
        found.append(Reading("H", "1", start + timedelta(days=i), left_m))
    return found


def test_default_variation_of_4_percent() -> None:
    assert default_spread_h(0.04) == pytest.approx(24 * 0.0016)


def test_five_daily_readings_give_24_times_cv_squared() -> None:
    used = [390.0, 410.0, 400.0, 420.0]  # mean 405, sample variance 500/3
    expected = 24 * (stdev(used) / mean(used)) ** 2
    assert own_spread_h(readings(used), ALWAYS, ZONE) == pytest.approx(expected)
    assert expected == pytest.approx(24 * 500 / 3 / 405**2)


def test_four_readings_are_too_few() -> None:
    assert own_spread_h(readings([390.0, 410.0, 400.0]), ALWAYS, ZONE) is None


def test_several_readings_a_day_count_once() -> None:
    daily = readings([390.0, 410.0, 400.0, 420.0])
    extra = [Reading("H", "1", r.read_at - timedelta(hours=3), (r.warp_left_m or 0) + 77) for r in daily]
    both = sorted([*daily, *extra], key=lambda r: r.read_at)
    assert own_spread_h(both, ALWAYS, ZONE) == own_spread_h(daily, ALWAYS, ZONE)


def test_a_beam_change_between_two_readings_is_no_variation() -> None:
    # two warps, each used evenly: 400 m a day of one, 500 of the other; the jump itself is left out
    before = readings([400.0] * 3, left_m=1300)
    after = readings([500.0] * 3, left_m=2900, start=START + timedelta(days=4))
    assert own_spread_h([*before, *after], ALWAYS, ZONE) == pytest.approx(0, abs=1e-12)


def test_days_on_which_the_loom_does_not_run_are_no_variation() -> None:
    # 40 m an hour, 06:00–22:00 except Sunday: 640 m a day and nothing from Sunday 06:00 to Monday 06:00
    shifts = weekly_calendar([(frozenset(range(6)), time(6), time(22))], [], ZONE, date(2027, 1, 1), date(2027, 3, 1))
    used = [640.0] * 6 + [0.0] + [640.0] * 2
    assert own_spread_h(readings(used, left_m=6000), shifts, ZONE) == pytest.approx(0, abs=1e-12)


def test_the_spread_is_per_running_hour() -> None:
    # 16 running hours a day: over h hours the variance is (s·w)²·h, so cv² of a day = s²/16
    shifts = weekly_calendar([(frozenset(range(7)), time(6), time(22))], [], ZONE, date(2027, 1, 1), date(2027, 3, 1))
    used = [390.0, 410.0, 400.0, 420.0]
    expected = 16 * (stdev(used) / mean(used)) ** 2
    assert own_spread_h(readings(used), shifts, ZONE) == pytest.approx(expected)


def test_readings_of_a_loom_that_stood_still_say_nothing() -> None:
    assert own_spread_h(readings([0.0] * 6), ALWAYS, ZONE) is None


def test_readings_days_apart_are_not_daily() -> None:
    # every second day: variation from day to day is not to be seen, however many there are
    apart = [replace(r, read_at=START + 2 * (r.read_at - START)) for r in readings([390.0, 410.0, 400.0, 420.0, 380.0])]
    assert own_spread_h(apart, ALWAYS, ZONE) is None


def test_a_weekend_without_a_reading_is_left_out() -> None:
    # Monday to Friday twice, evenly 400 m a day; 2 × 4 stretches, and none over the weekend
    first = readings([400.0, 410.0, 390.0, 400.0], left_m=6000)
    second = readings([400.0, 410.0, 390.0, 400.0], left_m=6000 - 1600 - 1200, start=START + timedelta(days=7))
    # all eight about 400: squares 2 × (0 + 100 + 100 + 0) = 400 over 24 h a stretch, 7 degrees of freedom
    expected = 24 * (400 / 7) / 400**2
    assert own_spread_h([*first, *second], ALWAYS, ZONE) == pytest.approx(expected)


@pytest.mark.parametrize("rise_m", [1, 100, 300, 700])
def test_any_rise_of_the_warp_left_begins_another_warp(rise_m: float) -> None:
    # 400 m a day evenly, then a new warp (or a misreading): a rise is not warp used
    before = readings([400.0] * 4, left_m=2000)
    after = readings([400.0] * 4, left_m=400 + rise_m, start=START + timedelta(days=5))
    assert own_spread_h([*before, *after], ALWAYS, ZONE) == pytest.approx(0, abs=1e-12)
