"""A beam-out that somebody on the floor tells: it comes earlier or later than forecast, or has come already.

Written as a reading by which the warp runs out then. Metres above those of the last reading would look like a new warp; where
the warp lasts longer than they do, the reading says instead that the loom weaves slower.
"""

from collections.abc import Mapping
from datetime import datetime, timedelta
from typing import Any

from tracker.domain.clock import planning_moment
from tracker.domain.mill import LoomKey, Mill
from tracker.errors import DataError, Message
from tracker.forecast.course import LoomCourse, courses_of, on_loom
from tracker.services.context import Context
from tracker.services.loading.by_hand import type_in
from tracker.services.loading.load_report import LoadReport
from tracker.services.looms import find_loom
from tracker.services.people.permissions import May

SLOWEST = 0.01
"""Efficiency as a share; below it a loom stands rather than weaves."""


def tell_beam_out(
    context: Context, loom: str, hall: str | None, at: datetime, as_of: datetime | None = None
) -> LoadReport:
    """Enter that the warp of a loom runs out `at` (UTC); a moment up to `as_of` (default: now, or the start of a programme that
    lies ahead) says that it has. DataError where the loom cannot be forecast, or would have to stand to last so long."""
    context.require(May.LOAD)
    with context.reading() as uow:
        mill = uow.mill()
    key = find_loom(mill, loom, hall)
    now = planning_moment(mill.terms, as_of, context.now())
    course = _course(mill, key, now, max(at, now))
    row = _gone(course, at) if at <= now else _lasting(course, now, at)
    return type_in(context, "readings", [{"loom": key.loom, "hall": key.hall, **row}])


def _course(mill: Mill, key: LoomKey, now: datetime, until: datetime) -> LoomCourse:
    known = on_loom(mill, key, now)
    if isinstance(known, Message):
        raise DataError("told-without-forecast", loom=key, why=known)
    return courses_of(mill, now, until + timedelta(days=1))[key]


def _gone(course: LoomCourse, at: datetime) -> Mapping[str, Any]:
    """Nothing is left but the tail."""
    return {"read_at": at, "warp_left_m": course.present.warp.tail_m or 0.0}


def _lasting(course: LoomCourse, now: datetime, at: datetime) -> Mapping[str, Any]:
    first, warp = course.beam_outs[0].out, course.present.warp
    begin, end = course.clock.elapsed_h([now.timestamp(), at.timestamp()])
    hours, tail_m = float(end - begin), warp.tail_m or 0.0
    left_m = tail_m + first.rate.warp_m_per_h * hours
    most_m = course.present.left_m
    if left_m <= most_m:
        return {"read_at": now, "warp_left_m": round(left_m, 1)}
    usual = next(
        (share for share in (course.present.efficiency, warp.efficiency, course.loom.efficiency) if share is not None),
        1.0,
    )
    slower = usual * (most_m - tail_m) / (left_m - tail_m)
    if slower < SLOWEST:
        raise DataError("told-too-late", loom=course.loom.key, at=at, left=most_m)
    return {"read_at": now, "warp_left_m": most_m, "efficiency": slower}
