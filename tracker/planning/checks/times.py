"""When each booking starts and ends: windows, working time, horizon, protected dates (MODEL.md, sections 3, 4, 6)."""

from bisect import bisect_left
from collections.abc import Iterator
from datetime import datetime, timedelta

from tracker.domain.plan import Booking
from tracker.domain.windows import Window, WindowKind
from tracker.errors import Message, message
from tracker.planning.checks.case import SLOT, Case, Pause, parts_needed, slots_needed

BEFORE = timedelta(hours=4)
"""Clock time before the mean beam-out from which starts are allowed."""
AFTER_SLOTS = 32
"""Working slots after it among which they are."""
FAR = timedelta(days=14)
"""Windows further off have starts on full hours only."""
Outside = dict[str, object]
"""How a start lies outside its window, as the finding says it; empty where it does not."""


def within_horizon(case: Case) -> Iterator[Message]:
    """No booking starts before as of or the programme's start, none ends past the horizon."""
    earliest = max(case.problem.as_of, case.start)
    for booking in case.plan.bookings:
        if booking.start < earliest:
            yield message(
                "starts-too-early", loom=booking.key, start=case.at(booking.start), earliest=case.at(earliest)
            )
        if booking.end > case.horizon_end:
            yield message(
                "ends-past-horizon", loom=booking.key, end=case.at(booking.end), horizon=case.at(case.horizon_end)
            )


def not_protected(case: Case) -> Iterator[Message]:
    for booking in case.plan.bookings:
        loom = case.mill.looms.get(booking.key)
        until = loom.protected_until if loom else None
        if until and not case.given(booking) and booking.start.astimezone(case.terms.zone).date() <= until:
            yield message("starts-protected", loom=booking.key, start=case.at(booking.start), until=until)


def not_ruled_out(case: Case) -> Iterator[Message]:
    """No booking starts in a span that was ruled out for its loom, firm or not."""
    for booking in case.plan.bookings:
        for span in case.problem.ruled_out:
            if span.holds(booking.key, booking.start):
                yield message(
                    "starts-ruled-out", loom=booking.key, start=case.at(booking.start), first=case.at(span.from_at),
                    last=case.at(span.until_at),
                )  # fmt: skip


def scope_known(case: Case) -> Iterator[Message]:
    """The window and the choices of each booking exist, and it says what they say; a firm one may have outlived them."""
    for booking in case.plan.bookings:
        if case.given(booking):
            continue
        window, content = case.window(booking), case.content(booking)
        if booking.key in case.problem.unplannable:
            yield message("booked-unplannable", loom=booking.key, why=case.problem.unplannable[booking.key])
        elif content is None:
            chosen = [f"{choice} = {alternative}" for choice, alternative in booking.choices] or None
            yield message("no-such-conversion", loom=booking.key, kind=booking.kind, choices=chosen)
        elif dict(booking.parts) != dict(content.parts):
            yield message("other-parts-booked", loom=booking.key)
        elif abs(booking.labour_h - content.labour_h) > 0.01:
            yield message("other-labour-booked", loom=booking.key, booked=booking.labour_h, scope=content.labour_h)
        if window is None:
            yield message("no-such-window", loom=booking.key, kind=booking.kind, window=booking.window)
        elif _is_beam_out(window) and not _same_moment(booking.beam_out_p50, window.p50_at):
            yield message("other-beam-out", loom=booking.key, window=booking.window)


def starts_when_a_crew_works(case: Case) -> Iterator[Message]:
    """A start is a working slot. A crew that falls ill leaves its firm bookings where they are."""
    for booking in case.plan.bookings:
        if case.given(booking):
            continue
        if (booking.start - case.origin) % SLOT:
            yield message("starts-off-grid", loom=booking.key, start=case.at(booking.start))
        elif case.position(booking.key.hall, booking.start) is None:
            yield message(
                "starts-without-crew", loom=booking.key, start=case.at(booking.start), trade=case.terms.lead_trade
            )


def lasts_as_long_as_its_work(case: Case) -> Iterator[Message]:
    """The end comes after as many working slots as the work content has."""
    for booking in case.plan.bookings:
        content = case.content(booking)
        if content is None or case.given(booking):
            continue
        window = case.window(booking)
        need = sum(parts_needed(content, window))
        if booking.slots != need:
            yield message("other-length", loom=booking.key, booked=booking.slots, scope=need)
        yield from ends_otherwise(case, booking, need, booking.pause)
        course = case.course(booking.start, content, window, booking.key.hall)
        if course and course.pause != booking.pause:
            booked, due = _paused(case, booking.pause), _paused(case, course.pause)
            yield message("other-pause", loom=booking.key, booked=booked, due=due)


def is_done_by_its_end(case: Case) -> Iterator[Message]:
    """Its work is no longer than was booked, and the crews are there for as long as was booked."""
    for booking in case.plan.bookings:
        content = case.content(booking)
        need = slots_needed(content, booking.pause is not None) if content else 0
        if need > booking.slots:
            yield message("other-length", loom=booking.key, booked=booking.slots, scope=need)
        else:
            yield from ends_otherwise(case, booking, booking.slots, booking.pause)


def _paused(case: Case, pause: Pause) -> Message:
    return message("with-pause", start=case.at(pause[0]), end=case.at(pause[1])) if pause else message("in-one-piece")


def ends_otherwise(case: Case, booking: Booking, slots: int, pause: Pause) -> Iterator[Message]:
    """A booking whose end does not come after that many working slots."""
    if case.position(booking.key.hall, booking.start) is None:
        return
    end = case.end_of(booking.key.hall, booking.start, slots, pause)
    if end != booking.end:
        due = case.at(end) if end else None
        yield message("ends-otherwise", loom=booking.key, end=case.at(booking.end), due=due, slots=slots)


def not_open_over_closed_days(case: Case) -> Iterator[Message]:
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
            yield message("open-over-closed-day", loom=booking.key, day=closed)


def watched_after_its_restart(case: Case) -> Iterator[Message]:
    """The trades of the steps after the restart are at work in their time, and a crew of the lead trade as long as the term
    `watch` says."""
    for booking in case.plan.bookings:
        content = case.content(booking)
        if content is None or case.given(booking):
            continue
        if missing := case.missing_after(booking.key.hall, booking.end, content):
            yield message("restart-unwatched", loom=booking.key, end=case.at(booking.end), trade=missing)


def starts_in_its_window(case: Case) -> Iterator[Message]:
    for booking in case.plan.bookings:
        window = case.window(booking)
        if window is None or case.given(booking):
            continue
        if reason := _outside(case, booking, window):
            yield message("outside-window", loom=booking.key, start=case.at(booking.start), **reason)


def _outside(case: Case, booking: Booking, window: Window) -> Outside:
    if _is_beam_out(window):
        return _outside_beam_out(case, booking, window)
    assert window.ends_at
    if not window.starts_at <= booking.start < window.ends_at:
        opens, closes = case.at(window.starts_at), case.at(window.ends_at)
        return {"how": "span", "kind": window.kind, "opens": opens, "closes": closes}
    if window.kind is WindowKind.MID_WARP:
        return _not_first_of_day(case, booking)
    return _not_full_hour(case, booking, window.starts_at)


def _outside_beam_out(case: Case, booking: Booking, window: Window) -> Outside:
    mean, work = window.mean_at, case.work(booking.key.hall)
    if booking.start < mean - BEFORE:
        return {"how": "before-beam-out", "beam_out": case.at(mean)}
    past = window_closes(case, booking.key.hall, mean)
    if bisect_left(work, case.slot_of(booking.start)) >= past:
        return {"how": "after-beam-out", "slots": AFTER_SLOTS, "beam_out": case.at(mean)}
    return _not_full_hour(case, booking, window.mean_at)


def window_closes(case: Case, hall: str, mean: datetime) -> int:
    """The position among the hall's working slots that is past the last start of a beam-out."""
    first = bisect_left(case.work(hall), -((case.origin - mean) // SLOT))
    return first - case.worked_since(hall, mean) + AFTER_SLOTS


def _not_full_hour(case: Case, booking: Booking, opens: datetime) -> Outside:
    far = opens > case.problem.as_of + FAR
    minute = booking.start.astimezone(case.terms.zone).minute
    return {"how": "full-hour"} if far and minute else {}


def _not_first_of_day(case: Case, booking: Booking) -> Outside:
    """The first working slot of its local day has none of that day before it."""
    work, zone = case.work(booking.key.hall), case.terms.zone
    i = bisect_left(work, case.slot_of(booking.start))
    same = i > 0 and case.begin(work[i - 1]).astimezone(zone).date() == booking.start.astimezone(zone).date()
    return {"how": "first-of-day"} if same else {}


def _is_beam_out(window: Window) -> bool:
    return window.kind in (WindowKind.REPEAT, WindowKind.STYLE)


def _same_moment(a: datetime | None, b: datetime) -> bool:
    return a is not None and abs(a - b) < timedelta(seconds=1)
