"""Beam-outs of every loom, with their spread: MODEL.md, section 2."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np

from tracker.arrays.inverse_gaussian import quantile
from tracker.domain.mill import LoomKey, Mill, Standing
from tracker.domain.windows import Window, WindowKind
from tracker.errors import Message
from tracker.forecast.course import BeamOut, LoomCourse, Run, change_at, courses_of, on_loom, run_at
from tracker.forecast.history import Present
from tracker.forecast.running import moments

STALE_AFTER = timedelta(days=3)


def forecast(mill: Mill, as_of: datetime, until: datetime) -> dict[LoomKey, tuple[Window, ...]]:
    """The windows of every loom up to `until`: its beam-outs whose mean lies before it, standing spans that touch
    [as_of, until), and a mid-warp window for the warp in work (0), in the order mid-warp, beam-outs (1 …), standing;
    after them a mid-warp window for each later warp of another article or rate.

    A beam-out whose mean lies before `as_of` is overdue; later ones are left out once their P90 has passed too.
    A loom that cannot be forecast has no beam-outs; `unforecast` says why.
    """
    courses = courses_of(mill, as_of, until)
    beam_outs = _windows(courses, as_of, until)
    return {key: _with_others(mill, key, courses.get(key), beam_outs.get(key, ()), as_of, until) for key in mill.looms}


def unforecast(mill: Mill, as_of: datetime) -> dict[LoomKey, Message]:
    """Looms that have neither a forecast nor a standing span ahead, and why: no reading, or an impossible value of a warp,
    named with loom, warp, article, value and limit."""
    stand = {key for key, spans in mill.standing.items() if any(span.to_at > as_of for span in spans)}
    found = {key: on_loom(mill, key, as_of) for key in mill.looms if key not in stand}
    return {key: why for key, why in found.items() if isinstance(why, Message)}


def _windows(courses: dict[LoomKey, LoomCourse], as_of: datetime, until: datetime) -> dict[LoomKey, tuple[Window, ...]]:
    """All beam-outs of all looms at once, laid on the calendars hall by hall."""
    by_clock: dict[int, list[tuple[LoomCourse, BeamOut]]] = {}
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


def _times(pairs: Sequence[tuple[LoomCourse, BeamOut]]) -> Iterator[tuple[datetime, ...]]:
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


def _window(course: LoomCourse, beam_out: BeamOut, times: tuple[datetime, ...], as_of: datetime) -> Window:
    number, weaving_h, stops_h, out, into, change, ordinary = beam_out
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
        ordinary_change_h=ordinary.hours_h,
        meanwhile_h=ordinary.meanwhile_h,
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
    course: LoomCourse | None,
    beam_outs: tuple[Window, ...],
    as_of: datetime,
    until: datetime,
) -> tuple[Window, ...]:
    spans = [span for span in mill.standing.get(key, ()) if span.to_at > as_of and span.from_at < until]
    number = max((window.number for window in beam_outs), default=0)
    standing = tuple(_standing(course, span, number + i, key) for i, span in enumerate(spans, start=1))
    if not course or not course.beam_outs or until <= as_of:
        return (*beam_outs, *standing)
    now, *later = _mid_warp(course, beam_outs, as_of, until, number + len(standing))
    return (now, *beam_outs, *standing, *later)


def _standing(course: LoomCourse | None, span: Standing, number: int, key: LoomKey) -> Window:
    """A standing span; the warp in work when it ends is the one that waits. Where the loom stands amid an ordinary change it
    has no warp until that is done."""
    window = _still(key, number, WindowKind.STANDING, (span.from_at, span.to_at), course, run_at(course, span.to_at))
    change = change_at(course, span.to_at)
    if course is None or change is None:
        return window
    in_h, ordinary = change
    (warp_in_at,) = moments([course.clock.after(course.present.read_at.timestamp(), in_h)])
    return replace(window, warp_in_at=warp_in_at, ordinary_change_h=ordinary.hours_h)


def _mid_warp(
    course: LoomCourse, beam_outs: Sequence[Window], as_of: datetime, until: datetime, number: int
) -> Iterator[Window]:
    """The span up to `until`, cut at each beam-out, by the means, after which another article or rate is woven; numbered
    0, then on from `number`."""
    into = {out.number: out.into for out in course.beam_outs}
    cuts = [(as_of, run_at(course, as_of))]
    for window in beam_outs:
        if as_of < window.mean_at and not _alike(cuts[-1][1], into[window.number]):
            cuts.append((window.mean_at, into[window.number]))
    ends = [*(at for at, _ in cuts[1:]), until]
    for i, ((start, run), end) in enumerate(zip(cuts, ends, strict=True)):
        yield _still(course.loom.key, number + i if i else 0, WindowKind.MID_WARP, (start, end), course, run)


def _alike(one: Run | None, other: Run) -> bool:
    """Whether stopping one or the other costs the same."""
    return one is not None and (one.warp.article, one.rate, one.contribution_per_h) == (
        other.warp.article, other.rate, other.contribution_per_h
    )  # fmt: skip


def _still(
    key: LoomKey,
    number: int,
    kind: WindowKind,
    span: tuple[datetime, datetime],
    course: LoomCourse | None,
    run: Run | None,
) -> Window:
    """A window without spread."""
    starts_at, ends_at = span
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
