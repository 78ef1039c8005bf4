"""The bookings of the published plan as the board shows them, each beside the beam-out as it is forecast today."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from zoneinfo import ZoneInfo

from tracker.domain.calendars import Span
from tracker.domain.clock import planning_moment
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking, Plan
from tracker.domain.progress import BEFORE_BOOKING, Stage, StageChange
from tracker.domain.shifts import working_calendar
from tracker.domain.windows import Window, WindowKind
from tracker.errors import Message, message
from tracker.forecast.beam_outs import forecast
from tracker.services.context import Context
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.screens.status import stages_now

BEAM_OUTS = (WindowKind.REPEAT, WindowKind.STYLE)
BEFORE_WORK = {Stage.SCOPED.value, Stage.BOOKED.value, Stage.KITTED.value}


@dataclass(frozen=True, slots=True)
class BoardRow:
    """A booking and what a planner wants beside it."""

    booking: Booking
    machine_type: str
    stage: str
    kit: str
    """State of the kit: `issued`, `complete`, `reserved` or `short`; `` where the loom gets no parts any more."""
    beam_out: Window | None
    """The beam-out that the booking waits for, as forecast today; None for standing and mid-warp windows, for a
    conversion that has begun, and where nothing can be forecast."""
    kept: bool = False
    """Whether the plan was asked to leave it where it was."""


@dataclass(frozen=True, slots=True)
class Board:
    """Every booking of the published plan, by start."""

    zone: ZoneInfo
    currency: str
    as_of: datetime
    looms: int
    plan: Plan | None
    halls: tuple[str, ...]
    """Halls and machine types of all looms, booked or not."""
    machine_types: tuple[str, ...]
    rows: tuple[BoardRow, ...]
    unbooked: Mapping[LoomKey, Message]
    """Loom without a booking → why; in natural order."""
    working: Mapping[str, tuple[Span, ...]]
    """Hall → spans in which conversions advance, from the day of the plan to the end of its horizon."""


def bookings(context: Context, as_of: datetime | None = None) -> Board:
    """The board at `as_of` (default: now, or the start of a programme that lies ahead)."""
    with context.reading() as uow:
        room, plan, stages = read_stockroom(uow), uow.published_plan(), uow.stages()
    mill = room.mill
    at = planning_moment(mill.terms, as_of, context.now())
    rows: tuple[BoardRow, ...] = ()
    if plan:
        kits = {kit.key: kit.state for kit in room.kits}
        stage = stages_now(mill, plan, room.kits, stages)
        windows = forecast(mill, at, plan.horizon_end)
        rows = tuple(
            BoardRow(
                booking,
                mill.looms[booking.key].machine_type,
                stage[booking.key],
                kits.get(booking.key, ""),
                awaited(booking, windows.get(booking.key, ())) if stage[booking.key] in BEFORE_WORK else None,
                booking.key in plan.asked.held,
            )
            for booking in sorted(plan.bookings, key=lambda b: (b.start, b.key.sort_key))
        )
    return Board(
        mill.terms.zone, mill.terms.currency, at, len(mill.looms), plan, *_groups(mill), rows,
        _unbooked(mill, plan, stages), _working(mill, plan),
    )  # fmt: skip


def _unbooked(mill: Mill, plan: Plan | None, stages: Mapping[LoomKey, StageChange]) -> dict[LoomKey, Message]:
    if plan is None:
        return {}
    booked, left = {booking.key for booking in plan.bookings}, {item.key: item.why for item in plan.left_over}

    def why(key: LoomKey) -> Message:
        if (change := stages.get(key)) and change.stage not in BEFORE_BOOKING:
            since = change.at.astimezone(mill.terms.zone).date()
            return message("unbooked-stage", stage=change.stage, since=since, why=change.reason or None)
        return message("unbooked-left-over", why=left[key]) if key in left else message("unbooked")

    return {key: why(key) for key in mill.looms if key not in booked}


def awaited(booking: Booking, windows: Iterable[Window]) -> Window | None:
    """The beam-out that a booking waits for: the one forecast nearest to where the plan expected it, since the numbers
    of the windows start again with every new warp."""
    planned = booking.beam_out_p50
    if planned is None or booking.kind not in BEAM_OUTS:
        return None
    return min(
        (window for window in windows if window.kind in BEAM_OUTS),
        key=lambda window: abs(window.p50_at - planned),
        default=None,
    )


def _groups(mill: Mill) -> tuple[tuple[str, ...], tuple[str, ...]]:
    looms: Mapping[LoomKey, object] = mill.looms
    return tuple(dict.fromkeys(key.hall for key in looms)), tuple(
        sorted({loom.machine_type for loom in mill.looms.values()})
    )


def _working(mill: Mill, plan: Plan | None) -> dict[str, tuple[Span, ...]]:
    if plan is None:
        return {}
    zone = mill.terms.zone
    first = min([plan.as_of, *(booking.start for booking in plan.bookings)]).astimezone(zone).date()
    last = plan.horizon_end.astimezone(zone).date()
    halls = dict.fromkeys(key.hall for key in mill.looms)
    return {hall: working_calendar(mill, hall, first, last).spans for hall in halls}
