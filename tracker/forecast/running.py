"""Running calendars as arrays, so that thousands of forecasts are laid on them at once."""

from collections.abc import Sequence
from datetime import UTC, datetime

import numpy as np
from numpy.typing import ArrayLike, NDArray

from tracker.domain.calendars import Calendar
from tracker.domain.shifts import running_calendars

__all__ = ["Clock", "moments", "running_calendars"]

Floats = NDArray[np.float64]


class Clock:
    """A calendar whose moments are POSIX seconds; the same arithmetic as `Calendar`, for arrays."""

    def __init__(self, calendar: Calendar):
        spans = np.array([(a.timestamp(), b.timestamp()) for a, b in calendar.spans]).reshape(-1, 2)
        self.starts, self.ends = spans[:, 0], spans[:, 1]
        self.before_h = np.concatenate(([0.0], np.cumsum(self.ends - self.starts) / 3600))

    def elapsed_h(self, at: ArrayLike) -> Floats:
        """Calendar hours from the calendar's beginning to each moment."""
        at = np.asarray(at, dtype=float)
        i = np.searchsorted(self.starts, at, side="right")
        if not self.starts.size:
            return np.zeros_like(at)
        j = np.maximum(i - 1, 0)
        return self.before_h[j] + np.where(i > 0, np.minimum(at, self.ends[j]) - self.starts[j], 0.0) / 3600

    def after(self, start: ArrayLike, hours: ArrayLike) -> Floats:
        """The first moment at or after each `start` at which `hours` ≥ 0 have passed; runs on past the last span."""
        start, hours = np.broadcast_arrays(np.asarray(start, dtype=float), np.asarray(hours, dtype=float))
        if not self.starts.size:
            return start + hours * 3600
        target, total = self.elapsed_h(start) + hours, self.before_h[-1]
        i = np.clip(np.searchsorted(self.before_h, target) - 1, 0, self.starts.size - 1)
        inside = self.starts[i] + (target - self.before_h[i]) * 3600
        beyond = np.maximum(start, self.ends[-1]) + (target - total) * 3600
        return np.where(hours > 0, np.where(target > total, beyond, inside), start)


def moments(seconds: ArrayLike) -> Sequence[datetime]:
    """POSIX seconds as UTC moments."""
    return [datetime.fromtimestamp(s, UTC) for s in np.asarray(seconds, dtype=float).tolist()]
