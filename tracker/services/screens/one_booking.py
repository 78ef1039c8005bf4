"""One booking as a planner weighs it: where it is, where else it could be and at what price, and which span its window is."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from tracker.domain.clock import planning_moment
from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, RuledOut
from tracker.domain.windows import Window, WindowKind
from tracker.forecast.beam_outs import forecast
from tracker.services.context import Context
from tracker.services.plans.published import DatesReport, other_dates, published_plan
from tracker.services.screens.bookings import BEAM_OUTS

BEFORE = timedelta(hours=4)
"""So long before the mean beam-out the starts of its window begin (MODEL.md of planning, section 4)."""


@dataclass(frozen=True, slots=True)
class OneBooking:
    dates: DatesReport
    window: RuledOut | None
    """Ruling it out leaves every other window of the loom; None without a booking."""
    ahead: bool
    """Whether it lies ahead, so that something can be decided about it."""


def one_booking(context: Context, key: LoomKey, as_of: datetime | None = None) -> OneBooking:
    """DataError where the loom is neither booked nor left over in the published plan."""
    report = other_dates(context, key.loom, key.hall)
    plan, mill = published_plan(context)
    booking, at = report.booking, planning_moment(mill.terms, as_of, context.now())
    if booking is None:
        return OneBooking(report, None, ahead=False)
    windows = forecast(mill, at, plan.horizon_end)[key]
    return OneBooking(report, _window(booking, windows, plan.horizon_end), booking.start >= at)


def ruled_out(context: Context) -> tuple[RuledOut, ...]:
    """The spans that the plan in force keeps free; nothing where no plan is published."""
    with context.reading() as uow:
        plan = uow.published_plan()
    return plan.asked.ruled_out if plan else ()


def _window(booking: Booking, windows: Sequence[Window], horizon_end: datetime) -> RuledOut:
    """From where the starts of its window begin to where those of the loom's next beam-out do. One mid-warp ends with its warp."""
    meant = booking.nearest(windows)
    opens = booking.start if meant is None else _opens(meant)
    later = [_opens(w) for w in windows if w.kind in BEAM_OUTS and _opens(w) > max(opens, booking.start)]
    until = min(later, default=horizon_end)
    if meant and meant.kind is WindowKind.STANDING and meant.ends_at:
        until = max(meant.ends_at, booking.start + BEFORE)
    return RuledOut(booking.key, min(opens, booking.start), until)


def _opens(window: Window) -> datetime:
    return window.mean_at - BEFORE if window.kind in BEAM_OUTS else window.starts_at
