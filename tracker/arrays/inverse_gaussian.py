"""Quantiles of the inverse Gaussian distribution for whole arrays.

scipy's own `invgauss.ppf` takes about 0.3 ms a value, too slow for a mill of thousands of looms; its tests keep this
module honest (`tests/outside/test_inverse_gaussian.py`).
"""

from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]

_STEPS = 200
_CLOSE = 1e-12


def quantile(mean: ArrayLike, spread: ArrayLike, share: ArrayLike) -> Floats:
    """The quantile `share` (0 < share < 1) of an inverse Gaussian with mean `mean` and variance mean × spread.

    In the terms of MODEL.md the shape is mean²/spread. All three arguments broadcast; mean and spread are ≥ 0, in
    the same unit as the result. Without mean or spread there is nothing to vary and the mean comes back.

    Newton's method from the mode, where the distribution function has its inflection, so that every step goes the same
    way and none overshoots (Giner and Smyth, statmod, R Journal 8/1, 2016).
    """
    mean_, spread_, share_ = np.broadcast_arrays(*(np.asarray(a, dtype=float) for a in (mean, spread, share)))
    result = mean_.astype(float)
    varies = (mean_ > 0) & (spread_ > 0)
    if varies.any():
        phi = spread_[varies] / mean_[varies]
        result[varies] *= _unit_mean(phi, share_[varies])
    return result


def cdf(mean: float, spread: float, at: Any) -> Floats:
    """Share of an inverse Gaussian (mean and variance as in `quantile`, both > 0) at or below `at` > 0."""
    return _cdf(np.asarray(at, dtype=float) / mean, np.asarray(spread / mean))


def _unit_mean(phi: Floats, share: Floats) -> Floats:
    """Quantiles for mean 1 and variance phi."""
    half = 1.5 * phi
    x = 1 / (np.sqrt(1 + half**2) + half)
    open_ = np.arange(x.size)
    for _ in range(_STEPS):
        p, f, at = share[open_], phi[open_], x[open_]
        step = (p - _cdf(at, f)) / _density(at, f)
        x[open_] = at + step
        open_ = open_[np.abs(step) > _CLOSE * at]
        if not open_.size:
            break
    return x


def _cdf(x: Floats, phi: Floats) -> Floats:
    from scipy.special import log_ndtr, ndtr  # takes its time: a command that is refused need not wait for it

    root = np.sqrt(phi * x)
    return ndtr((x - 1) / root) + np.exp(2 / phi + log_ndtr(-(x + 1) / root))


def _density(x: Floats, phi: Floats) -> Floats:
    return np.exp(-((x - 1) ** 2) / (2 * phi * x)) / np.sqrt(2 * np.pi * phi * x**3)
