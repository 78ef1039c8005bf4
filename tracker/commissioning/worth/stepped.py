"""The stepped comparison: looms not yet converted show what the same weeks would have been without it (MODEL.md 5.3).

The design is that of stepped programmes (Hussey and Hughes, Contemporary Clinical Trials 28, 2007); the estimate is observed ÷
expected, the expected from unconverted rows only, so that an effect that grows, or differs from loom to loom, does not bend it.
"""

from dataclasses import dataclass, replace
from enum import StrEnum

import numpy as np
from scipy.stats import t as student

from tracker.commissioning.worth.effects import Effects, FitRows, Sizes, fit, told
from tracker.commissioning.worth.panel import Panel
from tracker.commissioning.worth.plain import Estimated

FEWEST_UNCONVERTED = 3
"""Looms in a hall-week without which it compares nothing."""
_MOST_ONE_BY_ONE = 100
_GROUPS = 30
"""Beyond so many looms the jackknife leaves out as many groups of them, dealt in the order of conversion."""
_FEWEST_LOOMS = 4
_POOLED_TO = 10.0
"""Expected stops of neighbouring weeks since the conversion that are told together."""


class CannotTell(StrEnum):
    """Why there is no comparison."""

    NOTHING_AFTER = "nothing after"
    """No loom has a period after its conversion and settling time."""
    NOBODY_LEFT = "nobody left"
    """In none of those weeks did three looms of the hall still go unconverted."""
    NEW_ARTICLE = "new article"
    """What the converted looms weave was first woven at conversion by all."""
    NOT_TIED = "not tied"
    """Nothing ties those weeks to the looms' own time before."""
    TOO_FEW = "too few"
    """Fewer than four looms, or nothing expected."""
    CHOSEN = "chosen"
    """Without the weeks by which looms may have been chosen it says something else."""
    TOO_SHORT = "too short"
    """Without those weeks nothing is left to compare."""


@dataclass(frozen=True, slots=True)
class SteppedEstimate(Estimated):
    """With what the comparison knows beside the interval."""

    se: float
    """Of the logarithm of a ratio, of a difference as it is."""
    freedom: int


@dataclass(frozen=True, slots=True)
class Since(SteppedEstimate):
    """The estimate of the weeks `first` to `last` since the restart."""

    first: int
    last: int


@dataclass(frozen=True, slots=True)
class Stepped:
    told: SteppedEstimate
    observed: float
    """Stops seen on converted looms, or the mean that was measured there."""
    expected: float
    picks: float
    """Woven by converted looms in the weeks that compare."""
    converted: int
    """Looms."""
    unconverted: int
    """Looms that the expectation comes from."""
    silent: int
    """Looms without a stop before their conversion."""
    since: tuple[Since, ...]
    rows: np.ndarray
    """Mask over the panel: the converted rows that were compared."""


@dataclass(frozen=True, slots=True)
class _Case:
    """`fitted` and `asked` rows, and how to fit and to compare them."""

    fitted: FitRows
    asked: FitRows
    sizes: Sizes
    counts: bool

    def effects(self) -> Effects:
        return fit(self.fitted, self.sizes, self.counts)

    def without(self, looms: np.ndarray, whole: Effects) -> Effects:
        """The effects once the looms of a mask are left out."""
        return fit(
            replace(self.fitted, weight=self.fitted.weight * ~looms[self.fitted.loom]), self.sizes, self.counts, whole
        )

    def expected(self, effects: Effects) -> np.ndarray:
        asked = self.asked
        line = effects.loom[asked.loom] + effects.shared[asked.cell] + effects.shared[self.sizes.cells + asked.article]
        return asked.weight * np.exp(line) if self.counts else line


def stepped(panel: Panel, counts: bool = True, by_weeks: bool = True) -> Stepped | CannotTell:
    """`counts`: stops by picks and a ratio; else what is measured, a difference of means (every row weighs alike).
    `by_weeks`: also by the weeks since the restart."""
    sizes = Sizes(len(panel.looms), int(panel.cell.max(initial=-1)) + 1, len(panel.articles))
    rows = FitRows(
        panel.loom, panel.cell, panel.article, panel.value, panel.picks if counts else np.ones(len(panel.loom))
    )
    asked = _compared(panel, rows, sizes)
    if isinstance(asked, CannotTell):
        return asked
    case = _Case(rows.only(panel.before), rows.only(asked), sizes, counts)
    whole = case.effects()
    expected = case.expected(whole)
    if len(np.unique(np.append(case.fitted.loom, case.asked.loom))) < _FEWEST_LOOMS or (counts and expected.sum() <= 0):
        return CannotTell.TOO_FEW
    bins = _bins(panel.since[asked], expected if counts else np.full(len(expected), _POOLED_TO))[
        : None if by_weeks else 1
    ]
    replicas = _replicas(case, whole, bins, _order(panel))
    tolds = [_told(case.asked.value[b], expected[b], replicas[:, i], counts) for i, b in enumerate(bins)]
    since = tuple(
        Since(
            t.estimate,
            t.low,
            t.high,
            t.se,
            t.freedom,
            int(panel.since[asked][b].min()),
            int(panel.since[asked][b].max()),
        )
        for t, b in zip(tolds[1:], bins[1:], strict=True)
    )
    silent = np.bincount(case.fitted.loom, case.fitted.value, sizes.looms)[np.unique(case.asked.loom)] == 0
    share = 1 if counts else len(expected)
    return Stepped(
        tolds[0], case.asked.value.sum() / share, expected.sum() / share, float(panel.picks[asked].sum()),
        len(np.unique(case.asked.loom)), len(np.unique(case.fitted.loom)), int(silent.sum()) if counts else 0, since, asked,
    )  # fmt: skip


def _compared(panel: Panel, rows: FitRows, sizes: Sizes) -> np.ndarray | CannotTell:
    """Mask of the converted rows that can be compared."""
    after, before = panel.after, panel.before
    if not after.any():
        return CannotTell.NOTHING_AFTER
    pairs = np.unique(np.column_stack((panel.cell[before], panel.loom[before])), axis=0)
    looms = np.bincount(pairs[:, 0], minlength=sizes.cells)
    compared = after & (looms[panel.cell] >= FEWEST_UNCONVERTED)
    if not compared.any():
        return CannotTell.NOBODY_LEFT
    woven = np.zeros(sizes.articles, dtype=bool)
    woven[panel.article[before]] = True
    compared &= woven[panel.article]
    if not compared.any():
        return CannotTell.NEW_ARTICLE
    compared[compared] = told(rows.only(before), rows.only(compared), sizes)
    return compared if compared.any() else CannotTell.NOT_TIED


def _bins(since: np.ndarray, expected: np.ndarray) -> list[np.ndarray]:
    """All rows, then by weeks since the restart, neighbours together until they have enough expected stops."""
    weeks = np.unique(since)
    per_week = [expected[since == week].sum() for week in weeks]
    groups: list[list[int]] = []
    full, total = True, 0.0
    for week, many in zip(weeks, per_week, strict=True):
        if full:
            groups.append([])
            total = 0.0
        groups[-1].append(week)
        total += many
        full = total >= _POOLED_TO
    if not full and len(groups) > 1:
        groups[-2] += groups.pop()
    return [np.ones(len(since), dtype=bool), *(np.isin(since, group) for group in groups)]


def _order(panel: Panel) -> np.ndarray:
    """Looms hall by hall in the order of their conversion, those not converted last."""
    first = np.full(len(panel.looms), np.inf)
    np.minimum.at(first, panel.loom, panel.week + 7 * panel.to_conversion)
    return np.array(
        sorted(range(len(first)), key=lambda i: (panel.looms[i].hall, first[i], panel.looms[i].sort_key)), dtype=int
    )


def _replicas(case: _Case, whole: Effects, bins: list[np.ndarray], order: np.ndarray) -> np.ndarray:
    """The estimates (replicas × bins) once each loom, or each group of looms, is left out in turn."""
    present = [loom for loom in order if (case.fitted.loom == loom).any() or (case.asked.loom == loom).any()]
    many = len(present) if len(present) <= _MOST_ONE_BY_ONE else _GROUPS
    group = np.full(case.sizes.looms, -1)
    group[np.array(present)] = np.arange(len(present)) % many
    found = np.empty((many, len(bins)))
    for g in range(many):
        expected = case.expected(case.without(group == g, whole))
        stays = (group[case.asked.loom] != g) & ~np.isnan(expected)
        found[g] = [_estimate(case.asked.value[b & stays], expected[b & stays], case.counts) for b in bins]
    return found


def _estimate(observed: np.ndarray, expected: np.ndarray, counts: bool) -> float:
    if not counts:
        return float((observed - expected).mean()) if len(observed) else np.nan
    return float(np.log((observed.sum() + 0.5) / (expected.sum() + 0.5)))


def _told(observed: np.ndarray, expected: np.ndarray, replicas: np.ndarray, counts: bool) -> SteppedEstimate:
    replicas = replicas[~np.isnan(replicas)]
    many = len(replicas)
    se = float(np.sqrt((many - 1) / many * ((replicas - replicas.mean()) ** 2).sum()))
    half = float(student.ppf(0.975, max(1, many - 1))) * se
    if not counts:
        middle = float((observed - expected).mean())
        return SteppedEstimate(middle, middle - half, middle + half, se, many - 1)
    ratio = float(observed.sum() / expected.sum())
    middle = np.log(ratio) if ratio else np.log((observed.sum() + 0.5) / (expected.sum() + 0.5))
    return SteppedEstimate(ratio, float(np.exp(middle - half)), float(np.exp(middle + half)), se, many - 1)
