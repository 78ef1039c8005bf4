"""How likely a loom is to miss a window and all its later ones (MODEL.md, section 8)."""

from collections.abc import Callable, Mapping, Sequence
from datetime import datetime, timedelta
from functools import cached_property
from math import prod

from tracker.domain.windows import Window, WindowKind
from tracker.domain.work import WorkContent
from tracker.planning.checks.case import DUST, Case, parts_needed

MISSED_ANYHOW = 0.05
Quantiles = Callable[[Sequence[tuple[float, float]]], Mapping[tuple[float, float], list[float]]]


class SecondChance:
    """Window by window; each last start is looked for once."""

    def __init__(self, case: Case, quantiles: Quantiles):
        self.case, self.quantiles = case, quantiles
        self._last: dict[tuple, datetime | None] = {}

    def lost(self, window: Window) -> float:
        """The chance that this window and every later one of its loom are missed; 0 mid-warp."""
        if window.kind is WindowKind.MID_WARP:
            return 0.0
        others = self.case.problem.windows[window.key]
        later = [
            w for w in others if w.kind is not WindowKind.MID_WARP and w.mean_at > window.mean_at and self._ways(w)
        ]
        return self._missed(window) * prod(self._missed(w) for w in later)

    def _ways(self, window: Window) -> tuple[WorkContent, ...]:
        return self.case.problem.contents.get(window.key, {}).get(window.kind, ())

    def _missed(self, window: Window) -> float:
        hours = self._hours.get((window.mean_running_h, window.spread_h)) if window.ends_at is None else None
        if hours is None:
            return MISSED_ANYHOW
        found = [last for way in self._ways(window) if (last := self._last_start(window, way))]
        running = self.case.running(window.key.hall)
        outs = [running.after(window.mean_at, h - window.mean_running_h) for h in hours]
        dust = timedelta(hours=DUST)
        in_time = sum(bool(found) and out <= max(found) + dust for out in outs) / len(outs)
        return 1 - (1 - MISSED_ANYHOW) * in_time

    def _last_start(self, window: Window, way: WorkContent) -> datetime | None:
        """The last working slot from which such a conversion is done before the horizon."""
        hall = window.key.hall
        sign = hall, parts_needed(way, window), window.ordinary_change_h, window.meanwhile_h, window.warp_in_at
        if sign not in self._last:
            starts = (self.case.begin(slot) for slot in reversed(self.case.work(hall)))
            self._last[sign] = next((at for at in starts if self.case.course(at, way, window, hall)), None)
        return self._last[sign]

    @cached_property
    def _hours(self) -> Mapping[tuple[float, float], list[float]]:
        """The whole spread of each beam-out as today's forecast sees it."""
        windows = (w for of in self.case.problem.windows.values() for w in of if w.ends_at is None)
        return self.quantiles(sorted({(w.mean_running_h, w.spread_h) for w in windows}))
