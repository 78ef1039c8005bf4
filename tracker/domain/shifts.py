"""The calendars of a mill: when a hall weaves, when it converts, and when each crew is there.

`first` and `last` are local days of the mill, both included.
"""

from collections.abc import Iterator
from datetime import date, datetime, timedelta
from itertools import combinations
from zoneinfo import ZoneInfo

from tracker.domain.breaks import next_day, read_breaks
from tracker.domain.calendars import Calendar, Span, calendar_of, days_between, local_span, union, weekly_calendar
from tracker.domain.mill import Crew, Mill
from tracker.domain.words import fold


def running_calendar(mill: Mill, hall: str, first: date, last: date) -> Calendar:
    """When the looms of a hall weave: its running rows (none = always) less the closures that stop weaving."""
    rows = [(row.weekdays, row.start, row.end) for row in mill.running if row.hall == hall]
    return weekly_calendar(rows, (), mill.terms.zone, first, last).less(_closed(mill, hall, "weaving"))


def running_calendars(mill: Mill, first: date, last: date) -> dict[str, Calendar]:
    """The running calendar of every hall in which a loom stands."""
    halls = dict.fromkeys(key.hall for key in mill.looms)
    return {hall: running_calendar(mill, hall, first, last) for hall in halls}


def crew_calendar(mill: Mill, crew: Crew, hall: str, first: date, last: date, heads: int = 1) -> Calendar:
    """When at least so many heads of a crew row work in a hall: its shifts less breaks, absences and the closures of that
    hall that stop work, and its overtime; never, where the row belongs to another hall, or while another row of the crew
    counts: a crew in two rows is one crew.

    A shift belongs to the day on which it starts, so the last night shift of a row runs on into the next day.
    """
    if crew.hall not in (None, hall):
        return Calendar()
    elsewhere = union(_shifts(mill, row, first, last) for row in _before(mill, crew))
    return _shifts(mill, crew, first, last, heads).less(elsewhere).less(_closed(mill, hall, "work"))


def crew_heads(mill: Mill, crew: Crew, hall: str, first: date, last: date) -> tuple[tuple[int, Calendar], ...]:
    """(heads, when just so many of a crew row work in a hall); the calendars do not overlap."""
    away = {crew.heads - _away(mill, crew, day) for day in days_between(first - timedelta(days=1), last)}
    levels = sorted(heads for heads in away if heads > 0)
    at_least = [crew_calendar(mill, crew, hall, first, last, heads) for heads in levels]
    return tuple(zip(levels, map(Calendar.less, at_least, [*at_least[1:], Calendar()]), strict=True))


def converting_calendar(mill: Mill, crew: Crew, hall: str, first: date, last: date) -> Calendar:
    """When a crew row of the lead trade can take a conversion in a hall: with as many heads as the method asks for."""
    return crew_calendar(mill, crew, hall, first, last, lead_heads(mill))


def lead_heads(mill: Mill) -> int:
    """Heads of the lead trade that the largest operation of the method asks for; at least 1."""
    lead = fold(mill.terms.lead_trade)
    return max((row.heads for row in mill.method.operations if fold(row.trade) == lead), default=1) or 1


def can_convert(mill: Mill, crew: Crew, day: date) -> bool:
    """Whether a shift or overtime of a crew row of the lead trade begins on a day with heads enough for a conversion."""
    return (
        _valid(crew, day) and crew.heads - _away(mill, crew, day) >= lead_heads(mill) and any(_spans(mill, crew, day))
    )


def short_of_heads(mill: Mill, crew: Crew, first: date, last: date) -> list[date]:
    """The days on which some of a crew row are at work, but fewer than a conversion needs."""
    need = lead_heads(mill)
    return [
        day
        for day in days_between(first, last)
        if _valid(crew, day) and 0 < crew.heads - _away(mill, crew, day) < need and any(_spans(mill, crew, day))
    ]


def overlaps(mill: Mill, first: date, last: date) -> Iterator[tuple[Crew, Crew, datetime]]:
    """Two rows of one crew (and trade) whose shifts overlap, and the first moment at which they do."""
    rows = [crew for crew in mill.crews if crew.heads > 0]
    for one, other in combinations(rows, 2):
        if _same_people(one, other):
            mine = _shifts(mill, one, first, last)
            both = mine.less(mine.less(_shifts(mill, other, first, last)))
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
    """When conversions advance in a hall: whenever at least one crew of the lead trade that can take one works there."""
    return union(converting_calendar(mill, crew, hall, first, last) for crew in crews_of(mill, mill.terms.lead_trade))


def crews_of(mill: Mill, trade: str) -> tuple[Crew, ...]:
    """The crew rows of a trade that have a head at all."""
    return tuple(crew for crew in mill.crews if fold(crew.trade) == fold(trade) and crew.heads > 0)


def _shifts(mill: Mill, crew: Crew, first: date, last: date, heads: int = 1) -> Calendar:
    """When at least so many heads of a row are at work, wherever that is."""
    zone = mill.terms.zone
    begins, ends = local_span(first, None, None, zone)[0], local_span(last, None, None, zone)[1]
    days = days_between(max(first - timedelta(days=1), crew.from_on or date.min), min(last, crew.to_on or last))
    spans = (span for day in days if crew.heads - _away(mill, crew, day) >= heads for span in _spans(mill, crew, day))
    return calendar_of((max(a, begins), min(b, ends)) for a, b in spans)


def _spans(mill: Mill, crew: Crew, day: date) -> Iterator[Span]:
    """The shift of a day less its breaks, and the overtime of that day."""
    zone = mill.terms.zone
    if day.weekday() in crew.weekdays:
        shift = calendar_of([local_span(day, crew.shift_start, crew.shift_end, zone)])
        yield from shift.less(calendar_of(_breaks(crew, day, zone))).spans
    for extra in mill.overtime:
        if extra.crew == crew.crew and extra.on == day:
            yield local_span(day, extra.start, extra.end, zone)


def _breaks(crew: Crew, day: date, zone: ZoneInfo) -> Iterator[Span]:
    for start, end in read_breaks(crew.breaks):
        yield local_span(day + timedelta(days=next_day(start, crew.shift_start)), start, end, zone)


def _valid(crew: Crew, day: date) -> bool:
    return (crew.from_on or day) <= day <= (crew.to_on or day)


def _away(mill: Mill, crew: Crew, day: date) -> int:
    """Heads of a row that are away on a day."""
    away = (a for a in mill.absences if a.crew == crew.crew and a.from_on <= day <= a.to_on)
    return min(crew.heads, sum(crew.heads if a.heads is None else a.heads for a in away))


def _closed(mill: Mill, hall: str, stops: str) -> Calendar:
    zone = mill.terms.zone
    return calendar_of(
        local_span(c.on, c.start, c.end, zone)
        for c in mill.closures
        if c.hall in (None, hall) and c.stops in (stops, "both")
    )
