"""Before and after on the looms' own figures, without what the same weeks would have been otherwise (MODEL.md 5.1, 5.2).

Figures, no verdict: whatever else changed meanwhile (season, articles, people) is in them.
"""

from dataclasses import dataclass

import numpy as np
from scipy.optimize import root_scalar
from scipy.stats import beta, norm
from scipy.stats import t as student

from tracker.commissioning.worth.panel import Panel
from tracker.domain.mill import LoomKey

SURE, POWER = 0.95, 0.80
_TAIL = (1 - SURE) / 2


@dataclass(frozen=True, slots=True)
class Estimated:
    """An estimate with its 95 % interval: a ratio after ÷ before (stops) or a difference after − before (what is measured)."""

    estimate: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class OneLoom:
    """A loom before and after, on the article that it wove most of both times."""

    key: LoomKey
    article: str
    before: float
    """Stops, or the mean that was measured."""
    after: float
    picks_before: float
    picks_after: float
    dispersion: float
    """Of its weeks: variance ÷ that of chance alone, 1 at least; 1 for what is measured."""
    told: Estimated
    picks_needed: float | None
    """Still to be woven to see what is worth knowing at 80 % power; None for what is measured."""


def exact_ratio(
    after: float, picks_after: float, before: float, picks_before: float, dispersion: float = 1.0
) -> Estimated:
    """Ratio of two rates with the exact conditional interval: of `after + before` stops each falls after with a chance p that
    stands for the ratio p / (1 − p) × picks before / picks after (Clopper and Pearson 1934). Overdispersed counts tell as
    much as counts smaller by the dispersion."""
    seen, other = after / dispersion, before / dispersion
    low = float(beta.ppf(_TAIL, seen, other + 1)) if seen > 0 else 0.0
    high = float(beta.ppf(1 - _TAIL, seen + 1, other)) if other > 0 else 1.0
    share = picks_before / picks_after
    odds = [p / (1 - p) * share if p < 1 else np.inf for p in (low, high)]
    return Estimated(after / before * share if before else np.inf if after else np.nan, *odds)


def pooled(panel: Panel, counts: bool) -> Estimated | None:
    """All looms together, as a manager would do it on paper: it holds the truth in next to no programme, since the looms that
    come first, the season and the articles are in it. None where one of both times is empty."""
    before, after = panel.before & _converted(panel), panel.after
    if not before.any() or not after.any():
        return None
    if counts:
        return exact_ratio(*_sums(panel, after), *_sums(panel, before))
    one, two = panel.value[after], panel.value[before]
    half = norm.ppf(1 - _TAIL) * np.sqrt(_mean_variance(one) + _mean_variance(two))
    middle = float(one.mean() - two.mean())
    return Estimated(middle, middle - float(half), middle + float(half))


def one_by_one(panel: Panel, counts: bool, worth_knowing: float) -> list[OneLoom]:
    """Every loom that wove an article both before and after its conversion."""
    found = [_one(panel, loom, counts, worth_knowing) for loom in np.unique(panel.loom[panel.after])]
    return sorted((one for one in found if one is not None), key=lambda one: one.key.sort_key)


def strata(looms: list[OneLoom], counts: bool) -> Estimated | None:
    """The looms pooled, each its own stratum: one ratio that the stops of all looms share, the interval widened by how far the
    looms differ from it. None of fewer than two looms, or where nothing was counted."""
    told = [one for one in looms if not counts or one.before + one.after > 0]
    if len(told) < 2:
        return None
    if not counts:
        return _mean_of(np.array([one.told.estimate for one in told]))
    after, total = np.array([o.after for o in told]), np.array([o.after + o.before for o in told])
    if not 0 < after.sum() < total.sum():
        return None
    picks = np.array([(o.picks_after, o.picks_before) for o in told])
    middle = float(root_scalar(lambda log: after.sum() - (total * _chance(log, picks)).sum(), bracket=(-30, 30)).root)
    p = _chance(middle, picks)
    information = total * p * (1 - p)
    dispersion = max(1.0, float(((after - total * p) ** 2 / information).sum()) / (len(told) - 1))
    half = student.ppf(1 - _TAIL, len(told) - 1) * np.sqrt(dispersion / information.sum())
    return Estimated(*(float(np.exp(middle + d)) for d in (0, -half, half)))


def picks_still_needed(picks: float, se: float, share: float) -> float:
    """So many more picks until a change by `share` is seen with 80 % power, where `picks` gave the standard error `se` of the
    logarithm (or of a difference, `share` then being that difference); the error falls with their root."""
    wanted = share / (norm.ppf(1 - _TAIL) + norm.ppf(POWER))
    return max(0.0, float(picks * ((se / wanted) ** 2 - 1)))


def as_log(worth_knowing: float) -> float:
    """A fall by that share on the scale of a logarithm."""
    return -float(np.log1p(-min(worth_knowing, 0.99)))


def _converted(panel: Panel) -> np.ndarray:
    """Mask of the rows of looms that have a period after their conversion."""
    return np.isin(panel.loom, panel.loom[panel.after])


def _sums(panel: Panel, rows: np.ndarray) -> tuple[float, float]:
    return float(panel.value[rows].sum()), float(panel.picks[rows].sum())


def _one(panel: Panel, loom: int, counts: bool, worth_knowing: float) -> OneLoom | None:
    mine = panel.loom == loom
    before, after = mine & panel.before, mine & panel.after
    article = _article(panel, before, after)
    if article is None:
        return None
    before, after = before & (panel.article == article), after & (panel.article == article)
    key, name = panel.looms[loom], panel.articles[article]
    (b, picks_b), (a, picks_a) = _sums(panel, before), _sums(panel, after)
    if not counts:
        one, two = panel.value[after], panel.value[before]
        return OneLoom(key, name, float(two.mean()), float(one.mean()), picks_b, picks_a, 1.0, _welch(one, two), None)
    dispersion = _dispersion([(panel.value[rows], panel.picks[rows]) for rows in (before, after)])
    se = float(np.sqrt(dispersion * (1 / max(a, 0.5) + 1 / max(b, 0.5))))
    needed = picks_still_needed(picks_a + picks_b, se, as_log(worth_knowing))
    return OneLoom(
        key, name, b, a, picks_b, picks_a, dispersion, exact_ratio(a, picks_a, b, picks_b, dispersion), needed
    )


def _article(panel: Panel, before: np.ndarray, after: np.ndarray) -> int | None:
    """The article of which most was woven in the shorter of both times."""
    both = [np.bincount(panel.article[rows], panel.picks[rows], len(panel.articles)) for rows in (before, after)]
    least = np.minimum(*both)
    return int(least.argmax()) if least.max(initial=0) > 0 else None


def _dispersion(times: list[tuple[np.ndarray, np.ndarray]]) -> float:
    """Pearson's, of the periods about their own time's rate; at least 1."""
    terms, freedom = 0.0, 0
    for stops, picks in times:
        means = stops.sum() * picks / picks.sum()
        terms += float(((stops - means) ** 2 / means).sum()) if stops.sum() else 0.0
        freedom += len(stops) - 1
    return max(1.0, terms / freedom) if freedom else 1.0


def _chance(log_ratio: float, picks: np.ndarray) -> np.ndarray:
    """That a stop falls after, of looms whose picks after and before are the two columns."""
    share = np.exp(log_ratio) * picks[:, 0]
    return share / (share + picks[:, 1])


def _mean_variance(values: np.ndarray) -> float:
    return float(values.var(ddof=1) / len(values)) if len(values) > 1 else np.nan


def _welch(one: np.ndarray, two: np.ndarray) -> Estimated:
    """Difference of means, variances of their own; no interval (NaN) where a time has one value only."""
    a, b = _mean_variance(one), _mean_variance(two)
    middle = float(one.mean() - two.mean())
    below = a**2 / max(1, len(one) - 1) + b**2 / max(1, len(two) - 1)
    freedom = (a + b) ** 2 / below if below > 0 else 1.0
    half = float(student.ppf(1 - _TAIL, freedom) * np.sqrt(a + b))
    return Estimated(middle, middle - half, middle + half)


def _mean_of(differences: np.ndarray) -> Estimated:
    half = float(student.ppf(1 - _TAIL, len(differences) - 1) * np.sqrt(_mean_variance(differences)))
    middle = float(differences.mean())
    return Estimated(middle, middle - half, middle + half)
