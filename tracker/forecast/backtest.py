"""How good past forecasts would have been: true beam-outs between P10 and P90, from a history of readings."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from itertools import pairwise

from tracker.arrays.inverse_gaussian import quantile
from tracker.domain.calendars import Calendar
from tracker.domain.mill import LoomKey, Mill, Reading
from tracker.forecast.history import jumps
from tracker.forecast.rates import rate_of
from tracker.forecast.running import running_calendars
from tracker.forecast.variation import default_spread_h, own_spread_h

LEADS_DAYS = (1, 3, 7, 14)
"""How long before the beam-out forecasts are looked back at; 3 days is the firm period."""
_OTHER_RATE = 0.25
"""A warp used faster or slower than its listed article by more than this share was another article."""


@dataclass(frozen=True, slots=True)
class LookBack:
    """One forecast of the past and what came of it. Moments UTC."""

    key: LoomKey
    lead_days: int
    made_at: datetime
    p10_at: datetime
    p50_at: datetime
    p90_at: datetime
    true_at: datetime

    @property
    def within(self) -> bool:
        return self.p10_at <= self.true_at <= self.p90_at


@dataclass(frozen=True, slots=True)
class Backtest:
    beam_outs: int
    """True beam-outs found: the warp left jumps up from one reading to the next."""
    not_compared: int
    """Beam-outs of warps that were used at another rate than the article now listed, so of another article."""
    looks: tuple[LookBack, ...]

    @property
    def share_within(self) -> float | None:
        """Share between P10 and P90, 0 to 1; None without a forecast. A forecast that tells the truth has 0.8."""
        return sum(look.within for look in self.looks) / len(self.looks) if self.looks else None


@dataclass(frozen=True, slots=True)
class _Past:
    """A warp that has run out, by its readings."""

    key: LoomKey
    readings: Sequence[Reading]
    before: Sequence[Reading]
    """All readings of the loom up to the last of this warp."""
    true_at: datetime
    rate_m_per_h: float
    tail_m: float
    set_length_m: float | None


def backtest(mill: Mill) -> Backtest:
    """Look back at every beam-out in the readings, 1, 3, 7 and 14 days ahead where there was a reading then.

    The beam-out itself is nowhere recorded: it is taken as the moment at which the last reading before the jump would
    have run out at the rate measured on that warp, no later than the next reading. The article of a past warp is not
    recorded either: the one listed as being on the loom now is taken, and warps that do not fit it are left out.
    """
    readings = [reading for rows in mill.readings.values() for reading in rows]
    if not readings:
        return Backtest(0, 0, ())
    calendars = _calendars(mill, readings)
    beam_outs = not_compared = 0
    looks: list[LookBack] = []
    for key in mill.looms:
        found, ended = _past_warps(mill, key, calendars[key.hall])
        beam_outs, not_compared = beam_outs + ended, not_compared + ended - len(found)
        looks += [look for past in found for look in _look_back(mill, past, calendars[key.hall])]
    return Backtest(beam_outs, not_compared, tuple(looks))


def _calendars(mill: Mill, readings: Sequence[Reading]) -> dict[str, Calendar]:
    zone, margin = mill.terms.zone, timedelta(days=60)
    first, last = min(r.read_at for r in readings), max(r.read_at for r in readings) + margin
    return running_calendars(mill, first.astimezone(zone).date(), last.astimezone(zone).date())


def _past_warps(mill: Mill, key: LoomKey, running: Calendar) -> tuple[list[_Past], int]:
    """The warps of a loom that ran out between two readings and fit its article, and how many ran out in all."""
    warps = mill.warps.get(key, ())
    readings = [reading for reading in mill.readings.get(key, ()) if reading.warp_left_m is not None]
    if not warps or warps[0].sequence != 0 or not readings:
        return [], 0
    warp, rate = warps[0], rate_of(mill, mill.looms[key], warps[0]).warp_m_per_h
    cuts = [0, *jumps(readings, warp.set_length_m)]
    found: list[_Past] = []
    for first, end in pairwise(cuts):
        own = readings[first:end]
        measured = _measured_rate(own, running)
        if measured is None or abs(measured / rate - 1) > _OTHER_RATE:
            continue
        left_m = max(0.0, (own[-1].warp_left_m or 0.0) - (warp.tail_m or 0.0))
        true_at = min(running.after(own[-1].read_at, left_m / measured), readings[end].read_at)
        found.append(_Past(key, own, readings[:end], true_at, rate, warp.tail_m or 0.0, warp.set_length_m))
    return found, len(cuts) - 1


def _measured_rate(readings: Sequence[Reading], running: Calendar) -> float | None:
    """Metres an hour over the readings of one warp; None where they do not show it."""
    used_m = (readings[0].warp_left_m or 0.0) - (readings[-1].warp_left_m or 0.0)
    hours = running.hours_between(readings[0].read_at, readings[-1].read_at)
    return used_m / hours if used_m > 0 and hours > 0 else None


def _look_back(mill: Mill, past: _Past, running: Calendar) -> Iterable[LookBack]:
    """The forecasts from the readings of about 1, 3, 7 and 14 days before, the last reading left out: the truth hangs
    on it."""
    for lead in LEADS_DAYS:
        ahead = timedelta(days=lead)
        fits = [r for r in past.readings[:-1] if ahead <= past.true_at - r.read_at < ahead + timedelta(days=1)]
        if fits:
            yield _forecast_from(mill, past, fits[-1], lead, running)


def _forecast_from(mill: Mill, past: _Past, reading: Reading, lead: int, running: Calendar) -> LookBack:
    known = [r for r in past.before if r.read_at <= reading.read_at]
    spread_h = own_spread_h(known, running, mill.terms.zone)
    if spread_h is None:
        spread_h = default_spread_h(mill.terms.day_to_day_variation)
    mean_h = max(0.0, (reading.warp_left_m or 0.0) - past.tail_m) / past.rate_m_per_h
    p10, p50, p90 = (running.after(reading.read_at, float(h)) for h in quantile(mean_h, spread_h, [0.1, 0.5, 0.9]))
    return LookBack(past.key, lead, reading.read_at, p10, p50, p90, past.true_at)
