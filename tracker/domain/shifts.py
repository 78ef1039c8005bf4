"""The calendars of a mill: when a hall weaves, when it converts, and when each crew is there.

`first` and `last` are local days of the mill, both included.
"""

from collections.abc import Iterable
from datetime import date, timedelta
from zoneinfo import ZoneInfo

from tracker.domain.calendars import (
    Calendar,
    calendar_of,
    closed_days,
    days_between,
    local_span,
    union,
    weekly_calendar,
)  # fmt: skip
from tracker.domain.mill import Crew, Mill
from tracker.domain.words import fold


def running_calendar(mill: Mill, hall: str, first: date, last: date) -> Calendar:
    """When the looms of a hall weave: its running rows (none = always) less the closures that stop weaving."""
    rows = [(row.weekdays, row.start, row.end) for row in mill.running if row.hall == hall]
    return weekly_calendar(rows, _closed(mill, hall, "weaving"), mill.terms.zone, first, last)


def running_calendars(mill: Mill, first: date, last: date) -> dict[str, Calendar]:
    """The running calendar of every hall in which a loom stands."""
    halls = dict.fromkeys(key.hall for key in mill.looms)
    return {hall: running_calendar(mill, hall, first, last) for hall in halls}


def crew_calendar(mill: Mill, crew: Crew, hall: str, first: date, last: date) -> Calendar:
    """When a crew row works in a hall: its shifts less the closures of that hall that stop work; never, where the row
    belongs to another hall.

    A shift belongs to the day on which it starts, so the last night shift of a row runs on into the next day.
    """
    if crew.hall not in (None, hall):
        return Calendar()
    shut = closed_days(_closed(mill, hall, "work"), mill.terms.zone)
    return _shifts(crew, mill.terms.zone, first, last).less(shut)


def working_calendar(mill: Mill, hall: str, first: date, last: date) -> Calendar:
    """When conversions advance in a hall: whenever at least one crew of the lead trade works there."""
    return union(crew_calendar(mill, crew, hall, first, last) for crew in crews_of(mill, mill.terms.lead_trade))


def crews_of(mill: Mill, trade: str) -> tuple[Crew, ...]:
    """The crew rows of a trade that have a head at all."""
    return tuple(crew for crew in mill.crews if fold(crew.trade) == fold(trade) and crew.heads > 0)


def _shifts(crew: Crew, zone: ZoneInfo, first: date, last: date) -> Calendar:
    begins, ends = local_span(first, None, None, zone)[0], local_span(last, None, None, zone)[1]
    days = days_between(max(first - timedelta(days=1), crew.from_on or date.min), min(last, crew.to_on or last))
    spans = (local_span(day, crew.shift_start, crew.shift_end, zone) for day in days if day.weekday() in crew.weekdays)
    return calendar_of((max(a, begins), min(b, ends)) for a, b in spans)


def _closed(mill: Mill, hall: str, stops: str) -> Iterable[date]:
    return [c.on for c in mill.closures if c.hall in (None, hall) and c.stops in (stops, "both")]
