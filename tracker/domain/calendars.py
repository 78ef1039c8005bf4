"""Calendars: sorted, disjoint, half-open spans of UTC time built from weekly patterns in the mill's local time."""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from functools import cached_property
from itertools import accumulate
from zoneinfo import ZoneInfo

Span = tuple[datetime, datetime]


@dataclass(frozen=True)
class Calendar:
    """`spans` are sorted, disjoint, half-open UTC spans in which the clock of this calendar runs."""

    spans: tuple[Span, ...]

    @cached_property
    def _starts(self) -> list[datetime]:
        return [start for start, _ in self.spans]

    @cached_property
    def _hours_before(self) -> list[float]:
        """Calendar hours before each span, and the total last."""
        return list(accumulate((_hours(b - a) for a, b in self.spans), initial=0.0))

    def elapsed_h(self, at: datetime) -> float:
        """Calendar hours from the calendar's beginning to `at`."""
        i = bisect_right(self._starts, at) - 1
        if i < 0:
            return 0.0
        start, end = self.spans[i]
        return self._hours_before[i] + _hours(min(at, end) - start)

    def hours_between(self, start: datetime, end: datetime) -> float:
        """Calendar hours in [start, end); negative where end lies before start."""
        return self.elapsed_h(end) - self.elapsed_h(start)

    def after(self, start: datetime, hours: float) -> datetime:
        """The first moment at which `hours` (any sign) of this calendar have passed since `start`.

        Past the last span the clock is taken to run on without a stop, before the first one to run back without one,
        so that a forecast beyond the calendar stays finite.
        """
        target = self.elapsed_h(start) + hours
        if not self.spans or (hours <= 0 and target <= 0):
            return start + timedelta(hours=hours) if not self.spans else self.spans[0][0] + timedelta(hours=target)
        if target > self._hours_before[-1]:
            return max(start, self.spans[-1][1]) + timedelta(hours=target - self._hours_before[-1])
        i = max(0, _last_below(self._hours_before, target))
        return self.spans[i][0] + timedelta(hours=target - self._hours_before[i])

    def contains(self, at: datetime) -> bool:
        i = bisect_right(self._starts, at) - 1
        return i >= 0 and at < self.spans[i][1]


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
    days = [first + timedelta(days=i) for i in range(-1, (last - first).days + 1)]
    spans = [
        _shift(day, start, end, zone) for day in days for weekdays, start, end in rows if day.weekday() in weekdays
    ]
    edges = (_local(first, time(0), zone), _local(last + timedelta(days=1), time(0), zone))
    inside = _merge((max(a, edges[0]), min(b, edges[1])) for a, b in spans)
    shut = _merge(_shift(day, None, None, zone) for day in closed)
    return Calendar(tuple(_less(inside, shut)))


def union(calendars: Iterable[Calendar]) -> Calendar:
    """The calendar in which at least one of them runs."""
    return Calendar(tuple(_merge(span for calendar in calendars for span in calendar.spans)))


def iso_week(at: date) -> str:
    """ISO 8601 week of a day: `2026-W53`."""
    year, week, _ = at.isocalendar()
    return f"{year}-W{week:02d}"


def _hours(delta: timedelta) -> float:
    return delta.total_seconds() / 3600


def _last_below(sorted_values: list[float], target: float) -> int:
    """Index of the last value strictly below the target (so that a target at a span's end stays in that span)."""
    return bisect_left(sorted_values, target) - 1


def _local(day: date, at: time, zone: ZoneInfo) -> datetime:
    return datetime.combine(day, at, zone).astimezone(UTC)


def _shift(day: date, start: time | None, end: time | None, zone: ZoneInfo) -> Span:
    begin, finish = start or time(0), end or time(0)
    last_day = day if finish > begin else day + timedelta(days=1)
    return _local(day, begin, zone), _local(last_day, finish, zone)


def _merge(spans: Iterable[Span]) -> list[Span]:
    merged: list[Span] = []
    for start, end in sorted(span for span in spans if span[0] < span[1]):
        if merged and start <= merged[-1][1]:
            merged[-1] = (merged[-1][0], max(merged[-1][1], end))
        else:
            merged.append((start, end))
    return merged


def _less(spans: list[Span], shut: list[Span]) -> list[Span]:
    for gap_start, gap_end in shut:
        spans = (
            [
                piece
                for start, end in spans
                for piece in ((start, min(end, gap_start)), (max(start, gap_end), end))
                if piece[0] < piece[1]
            ]
            if spans
            else []
        )
    return spans
