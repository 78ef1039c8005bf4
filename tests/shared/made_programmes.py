"""Programmes made up from a seed: stops week by week of looms that are converted one after another, with the truth."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import numpy as np

from tracker.commissioning.worth.observed import Observed, Standstill
from tracker.commissioning.worth.panel import Panel, panel
from tracker.domain.mill import LoomKey

START = datetime(2027, 1, 4, tzinfo=UTC)
WEEK = timedelta(weeks=1)
ZONE = ZoneInfo("UTC")


@dataclass(frozen=True)
class Programme:
    observed: list[Observed]
    conversions: dict[LoomKey, Standstill]
    with_it: np.ndarray
    """Mean stops of each observation as it is."""
    without: np.ndarray
    """And as it would have been without any conversion."""
    decided_at: datetime

    @property
    def panel(self) -> Panel:
        return panel(self.observed, self.conversions, ZONE)

    def truth(self, rows: np.ndarray) -> float:
        """The true ratio over a mask of the panel's rows."""
        kept = [i for i, o in enumerate(self.observed) if _counts(o, self.conversions.get(o.key))]
        return float(self.with_it[kept][rows].sum() / self.without[kept][rows].sum())


def _counts(one: Observed, conversion: Standstill | None) -> bool:
    settled = conversion and conversion.counts_from(timedelta(days=3))
    return conversion is None or one.to_at <= conversion.started_at or (settled is not None and one.from_at >= settled)


def programme(seed: int, *, looms: int = 96, weeks: int = 30, first: int = 8, last: int = 26, ratio: float = 0.8,
              overdispersion: float = 4.0, growing: bool = False, bad_gain_more: bool = False, halls: int = 2,
              own_seasons: bool = False, chosen: str = "bad", mean: float = 40.0, deciding: int = 4) -> Programme:  # fmt: skip
    """Looms differ (log-normal 0.5), weeks have a season (± 20 %), articles their own rates and change now and then; counts
    vary `overdispersion` times as much as Poisson's. Conversions lie evenly between the weeks `first` and `last`; some
    looms are left. `chosen`: the worst by their true rate first (`bad`), by the stops of the last `deciding` weeks before the
    first (`chance`), or by nothing (`any`). `growing`: the effect comes in over ten weeks; `bad_gain_more`: half of the looms,
    the worse, gain all of it."""
    rng = np.random.default_rng(seed)
    spread = 0.0 if chosen == "chance" else 0.5
    rate = mean * np.exp(spread * rng.standard_normal(looms) - spread**2 / 2)
    article = (np.arange(looms)[:, None] + (rng.random((looms, weeks)) < 0.1).cumsum(axis=1)) % 6
    season = 1 + 0.2 * np.sin(
        2 * np.pi * (np.arange(weeks) / 26 + (np.arange(halls)[:, None] / halls if own_seasons else 0))
    )
    season = np.broadcast_to(season * np.exp(0.05 * rng.standard_normal((halls, weeks))), (halls, weeks))
    hall = np.arange(looms) % halls
    picks = rng.uniform(0.7, 1.3, (looms, weeks))
    without = rate[:, None] * season[hall] * np.exp(0.3 * rng.standard_normal(6))[article] * picks
    drawn = _counted(rng, without, overdispersion)
    shown = {"bad": rate, "chance": drawn[:, first - deciding : first].sum(axis=1), "any": rng.random(looms)}[chosen]
    order = np.argsort(-shown)
    at = np.full(looms, weeks + 99)
    done = order[: int(looms * 0.85)]
    at[done] = np.linspace(first, last - 1, len(done)).astype(int)
    effect = _effect(at, weeks, ratio, growing, bad_gain_more, rate)
    means = without * effect
    counts = np.where(effect < 1, _counted(rng, means, overdispersion), drawn)
    keys = [LoomKey(f"H{hall[i]}", str(i)) for i in range(looms)]
    observed = [
        Observed(keys[i], START + w * WEEK, START + (w + 1) * WEEK, str(article[i, w]), float(counts[i, w]),
                 float(picks[i, w] * 1e5))
        for i in range(looms) for w in range(weeks)
    ]  # fmt: skip
    conversions = {
        keys[i]: Standstill(START + at[i] * WEEK + timedelta(days=1), START + at[i] * WEEK + timedelta(days=2))
        for i in range(looms) if at[i] < weeks
    }  # fmt: skip
    return Programme(observed, conversions, means.ravel(), without.ravel(), START + first * WEEK)


def _effect(at, weeks, ratio, growing, bad_gain_more, rate):
    since = np.arange(weeks) - at[:, None]
    come = np.clip(since / 10, 0, 1) if growing else (since > 0).astype(float)
    size = np.full(len(at), np.log(ratio))
    if bad_gain_more:
        size = np.where(rate > np.median(rate), 1.5 * np.log(ratio), 0.2 * np.log(ratio))
    return np.where(since > 0, np.exp(come * size[:, None]), 1.0)


def _counted(rng, means, overdispersion):
    """Negative binomial with variance = overdispersion × mean."""
    if overdispersion == 1:
        return rng.poisson(means)
    return rng.poisson(rng.gamma(means / (overdispersion - 1), overdispersion - 1))
