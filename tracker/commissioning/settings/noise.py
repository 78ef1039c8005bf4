"""How finely a setting can be read: its resolution and the standard deviation of one reading."""

from math import sqrt

import numpy as np
from numpy.typing import ArrayLike
from scipy.stats import norm

OF_REPEATABILITY = 2.77
"""Repeatability limit ÷ standard deviation of one reading: 1.96·√2 (ISO 5725-6, from memory)."""
_CUT = 0.05
_STEPS = (10, 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01, 0.005, 0.002, 0.001)


def resolution(values: ArrayLike) -> float:
    """The coarsest usual step of which every value is a multiple; 0 where there is none."""
    distinct = np.unique(np.asarray(values, dtype=float))
    for step in _STEPS:
        if np.allclose(distinct / step, np.round(distinct / step), rtol=0, atol=1e-6):
            return step
    return 0.0


def cut_sd(differences: np.ndarray) -> np.ndarray:
    """Standard deviation about 0 along the last axis without the largest 5 %, as of a normal distribution.

    Of a normal distribution cut at ±c the mean square is σ²·(1 − 2cφ(c)/(2Φ(c) − 1)); 0 without differences.
    """
    many = differences.shape[-1]
    if not many:
        return np.zeros(differences.shape[:-1])
    kept = many - int(_CUT * many)
    smallest = np.partition(np.abs(differences), kept - 1, axis=-1)[..., :kept]
    return np.sqrt((smallest**2).mean(axis=-1) / _left_of_variance(kept / many))


def _left_of_variance(share: float) -> float:
    if share == 1:
        return 1.0
    c = norm.ppf((1 + share) / 2)
    return float(1 - 2 * c * norm.pdf(c) / share)


def reading_sd(repeatability: float | None, step: float, successive: np.ndarray) -> float:
    """Standard deviation of one reading: from the repeatability and the rounding, and not below what successive
    differences of this setting in the hall show. 0 where neither tells."""
    shown = float(cut_sd(successive)) / sqrt(2)
    if repeatability is None:
        return shown
    return max(sqrt((repeatability / OF_REPEATABILITY) ** 2 + step**2 / 12), shown)
