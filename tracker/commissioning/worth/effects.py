"""Effects per loom, per hall and week, and per article, from the rows before conversion: Poisson or least squares.

The loom effects are profiled out, so that the largest matrix is (weeks × halls + articles) square: the plain design matrix
of 1,000 looms × 104 weeks alone would take 0.9 GiB.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np
from scipy.linalg import cho_factor, cho_solve, eigh

_STEPS = 60
_WITH_FACTOR = 25
"""Steps for which the information of another fit of nearly the same rows may stand."""
_CLOSE = 1e-8
"""What a further step could still gain in log likelihood: a ten-thousandth of a standard error. Steps along directions that
the rows say nothing of gain nothing, however long rounding makes them."""
_LONGEST_STEP = 2.0
_RIDGE = 1e-10
"""Share of the mean diagonal added to it: directions that the rows say nothing of stay where they are."""
_NOTHING = 1e-8


@dataclass(frozen=True, slots=True)
class FitRows:
    """What is fitted: all arrays of one length. `weight` is the exposure of counts."""

    loom: np.ndarray
    cell: np.ndarray
    article: np.ndarray
    value: np.ndarray
    weight: np.ndarray

    def only(self, rows: np.ndarray) -> "FitRows":
        return FitRows(*(getattr(self, name)[rows] for name in self.__slots__))


@dataclass(frozen=True, slots=True)
class Sizes:
    looms: int
    cells: int
    articles: int

    @property
    def columns(self) -> int:
        return self.cells + self.articles


@dataclass(frozen=True, slots=True)
class Effects:
    """`loom` and `shared` (cells, then articles) on the scale that adds. Where nothing was seen or counted -inf for counts,
    NaN for what is measured."""

    loom: np.ndarray
    shared: np.ndarray
    factor: Any
    """Cholesky factor of the information at the first step that worked one out."""


class _Poisson:
    """Counts: mean = weight × exp(loom + shared)."""

    nothing = -np.inf

    def __init__(self, rows: FitRows, sizes: Sizes):
        self.sizes, self.rows = sizes, rows.only(_with_counts(rows, sizes))
        self.per_loom = np.bincount(self.rows.loom, self.rows.value, sizes.looms)

    def profiled(self, line: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """The looms' effects given the shared part of each row, what each row leaves over, its weight."""
        share = self.rows.weight * np.exp(line)
        ratio = _ratio(self.per_loom, np.bincount(self.rows.loom, share, self.sizes.looms))
        means = share * ratio[self.rows.loom]
        return np.log(ratio, out=np.full(ratio.shape, -np.inf), where=ratio > 0), self.rows.value - means, means


class _LeastSquares:
    """What is measured: mean = loom + shared, each row with its weight."""

    nothing = np.nan

    def __init__(self, rows: FitRows, sizes: Sizes):
        self.sizes, self.rows = sizes, rows.only(rows.weight > 0)
        self.per_loom = np.bincount(self.rows.loom, self.rows.weight, sizes.looms)

    def profiled(self, line: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        rows, apart = self.rows, self.rows.value - line
        loom = _ratio(np.bincount(rows.loom, rows.weight * apart, self.sizes.looms), self.per_loom)
        return np.where(self.per_loom > 0, loom, np.nan), rows.weight * (apart - loom[rows.loom]), rows.weight


def fit(rows: FitRows, sizes: Sizes, counts: bool, near: Effects | None = None) -> Effects:
    """Maximum likelihood by Newton's method, the looms' own effects profiled out; rows of weight 0 do not count.

    `near` is the fit of nearly the same rows: its effects are the start, and its information stands for the first steps.
    """
    case = (_Poisson if counts else _LeastSquares)(rows, sizes)
    seen, column = case.rows, sizes.cells + case.rows.article
    shared = np.where(np.isfinite(near.shared), near.shared, 0.0) if near else np.zeros(sizes.columns)
    factor, own = near.factor if near else None, None
    for turn in range(_STEPS):
        _, rest, weight = case.profiled(shared[seen.cell] + shared[column])
        if factor is None or turn >= _WITH_FACTOR:
            factor = _factor(seen, sizes, weight, case.per_loom)
            own = factor if own is None else own
        gradient = np.bincount(seen.cell, rest, sizes.columns) + np.bincount(column, rest, sizes.columns)
        step = cho_solve(factor, gradient, check_finite=False)
        longest = float(np.abs(step).max(initial=0.0))
        shared = shared + step * min(1.0, _LONGEST_STEP / max(longest, _NOTHING))
        factor = factor if near else None
        if gradient @ step < _CLOSE:
            break
    loom, *_ = case.profiled(shared[seen.cell] + shared[column])
    return Effects(loom, np.where(_columns_seen(seen, sizes), shared, case.nothing), own)


def told(rows: FitRows, asked: FitRows, sizes: Sizes) -> np.ndarray:
    """Of the asked rows, those whose loom, hall-week and article the fitted rows tie together: an expectation can be told."""
    ones = np.ones(len(rows.loom))
    looms = np.bincount(rows.loom, ones, sizes.looms)
    by_loom = _by_loom(rows, sizes, ones)
    values, vectors = eigh(_information(rows, sizes, ones, by_loom, looms))
    free = vectors[:, values < _NOTHING * max(1.0, float(values[-1]))]
    own = _ratio(by_loom, looms[:, None]) @ free
    apart = free[asked.cell] + free[sizes.cells + asked.article] - own[asked.loom]
    seen = _columns_seen(rows, sizes)
    known = seen[asked.cell] & seen[sizes.cells + asked.article] & (looms[asked.loom] > 0)
    return known & (np.abs(apart).max(axis=1, initial=0.0) < _NOTHING**0.5)


def _factor(rows: FitRows, sizes: Sizes, weight: np.ndarray, per_loom: np.ndarray) -> Any:
    square = _information(rows, sizes, weight, _by_loom(rows, sizes, weight), per_loom)
    square[np.diag_indices_from(square)] += _RIDGE * max(square.trace() / len(square), _NOTHING)
    return cho_factor(square, lower=True, check_finite=False)


def _by_loom(rows: FitRows, sizes: Sizes, weight: np.ndarray) -> np.ndarray:
    """Sums of weight, looms × columns."""
    wide = sizes.columns
    flat = np.bincount(rows.loom * wide + rows.cell, weight, sizes.looms * wide)
    flat += np.bincount(rows.loom * wide + sizes.cells + rows.article, weight, sizes.looms * wide)
    return flat.reshape(sizes.looms, wide)


def _information(
    rows: FitRows, sizes: Sizes, weight: np.ndarray, by_loom: np.ndarray, per_loom: np.ndarray
) -> np.ndarray:
    """Information of the shared effects once each loom's own is taken out (the Schur complement)."""
    wide, cells = sizes.columns, sizes.cells
    cross = np.bincount(rows.cell * sizes.articles + rows.article, weight, cells * sizes.articles)
    square = np.zeros((wide, wide))
    square[:cells, cells:] = cross.reshape(cells, sizes.articles)
    square += square.T
    square[np.diag_indices(wide)] = by_loom.sum(axis=0)
    root = by_loom * np.sqrt(_ratio(np.ones_like(per_loom), per_loom))[:, None]
    return square - root.T @ root


def _with_counts(rows: FitRows, sizes: Sizes) -> np.ndarray:
    """Rows left once looms, hall-weeks and articles without any count are taken out, again and again."""
    keep = rows.weight > 0
    while True:
        counted = keep.copy()
        for index, many in ((rows.loom, sizes.looms), (rows.cell, sizes.cells), (rows.article, sizes.articles)):
            counted &= np.bincount(index[keep], rows.value[keep], many)[index] > 0
        if (counted == keep).all():
            return keep
        keep = counted


def _columns_seen(rows: FitRows, sizes: Sizes) -> np.ndarray:
    seen = np.zeros(sizes.columns, dtype=bool)
    seen[rows.cell] = True
    seen[sizes.cells + rows.article] = True
    return seen


def _ratio(above: np.ndarray, below: np.ndarray) -> np.ndarray:
    shape = np.broadcast_shapes(above.shape, below.shape)
    return np.divide(above, below, out=np.zeros(shape), where=np.broadcast_to(below > 0, shape))
