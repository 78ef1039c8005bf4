"""The best split or the best line: moved, drifting, or one odd reading."""

import numpy as np
import pytest
from scipy.stats import norm

from tracker.commissioning.settings.changed import Behaviour, SeriesChange, changes


def one(values: list[float], days: list[float] | None = None, sd: float = 1.0, least: float = 2.77) -> SeriesChange:
    t = days or [7.0 * i for i in range(len(values))]
    return changes(np.array([values], dtype=float), np.array([t]), np.array([sd]), np.array([least]))[0]


def test_a_step_with_two_readings_after_it_has_moved():
    # before 0 0 0, after 10 10: z = 10 / √(1/3 + 1/2) = 10.954; 5 readings: 3 splits, 1 line, 1 last reading = 5 tests
    found = one([0, 0, 0, 10, 10])
    assert (found.course, found.at, found.size) == (Behaviour.MOVED, 3, 10)
    assert found.p == pytest.approx(5 * 2 * norm.sf(10 / (1 / 3 + 1 / 2) ** 0.5))


def test_a_steady_rise_is_a_drift_with_its_slope():
    # 3 a week over 5 weeks: rise 15, slope 3/7 a day; a step of 9 in the middle fits worse
    found = one([0, 3, 6, 9, 12, 15])
    assert found.course is Behaviour.DRIFTING
    assert found.size == pytest.approx(15)
    assert found.slope_per_day == pytest.approx(3 / 7)


def test_one_odd_reading_at_the_end_asks_to_read_again():
    # the others have mean 0; z = 10 / √(1/4 + 1)
    found = one([0, 0, 0, 0, 10])
    assert (found.course, found.size) == (Behaviour.READ_AGAIN, 10)


def test_one_odd_reading_that_later_ones_answered_is_nothing():
    assert one([0, 0, 10, 0, 0]).course is Behaviour.STEADY


def test_less_than_a_repeatability_is_nothing_however_sure():
    assert one([0] * 20 + [1] * 20, sd=0.1).course is Behaviour.STEADY


def test_two_readings_can_only_ask_to_read_again():
    found = one([0, 10])  # z = 10/√2, one test
    assert found.course is Behaviour.READ_AGAIN
    assert found.p == pytest.approx(2 * norm.sf(10 / 2**0.5))


def test_one_reading_says_nothing():
    assert one([5]).course is Behaviour.STEADY


def test_several_series_are_told_apart():
    found = changes(
        np.array([[0, 0, 0, 9, 9], [0, 0, 0, 0, 0.0]]), np.tile(np.arange(5.0), (2, 1)), np.ones(2), np.ones(2)
    )
    assert [change.course for change in found] == [Behaviour.MOVED, Behaviour.STEADY]
