"""A setting over time: where the series starts again, angles, how finely it is read."""

from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from tracker.commissioning.settings.angles import circular_mean, deviation, is_within
from tracker.commissioning.settings.noise import cut_sd, reading_sd, resolution
from tracker.commissioning.settings.series import Limits, Occasion, Series, Value, on_a_line
from tracker.domain.mill import LoomKey

START = datetime(2027, 1, 11, 6, tzinfo=UTC)


def series(*values: tuple, **more) -> Series:
    return Series(
        LoomKey("A", "1"), "crossing angle", "left",
        tuple(Value(v, START + timedelta(days=i), why, *rest) for i, (v, why, *rest) in enumerate(values)), **more,
    )  # fmt: skip


def test_a_series_starts_again_where_somebody_turned_it():
    one = series(
        (300, Occasion.FOUND),
        (310, Occasion.SET),
        (311, Occasion.VISIT),
        (309, Occasion.ADJUSTED),
        (309.5, Occasion.READ_OUT),
    )
    assert [v.value for v in one.since_set] == [309, 309.5]
    assert one.found and one.found.value == 300
    assert one.now.value == 309.5


def test_what_was_set_at_sign_off_is_the_last_set_before_it():
    one = series((310, Occasion.SET), (312, Occasion.ADJUSTED), (311, Occasion.VISIT), (308, Occasion.ADJUSTED))
    at_sign_off = one.set_at(START + timedelta(days=2))
    assert at_sign_off and at_sign_off.value == 312


def test_another_article_starts_it_again_but_one_not_named_does_not():
    one = series(
        (310, Occasion.SET, "A"), (311, Occasion.READ_OUT), (320, Occasion.READ_OUT, "B"), (321, Occasion.READ_OUT, "B")
    )
    assert [v.value for v in one.since_set] == [320, 321]
    same = series((310, Occasion.SET, "A"), (311, Occasion.READ_OUT), (312, Occasion.READ_OUT, "A"))
    assert len(same.since_set) == 3


def test_what_was_found_before_the_conversion_does_not_count():
    assert [v.value for v in series((300, Occasion.FOUND), (310, Occasion.VISIT), (311, Occasion.VISIT)).since_set] == [
        310,
        311,
    ]


@pytest.mark.parametrize(("value", "reference", "apart"), [(1, 359, 2), (359, 1, -2), (10, 350, 20), (180, 0, -180)])
def test_the_shorter_way_round(value, reference, apart):
    assert float(deviation(value, reference)) == apart


def test_the_middle_of_359_and_1_is_0():
    assert circular_mean([359, 1]) == pytest.approx(0, abs=1e-9) or circular_mean([359, 1]) == pytest.approx(360)


@pytest.mark.parametrize(
    ("value", "inside"), [(354, True), (0, True), (8, True), (9, False), (353, False), (180, False)]
)
def test_limits_may_run_through_0(value, inside):
    assert is_within(value, 354, 8) is inside


def test_an_angle_is_taken_from_its_target_or_from_its_own_mean():
    with_target = series((359, Occasion.SET), (3, Occasion.VISIT), unit="deg", limits=Limits(0))
    assert on_a_line(with_target, np.array([359.0, 3.0])).tolist() == [-1, 3]
    without = series((359, Occasion.SET), (3, Occasion.VISIT), unit="deg")  # circular mean 1
    assert on_a_line(without, np.array([359.0, 3.0])) == pytest.approx([-2, 2])


@pytest.mark.parametrize(
    ("values", "step"), [([310, 312, 315], 1), ([300, 310, 320], 10), ([1.5, 2], 0.5), ([0.25], 0.05), ([1 / 3], 0)]
)
def test_the_step_that_values_are_rounded_to(values, step):
    assert resolution(values) == step


def test_the_sd_of_one_reading_from_repeatability_and_rounding():
    # 2.77/2.77 = 1; a step of 6 adds 36/12 = 3; √(1 + 3) = 2
    assert reading_sd(2.77, 6, np.array([])) == pytest.approx(2)


def test_it_is_not_below_what_successive_readings_show():
    # ±2 in succession: mean square 4, of a difference of two readings, so √(4/2); fewer than 20: nothing is cut
    assert reading_sd(1, 0, np.array([2.0, -2.0, 2.0])) == pytest.approx(2**0.5)


def test_the_largest_5_percent_are_cut_and_the_rest_stands_for_a_normal_distribution():
    drawn = np.random.default_rng(5).normal(0, 3, 200_000)
    assert float(cut_sd(drawn)) == pytest.approx(3, rel=0.01)
    drawn[:5_000] *= 100  # one in forty is a blunder
    assert float(cut_sd(drawn)) == pytest.approx(3, rel=0.1)
