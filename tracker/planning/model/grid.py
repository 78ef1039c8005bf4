"""Time as arrays: half-hour slots from the local midnight of the first day, and each hall's clocks on them.

Hours are floats counted from the grid's origin; slot t is [t/2, t/2 + 1/2) h. The origin is a local midnight, so that
shifts that begin on the half hour begin with a slot in zones with offsets of 30 or 45 minutes too.
"""

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import numpy as np
from numpy.typing import NDArray

from tracker.domain.calendars import Calendar

Floats = NDArray[np.floating[Any]]
Ints = NDArray[np.integer[Any]]
Bools = NDArray[np.bool_]

SLOT_H = 0.5
SLOT = timedelta(hours=SLOT_H)


def midnight(day: date, zone: ZoneInfo) -> datetime:
    """Local midnight of a day, UTC."""
    return datetime.combine(day, time(0), zone).astimezone(UTC)


@dataclass(frozen=True)
class Grid:
    """The slots from `origin` (a local midnight, UTC) to the horizon."""

    origin: datetime
    slots: int
    zone: ZoneInfo

    def hours(self, at: datetime) -> float:
        """Hours from the origin to a moment."""
        return (at - self.origin).total_seconds() / 3600

    def moment(self, slot: int) -> datetime:
        """When a slot begins, UTC."""
        return self.origin + int(slot) * SLOT

    def local(self, slot: int) -> datetime:
        """When a slot begins, in the mill's zone."""
        return self.moment(slot).astimezone(self.zone)

    def first_slot(self, at: datetime) -> int:
        """The first slot that begins at or after a moment; may lie outside the grid."""
        return -((self.origin - at) // SLOT)

    def day_start(self, day: date) -> int:
        """The first slot of a local day."""
        return self.first_slot(midnight(day, self.zone))

    def days(self) -> list[date]:
        """The local days that the slots touch."""
        first = self.origin.astimezone(self.zone).date()
        last = self.moment(self.slots - 1).astimezone(self.zone).date() if self.slots > 0 else first
        return [first + timedelta(days=i) for i in range((last - first).days + 1)]

    def before(self, days: int) -> "Grid":
        """The grid of so many local days that end where this one begins."""
        first = midnight(self.origin.astimezone(self.zone).date() - timedelta(days=days), self.zone)
        return Grid(first, (self.origin - first) // SLOT, self.zone)

    def whole(self, calendar: Calendar) -> Bools:
        """Which slots lie wholly inside the calendar; shape (slots,)."""
        inside = np.zeros(self.slots, dtype=bool)
        for start, end in calendar.spans:
            past = (end - self.origin) // SLOT
            inside[max(0, self.first_slot(start)) : max(0, past)] = True
        return inside


class RunningClock:
    """A running calendar for whole arrays: the arithmetic of `Calendar.elapsed_h` and `Calendar.after`."""

    def __init__(self, calendar: Calendar, grid: Grid):
        spans = np.array([(grid.hours(a), grid.hours(b)) for a, b in calendar.spans], dtype=float).reshape(-1, 2)
        self._starts, self._ends = spans[:, 0], spans[:, 1]
        self._total = np.concatenate(([0.0], np.cumsum(self._ends - self._starts)))

    def elapsed(self, at: Floats) -> Floats:
        """Running hours from the calendar's beginning to each moment (hours from the origin); any shape."""
        if not self._starts.size:
            return np.zeros_like(at)
        i = np.searchsorted(self._starts, at, side="right")
        j = np.maximum(i - 1, 0)
        return self._total[j] + np.where(i > 0, np.minimum(at, self._ends[j]) - self._starts[j], 0.0)

    def after(self, start: Floats, hours: Floats) -> Floats:
        """The moment at which so many running hours have passed since `start` (hours < 0: the one since which they
        have); past either end of the calendar the clock runs on without a stop. Arguments broadcast."""
        if not self._starts.size:
            return start + hours
        target = self.elapsed(start) + hours
        i = np.clip(np.searchsorted(self._total, target, side="left") - 1, 0, len(self._starts) - 1)
        return np.where(hours == 0, start, self._starts[i] + (target - self._total[i]))


@dataclass(frozen=True)
class HallClock:
    """The clocks of one hall."""

    hall: str
    work: Ints
    """The hall's working slots in order, shape (positions,); a position counts working slots from the first."""
    running: RunningClock
    wait_rate: Floats
    """Currency an hour that a crew of the lead trade costs while it waits, by slot: the mean of those at work there."""
    first_of_day: Ints
    """Positions of the first working slot of each local day."""
    full_hour: Bools
    """By position: the slot begins on a full local hour."""
    closed_before: Ints
    """By position: local days without a working slot so far, from any day on. Equal for two positions: none between them."""
    past: Ints
    """The working slots of the weeks before the grid, ascending, all below 0."""

    @property
    def starts_h(self) -> Floats:
        """When each working slot begins, hours."""
        return self.work * SLOT_H

    def position_at(self, at_h: Floats) -> Ints:
        """The first working slot that begins at or after each moment, as a position; below 0 before the grid."""
        every = np.concatenate([self.past, self.work]) * SLOT_H
        return np.searchsorted(every, at_h) - self.past.size


def first_of_days(grid: Grid, work: Ints) -> Ints:
    """Positions in `work` of the first working slot of each local day."""
    edges = np.array([grid.day_start(day) for day in grid.days()], dtype=np.int64)
    day_of = np.searchsorted(edges, work, side="right")
    return np.flatnonzero(np.diff(day_of, prepend=-1)).astype(np.int32)


def closed_before(grid: Grid, work: Ints) -> Ints:
    """Of each working slot: its local day, less its rank among the local days that have a working slot."""
    edges = np.array([grid.day_start(day) for day in grid.days()], dtype=np.int64)
    day_of = np.searchsorted(edges, work, side="right")
    return (day_of - np.cumsum(np.diff(day_of, prepend=-1) != 0)).astype(np.int32)


def full_hours(grid: Grid, work: Ints) -> Bools:
    """Which working slots begin on a full local hour, by the local offset of each day's midnight."""
    edges = np.array([grid.day_start(day) for day in grid.days()], dtype=np.int64)
    midnights = edges[np.searchsorted(edges, work, side="right") - 1]
    return (work - midnights) % 2 == 0
