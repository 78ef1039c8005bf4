"""What was counted or measured of a loom in a period, and of which cause."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta

from tracker.domain.mill import LoomKey
from tracker.domain.words import fold


@dataclass(frozen=True, slots=True)
class Observed:
    """Of one loom in one period (UTC, half-open)."""

    key: LoomKey
    from_at: datetime
    to_at: datetime
    article: str | None
    value: float
    """Stops, or what is measured: a width in mm, an efficiency as a fraction."""
    picks: float = 1.0
    """Woven meanwhile, for stops; 1 for what is measured."""


@dataclass(frozen=True, slots=True)
class StopCount:
    """A row of the sheet Stops: `cause` None = all causes together. The picks are those of the whole period, whatever the
    cause."""

    key: LoomKey
    from_at: datetime
    to_at: datetime
    article: str | None
    cause: str | None
    stops: float
    picks: float
    hours_h: float | None = None
    efficiency: float | None = None


@dataclass(frozen=True, slots=True)
class Standstill:
    """When a loom was stopped for it and when it wove again (UTC)."""

    started_at: datetime
    restarted_at: datetime | None
    """None = it does not weave again yet."""

    def counts_from(self, settling: timedelta) -> datetime | None:
        return self.restarted_at and self.restarted_at + settling


def stops_of(counts: Iterable[StopCount], cause: str | None = None) -> list[Observed]:
    """One row per loom and period: the stops of a cause, 0 where the period is reported without it; of None all causes, the
    row that says so or else the sum. The picks of a period count once."""
    periods: Mapping[tuple, list[StopCount]] = defaultdict(list)
    for count in counts:
        periods[count.key, count.from_at, count.to_at].append(count)
    return [
        Observed(
            key, from_at, to_at, next((c.article for c in many if c.article), None), _stops(many, cause), many[0].picks
        )
        for (key, from_at, to_at), many in sorted(periods.items())
        if cause is None or _knows(many, cause)
    ]


def _stops(many: list[StopCount], cause: str | None) -> float:
    if cause is not None:
        return sum(c.stops for c in many if fold(c.cause or "") == fold(cause))
    whole = [c.stops for c in many if c.cause is None]
    return sum(whole) if whole else sum(c.stops for c in many)


def _knows(many: list[StopCount], cause: str) -> bool:
    """A period with nothing but the sum of all causes says nothing of one."""
    return any(c.cause is not None for c in many) or not sum(c.stops for c in many)


def causes(counts: Iterable[StopCount]) -> list[str]:
    """All causes that are named, in order of their first row."""
    return list({fold(c.cause): c.cause for c in counts if c.cause}.values())


def efficiencies_of(counts: Iterable[StopCount]) -> list[Observed]:
    """One row per loom and period that has an efficiency; it is that of the period, whatever the cause."""
    found = {(c.key, c.from_at, c.to_at): c for c in counts if c.efficiency is not None}
    return [
        Observed(*place, c.article, float(c.efficiency or 0)) for place, c in sorted(found.items(), key=lambda e: e[0])
    ]


@dataclass(frozen=True, slots=True)
class SideWidth:
    """A row of the sheet Waste: the width of one side; None = both together."""

    key: LoomKey
    from_at: datetime
    to_at: datetime
    side: str | None
    width_mm: float
    article: str | None


def widths_of(widths: Iterable[SideWidth]) -> list[Observed]:
    """One row per loom and period: the widths of both sides added. A period of one side only stands by itself and counts
    where the loom has never more than one."""
    periods: Mapping[tuple, list[SideWidth]] = defaultdict(list)
    for width in widths:
        periods[width.key, width.from_at, width.to_at].append(width)
    most: dict[LoomKey, int] = defaultdict(int)
    for (key, *_), many in periods.items():
        most[key] = max(most[key], len(many))
    return [
        Observed(key, from_at, to_at, next((w.article for w in many if w.article), None), sum(w.width_mm for w in many))
        for (key, from_at, to_at), many in sorted(periods.items())
        if len(many) == most[key]
    ]
