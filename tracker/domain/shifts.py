"""The calendars of a mill: when a hall weaves, when it converts, and when each crew is there.

`first` and `last` are local days of the mill, both included.
"""

from collections.abc import Iterable, Iterator
from datetime import date, datetime, timedelta
from itertools import combinations
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
    belongs to another hall, or while another row of the crew counts: a crew in two rows is one crew.

    A shift belongs to the day on which it starts, so the last night shift of a row runs on into the next day.
    """
    if crew.hall not in (None, hall):
        return Calendar()
    zone = mill.terms.zone
    elsewhere = union(_shifts(row, zone, first, last) for row in _before(mill, crew))
    shut = closed_days(_closed(mill, hall, "work"), zone)
    return _shifts(crew, zone, first, last).less(elsewhere).less(shut)


def overlaps(mill: Mill, first: date, last: date) -> Iterator[tuple[Crew, Crew, datetime]]:
    """Two rows of one crew (and trade) whose shifts overlap, and the first moment at which they do."""
    rows = [crew for crew in mill.crews if crew.heads > 0]
    for one, other in combinations(rows, 2):
        if _same_people(one, other):
            mine = _shifts(one, mill.terms.zone, first, last)
            both = mine.less(mine.less(_shifts(other, mill.terms.zone, first, last)))
            if both.spans:
                yield one, other, both.spans[0][0]


def _before(mill: Mill, crew: Crew) -> list[Crew]:
    """The rows of the same people that count where their hours overlap with this one's: those that name a hall before
    those that do not, then those with more heads, then the dearer, then as listed."""
    rows = [row for row in mill.crews if _same_people(row, crew) and row.heads > 0]
    rows.sort(key=lambda row: (row.hall is None, -row.heads, -row.rate_per_head_h))
    place = next((i for i, row in enumerate(rows) if row is crew), None)
    return [] if place is None else rows[:place]


def _same_people(one: Crew, other: Crew) -> bool:
    return one.crew == other.crew and fold(one.trade) == fold(other.trade)


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
