"""How much the use of warp varies, from a loom's own daily readings."""

from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo

from tracker.domain.calendars import Calendar
from tracker.domain.mill import Reading

FEWEST_DAYS = 5
"""Daily readings below which the default variation stands."""
_A_DAY = timedelta(days=1)


def default_spread_h(day_to_day_variation: float) -> float:
    """s² = 24·cv² in hours, for a day-to-day coefficient of variation (fraction) of the warp used."""
    return 24 * day_to_day_variation**2


def own_spread_h(readings: Sequence[Reading], running: Calendar, zone: ZoneInfo) -> float | None:
    """s² in hours from a loom's readings, in order of time; None where fewer than five of them are daily.

    Over h running hours the warp used has mean w·h and variance (s·w)²·h, so s² is estimated by
    Σ (u − w·h)²/h / w² / (n − 1) over the n stretches from day to day between two beam-outs, with w = Σu/Σh;
    with 24 running hours in every day that is 24·cv² with the sample coefficient of variation of the daily use.
    Warps of different rate are taken one by one and pooled. One reading a local day counts, the last. A stretch over
    several days says nothing of the variation from day to day and is left out; where the warp left rises, however
    little, another warp begins.
    """
    total, freedom = 0.0, 0
    for stretches in _warps(_daily(readings, zone), running):
        squares, n = _squares(stretches)
        total, freedom = total + squares, freedom + max(0, n - 1)
    return total / freedom if freedom >= FEWEST_DAYS - 2 else None


def _daily(readings: Sequence[Reading], zone: ZoneInfo) -> dict[date, Reading]:
    by_day: dict[date, Reading] = {}
    for reading in readings:
        if reading.warp_left_m is not None:
            by_day[reading.read_at.astimezone(zone).date()] = reading
    return by_day


def _warps(daily: Mapping[date, Reading], running: Calendar) -> list[list[tuple[float, float]]]:
    """Warp by warp the stretches from one day to the next: metres used and running hours."""
    found: list[list[tuple[float, float]]] = [[]]
    for (day, a), (next_day, b) in pairwise(daily.items()):
        used_m = (a.warp_left_m or 0.0) - (b.warp_left_m or 0.0)
        if used_m < 0:
            found.append([])
        elif next_day - day == _A_DAY:
            found[-1].append((used_m, running.hours_between(a.read_at, b.read_at)))
    return found


def _squares(stretches: Sequence[tuple[float, float]]) -> tuple[float, int]:
    """Σ (u − w·h)²/h / w² of one warp, and its number of stretches in which the loom ran."""
    stretches = [(used, hours) for used, hours in stretches if hours > 0]
    used_m, run_h = sum(u for u, _ in stretches), sum(h for _, h in stretches)
    if used_m <= 0:
        return 0.0, 0
    rate = used_m / run_h
    return sum((u - rate * h) ** 2 / h for u, h in stretches) / rate**2, len(stretches)
