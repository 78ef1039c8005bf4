"""Has a setting changed since it was set? The best split or the best straight line (MODEL.md 3.2).

Many series are asked at once: those of equal length are the rows of one matrix.
"""

from enum import StrEnum
from typing import NamedTuple

import numpy as np
from scipy.stats import norm

_ROWS_AT_ONCE = 4096


class Behaviour(StrEnum):
    """What the readings of a series did."""

    STEADY = "steady"
    MOVED = "moved"
    DRIFTING = "drifting"
    READ_AGAIN = "read again"


class SeriesChange(NamedTuple):
    course: Behaviour
    p: float
    """Chance of as much in a series where nothing changed, times the number of tests; at most 1."""
    size: float
    """Units: after the split less before, the rise along the line, or the odd reading less the others."""
    at: int
    """Index of the first value after the split; 0 for a drift."""
    slope_per_day: float


STEADY = SeriesChange(Behaviour.STEADY, 1.0, 0.0, 0, 0.0)


def changes(values: np.ndarray, days: np.ndarray, sd: np.ndarray, least: np.ndarray) -> list[SeriesChange]:
    """What happened in each series: `values` and `days` are series × readings, in order of time; `sd` of one reading and
    `least` (a repeatability) one per series. A change smaller than `least` is none."""
    if values.shape[1] < 2:
        return [STEADY] * len(values)
    found: list[SeriesChange] = []
    for start in range(0, len(values), _ROWS_AT_ONCE):
        rows = slice(start, start + _ROWS_AT_ONCE)
        found += _some(values[rows], days[rows], sd[rows], least[rows])
    return found


def _some(values: np.ndarray, days: np.ndarray, sd: np.ndarray, least: np.ndarray) -> list[SeriesChange]:
    many = values.shape[1]
    steps, z_steps = _splits(values, sd)
    rises, slopes, z_lines = _lines(values, days, sd)
    at = np.abs(z_steps[:, :-1]).argmax(axis=1) if many > 2 else np.zeros(len(values), dtype=int)
    rows = np.arange(len(values))
    split = np.abs(z_steps[rows, at]) if many > 2 else np.zeros(len(values))
    line = np.abs(z_lines) if many > 2 else np.zeros(len(values))
    last, odd = np.abs(z_steps[:, -1]), _oddest_within(values, sd)
    best = np.maximum(np.maximum(split, line), np.maximum(last, odd))
    p = np.minimum(1.0, (many if many > 2 else 1) * 2 * norm.sf(best))
    found = [STEADY] * len(values)
    for i in np.flatnonzero((p < 1) & (odd < best)):
        if split[i] == best[i]:
            change = SeriesChange(Behaviour.MOVED, float(p[i]), float(steps[i, at[i]]), int(at[i]) + 1, 0.0)
        elif line[i] == best[i]:
            change = SeriesChange(Behaviour.DRIFTING, float(p[i]), float(rises[i]), 0, float(slopes[i]))
        else:
            change = SeriesChange(Behaviour.READ_AGAIN, float(p[i]), float(steps[i, -1]), many - 1, 0.0)
        if abs(change.size) >= least[i]:
            found[i] = change
    return found


def _splits(values: np.ndarray, sd: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """After less before at each split, and its z; the last column has one reading after it."""
    many = values.shape[1]
    before = np.arange(1, many)
    sums = np.cumsum(values, axis=1)
    steps = (sums[:, -1:] - sums[:, :-1]) / (many - before) - sums[:, :-1] / before
    return steps, steps / (sd[:, None] * np.sqrt(1 / before + 1 / (many - before)))


def _lines(values: np.ndarray, days: np.ndarray, sd: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Rise over the whole time, slope per day and z of the least-squares line."""
    spread = days - days.mean(axis=1, keepdims=True)
    square = (spread**2).sum(axis=1)
    slopes = np.divide((spread * values).sum(axis=1), square, out=np.zeros(len(values)), where=square > 0)
    return slopes * (days[:, -1] - days[:, 0]), slopes, slopes * np.sqrt(square) / sd


def _oddest_within(values: np.ndarray, sd: np.ndarray) -> np.ndarray:
    """|z| of the one reading between first and last that lies farthest from all others: where one such reading explains a
    series better than a split or a line, those after it have answered already, and nothing changed."""
    many = values.shape[1]
    if many < 4:
        return np.zeros(len(values))
    inner = values[:, 1:-1]
    others = (values.sum(axis=1, keepdims=True) - inner) / (many - 1)
    return np.abs(inner - others).max(axis=1) / (sd * np.sqrt(1 + 1 / (many - 1)))
