"""Quantiles of the inverse Gaussian for whole arrays: the spread that is left when a booking is made firm.

scipy's `invgauss.ppf` takes up to a millisecond a value for spreads as small as a warp's.
"""

import numpy as np
from scipy.special import log_ndtr, ndtr

from tracker.planning.grid import Floats

SHARES = np.arange(1, 100) / 100
"""The 99 quantiles over which expected costs are taken."""
_STEPS = 100


def firmed(mean_h: Floats, spread_h: Floats) -> Floats:
    """The 99 quantiles (running hours) of inverse Gaussians of mean `mean_h` and variance mean × `spread_h`.

    Both of shape (n,), hours; result (n, 99). Without mean or spread every quantile is the mean (0 where below 0).
    Newton's method from the mode, where every step goes the same way (Giner and Smyth, R Journal 8/1, 2016).
    """
    pairs = np.stack([np.maximum(mean_h, 0.0), spread_h], axis=1)
    unique, back = np.unique(pairs, axis=0, return_inverse=True)
    mean, spread = unique[:, :1], unique[:, 1:]
    varies = ((mean > 0) & (spread > 0))[:, 0]
    result = np.repeat(mean, SHARES.size, axis=1)
    result[varies] *= _unit_mean(spread[varies] / mean[varies])
    return result[back.reshape(-1)]


def _unit_mean(variance: Floats) -> Floats:
    """Quantiles for mean 1; variance (n, 1), result (n, 99)."""
    half = 1.5 * variance
    x = np.repeat(1 / (np.sqrt(1 + half**2) + half), SHARES.size, axis=1)
    for _ in range(_STEPS):
        step = (SHARES - _distribution(x, variance)) / _density(x, variance)
        x = x + step
        if not x.size or np.abs(step / x).max() < 1e-12:
            break
    return x


def _distribution(x: Floats, variance: Floats) -> Floats:
    root = np.sqrt(variance * x)
    return ndtr((x - 1) / root) + np.exp(2 / variance + log_ndtr(-(x + 1) / root))


def _density(x: Floats, variance: Floats) -> Floats:
    return np.exp(-((x - 1) ** 2) / (2 * variance * x)) / np.sqrt(2 * np.pi * variance * x**3)
