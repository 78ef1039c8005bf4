"""Beam-outs of every loom, with their spread: planning.md, section 2."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, time, timedelta
from typing import NamedTuple

import numpy as np

from tracker.domain.calendars import Calendar, calendar_of
from tracker.domain.mill import Loom, LoomKey, Mill, Standing, Warp
from tracker.domain.windows import Window, WindowKind
from tracker.errors import DataError
from tracker.forecast.history import Present, present
from tracker.forecast.inverse_gaussian import quantile
from tracker.forecast.rates import Rate, rate_of, where
from tracker.forecast.running import Clock, moments, running_calendars
from tracker.forecast.variation import default_spread_h, own_spread_h

STALE_AFTER = timedelta(days=3)
_MARGIN = timedelta(days=60)
"""Calendars reach this far past `until`, so that a P90 just beyond it is still laid on true running hours."""


@dataclass(frozen=True, slots=True)
class _Run:
    """One warp being woven."""

    warp: Warp
    rate: Rate
    weaving_h: float
    contribution_per_h: float
    warp_value_per_m: float


class _BeamOut(NamedTuple):
    """The end of a run, in running hours from the reading."""

    number: int
    weaving_h: float
    stops_h: float
    out: _Run
    into: _Run
    change: WindowKind
    change_h: float


@dataclass(frozen=True, slots=True)
class _Course:
    """The beam-outs of one loom from its newest reading on."""

    loom: Loom
    present: Present
    clock: Clock
    spread_h: float
    beam_outs: tuple[_BeamOut, ...]


def forecast(mill: Mill, as_of: datetime, until: datetime) -> dict[LoomKey, tuple[Window, ...]]:
    """The windows of every loom up to `until`: its beam-outs whose mean lies before it, standing spans that touch
    [as_of, until), and one mid-warp window, in the order mid-warp (0), beam-outs (1 …), standing.

    A beam-out whose mean lies before `as_of` is overdue; later ones are left out once their P90 has passed too.
    Raises DataError, naming loom, warp, article and value, where a warp's rate or length is impossible.
    """
    courses = _courses(mill, as_of, until)
    beam_outs = _windows(courses, as_of, until)
    return {key: _with_others(mill, key, courses.get(key), beam_outs.get(key, ()), as_of, until) for key in mill.looms}


def unforecast(mill: Mill, as_of: datetime) -> dict[LoomKey, str]:
    """Looms that have neither a forecast nor a standing span ahead, and why."""
    stand = {key for key, spans in mill.standing.items() if any(span.to_at > as_of for span in spans)}
    found = {key: present(mill, key, as_of) for key in mill.looms if key not in stand}
    return {key: why for key, why in found.items() if isinstance(why, str)}


def _courses(mill: Mill, as_of: datetime, until: datetime) -> dict[LoomKey, _Course]:
    """The course of each loom that can be forecast; all impossible values together in one DataError."""
    known = {key: now for key in mill.looms if not isinstance(now := present(mill, key, as_of), str)}
    calendars = _calendars(mill, known, as_of, until)
    clocks = {hall: Clock(calendar) for hall, calendar in calendars.items()}
    courses: dict[LoomKey, _Course] = {}
    faults: list[str] = []
    for key, now in known.items():
        try:
            courses[key] = _course(mill, key, now, calendars[key.hall], clocks[key.hall], as_of, until)
        except DataError as fault:
            faults.append(str(fault))
    if faults:
        raise DataError(faults[0] + (f" (and {len(faults) - 1} more like this)" if faults[1:] else ""))
    return courses


def _calendars(mill: Mill, known: dict[LoomKey, Present], as_of: datetime, until: datetime) -> dict[str, Calendar]:
    earliest = min((readings[0].read_at for readings in mill.readings.values() if readings), default=as_of)
    earliest = min([as_of, earliest, *(now.read_at for now in known.values())])
    zone = mill.terms.zone
    return running_calendars(mill, earliest.astimezone(zone).date(), (until + _MARGIN).astimezone(zone).date())


def _course(
    mill: Mill, key: LoomKey, now: Present, running: Calendar, clock: Clock, as_of: datetime, until: datetime
) -> _Course:
    loom, standing = mill.looms[key], mill.standing.get(key, ())
    if standing:
        running = running.less(calendar_of((span.from_at, span.to_at) for span in standing))
        clock = Clock(running)
    past = [reading for reading in mill.readings.get(key, ()) if reading.read_at <= as_of]
    own = own_spread_h(past, running, now.warp.set_length_m, mill.terms.zone)
    spread_h = default_spread_h(mill.terms.day_to_day_variation) if own is None else own
    beam_outs = tuple(_beam_outs(mill, loom, now, clock, until))
    return _Course(loom, now, clock, spread_h, beam_outs)


def _beam_outs(mill: Mill, loom: Loom, now: Present, clock: Clock, until: datetime) -> Iterator[_BeamOut]:
    """The beam-outs of a loom up to the first whose mean is at or past `until`, that one left out."""
    begin = float(clock.elapsed_h(now.read_at.timestamp()))
    end = float(clock.elapsed_h(until.timestamp()))
    runs = _runs(mill, loom, now)
    changes = {kind: _change_h(mill, loom, kind) for kind in (WindowKind.REPEAT, WindowKind.STYLE)}
    out, at, weaving_h, number = next(runs), begin, 0.0, 0
    while True:
        weaving_h, at, number = weaving_h + out.weaving_h, at + out.weaving_h, number + 1
        into = next(runs, None)
        if at >= end and number > 1:
            return
        change = _change_kind(out.warp, (into or out).warp)
        yield _BeamOut(number, weaving_h, at - begin - weaving_h, out, into or out, change, changes[change])
        if into is None:
            return
        at = max(at, _ready_h(mill, clock, into.warp)) + changes[change]
        out = into


def _runs(mill: Mill, loom: Loom, now: Present) -> Iterator[_Run]:
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


def _run(mill: Mill, loom: Loom, warp: Warp, rate: Rate, length_m: float) -> _Run:
    article = mill.articles[warp.article]
    contribution = 0.0 if loom.capacity_unsold else (article.contribution_per_m or 0.0) * rate.cloth_m_per_h
    hours = max(0.0, length_m - (warp.tail_m or 0.0)) / rate.warp_m_per_h
    return _Run(warp, rate, hours, contribution, article.warp_value_per_m or 0.0)


def _set_length_m(warp: Warp) -> float:
    length, tail = warp.set_length_m, warp.tail_m or 0.0
    if length is None:
        raise DataError(f"{where(warp)}: a warp that follows needs a set length; give it in metres")
    if not length > tail:
        raise DataError(f"{where(warp)}: set length {length:g} m must be longer than the tail of {tail:g} m")
    return length


def _change_kind(out: Warp, into: Warp) -> WindowKind:
    """As the incoming warp says; where it says nothing, another article is a style change."""
    if into.change:
        return WindowKind(into.change)
    return WindowKind.REPEAT if into.article == out.article else WindowKind.STYLE


def _change_h(mill: Mill, loom: Loom, kind: WindowKind) -> float:
    """Hours of the ordinary change of a kind: the row of the machine type before the row of every type."""
    rows = {change.machine_type: change.hours_h for change in mill.changes if change.kind == kind}
    return rows.get(loom.machine_type, rows.get(None, 0.0))


def _ready_h(mill: Mill, clock: Clock, warp: Warp) -> float:
    """When a warp is there to go in, in hours of the running calendar: from the local midnight of its day on."""
    if warp.ready_on is None:
        return 0.0
    ready = datetime.combine(warp.ready_on, time(0), mill.terms.zone)
    return float(clock.elapsed_h(ready.timestamp()))


def _windows(courses: dict[LoomKey, _Course], as_of: datetime, until: datetime) -> dict[LoomKey, tuple[Window, ...]]:
    """All beam-outs of all looms at once, laid on the calendars hall by hall."""
    by_clock: dict[int, list[tuple[_Course, _BeamOut]]] = {}
    for course in courses.values():
        by_clock.setdefault(id(course.clock), []).extend((course, out) for out in course.beam_outs)
    found: dict[LoomKey, list[Window]] = {}
    for pairs in by_clock.values():
        for (course, out), times in zip(pairs, _times(pairs), strict=True):
            window = _window(course, out, times, as_of)
            gone = window.p90_at < as_of and out.number > 1
            if window.mean_at < until and not gone:
                found.setdefault(course.loom.key, []).append(window)
    return {key: tuple(windows) for key, windows in found.items()}


def _times(pairs: Sequence[tuple[_Course, _BeamOut]]) -> Iterator[tuple[datetime, ...]]:
    """Mean, P10, P50 and P90 clock times of beam-outs that share a clock."""
    mean = np.array([out.weaving_h for _, out in pairs])[:, None]
    stops = np.array([out.stops_h for _, out in pairs])[:, None]
    spread = np.array([course.spread_h for course, _ in pairs])[:, None]
    begin = np.array([course.present.read_at.timestamp() for course, _ in pairs])[:, None]
    hours = np.hstack((mean, quantile(mean, spread, [0.1, 0.5, 0.9])))
    if not pairs:
        return iter(())
    laid = pairs[0][0].clock.after(begin, hours + stops)
    return zip(*(moments(column) for column in laid.T), strict=True)


def _window(course: _Course, beam_out: _BeamOut, times: tuple[datetime, ...], as_of: datetime) -> Window:
    number, weaving_h, stops_h, out, into, change, change_h = beam_out
    mean_at, p10_at, p50_at, p90_at = times
    return Window(
        key=course.loom.key,
        number=number,
        kind=change,
        reading_at=course.present.read_at,
        mean_running_h=weaving_h,
        spread_h=course.spread_h,
        mean_at=mean_at,
        p10_at=p10_at,
        p50_at=p50_at,
        p90_at=p90_at,
        starts_at=mean_at,
        ends_at=None,
        article_out=out.warp.article,
        article_in=into.warp.article,
        warp_rate_m_per_h=out.rate.warp_m_per_h,
        warp_value_per_m=out.warp_value_per_m,
        contribution_per_h=into.contribution_per_h,
        ordinary_change_h=change_h,
        stops_h=stops_h,
        state=_state(course.present, mean_at, as_of),
    )


def _state(now: Present, mean_at: datetime, as_of: datetime) -> str:
    if mean_at < as_of:
        return "overdue"
    return "stale" if as_of - now.read_at > STALE_AFTER else "ok"


def _with_others(
    mill: Mill,
    key: LoomKey,
    course: _Course | None,
    beam_outs: tuple[Window, ...],
    as_of: datetime,
    until: datetime,
) -> tuple[Window, ...]:
    spans = [span for span in mill.standing.get(key, ()) if span.to_at > as_of and span.from_at < until]
    number = max((window.number for window in beam_outs), default=0)
    standing = tuple(_standing(course, span, number + i, key) for i, span in enumerate(spans, start=1))
    mid_warp = (_mid_warp(course, as_of, until),) if course and course.beam_outs and until > as_of else ()
    return (*mid_warp, *beam_outs, *standing)


def _standing(course: _Course | None, span: Standing, number: int, key: LoomKey) -> Window:
    """A standing span; the warp in work when it ends is the one that waits."""
    return _still(key, number, WindowKind.STANDING, span.from_at, span.to_at, course, _run_at(course, span.to_at))


def _mid_warp(course: _Course, as_of: datetime, until: datetime) -> Window:
    return _still(course.loom.key, 0, WindowKind.MID_WARP, as_of, until, course, course.beam_outs[0].out)


def _run_at(course: _Course | None, at: datetime) -> _Run | None:
    """The warp in work at a moment by the means."""
    if course is None or not course.beam_outs:
        return None
    begin, end = (float(course.clock.elapsed_h(t.timestamp())) for t in (course.present.read_at, at))
    later = (out.out for out in course.beam_outs if out.weaving_h + out.stops_h > end - begin)
    return next(later, course.beam_outs[-1].into)


def _still(
    key: LoomKey,
    number: int,
    kind: WindowKind,
    starts_at: datetime,
    ends_at: datetime,
    course: _Course | None,
    run: _Run | None,
) -> Window:
    """A window without spread."""
    return Window(
        key=key,
        number=number,
        kind=kind,
        reading_at=course.present.read_at if course else starts_at,
        mean_running_h=0.0,
        spread_h=0.0,
        mean_at=starts_at,
        p10_at=starts_at,
        p50_at=starts_at,
        p90_at=starts_at,
        starts_at=starts_at,
        ends_at=ends_at,
        article_out=run.warp.article if run else None,
        article_in=run.warp.article if run else None,
        warp_rate_m_per_h=run.rate.warp_m_per_h if run else 0.0,
        warp_value_per_m=run.warp_value_per_m if run else 0.0,
        contribution_per_h=run.contribution_per_h if run else 0.0,
        ordinary_change_h=0.0,
    )
