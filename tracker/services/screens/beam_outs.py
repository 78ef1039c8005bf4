"""What runs out in the next days, hall by hall: each beam-out beside its booking, and how far its reading can be trusted."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from tracker.domain.clock import planning_moment
from tracker.domain.mill import LoomKey, Mill, Standing
from tracker.domain.plan import Booking, Plan
from tracker.domain.progress import BESIDE, CONVERTED, StageChange
from tracker.domain.windows import Window, WindowKind
from tracker.errors import Message
from tracker.forecast.beam_outs import forecast, unforecast
from tracker.forecast.course import LoomCourse, courses_of
from tracker.services.context import Context
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.screens.bookings import BEAM_OUTS
from tracker.services.screens.status import stages_now

DAYS = 14
TRUST = {"overdue": 0, "stale": 1, "ok": 2}
"""State of a reading → how it stands in the list: what cannot be trusted comes first."""


@dataclass(frozen=True, slots=True)
class BeamOutLine:
    """One loom whose warp runs out within the days shown, or that stands in them."""

    window: Window
    machine_type: str
    stage: str
    left_m: float | None
    """What is left by the forecast at `as_of`, metres; None for a loom that stands."""
    booking: Booking | None
    """Of the published plan, where it is made for this window; one mid-warp stands with the loom's first."""
    booked_elsewhere: bool
    """Whether the loom is booked in another window."""
    protected_until: date | None

    @property
    def key(self) -> LoomKey:
        return self.window.key

    @property
    def trusted(self) -> bool:
        return self.window.state == "ok"


@dataclass(frozen=True, slots=True)
class BeamOutBoard:
    zone: ZoneInfo
    as_of: datetime
    until: datetime
    looms: Mapping[LoomKey, str]
    """Every loom and its stage, in natural order."""
    lines: tuple[BeamOutLine, ...]
    """Overdue readings first, then stale ones, then the others; each by P50."""
    silent: Mapping[LoomKey, Message]
    """Looms to convert that cannot be forecast, and why."""
    standing: tuple[Standing, ...]
    """Spans that have not ended, by their beginning."""
    protected: Mapping[LoomKey, date]
    """Looms that may not be converted yet."""
    aside: Mapping[LoomKey, StageChange]
    """Looms that were put off or left out."""

    @property
    def halls(self) -> list[str]:
        return list(dict.fromkeys(key.hall for key in self.looms))

    def untrusted(self, state: str) -> list[BeamOutLine]:
        return [line for line in self.lines if line.window.state == state]


def beam_outs(context: Context, as_of: datetime | None = None, days: int = DAYS) -> BeamOutBoard:
    """The beam-outs whose P10 lies within so many days after `as_of` (default: now, or the start of a programme that lies
    ahead), of the looms that are still to be converted."""
    with context.reading() as uow:
        room, plan, recorded = read_stockroom(uow), uow.published_plan(), uow.stages()
    mill = room.mill
    at = planning_moment(mill.terms, as_of, context.now())
    until = at + timedelta(days=days)
    stages = stages_now(mill, plan, room.kits, recorded)
    to_come = {key for key in mill.looms if not _is_done(recorded.get(key))}
    ordered = sorted(mill.looms, key=lambda key: key.sort_key)
    return BeamOutBoard(
        mill.terms.zone, at, until, {key: stages[key] for key in ordered},
        tuple(_lines(mill, at, until, {key: stages[key] for key in to_come}, plan)),
        {key: why for key, why in unforecast(mill, at).items() if key in to_come},
        tuple(sorted((s for spans in mill.standing.values() for s in spans if s.to_at > at), key=lambda s: (s.from_at, s.key))),
        {key: day for key in ordered if (day := mill.looms[key].protected_until) and day >= at.astimezone(mill.terms.zone).date()},
        {key: recorded[key] for key in ordered if key in recorded and recorded[key].stage in BESIDE},
    )  # fmt: skip


def _is_done(change: StageChange | None) -> bool:
    return change is not None and change.stage in (*CONVERTED, *BESIDE)


def _lines(
    mill: Mill, at: datetime, until: datetime, stages: Mapping[LoomKey, str], plan: Plan | None
) -> Sequence[BeamOutLine]:
    """`stages`: of the looms that are still to be converted."""
    courses = courses_of(mill, at, until)
    booked = {booking.key: booking for booking in plan.bookings} if plan else {}
    found: list[BeamOutLine] = []
    for key, windows in forecast(mill, at, until + timedelta(days=DAYS)).items():
        if key not in stages:
            continue
        ahead, booking = [w for w in windows if w.kind is not WindowKind.MID_WARP], booked.get(key)
        meant = (booking.nearest(ahead) or next(iter(ahead), None)) if booking else None
        found += [
            BeamOutLine(
                window, mill.looms[key].machine_type, stages[key], _left_m(courses.get(key), window, at),
                booking if window is meant else None, booking is not None and window is not meant,
                mill.looms[key].protected_until,
            )
            for window in ahead if window.p10_at < until
        ]  # fmt: skip
    return sorted(found, key=lambda line: (TRUST[line.window.state], line.window.p50_at, line.key.sort_key))


def _left_m(course: LoomCourse | None, window: Window, at: datetime) -> float | None:
    """Of the warp on the loom now, by the rate of the forecast; never below none."""
    if course is None or window.kind not in BEAM_OUTS or window.number != 1:
        return None
    begin, now = course.clock.elapsed_h([course.present.read_at.timestamp(), at.timestamp()])
    return max(0.0, course.present.left_m - window.warp_rate_m_per_h * float(now - begin))
