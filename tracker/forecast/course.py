"""The course of each loom: one warp after the other from the newest reading on, in hours of its running calendar."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, time, timedelta
from itertools import islice, zip_longest
from typing import NamedTuple

from tracker.domain.calendars import Calendar, calendar_of
from tracker.domain.mill import Loom, LoomKey, Mill, OrdinaryChange, Warp
from tracker.domain.windows import WindowKind
from tracker.errors import DataError, Message
from tracker.forecast.history import Present, present
from tracker.forecast.rates import Rate, fault, rate_of
from tracker.forecast.running import Clock, running_calendars
from tracker.forecast.variation import default_spread_h, own_spread_h

_MARGIN = timedelta(days=60)
"""Calendars reach this far past `until`, so that a P90 just beyond it is still laid on true running hours."""


@dataclass(frozen=True, slots=True)
class Run:
    """One warp being woven."""

    warp: Warp
    rate: Rate
    weaving_h: float
    contribution_per_h: float
    warp_value_per_m: float


class BeamOut(NamedTuple):
    """The end of a run, in running hours from the reading."""

    number: int
    weaving_h: float
    stops_h: float
    out: Run
    into: Run
    change: WindowKind
    ordinary: OrdinaryChange


@dataclass(frozen=True, slots=True)
class LoomCourse:
    """The beam-outs of one loom from its newest reading on."""

    loom: Loom
    present: Present
    clock: Clock
    spread_h: float
    beam_outs: tuple[BeamOut, ...]


def courses_of(mill: Mill, as_of: datetime, until: datetime) -> dict[LoomKey, LoomCourse]:
    """The course of each loom that can be forecast."""
    known = {key: now for key in mill.looms if isinstance(now := on_loom(mill, key, as_of), Present)}
    calendars = _calendars(mill, known, as_of, until)
    running = {hall: _Running(calendar, Clock(calendar)) for hall, calendar in calendars.items()}
    return {key: _course(mill, key, now, running[key.hall], (as_of, until)) for key, now in known.items()}


def on_loom(mill: Mill, key: LoomKey, as_of: datetime) -> Present | Message:
    """What is on a loom, or why it cannot be forecast: nothing known, or an impossible value of one of its warps, named
    with warp, article, value and limit."""
    try:
        now = present(mill, key, as_of)
        if isinstance(now, Present):
            for _ in islice(_runs(mill, mill.looms[key], now), len(now.following) + 2):
                pass  # each warp that is listed, and the last of them once more
    except DataError as wrong:
        return wrong.message
    return now


def _calendars(mill: Mill, known: dict[LoomKey, Present], as_of: datetime, until: datetime) -> dict[str, Calendar]:
    earliest = min((readings[0].read_at for readings in mill.readings.values() if readings), default=as_of)
    earliest = min([as_of, earliest, *(now.read_at for now in known.values())])
    zone = mill.terms.zone
    return running_calendars(mill, earliest.astimezone(zone).date(), (until + _MARGIN).astimezone(zone).date())


class _Running(NamedTuple):
    """When a hall, or a loom of it, runs."""

    calendar: Calendar
    clock: Clock


def _course(mill: Mill, key: LoomKey, now: Present, in_hall: _Running, span: tuple[datetime, datetime]) -> LoomCourse:
    """`span`: from the moment of the forecast to its end."""
    (as_of, until), (running, clock) = span, in_hall
    loom, standing = mill.looms[key], mill.standing.get(key, ())
    if standing:
        running = running.less(calendar_of((span.from_at, span.to_at) for span in standing))
        clock = Clock(running)
    past = [reading for reading in mill.readings.get(key, ()) if reading.read_at <= as_of]
    own = own_spread_h(past, running, mill.terms.zone)
    spread_h = default_spread_h(mill.terms.day_to_day_variation) if own is None else own
    beam_outs = tuple(_beam_outs(mill, loom, now, clock, until))
    return LoomCourse(loom, now, clock, spread_h, beam_outs)


def _beam_outs(mill: Mill, loom: Loom, now: Present, clock: Clock, until: datetime) -> Iterator[BeamOut]:
    """The beam-outs of a loom up to the first whose mean is at or past `until`, that one left out."""
    begin = float(clock.elapsed_h(now.read_at.timestamp()))
    end = float(clock.elapsed_h(until.timestamp()))
    runs = _runs(mill, loom, now)
    changes = {kind: _ordinary(mill, loom, kind) for kind in (WindowKind.REPEAT, WindowKind.STYLE)}
    out, at, weaving_h, number = next(runs), begin, 0.0, 0
    while True:
        weaving_h, at, number = weaving_h + out.weaving_h, at + out.weaving_h, number + 1
        into = next(runs, None)
        if at >= end and number > 1:
            return
        change = _change_kind(out.warp, (into or out).warp)
        yield BeamOut(number, weaving_h, at - begin - weaving_h, out, into or out, change, changes[change])
        if into is None:
            return
        at = max(at, _ready_h(mill, clock, into.warp)) + changes[change].hours_h
        out = into


def _runs(mill: Mill, loom: Loom, now: Present) -> Iterator[Run]:
    """The warp on the loom, the listed ones after it, then the last of them again and again."""
    rate = rate_of(mill, loom, now.warp, now.speed_ppm, now.efficiency)
    yield _run(mill, loom, now.warp, rate, now.left_m)
    for warp in now.following:
        rate = rate_of(mill, loom, warp)
        yield _run(mill, loom, warp, rate, _set_length_m(warp))
    last = now.following[-1] if now.following else now.warp
    if last.set_length_m is None:
        return
    again = _run(mill, loom, _repeat(last), rate, _set_length_m(last))
    while True:
        yield again


def _repeat(warp: Warp) -> Warp:
    """The same warp knotted in once more, ready when it is wanted."""
    return Warp(
        warp.hall, warp.loom, warp.sequence, warp.article, warp.set_length_m, tail_m=warp.tail_m, change="repeat"
    )


def _run(mill: Mill, loom: Loom, warp: Warp, rate: Rate, length_m: float) -> Run:
    article = mill.articles[warp.article]
    contribution = 0.0 if loom.capacity_unsold else (article.contribution_per_m or 0.0) * rate.cloth_m_per_h
    hours = max(0.0, length_m - (warp.tail_m or 0.0)) / rate.warp_m_per_h
    return Run(warp, rate, hours, contribution, article.warp_value_per_m or 0.0)


def _set_length_m(warp: Warp) -> float:
    length, tail = warp.set_length_m, warp.tail_m or 0.0
    if length is None:
        raise fault(warp, "set-length-missing")
    if not length > tail:
        raise fault(warp, "set-length-short", length=length, tail=tail)
    return length


def _change_kind(out: Warp, into: Warp) -> WindowKind:
    """As the incoming warp says; where it says nothing, another article is a style change."""
    if into.change:
        return WindowKind(into.change)
    return WindowKind.REPEAT if into.article == out.article else WindowKind.STYLE


def _ordinary(mill: Mill, loom: Loom, kind: WindowKind) -> OrdinaryChange:
    """The ordinary change of a kind: the row of the machine type before the row of every type; none takes no time."""
    rows = {change.machine_type: change for change in mill.changes if change.kind == kind}
    return rows.get(loom.machine_type) or rows.get(None) or OrdinaryChange(kind, 0.0)


def _ready_h(mill: Mill, clock: Clock, warp: Warp) -> float:
    """When a warp is there to go in, in hours of the running calendar: from the local midnight of its day on."""
    if warp.ready_on is None:
        return 0.0
    ready = datetime.combine(warp.ready_on, time(0), mill.terms.zone)
    return float(clock.elapsed_h(ready.timestamp()))


def run_at(course: LoomCourse | None, at: datetime) -> Run | None:
    """The warp in work at a moment by the means."""
    if course is None or not course.beam_outs:
        return None
    begin, end = (float(course.clock.elapsed_h(t.timestamp())) for t in (course.present.read_at, at))
    later = (out.out for out in course.beam_outs if out.weaving_h + out.stops_h > end - begin)
    return next(later, course.beam_outs[-1].into)


def change_at(course: LoomCourse | None, at: datetime) -> tuple[float, OrdinaryChange] | None:
    """The ordinary change that goes on at a moment by the means, and when it is done, in hours of the running calendar from
    the reading; None where the loom has its warp, or nothing is known of it."""
    if course is None:
        return None
    begin, now = (float(course.clock.elapsed_h(t.timestamp())) for t in (course.present.read_at, at))
    for out, following in zip_longest(course.beam_outs, course.beam_outs[1:]):
        out_h = out.weaving_h + out.stops_h
        in_h = out.weaving_h + following.stops_h if following else out_h + out.ordinary.hours_h
        if out_h <= now - begin < in_h:
            return in_h, out.ordinary
    return None
