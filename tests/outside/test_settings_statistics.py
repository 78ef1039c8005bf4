"""The statistics of settings against published values and other libraries."""

from itertools import permutations
from math import factorial

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import circmean, false_discovery_control, kendalltau

from tracker.commissioning.settings.angles import circular_mean, deviation
from tracker.commissioning.settings.charts import E2, chart, modified_z
from tracker.commissioning.settings.discovery import reported
from tracker.commissioning.settings.ranks import chances, of_several

PAPER = [
    0.0001,
    0.0004,
    0.0019,
    0.0095,
    0.0201,
    0.0278,
    0.0298,
    0.0344,
    0.0459,
    0.3240,
    0.4262,
    0.5719,
    0.6528,
    0.7590,
    1.0,
]
Q1 = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]


def test_modified_z_scores() -> None:
    """Formula of the NIST e-Handbook 1.3.5.17 (from memory), worked by hand: median 2.45; the deviations in order are
    0.05 0.05 0.15 0.15 0.15 0.15 0.35 0.35 5.75 5.85, so their median is 0.15; 0.6745 × 5.75 / 0.15 = 25.86."""
    scores = modified_z([2.1, 2.6, 2.4, 2.5, 2.3, 2.1, 2.3, 2.6, 8.2, 8.3])
    assert scores[-2:] == pytest.approx([25.86, 26.31], abs=0.01)


def test_the_fifteen_chances_of_the_paper() -> None:
    """Benjamini and Hochberg 1995, the example of section 3.2 (quoted): four rejected at 0.05."""
    assert reported(PAPER, 0.05).sum() == 4
    assert reported(PAPER, 0.05).tolist() == (false_discovery_control(PAPER) <= 0.05).tolist()


def test_the_chart_of_individuals() -> None:
    """NIST/SEMATECH e-Handbook 6.3.2.2 (quoted; SOURCES.md Q1): mean 50.81, limits 55.8041 and 45.8159."""
    limits = chart(Q1)
    assert limits is not None
    assert (limits.centre, limits.high, limits.low) == pytest.approx((50.81, 55.8041, 45.8159), abs=1e-4)


def test_the_chart_of_moving_ranges_given() -> None:
    """Montgomery and Runger, Applied Statistics and Probability for Engineers, 15-4, exercise 17 (seen; Q2): ranges
    1 2 1 0 4 … about a mean of 53.05 → 60.888 and 45.212."""
    ranges = [1, 2, 1, 0, 4, 1, 2, 1, 5, 5, 6, 1, 8, 3, 1, 2, 4, 6, 3]
    half = E2 * float(np.mean(ranges))
    assert (53.05 + half, 53.05 - half) == pytest.approx((60.888, 45.212), abs=0.002)


def test_the_factor_of_the_chart() -> None:
    """E2(2) = 2.660 by the usual tables (seen; Q3)."""
    assert pytest.approx(2.660, abs=1e-3) == E2


@pytest.mark.parametrize("many", [4, 5, 7, 9])
def test_a_strictly_rising_series(many: int) -> None:
    """Of n! equally likely orders two are strictly monotone: p = 2/n! (computed)."""
    assert chances(np.arange(many, dtype=float)[None, :])[0] == pytest.approx(2 / factorial(many))


def test_kendall_without_ties_against_scipy() -> None:
    """`scipy.stats.kendalltau(method="exact")`."""
    rng = np.random.default_rng(7)
    for many in (5, 8, 13, 20):
        x = rng.permutation(many).astype(float)
        expected = kendalltau(np.arange(many), x, method="exact").pvalue
        assert chances(x[None, :])[0] == pytest.approx(expected, rel=1e-9)


@pytest.mark.parametrize("values", [(1, 1, 2, 3, 3), (1, 2, 2, 2, 5), (1, 1, 1, 1, 2), (3, 1, 1, 2, 2, 2)])
def test_kendall_with_ties_against_all_orders(values: tuple[int, ...]) -> None:
    """The exact chance by writing out every order of the values (computed)."""

    def score(order: tuple[int, ...]) -> int:
        return sum(int(np.sign(order[j] - order[i])) for i in range(len(order)) for j in range(i + 1, len(order)))

    orders = list(permutations(values))
    far = sum(abs(score(order)) >= abs(score(values)) for order in orders)
    assert chances(np.array([values], dtype=float))[0] == pytest.approx(far / len(orders))


def test_sidak() -> None:
    """1 − (1 − 0.01)^8 = 0.0772553 (Šidák 1967, computed)."""
    assert of_several(0.01, 8) == pytest.approx(0.0772553, abs=1e-7)


@settings(max_examples=50, deadline=None)
@given(st.lists(st.floats(-60, 60), min_size=1, max_size=9), st.floats(0, 359))
def test_the_circular_mean_against_scipy(values: list[float], turn: float) -> None:
    """`scipy.stats.circmean` with high = 360."""
    angles = [(turn + v) % 360 for v in values]
    assert abs(float(deviation(circular_mean(angles), circmean(angles, high=360)))) < 1e-6
