"""Observations as arrays: which loom, hall and week, article; before or after its conversion (MODEL.md 5)."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

import numpy as np

from tracker.commissioning.worth.observed import Observed, Standstill
from tracker.domain.mill import LoomKey

BEFORE, OUT, AFTER = -1, 0, 1


@dataclass(frozen=True, slots=True)
class Panel:
    """Arrays of one length, a row each observation that counts."""

    looms: tuple[LoomKey, ...]
    articles: tuple[str, ...]
    loom: np.ndarray
    """Index in `looms`."""
    cell: np.ndarray
    """Hall × week, numbered from 0."""
    article: np.ndarray
    week: np.ndarray
    """Monday of the week in which the middle of the period lies, as the ordinal of that day."""
    value: np.ndarray
    picks: np.ndarray
    phase: np.ndarray
    """BEFORE or AFTER the loom's conversion; what overlaps with it or its settling time is left out. A loom that is not
    converted stays BEFORE."""
    since: np.ndarray
    """Whole weeks from the restart to the middle of the period; -1 before."""
    to_conversion: np.ndarray
    """Weeks from the middle of the period to the start of the loom's conversion; infinite where there is none."""

    def only(self, rows: np.ndarray) -> "Panel":
        """The rows of a mask."""
        fields = ("loom", "cell", "article", "week", "value", "picks", "phase", "since", "to_conversion")
        return replace(self, **{name: getattr(self, name)[rows] for name in fields})

    @property
    def before(self) -> np.ndarray:
        return self.phase == BEFORE

    @property
    def after(self) -> np.ndarray:
        return self.phase == AFTER


def panel(
    observed: Sequence[Observed], conversions: Mapping[LoomKey, Standstill], zone: ZoneInfo, settling_days: float = 3
) -> Panel:
    """Rows without picks are dropped; they could not have stopped."""
    settling = timedelta(days=settling_days)
    rows = [(o, phase) for o in observed if o.picks > 0 and (phase := _phase(o, conversions.get(o.key), settling))]
    middles = [o.from_at + (o.to_at - o.from_at) / 2 for o, _ in rows]
    weeks = [_monday(at.astimezone(zone).date()) for at in middles]
    looms, loom = _numbered([o.key for o, _ in rows])
    articles, article = _numbered([o.article or "" for o, _ in rows])
    _, cell = _numbered([(o.key.hall, week) for (o, _), week in zip(rows, weeks, strict=True)])
    lasts = [_weeks(o, at, conversions.get(o.key)) for (o, _), at in zip(rows, middles, strict=True)]
    return Panel(
        tuple(looms), tuple(articles), loom, cell, article, np.array(weeks, dtype=int),
        np.array([o.value for o, _ in rows], dtype=float), np.array([o.picks for o, _ in rows], dtype=float),
        np.array([phase for _, phase in rows], dtype=int),
        np.array([since for since, _ in lasts], dtype=int), np.array([to for _, to in lasts], dtype=float),
    )  # fmt: skip


def _phase(one: Observed, conversion: Standstill | None, settling: timedelta) -> int:
    if conversion is None or one.to_at <= conversion.started_at:
        return BEFORE
    settled = conversion.counts_from(settling)
    return AFTER if settled and one.from_at >= settled else OUT


def _weeks(one: Observed, middle: datetime, conversion: Standstill | None) -> tuple[int, float]:
    if conversion is None:
        return -1, np.inf
    week, restarted = timedelta(weeks=1), conversion.restarted_at
    since = int((middle - restarted) // week) if restarted and middle >= restarted else -1
    return since, (conversion.started_at - middle) / week


def _monday(day: date) -> int:
    return day.toordinal() - day.weekday()


def _numbered(values: list) -> tuple[list, np.ndarray]:
    places: dict = {}
    numbers = [places.setdefault(value, len(places)) for value in values]
    return list(places), np.array(numbers, dtype=int)
