"""How long forecasts take; run with `pytest tests/benchmarks --benchmark-only`. No times are asserted."""

from datetime import UTC, datetime, timedelta

import numpy as np
import pytest
from scipy.stats import invgauss

from tracker.arrays.inverse_gaussian import quantile
from tracker.domain.mill import Article, Loom, LoomKey, Mill, OrdinaryChange, Reading, Warp
from tracker.forecast.beam_outs import forecast

START = datetime(2027, 1, 4, tzinfo=UTC)
WEEKS_26 = START + timedelta(weeks=26)


def mill(looms: int, days_read: int) -> Mill:
    """Looms that use 400 m a day from warps of 2,000 to 3,000 m, so a beam-out every five to eight days."""
    keys = [LoomKey("Hall", f"{i:04d}") for i in range(looms)]
    lengths = {key: 2000.0 + i * 7 % 1000 for i, key in enumerate(keys)}
    return Mill(
        looms={key: Loom(*key, "AJ", speed_ppm=500, efficiency=0.9) for key in keys},
        warps={key: (Warp(*key, 0, "A", lengths[key], 900.0, START),) for key in keys},
        readings={key: tuple(_readings(key, days_read)) for key in keys},
        articles={"A": Article("A", 17, 0.05, contribution_per_m=0.5)},
        changes=(OrdinaryChange("repeat", 2),),
    )


def _readings(key: LoomKey, days: int) -> list[Reading]:
    return [Reading(*key, START - timedelta(days=d), 900.0 + 400 * d + 9 * (d % 3)) for d in range(days, 0, -1)]


@pytest.mark.parametrize("days_read", [0, 30], ids=["no readings", "30 daily readings"])
def test_5000_looms_26_weeks(benchmark, days_read: int) -> None:
    known = mill(5000, days_read)
    windows = benchmark.pedantic(forecast, (known, START, WEEKS_26), rounds=3)
    benchmark.extra_info["windows"] = sum(map(len, windows.values()))


SPREADS = np.linspace(0.01, 0.2, 300)


@pytest.mark.benchmark(group="300 quantiles of different spread")
def test_quantiles_by_newton(benchmark) -> None:
    benchmark(quantile, 150.0, SPREADS, 0.9)


@pytest.mark.benchmark(group="300 quantiles of different spread")
def test_quantiles_by_scipy(benchmark) -> None:
    """The baseline: the same values by `invgauss.ppf`."""
    shape = 150.0**2 / SPREADS
    benchmark(invgauss(mu=150.0 / shape, scale=shape).ppf, 0.9)
