"""How much the use of warp varies, from a loom's own daily readings."""

from collections.abc import Sequence
from datetime import date
from itertools import pairwise
from zoneinfo import ZoneInfo

from tracker.domain.calendars import Calendar
from tracker.domain.mill import Reading
from tracker.forecast.history import jumps

FEWEST_DAYS = 5
"""Days with a reading below which the default variation stands."""


def default_spread_h(day_to_day_variation: float) -> float:
    """s² = 24·cv² in hours, for a day-to-day coefficient of variation (fraction) of the warp used."""
    return 24 * day_to_day_variation**2


def own_spread_h(
    readings: Sequence[Reading], running: Calendar, set_length_m: float | None, zone: ZoneInfo
) -> float | None:
    """s² in hours from a loom's readings, in order of time; None where they are fewer than five days.

    Over h running hours the warp used has mean w·h and variance (s·w)²·h, so s² is estimated by
    Σ (u − w·h)²/h / w² / (n − 1) over the n stretches from day to day between two beam-outs, with w = Σu/Σh;
    with 24 running hours in every day that is 24·cv² with the sample coefficient of variation of the daily use.
    Warps of different rate are taken one by one and pooled. One reading a local day counts, the last.
    """
    daily = _daily(readings, zone)
    if len(daily) < FEWEST_DAYS:
        return None
    total, freedom = 0.0, 0
    cuts = [0, *jumps(daily, set_length_m), len(daily)]
    for first, end in pairwise(cuts):
        squares, n = _warp_squares(daily[first:end], running)
        total, freedom = total + squares, freedom + max(0, n - 1)
    return total / freedom if freedom >= FEWEST_DAYS - 2 else None


def _daily(readings: Sequence[Reading], zone: ZoneInfo) -> list[Reading]:
    by_day: dict[date, Reading] = {}
    for reading in readings:
        if reading.warp_left_m is not None:
            by_day[reading.read_at.astimezone(zone).date()] = reading
    return list(by_day.values())


def _warp_squares(daily: Sequence[Reading], running: Calendar) -> tuple[float, int]:
    """Σ (u − w·h)²/h / w² of one warp, and its number of stretches in which the loom ran."""
    stretches = [
        ((a.warp_left_m or 0) - (b.warp_left_m or 0), running.hours_between(a.read_at, b.read_at))
        for a, b in pairwise(daily)
    ]
    stretches = [(used, hours) for used, hours in stretches if hours > 0]
    used_m, run_h = sum(u for u, _ in stretches), sum(h for _, h in stretches)
    if used_m <= 0:
        return 0.0, 0
    rate = used_m / run_h
    return sum((u - rate * h) ** 2 / h for u, h in stretches) / rate**2, len(stretches)
