"""Hours of each trade by week: what the published plan takes of them at the looms, and what there is."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from tracker.domain.calendars import Calendar, iso_week
from tracker.domain.clock import start_of_day
from tracker.domain.mill import Crew, Mill
from tracker.domain.plan import Booking
from tracker.domain.shifts import crew_heads
from tracker.domain.words import fold
from tracker.services.context import Context

WEEK = timedelta(days=7)
Levels = tuple[tuple[int, Calendar], ...]
"""Heads, and when just so many work."""


@dataclass(frozen=True, slots=True)
class TradeWeek:
    """Head-hours of one trade in one ISO week, bench work left out."""

    trade: str
    monday: date
    booked_h: float
    there_h: float

    @property
    def week(self) -> str:
        return iso_week(self.monday)


def week_hours(context: Context) -> tuple[TradeWeek, ...]:
    """A row for each trade that conversions of the published plan ask for and each week from its first booking to its last, by
    trade (the lead trade first), then by week; nothing where no plan is published."""
    with context.reading() as uow:
        mill, plan = uow.mill(), uow.published_plan()
    if plan is None or not plan.bookings:
        return ()
    mondays = _mondays(plan.bookings, mill)
    first, last = mondays[0], mondays[-1] + WEEK
    at_work = {crew: _levels(mill, crew, first, last) for crew in mill.crews}
    lead = fold(mill.terms.lead_trade)
    trades = [lead, *dict.fromkeys(fold(n.what) for b in plan.bookings for n in b.needs if n.kind == "trade")]
    booked = _booked(plan.bookings, mill, mondays, at_work)
    return tuple(
        TradeWeek(_spelt(mill, trade), monday, booked[trade, monday], _there(mill, at_work, trade, monday))
        for trade in dict.fromkeys(trades)
        for monday in mondays
    )


def _mondays(bookings: Sequence[Booking], mill: Mill) -> list[date]:
    zone = mill.terms.zone
    first = min(b.start for b in bookings).astimezone(zone).date()
    last = max(b.end for b in bookings).astimezone(zone).date()
    found = [first - timedelta(days=first.weekday())]
    while found[-1] + WEEK <= last:
        found.append(found[-1] + WEEK)
    return found


def _levels(mill: Mill, crew: Crew, first: date, last: date) -> Levels:
    """In its hall; of one that works in any, in that which lets it work longest."""
    halls = [crew.hall] if crew.hall else list(dict.fromkeys(key.hall for key in mill.looms))
    found = [crew_heads(mill, crew, hall, first, last) for hall in halls]
    return max(
        found, key=lambda levels: sum(heads * sum((b - a).total_seconds() for a, b in c.spans) for heads, c in levels)
    )


def _there(mill: Mill, at_work: dict[Crew, Levels], trade: str, monday: date) -> float:
    start, end = (start_of_day(day, mill.terms) for day in (monday, monday + WEEK))
    return sum(_head_hours(levels, start, end) for crew, levels in at_work.items() if fold(crew.trade) == trade)


def _head_hours(levels: Levels, start: datetime, end: datetime) -> float:
    return sum(heads * calendar.hours_between(start, end) for heads, calendar in levels)


def _booked(
    bookings: Sequence[Booking], mill: Mill, mondays: Sequence[date], at_work: dict[Crew, Levels]
) -> dict[tuple[str, date], float]:
    """Crews count with all the heads that they have then, other trades with those that are asked for."""
    lead = fold(mill.terms.lead_trade)
    weeks = [(monday, start_of_day(monday, mill.terms), start_of_day(monday + WEEK, mill.terms)) for monday in mondays]
    found: dict[tuple[str, date], float] = defaultdict(float)
    for booking in bookings:
        for monday, begins, ends in weeks:
            for turn in booking.crews:
                start, end = max(turn.start, begins), min(turn.end, ends)
                if start < end:
                    rows = (levels for crew, levels in at_work.items() if crew.crew == turn.crew)
                    found[lead, monday] += sum(_head_hours(levels, start, end) for levels in rows)
            for trade, hours in _needed(booking, begins, ends):
                found[trade, monday] += hours
    return found


def _needed(booking: Booking, begins: datetime, ends: datetime) -> Iterator[tuple[str, float]]:
    for need in booking.needs:
        start, end = max(need.start, begins), min(need.end, ends)
        if need.kind == "trade" and start < end:
            yield fold(need.what), need.amount * (end - start) / timedelta(hours=1)


def _spelt(mill: Mill, trade: str) -> str:
    return next((crew.trade for crew in mill.crews if fold(crew.trade) == trade), trade)
