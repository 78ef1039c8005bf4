"""What the readings of a loom say: which warp is on it now, how much is left, and when past warps ran out."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from tracker.domain.mill import LoomKey, Mill, Reading, Warp
from tracker.errors import Message, message
from tracker.forecast.rates import fault

JUMP_SHARE = 0.2
"""Warp left that rises by more than this share of the set length means a new warp, not a misreading."""


@dataclass(frozen=True, slots=True)
class Present:
    """The warp on a loom by its newest reading, and the warps listed after it."""

    warp: Warp
    following: tuple[Warp, ...]
    left_m: float
    read_at: datetime
    speed_ppm: float | None
    """As the reading gives it."""
    efficiency: float | None


def present(mill: Mill, key: LoomKey, as_of: datetime) -> Present | Message:
    """What is on a loom by the newest reading up to `as_of`, or why that cannot be said.

    A reading newer than the warp list replaces it. Where readings since the list rise again, a listed warp has gone in
    for each rise, and after the last of them the last one repeats.
    """
    warps = mill.warps.get(key, ())
    if not warps or warps[0].sequence != 0:
        return message("no-warp-on-loom")
    points = _points(warps[0], mill.readings.get(key, ()), as_of)
    if not points:
        known = warps[0].warp_left_m is not None
        return message("warp-without-date" if known else "warp-never-read")
    number = min(len(jumps(points, warps[0].set_length_m)), len(warps) - 1)
    last = points[-1]
    if last.warp_left_m is None or last.warp_left_m < 0:
        raise fault(warps[number], "warp-left-negative", left=last.warp_left_m)
    return Present(warps[number], warps[number + 1 :], last.warp_left_m, last.read_at, last.speed_ppm, last.efficiency)


def jumps(readings: Sequence[Reading], set_length_m: float | None) -> list[int]:
    """Indices of the readings before which a new warp went in: the warp left rose by more than a fifth of the set
    length (unknown: of the larger reading). Readings are in order of time and all have a warp left."""
    left = [reading.warp_left_m or 0.0 for reading in readings]
    return [i for i in range(1, len(left)) if left[i] - left[i - 1] > JUMP_SHARE * (set_length_m or left[i])]


def _points(warp: Warp, readings: Sequence[Reading], as_of: datetime) -> list[Reading]:
    """The warp list's own reading, where it has one, and the readings after it up to `as_of`."""
    start = warp.read_at
    newer = [
        r for r in readings if r.warp_left_m is not None and r.read_at <= as_of and (start is None or r.read_at > start)
    ]
    if start is None or warp.warp_left_m is None:
        return newer
    return [Reading(warp.hall, warp.loom, start, warp.warp_left_m), *newer]
