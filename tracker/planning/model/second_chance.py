"""The chance that a loom misses this and every later chance before the horizon (MODEL.md, section 8)."""

from collections.abc import Sequence
from functools import cache

import numpy as np

from tracker.domain.windows import WindowKind
from tracker.planning.model.firming import SHARES, firmed
from tracker.planning.model.grid import Floats, HallClock
from tracker.planning.model.numbered import KINDS, Menus, WindowTable
from tracker.planning.model.shapes import Shapes

MISSED = 0.05
"""Chance that a loom is not begun at its beam-out though there would be time: people away, orders at short notice, failures."""
_DUST_H = 1e-6


def chances_lost(
    windows: WindowTable, menus: Menus, shapes: Shapes, clocks: Sequence[HallClock], hall: Sequence[int]
) -> Floats:
    """By window; 0 for a mid-warp one, which can be had on any day. `hall`: by window."""
    missed = _missed(windows, menus, shapes, clocks, hall)
    return np.array([_all_missed(windows, missed, i) for i in range(len(windows.items))], dtype=float)


def _all_missed(windows: WindowTable, missed: Floats, i: int) -> float:
    mid_warp = windows.kind == KINDS.index(WindowKind.MID_WARP)
    if mid_warp[i]:
        return 0.0
    later = (windows.loom == windows.loom[i]) & (windows.mean_h > windows.mean_h[i]) & ~mid_warp
    return float(missed[i] * np.prod(missed[later]))


def _missed(
    windows: WindowTable, menus: Menus, shapes: Shapes, clocks: Sequence[HallClock], hall: Sequence[int]
) -> Floats:
    """The chance to miss each window alone: its beam comes, by the whole spread of today, after the last start from which its
    shortest way is done before the horizon, or something else comes between."""

    @cache
    def last_start_h(hall: int, shape: int) -> float:
        size = clocks[hall].work.size
        past = shapes.past(hall, np.full(size, shape), np.arange(size))
        in_time = int(np.searchsorted(past, size, side="right"))
        return float(clocks[hall].starts_h[in_time - 1]) if in_time else -np.inf

    def last_of_window_h(i: int) -> float:
        menu = windows.menu[i]
        contents = menus.flat[menus.first[menu] : menus.first[menu + 1]]
        of_window = shapes.number(contents, np.full(contents.size, windows.change[i]))
        return max((last_start_h(hall[i], int(shape)) for shape in of_window), default=-np.inf)

    late = np.zeros(len(windows.items))
    outs = np.flatnonzero(windows.beam_out)
    by_h = firmed(windows.mean_running_h[outs], windows.spread_h[outs]) - windows.mean_running_h[outs][:, None]
    for i, later_h in zip(outs.tolist(), by_h, strict=True):
        out_h = clocks[hall[i]].running.after(np.full(SHARES.size, windows.mean_h[i]), later_h)
        late[i] = np.mean(out_h > last_of_window_h(i) + _DUST_H)
    return 1 - (1 - MISSED) * (1 - late)
