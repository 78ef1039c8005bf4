"""When something may be said to have been done: not ahead of now, and seldom before the programme began."""

from datetime import date, datetime

from tracker.domain.clock import start_of_day
from tracker.domain.terms import Terms
from tracker.errors import UsageError
from tracker.store import UnitOfWork
from tracker.store.own_clock import own_clock


def refuse_ahead(uow: UnitOfWork, at: datetime) -> None:
    """UsageError for a moment that is still to come."""
    if at <= uow.now():
        return
    local = at.astimezone(uow.zone)
    if stands := own_clock(uow.session):
        raise UsageError(
            "ahead-of-own-clock", at=local, stands=stands.astimezone(uow.zone), typed=f"{local:%Y-%m-%dT%H:%M}"
        )
    raise UsageError("ahead-of-now", at=local)


def began(uow: UnitOfWork, terms: Terms) -> date | None:
    """The day on which the programme began: its start by the terms, or that of the first published plan where this is
    earlier; None where there is neither."""
    zone = terms.zone
    published = [min(p.made_at, p.as_of).astimezone(zone).date() for p in uow.plan_entries() if p.published]
    return min([*published, *([terms.start] if terms.start else [])], default=None)


def is_before(at: datetime, day: date | None, terms: Terms) -> bool:
    """Whether a moment lies before a day, if there is one."""
    return day is not None and at < start_of_day(day, terms)


def monday_of(week: str) -> date:
    """The Monday of a week as typed, `2027-W07`; UsageError where it is none."""
    try:
        year, _, number = week.upper().partition("-W")
        return date.fromisocalendar(int(year), int(number), 1)
    except ValueError:
        raise UsageError("no-week", text=week) from None
