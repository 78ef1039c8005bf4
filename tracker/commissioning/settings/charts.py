"""Individuals and moving-range chart of a family's as-set values, and the modified z-score beside a loom's."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

E2 = 3 / 1.128
"""Half the width of the limits in mean moving ranges: 3 ÷ d2(2)."""
BASELINE = 20
"""Values that the limits come from."""


@dataclass(frozen=True, slots=True)
class Chart:
    centre: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Unsteady:
    rule: int
    """Western Electric Statistical Quality Control Handbook (1956): 1 = one beyond three sigma; 2 = two of three beyond
    two sigma on one side; 3 = four of five beyond one sigma on one side; 4 = eight in a row on one side."""
    at: int
    """Index of the value that completes it."""


def chart(values: ArrayLike) -> Chart | None:
    """Limits from values in order of time; None where they do not range (or are fewer than two)."""
    x = np.asarray(values, dtype=float)
    mean_range = float(np.abs(np.diff(x)).mean()) if len(x) > 1 else 0.0
    if not mean_range:
        return None
    centre = float(x.mean())
    return Chart(centre, centre - E2 * mean_range, centre + E2 * mean_range)


def unsteady(values: ArrayLike, of: Chart) -> list[Unsteady]:
    """Where the Western Electric rules are broken, each rule at the first value that completes it."""
    z = (np.asarray(values, dtype=float) - of.centre) / ((of.high - of.centre) / 3)
    found = []
    for rule, (needed, window, beyond) in enumerate(((1, 1, 3.0), (2, 3, 2.0), (4, 5, 1.0), (8, 8, 0.0)), start=1):
        at = next((i for i in range(len(z)) if _broken(z[max(0, i - window + 1) : i + 1], needed, beyond)), None)
        if at is not None:
            found.append(Unsteady(rule, at))
    return found


def _broken(z: np.ndarray, needed: int, beyond: float) -> bool:
    """The newest value and enough of those before it lie beyond, on one side."""
    side = np.sign(z[-1])
    return bool(abs(z[-1]) > beyond and (z * side > beyond).sum() >= needed)


def modified_z(values: ArrayLike) -> np.ndarray:
    """0.6745·(x − median) ÷ median absolute deviation (Iglewicz and Hoaglin 1993, NIST e-Handbook 1.3.5.17); 0 where more
    than half of the values are equal."""
    x = np.asarray(values, dtype=float)
    apart = x - np.median(x)
    mad = float(np.median(np.abs(apart)))
    return 0.6745 * apart / mad if mad else np.zeros_like(x)
