"""Reading the clock, and moments in the mill's local time."""

from datetime import UTC, date, datetime, time, timedelta

from tracker.domain.terms import Terms
from tracker.errors import DataError, UsageError

FIRST, LAST = date(1990, 1, 1), date(2100, 12, 31)
"""Days that may be named: before and after, no mill has anything to plan or record."""


def now() -> datetime:
    """This moment, UTC. DataError where the computer's clock is out of reach: what it dates would stand before everything."""
    at = datetime.now(UTC)
    if not FIRST <= at.date() <= LAST:
        raise DataError("computer-clock-wrong", at=at, first=str(FIRST.year), last=str(LAST.year))
    return at


def start_of_day(on: date, terms: Terms) -> datetime:
    """Local midnight of a day as a UTC moment."""
    return datetime.combine(on, time(0), terms.zone).astimezone(UTC)


def planning_moment(terms: Terms, as_of: datetime | None, this_moment: datetime) -> datetime:
    """The moment asked for; without one `this_moment`, or the programme's start where that still lies ahead."""
    if as_of:
        return as_of
    return max(this_moment, start_of_day(terms.start, terms)) if terms.start else this_moment


def horizon_end(terms: Terms, as_of: datetime) -> datetime:
    """Local midnight `horizon_days` after the programme's start (none given: after the day of `as_of`), UTC."""
    first = terms.start or as_of.astimezone(terms.zone).date()
    return start_of_day(first + timedelta(days=terms.horizon_days), terms)


def within_reach(day: date, typed: str) -> date:
    """The day; UsageError where it is out of `FIRST` to `LAST`. `typed` is how the user wrote it."""
    if not FIRST <= day <= LAST:
        raise UsageError("moment-out-of-years", typed=typed, first=str(FIRST.year), last=str(LAST.year))
    return day


def local_moment(text: str, terms: Terms) -> datetime:
    """A moment as typed, `2027-01-04` or `2027-01-04 06:00`, local unless it carries an offset; UTC.

    Raises ValueError where it is no ISO 8601 date or date and time, UsageError where it is out of reach.
    """
    at = datetime.fromisoformat(text)
    within_reach(at.date(), text)
    return (at if at.tzinfo else at.replace(tzinfo=terms.zone)).astimezone(UTC)
