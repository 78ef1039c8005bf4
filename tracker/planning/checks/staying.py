"""Whether the data of today let a firm booking stay beside those that did (MODEL.md, section 7)."""

from dataclasses import replace

from tracker.domain.plan import Booking
from tracker.planning.checks import parts, shared
from tracker.planning.checks.case import Case

_SHARED = (
    shared.crews, shared.heads_of_other_trades, shared.tools, shared.stopped_at_once, shared.stopped_per_section,
    parts.parts_are_there,
)  # fmt: skip


def cannot_stay(case: Case, old: Booking) -> bool:
    """Whether its loom is protected or its start ruled out, nobody works at its start or to its end, or it asks for more than
    the conversions in work and the firm bookings that stayed leave."""
    until = case.mill.looms[old.key].protected_until
    if until and old.start.astimezone(case.terms.zone).date() <= until:
        return True
    if any(span.holds(old.key, old.start) for span in case.problem.ruled_out):
        return True
    end = case.end_of(old.key.hall, old.start, old.slots, old.pause)
    return end is None or any(True for check in _SHARED for _ in check(_beside_firm(case, replace(old, end=end))))


def _beside_firm(case: Case, old: Booking) -> Case:
    """A plan of the firm bookings that stayed, and of this one as if it could have been left out."""
    stayed = tuple(booking for booking in case.plan.bookings if case.given(booking))
    return case.doubting(replace(case.plan, bookings=(*stayed, old)), old.key)
