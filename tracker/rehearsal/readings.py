"""What people expect of the beams to come, from what they have read of each warp so far (MODEL.md, section 7)."""

from bisect import bisect_right
from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import datetime
from functools import cached_property
from math import hypot
from typing import NamedTuple

import numpy as np

from tracker.arrays.inverse_gaussian import quantile
from tracker.domain.mill import LoomKey
from tracker.domain.windows import Window, WindowKind
from tracker.rehearsal.drawing import BEAM_OUTS, World
from tracker.rehearsal.hall import Hall

SHARES = (0.1, 0.5, 0.9)


class _Expected(NamedTuple):
    """What is expected of the warp on a loom."""

    at: datetime
    """When it was read, or put on where it was not read since."""
    left_h: float
    """Running hours that it lasts from then on."""
    later_h: float
    """Running hours by which it, and so all that follow, comes later than it was to come at the outset."""


class Readings:
    """The windows of a hall's looms as people see them at a moment of a world."""

    def __init__(self, hall: Hall, world: World):
        self.hall, self.world = hall, world

    def windows(self, key: LoomKey, now: datetime, later_h: float, stands: int | None) -> tuple[Window, ...]:
        """Of one loom. `later_h`: running hours that it has stood for nothing; `stands`: number of the beam-out since which it
        waits for its crew."""
        seen = self._beam_outs(key, now, later_h, stands)
        moved = {old.mean_at: new.mean_at for old, new in seen}
        ahead = [new for _, new in seen if new.mean_at < self.hall.case.horizon_end]
        return (*ahead, *self._others(key, now, moved))

    # ---- beam-outs

    def _beam_outs(
        self, key: LoomKey, now: datetime, later_h: float, stands: int | None
    ) -> list[tuple[Window, Window]]:
        """(as it was at the outset, as it is seen now) of the beam-outs that are still to come, and of the one at which the loom
        stands."""
        outs = self.hall.beam_outs.get(key, ())
        came = [self.hall.beam_out(out, self.world, later_h) for out in outs]
        standing = next((i for i, out in enumerate(outs) if out.number == stands), None)
        if standing is None:
            first = next((i for i, at in enumerate(came) if at > now), len(outs))
            found, expected = [], self._expected(outs, first, now, later_h) if first < len(outs) else None
        else:
            first, since = standing + 1, came[standing]
            found = [(outs[standing], _is_out(outs[standing], since))]
            stood_h = self.hall.case.running(key.hall).hours_between(since, now)
            expected = self._anew(outs, first, now, later_h + stood_h) if first < len(outs) else None
        return found + [(out, self._seen(out, outs[first], expected)) for out in outs[first:] if expected]

    def _seen(self, out: Window, first: Window, expected: _Expected) -> Window:
        running = self.hall.case.running(out.key.hall)
        hours = expected.left_h + out.mean_running_h - first.mean_running_h
        mean_at = running.after(out.mean_at, expected.later_h)
        ends = quantile(hours, out.spread_h, np.array(SHARES)).tolist()
        p10_at, p50_at, p90_at = (running.after(mean_at, end - hours) for end in ends)
        return replace(
            out, reading_at=expected.at, mean_running_h=hours, mean_at=mean_at, p10_at=p10_at, p50_at=p50_at, p90_at=p90_at,
            starts_at=mean_at, stops_h=out.stops_h - first.stops_h,
            state="ok",
        )  # fmt: skip

    def _expected(self, outs: tuple[Window, ...], i: int, now: datetime, later_h: float) -> _Expected:
        """From the newest reading of the warp that is on the loom; of one that was not read yet, from its length."""
        out, comes = outs[i], self.hall.beam_out(outs[i], self.world, later_h)
        late_h, lasts_h = self._lasts(outs, i)
        running = self.hall.case.running(out.key.hall)
        begins = running.after(comes, -lasts_h)
        days, read = self._read(out.key.hall, begins, now)
        to_go_h = np.array([running.hours_between(at, comes) for at in read])
        if not read or not 0 < to_go_h[-1] < lasts_h:
            return self._anew(outs, i, min(begins, now), later_h)
        left_h = self._left(out, to_go_h, days, (lasts_h - late_h, lasts_h))
        return _Expected(read[-1], left_h, self._before(outs, i) + late_h + later_h + left_h - float(to_go_h[-1]))

    def _anew(self, outs: tuple[Window, ...], i: int, begins: datetime, later_h: float) -> _Expected:
        """Of a warp of which only the length is known."""
        late_h, lasts_h = self._lasts(outs, i)
        return _Expected(begins, lasts_h - late_h, self._before(outs, i) + later_h)

    def _before(self, outs: tuple[Window, ...], i: int) -> float:
        """Hours by which the warp before came later than by its mean."""
        return self.world.warps.get((outs[i].key, outs[i - 1].number), 0.0) if i else 0.0

    def _lasts(self, outs: tuple[Window, ...], i: int) -> tuple[float, float]:
        """Hours by which a warp lasts longer than by its mean, and hours that it lasts (the first: from its reading at the
        outset)."""
        mean_h = outs[i].mean_running_h - (outs[i - 1].mean_running_h if i else 0.0)
        late_h = self.world.warps.get((outs[i].key, outs[i].number), 0.0) - self._before(outs, i)
        return late_h, mean_h + late_h

    def _left(self, out: Window, to_go_h: np.ndarray, days: list[int], lasts: tuple[float, float]) -> float:
        """Hours that the newest reading says are left; `lasts`: by its mean, and in this world. On its way to an end that is
        given, what is left of a warp is the length of a Brownian bridge in three dimensions (D. Williams, Proceedings of the
        London Mathematical Society 28, 1974), so it is exact at whatever moments it is read."""
        mean_h, lasts_h = lasts
        straight, noise = mean_h * float(to_go_h[-1]) / lasts_h, self.world.readings
        if noise is None:
            return straight
        drawn = noise.of(out.key, out.number, days[-1] + 1)[days]
        before_h = np.concatenate(([lasts_h], to_go_h[:-1]))
        pace = np.sqrt(out.spread_h * (before_h - to_go_h) / (before_h * to_go_h))
        along, *aside = (float(to_go_h[-1]) * (pace[:, None] * drawn[:, :3]).sum(axis=0)).tolist()
        left_h = hypot(straight + along, *aside)
        return max(0.0, left_h * (1 + noise.error * float(drawn[-1, 3])))

    def _read(self, hall: str, since: datetime, now: datetime) -> tuple[list[int], list[datetime]]:
        """(days from the outset, moments) at which warps are read: on each day of work, when it ends."""
        days, ends = self._rounds[hall]
        first, past = bisect_right(ends, since), bisect_right(ends, now)
        return days[first:past], ends[first:past]

    @cached_property
    def _rounds(self) -> dict[str, tuple[list[int], list[datetime]]]:
        hall, found = self.hall, {}
        for name, work in zip(hall.halls, hall.work, strict=True):
            last = list({hall.day[slot]: slot for slot in work}.values())
            found[name] = [hall.day[slot] for slot in last], [hall.case.begin(slot + 1) for slot in last]
        return found

    # ---- others

    def _others(self, key: LoomKey, now: datetime, moved: dict[datetime, datetime]) -> Iterator[Window]:
        """Standing spans, and the warps on end in which a loom may be stopped, whose bounds are beam-outs."""
        windows = self.hall.problem.windows.get(key, ())
        yield from (w for w in windows if w.kind is WindowKind.STANDING and w.ends_at and w.ends_at > now)
        yield from _from_now(self._on_end(windows, now, moved), now)

    def _on_end(self, windows: Iterable[Window], now: datetime, moved: dict[datetime, datetime]) -> Iterator[Window]:
        outs = {w.mean_at for w in windows if w.kind in BEAM_OUTS}
        for window in windows:
            if window.kind is WindowKind.MID_WARP and window.ends_at:
                ends_at = moved.get(window.ends_at, now if window.ends_at in outs else window.ends_at)
                starts_at = moved.get(window.starts_at, now)
                if ends_at > max(now, starts_at):
                    yield replace(window, starts_at=max(now, starts_at), ends_at=ends_at)


def _from_now(windows: Iterable[Window], now: datetime) -> Iterator[Window]:
    """As they lie, the one that holds this moment by the number 0."""
    for window in windows:
        at = window.starts_at
        number = 0 if at == now else window.number
        yield replace(window, number=number, mean_at=at, p10_at=at, p50_at=at, p90_at=at)


def _is_out(out: Window, since: datetime) -> Window:
    """Of a beam that is out, and known to be."""
    return replace(
        out, reading_at=since, mean_running_h=0.0, spread_h=0.0, mean_at=since, p10_at=since, p50_at=since, p90_at=since,
        starts_at=since, stops_h=0.0, state="overdue",
    )  # fmt: skip
