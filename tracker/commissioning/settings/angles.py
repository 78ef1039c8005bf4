"""Angles in degrees, where 359 and 1 lie 2 apart."""

from collections.abc import Iterable

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]

_WORDS = {"deg", "°", "degree", "degrees"}


def is_angle(unit: str | None) -> bool:
    """Whether a setting of this unit is an angle on a circle of 360 degrees."""
    return (unit or "").strip().casefold() in _WORDS


def deviation(value: ArrayLike, reference: ArrayLike) -> Floats:
    """The shorter way round from reference to value, in [-180, 180)."""
    return (np.asarray(value, dtype=float) - np.asarray(reference, dtype=float) + 180) % 360 - 180


def circular_mean(values: Iterable[float]) -> float:
    """Direction of the sum of unit vectors, in [0, 360): Mardia and Jupp, Directional Statistics, 2.2 (from memory).

    Of values that cancel each other out (0 and 180) it is arbitrary.
    """
    radians = np.deg2rad(np.fromiter(values, dtype=float))
    return float(np.rad2deg(np.arctan2(np.sin(radians).sum(), np.cos(radians).sum())) % 360)


def is_within(value: float, low: float, high: float) -> bool:
    """Whether an angle lies on the way up from low to high, which may run through 0 (354 to 8)."""
    return (value - low) % 360 <= (high - low) % 360
