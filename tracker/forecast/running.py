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
    """A calendar whose moments are POSIX seconds; the same arithmetic as `Calendar`, for arrays.

    Sums stay in whole seconds, which floats hold exactly, and results are rounded to microseconds: a run that ends
    with a shift ends there, not at the start of the next.
    """

    def __init__(self, calendar: Calendar):
        spans = np.array([(a.timestamp(), b.timestamp()) for a, b in calendar.spans]).reshape(-1, 2)
        self.starts, self.ends = spans[:, 0], spans[:, 1]
        self.before_s = np.concatenate(([0.0], np.cumsum(self.ends - self.starts)))

    def elapsed_h(self, at: ArrayLike) -> Floats:
        """Calendar hours from the calendar's beginning to each moment."""
        return self._elapsed_s(at) / 3600

    def after(self, start: ArrayLike, hours: ArrayLike) -> Floats:
        """The first moment at or after each `start` at which `hours` ≥ 0 have passed; runs on past the last span."""
        start, hours = np.broadcast_arrays(np.asarray(start, dtype=float), np.asarray(hours, dtype=float))
        step = np.round(hours * 3600, 6)
        if not self.starts.size:
            return np.asarray(start + step, dtype=float)
        target, total = np.round(self._elapsed_s(start) + step, 6), self.before_s[-1]
        i = np.clip(np.searchsorted(self.before_s, target) - 1, 0, self.starts.size - 1)
        inside = self.starts[i] + (target - self.before_s[i])
        beyond = np.maximum(start, self.ends[-1]) + (target - total)
        return np.where(step > 0, np.where(target > total, beyond, inside), start)

    def _elapsed_s(self, at: ArrayLike) -> Floats:
        at = np.asarray(at, dtype=float)
        if not self.starts.size:
            return np.zeros_like(at)
        i = np.searchsorted(self.starts, at, side="right")
        j = np.maximum(i - 1, 0)
        return self.before_s[j] + np.where(i > 0, np.minimum(at, self.ends[j]) - self.starts[j], 0.0)


def moments(seconds: ArrayLike) -> Sequence[datetime]:
    """POSIX seconds as UTC moments."""
    return [datetime.fromtimestamp(s, UTC) for s in np.asarray(seconds, dtype=float).tolist()]
