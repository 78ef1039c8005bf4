"""The inverse Gaussian of the forecast against first-passage values and scipy (SOURCES.md G1)."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import invgauss

from tracker.arrays.inverse_gaussian import cdf, quantile

MEAN, SHAPE = 20.0, 44.44444444444444
SPREAD = MEAN**2 / SHAPE  # 9: variance 180 = mean × spread


@pytest.mark.parametrize(("at", "share"), [(10, 0.2125693), (20, 0.6221561), (30, 0.8283583), (60, 0.9819298)])
def test_first_passage_of_level_10_at_drift_half(at: float, share: float) -> None:
    """Drift 0.5, deviation 1.5: mean 20, shape 44.444, variance 180. The density is given by numpy's `wald` page
    (seen), the shares were computed from it."""
    assert pytest.approx(180) == MEAN * SPREAD
    assert float(cdf(MEAN, SPREAD, at)) == pytest.approx(share, abs=1e-7)
    assert float(quantile(MEAN, SPREAD, share)) == pytest.approx(at, rel=2e-6)
    assert float(invgauss(mu=MEAN / SHAPE, scale=SHAPE).cdf(at)) == pytest.approx(share, abs=1e-7)


def test_median_of_the_same() -> None:
    """Median 16.40219 (computed)."""
    assert float(quantile(MEAN, SPREAD, 0.5)) == pytest.approx(16.40219, abs=5e-6)


@settings(max_examples=60, deadline=None)
@given(st.floats(0.05, 3000), st.floats(0.001, 1.0), st.integers(1, 99))
def test_quantiles_agree_with_scipy(mean: float, spread: float, percent: int) -> None:
    """scipy's `invgauss(mu=mean/shape, scale=shape)`, shape = mean²/spread; scipy itself is good to some 1e-9."""
    shape = mean**2 / spread
    expected = invgauss(mu=mean / shape, scale=shape).ppf(percent / 100)
    assert float(quantile(mean, spread, percent / 100)) == pytest.approx(expected, rel=1e-7)


def test_mean_of_99_quantiles_is_close_to_the_mean() -> None:
    # the middle of a distribution with little skew: within a hundredth of its deviation √(72 × 0.0384) = 1.66 h
    times = quantile(72.0, 0.0384, np.arange(1, 100) / 100)
    assert float(times.mean()) == pytest.approx(72, abs=0.02)


def test_nothing_varies_without_mean_or_spread() -> None:
    assert quantile([0.0, 5.0], [0.04, 0.0], 0.9).tolist() == [0.0, 5.0]
