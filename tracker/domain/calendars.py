"""Calendars: sorted, disjoint, half-open spans of UTC time built from weekly patterns in the mill's local time."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from functools import cached_property
from itertools import accumulate
from zoneinfo import ZoneInfo

Span = tuple[datetime, datetime]
HOUR = timedelta(hours=1)


@dataclass(frozen=True)
class Calendar:
    """`spans` are sorted, disjoint, half-open UTC spans in which the clock of this calendar runs."""

    spans: tuple[Span, ...] = ()

    @cached_property
    def _starts(self) -> list[datetime]:
        return [start for start, _ in self.spans]

    @cached_property
    def _before(self) -> list[timedelta]:
        """Calendar time before each span, and the total last. Whole microseconds, so that a run which ends with a
        shift ends there and not, by a rounding, with the start of the next."""
        return list(accumulate((b - a for a, b in self.spans), initial=timedelta()))

    def elapsed(self, at: datetime) -> timedelta:
        """Calendar time from the calendar's beginning to `at`."""
        i = bisect_right(self._starts, at) - 1
        if i < 0:
            return timedelta()
        start, end = self.spans[i]
        return self._before[i] + (min(at, end) - start)

    def hours_between(self, start: datetime, end: datetime) -> float:
        """Calendar hours in [start, end); negative where end lies before start."""
        return (self.elapsed(end) - self.elapsed(start)) / HOUR

    def after(self, start: datetime, hours: float) -> datetime:
        """The first moment from `start` on at which `hours` of this calendar have passed; for hours < 0 the last
        moment before `start` since which they have.

        Past the last span the clock is taken to run on without a stop, before the first one to run back without one,
        so that a forecast beyond the calendar stays finite.
        """
        step = timedelta(hours=hours)
        if not step or not self.spans:
            return start + step
        target, total = self.elapsed(start) + step, self._before[-1]
        if target > total:
            return max(start, self.spans[-1][1]) + (target - total)
        if target < timedelta():
            return min(start, self.spans[0][0]) + target
        if hours > 0:
            i = max(0, bisect_left(self._before, target) - 1)
        else:
            i = min(len(self.spans), bisect_right(self._before, target)) - 1
        return self.spans[i][0] + (target - self._before[i])

    def less(self, shut: "Calendar") -> "Calendar":
        """This calendar without the spans of another."""
        return Calendar(tuple(_less(self.spans, shut.spans)))


def weekly_calendar(
    pattern: Iterable[tuple[frozenset[int], time | None, time | None]],
    closed: Iterable[date],
    zone: ZoneInfo,
    first: date,
    last: date,
) -> Calendar:
    """The calendar of a weekly pattern from local day `first` to `last` (included), less the closed local days.

    Each pattern row is (weekdays 0 = Monday, start, end); without start and end the whole day; an end at or before the
    start runs past midnight, and belongs to the day on which it starts. No row = always. A closed day takes out local
    midnight to midnight, also the part of a shift that began the day before.
    """
    rows = list(pattern) or [(frozenset(range(7)), None, None)]
    spans = [
        local_span(day, start, end, zone)
        for day in days_between(first - timedelta(days=1), last)
        for weekdays, start, end in rows
        if day.weekday() in weekdays
    ]
    begins, ends = local_span(first, None, None, zone)[0], local_span(last, None, None, zone)[1]
    return calendar_of((max(a, begins), min(b, ends)) for a, b in spans).less(closed_days(closed, zone))


def calendar_of(spans: Iterable[Span]) -> Calendar:
    """The calendar of spans in any order, which may touch, overlap or be empty."""
    return Calendar(tuple(_merge(spans)))


def closed_days(days: Iterable[date], zone: ZoneInfo) -> Calendar:
    """Local midnight to midnight of each day."""
    return calendar_of(local_span(day, None, None, zone) for day in days)


def days_between(first: date, last: date) -> list[date]:
    """All days from first to last, included."""
    return [first + timedelta(days=i) for i in range((last - first).days + 1)]


def local_span(day: date, start: time | None, end: time | None, zone: ZoneInfo) -> Span:
    """The UTC span from `start` to `end` (None = midnight) of a local day; an end at or before the start is on the
    next day. A time that the clocks skip or repeat is taken with the offset before the change."""
    begin, finish = start or time(0), end or time(0)
    last_day = day if finish > begin else day + timedelta(days=1)
    return datetime.combine(day, begin, zone).astimezone(UTC), datetime.combine(last_day, finish, zone).astimezone(UTC)


def union(calendars: Iterable[Calendar]) -> Calendar:
    """The calendar in which at least one of them runs."""
    return Calendar(tuple(_merge(span for calendar in calendars for span in calendar.spans)))


def iso_week(at: date) -> str:
    """ISO 8601 week of a day: `2026-W53`."""
    year, week, _ = at.isocalendar()
    return f"{year}-W{week:02d}"


def _merge(spans: Iterable[Span]) -> list[Span]:
    merged: list[Span] = []
    for start, end in sorted(span for span in spans if span[0] < span[1]):
        if merged and start <= merged[-1][1]:
            merged[-1] = (merged[-1][0], max(merged[-1][1], end))
        else:
            merged.append((start, end))
    return merged


def _less(spans: Iterable[Span], shut: tuple[Span, ...]) -> Iterator[Span]:
    """One pass over both lists, which are sorted and disjoint."""
    i = 0
    for start, end in spans:
        while i < len(shut) and shut[i][1] <= start:
            i += 1
        j = i
        while start < end and j < len(shut) and shut[j][0] < end:
            if start < shut[j][0]:
                yield start, shut[j][0]
            start = max(start, shut[j][1])
            j += 1
        if start < end:
            yield start, end
