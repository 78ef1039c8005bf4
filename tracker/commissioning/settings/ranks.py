"""Does a series rise or fall, where nobody knows how finely it can be read? Kendall's test, exact also with ties."""

from functools import cache
from math import comb, factorial, prod, sqrt
from typing import Any

import numpy as np
from scipy.stats import norm

_EXACT_TO = 12
"""Readings with ties beyond which the normal distribution stands for the exact one; without ties it is always exact."""


def score(values: np.ndarray) -> np.ndarray:
    """Kendall's S of each row: pairs that rise less pairs that fall."""
    many = values.shape[1]
    total = np.zeros(len(values), dtype=int)
    for gap in range(1, many):
        total += np.sign(values[:, gap:] - values[:, :-gap]).sum(axis=1).astype(int)
    return total


def chances(values: np.ndarray) -> np.ndarray:
    """Two-sided p of each row (series × readings in order of time)."""
    found = np.ones(len(values))
    for i, s in enumerate(score(values)):
        if s:
            ties = tuple(sorted(np.unique(values[i], return_counts=True)[1].tolist()))
            found[i] = _chance(abs(int(s)), ties)
    return found


def of_several(smallest: float, many: int) -> float:
    """The smallest of `many` chances taken as one chance (Šidák 1967)."""
    return float(-np.expm1(many * np.log1p(-smallest))) if smallest < 1 else 1.0


@cache
def _chance(s: int, ties: tuple[int, ...]) -> float:
    many = sum(ties)
    if many > _EXACT_TO and ties[-1] > 1:
        return _normal(s, ties)
    untied = comb(many, 2) - sum(comb(t, 2) for t in ties)
    ways = _orders_by_falls(ties)
    far = sum(count for falls, count in enumerate(ways) if abs(untied - 2 * falls) >= s)
    return min(1.0, float(far / (factorial(many) // prod(factorial(t) for t in ties))))


def _normal(s: int, ties: tuple[int, ...]) -> float:
    """With Kendall's variance for ties and a step of continuity (Rank Correlation Methods, ch. 4; from memory)."""
    many = sum(ties)
    variance = (many * (many - 1) * (2 * many + 5) - sum(t * (t - 1) * (2 * t + 5) for t in ties)) / 18
    return float(min(1.0, 2 * norm.sf((s - 1) / sqrt(variance))))


@cache
def _orders_by_falls(ties: tuple[int, ...]) -> list[int]:
    """How many orders of a set with these ties have 0, 1, 2 … falling pairs: the Gaussian multinomial coefficient
    (MacMahon), Π over ties of Π (1 − q^(m+i)) ÷ (1 − q^i), m the number of values before."""
    poly: Any = [1]
    before = 0
    for tie in ties:
        for i in range(1, tie + 1):
            poly = _divided(_times(poly, before + i), i)
        before += tie
    return poly


def _times(poly: list[int], power: int) -> list[int]:
    """poly × (1 − q^power)."""
    wide = poly + [0] * power
    for k, value in enumerate(poly):
        wide[k + power] -= value
    return wide


def _divided(poly: list[int], power: int) -> list[int]:
    """poly ÷ (1 − q^power), which leaves nothing over."""
    out = list(poly)
    for k in range(power, len(out)):
        out[k] += out[k - power]
    return out[: len(out) - power]
