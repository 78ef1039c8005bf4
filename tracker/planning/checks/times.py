"""When each booking starts and ends: windows, working time, horizon, protected dates (MODEL.md, sections 3, 4, 6)."""

from bisect import bisect_left
from collections.abc import Iterator
from datetime import datetime, timedelta

from tracker.domain.plan import Booking
from tracker.domain.windows import Window, WindowKind
from tracker.planning.checks.case import SLOT, Case, Pause, parts_needed, slots_needed

BEFORE = timedelta(hours=4)
"""Clock time before the mean beam-out from which starts are allowed."""
AFTER_SLOTS = 32
"""Working slots after it among which they are."""
FAR = timedelta(days=14)
"""Windows further off have starts on full hours only."""


def within_horizon(case: Case) -> Iterator[str]:
    """No booking starts before as of or the programme's start, none ends past the horizon."""
    earliest = max(case.problem.as_of, case.start)
    for booking in case.plan.bookings:
        if booking.start < earliest:
            yield f"loom {booking.key} starts {case.at(booking.start)}, before {case.at(earliest)}"
        if booking.end > case.horizon_end:
            yield f"loom {booking.key} ends {case.at(booking.end)}, past the horizon {case.at(case.horizon_end)}"


def not_protected(case: Case) -> Iterator[str]:
    for booking in case.plan.bookings:
        loom = case.mill.looms.get(booking.key)
        until = loom.protected_until if loom else None
        if until and not case.given(booking) and booking.start.astimezone(case.terms.zone).date() <= until:
            yield f"loom {booking.key} starts {case.at(booking.start)}, but is protected until {until} included"


def scope_known(case: Case) -> Iterator[str]:
    """The window and the choices of each booking exist, and it says what they say; a firm one may have outlived them."""
    for booking in case.plan.bookings:
        if case.given(booking):
            continue
        window, content = case.window(booking), case.content(booking)
        if booking.key in case.problem.unplannable:
            yield f"loom {booking.key} is booked, though {case.problem.unplannable[booking.key]}"
        elif content is None:
            chosen = ", ".join(f"{choice} = {alternative}" for choice, alternative in booking.choices) or "no choices"
            yield f"loom {booking.key}: the method has no conversion in a {booking.kind} window with {chosen}"
        elif dict(booking.parts) != dict(content.parts):
            yield f"loom {booking.key}: the parts booked are not those of its scope"
        elif abs(booking.labour_h - content.labour_h) > 0.01:
            yield f"loom {booking.key}: {booking.labour_h:.2f} person-hours booked, its scope has {content.labour_h:.2f}"
        if window is None:
            yield f"loom {booking.key}: there is no {booking.kind} window {booking.window}"
        elif _is_beam_out(window) and not _same_moment(booking.beam_out_p50, window.p50_at):
            yield f"loom {booking.key}: the booking names another beam-out than its window {booking.window}"


def starts_when_a_crew_works(case: Case) -> Iterator[str]:
    """A start is a working slot. A crew that falls ill leaves its firm bookings where they are."""
    for booking in case.plan.bookings:
        if case.given(booking):
            continue
        if (booking.start - case.origin) % SLOT:
            yield f"loom {booking.key} starts {case.at(booking.start)}, not on a half hour"
        elif case.position(booking.key.hall, booking.start) is None:
            yield f"loom {booking.key} starts {case.at(booking.start)}, when no {case.terms.lead_trade} crew is at work"


def lasts_as_long_as_its_work(case: Case) -> Iterator[str]:
    """The end comes after as many working slots as the work content has."""
    for booking in case.plan.bookings:
        content = case.content(booking)
        if content is None or case.given(booking):
            continue
        window = case.window(booking)
        need = sum(parts_needed(content, window))
        if booking.slots != need:
            yield f"loom {booking.key}: {booking.slots} half hours booked, its scope has {need}"
        yield from ends_otherwise(case, booking, need, booking.pause)
        course = case.course(booking.start, content, window, booking.key.hall)
        if course and course.pause != booking.pause:
            booked, due = _paused(case, booking.pause), _paused(case, course.pause)
            yield f"loom {booking.key}: booked {booked}; by its scope and the ordinary change it is {due}"


def is_done_by_its_end(case: Case) -> Iterator[str]:
    """Its work is no longer than was booked, and the crews are there for as long as was booked."""
    for booking in case.plan.bookings:
        content = case.content(booking)
        need = slots_needed(content, booking.pause is not None) if content else 0
        if need > booking.slots:
            yield f"loom {booking.key}: {booking.slots} half hours booked, its scope has {need}"
        else:
            yield from ends_otherwise(case, booking, booking.slots, booking.pause)


def _paused(case: Case, pause: Pause) -> str:
    return f"with a pause from {case.at(pause[0])} to {case.at(pause[1])}" if pause else "in one piece"


def ends_otherwise(case: Case, booking: Booking, slots: int, pause: Pause) -> Iterator[str]:
    """A booking whose end does not come after that many working slots."""
    if case.position(booking.key.hall, booking.start) is None:
        return
    end = case.end_of(booking.key.hall, booking.start, slots, pause)
    if end != booking.end:
        due = f"{slots} working half hours end {case.at(end)}" if end else "the crews' time ends before it is done"
        yield f"loom {booking.key} ends {case.at(booking.end)}, but {due}"


def not_open_over_closed_days(case: Case) -> Iterator[str]:
    """No loom that does not stand anyway stands open over a day on which nobody converts in its hall."""
    if case.terms.open_over_closed_days:
        return
    for booking in case.plan.bookings:
        if case.given(booking) or booking.kind is WindowKind.STANDING:
            continue
        first, last = (at.astimezone(case.terms.zone).date() for at in (booking.start, booking.end - SLOT))
        between = (first + timedelta(days=i) for i in range(1, (last - first).days))
        closed = next((day for day in between if day not in case.working_days(booking.key.hall)), None)
        if closed:
            yield f"loom {booking.key} stands open over {closed}, on which nobody converts"


def watched_after_its_restart(case: Case) -> Iterator[str]:
    """The trades of the steps after the restart are at work in their time, and a crew of the lead trade as long as the term
    `watch` says."""
    for booking in case.plan.bookings:
        content = case.content(booking)
        if content is None or case.given(booking):
            continue
        if missing := case.missing_after(booking.key.hall, booking.end, content):
            yield f"loom {booking.key} ends {case.at(booking.end)}, and no {missing} is at work as long as its restart needs"


def starts_in_its_window(case: Case) -> Iterator[str]:
    for booking in case.plan.bookings:
        window = case.window(booking)
        if window is None or case.given(booking):
            continue
        if reason := _outside(case, booking, window):
            yield f"loom {booking.key} starts {case.at(booking.start)}, {reason}"


def _outside(case: Case, booking: Booking, window: Window) -> str:
    if _is_beam_out(window):
        return _outside_beam_out(case, booking, window)
    assert window.ends_at
    if not window.starts_at <= booking.start < window.ends_at:
        return f"outside its {window.kind} window {case.at(window.starts_at)} to {case.at(window.ends_at)}"
    if window.kind is WindowKind.MID_WARP:
        return _not_first_of_day(case, booking)
    return _not_full_hour(case, booking, window.starts_at)


def _outside_beam_out(case: Case, booking: Booking, window: Window) -> str:
    mean, work = window.mean_at, case.work(booking.key.hall)
    if booking.start < mean - BEFORE:
        return f"more than 4 h before its beam-out {case.at(mean)}"
    past = window_closes(case, booking.key.hall, mean)
    if bisect_left(work, case.slot_of(booking.start)) >= past:
        return f"after the {AFTER_SLOTS}nd working half hour from its beam-out {case.at(mean)}"
    return _not_full_hour(case, booking, window.mean_at)


def window_closes(case: Case, hall: str, mean: datetime) -> int:
    """The position among the hall's working slots that is past the last start of a beam-out."""
    first = bisect_left(case.work(hall), -((case.origin - mean) // SLOT))
    return first - case.worked_since(hall, mean) + AFTER_SLOTS


def _not_full_hour(case: Case, booking: Booking, opens: datetime) -> str:
    far = opens > case.problem.as_of + FAR
    minute = booking.start.astimezone(case.terms.zone).minute
    return "not on a full hour, in a window more than 14 days off" if far and minute else ""


def _not_first_of_day(case: Case, booking: Booking) -> str:
    """The first working slot of its local day has none of that day before it."""
    work, zone = case.work(booking.key.hall), case.terms.zone
    i = bisect_left(work, case.slot_of(booking.start))
    same = i > 0 and case.begin(work[i - 1]).astimezone(zone).date() == booking.start.astimezone(zone).date()
    return "not in the first working half hour of the day, as a mid-warp stop does" if same else ""


def _is_beam_out(window: Window) -> bool:
    return window.kind in (WindowKind.REPEAT, WindowKind.STYLE)


def _same_moment(a: datetime | None, b: datetime) -> bool:
    return a is not None and abs(a - b) < timedelta(seconds=1)
