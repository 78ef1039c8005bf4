"""What a planner decides about single bookings, as it is typed: windows ruled out or allowed again, another date taken."""

from collections.abc import Sequence
from datetime import datetime

from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Placed, RuledOut
from tracker.errors import DataError, UsageError
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.services.plans.published import other_dates
from tracker.services.screens.one_booking import ruled_out

Span = tuple[str, datetime, datetime]
"""Loom, and the span (half-open) in which it is not to be booked."""


def windows_ruled_out(
    context: Context, more: Sequence[Span], allowed: Sequence[str], hall: str | None = None
) -> tuple[RuledOut, ...] | None:
    """The spans that the plan in force keeps to, less those of looms `allowed` again, and `more`; None where nothing is decided.
    DataError for a loom that there is not and for one allowed that is nowhere ruled out, UsageError for a span that ends first."""
    if not more and not allowed:
        return None
    with context.reading() as uow:
        mill = uow.mill()
    known, again = ruled_out(context), {find_loom(mill, loom, hall) for loom in allowed}
    for key in sorted(again - {span.key for span in known}):
        raise DataError("nothing-ruled-out", loom=key)
    kept = [span for span in known if span.key not in again]
    return tuple(dict.fromkeys([*kept, *(_span(mill, one, hall) for one in more)]))


def _span(mill: Mill, one: Span, hall: str | None) -> RuledOut:
    loom, first, until = one
    if until <= first:
        raise UsageError("ruled-out-ends-first", loom=loom, first=first, until=until)
    return RuledOut(find_loom(mill, loom, hall), first, until)


def dates_taken(
    context: Context, wanted: Sequence[tuple[str, datetime]], hall: str | None = None
) -> tuple[Placed, ...]:
    """Another date of each loom by its start, with the choices that the plan in force lists for it. DataError where it lists none
    of that start."""
    return tuple(_taken(context, loom, start, hall) for loom, start in wanted)


def _taken(context: Context, loom: str, start: datetime, hall: str | None) -> Placed:
    report = other_dates(context, loom, hall)
    found = next((other for other in report.dates if other.start == start), None)
    if found is None:
        key: LoomKey = report.key
        listed = [other.start.astimezone(report.zone) for other in report.dates]
        raise DataError("date-not-listed", loom=key, start=start.astimezone(report.zone), listed=listed or None)
    return Placed(found.key, found.start, found.choices)
