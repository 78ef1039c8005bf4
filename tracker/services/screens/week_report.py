"""How the programme stood at the end of a week, or stands in this one: what the manager's page of it says."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from tracker.commissioning.worth.savings import Savings
from tracker.domain.calendars import iso_week
from tracker.domain.clock import planning_moment, start_of_day
from tracker.domain.late import Late
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking, Plan
from tracker.domain.progress import Conversion, Stage
from tracker.domain.risks import RiskAhead
from tracker.domain.stock import Movement
from tracker.errors import DataError
from tracker.mill_state.progress import Pace, WeekCount, by_week, done_on, pace, still_to_come
from tracker.services.context import Context
from tracker.services.moments import began, monday_of
from tracker.services.plans.reference import Reference, read_reference
from tracker.services.plans.rehearsal_says import promised
from tracker.services.screens.status import status
from tracker.services.work.spent import MonthMoney, by_month, labour_recorded
from tracker.services.work.worth import measured_savings
from tracker.store import UnitOfWork
from tracker.store.history import last_hash


@dataclass(frozen=True, slots=True)
class WeekMoney:
    """Parts and labour, currency."""

    spent: float
    """Up to the end of the week."""
    spent_in_week: float
    planned: float
    """By the reference plan, of what was to end up to then."""
    months: tuple[MonthMoney, ...]
    """Up to then, with what is still on order where the week is this one: what was on order before is not kept."""
    on_order: float | None
    """None of a week that is over."""


@dataclass(frozen=True, slots=True)
class WeekReport:
    """One week. What was recorded late, of a week that is over, counts for it."""

    programme: str
    currency: str
    zone: ZoneInfo
    week: str
    """ISO 8601, `2027-W07`."""
    first: date
    last: date
    at: datetime
    """The end of the week, or now where that is still to come; UTC."""
    is_over: bool
    looms: int
    counts: tuple[WeekCount, ...]
    """Planned by the reference plan, done, expected by the plan in force at `at`."""
    done: int
    """Looms signed off up to `at`."""
    plan: int | None
    """Number of the plan in force at `at`."""
    finish_on: date | None
    """The local day on which its last booking ends."""
    target: date | None
    pace: Pace
    rehearsed: tuple[int, date, date] | None
    """Looms, and the days by which they are done in 50 and in 80 of 100 runs."""
    money: WeekMoney
    late: tuple[Late, ...]
    """Of this week only."""
    risks: tuple[RiskAhead, ...]
    """Of this week only."""
    missed: tuple[tuple[Booking, Stage | None], ...]
    """What the plan in force when the week began would have done in it and was not signed off, with the stage reached."""
    savings: Savings | None
    last_hash: str
    """Of the history as it is now; empty where there is none."""
    made_at: datetime

    @property
    def count(self) -> WeekCount:
        """Of this week."""
        before = [one for one in self.counts if one.week <= self.week]
        named = before[-1] if before else WeekCount(self.week, 0, 0, 0, 0)
        if named.week == self.week:
            return named
        return WeekCount(self.week, 0, 0, named.planned_total, named.done_total, 0, named.expected_total)


def week_report(context: Context, week: str | None = None) -> WeekReport:
    """The report of an ISO week, `2027-W07` (default: the week of now). UsageError for what is no week, DataError for one that
    has not begun."""
    with context.reading() as uow:
        mill = uow.mill()
        now = planning_moment(mill.terms, None, context.now())
        monday = monday_of(week) if week else _monday(now.astimezone(mill.terms.zone).date())
        begins, ends = (start_of_day(monday + timedelta(weeks=i), mill.terms) for i in (0, 1))
        if begins > now:
            raise DataError("week-not-begun", week=iso_week(monday), first=monday)
        then = _Then(uow, mill, min(now, ends))
        made = _made(uow, begins)
        reference, first_day, seal = (
            read_reference(uow, mill),
            began(uow, mill.terms),
            last_hash(uow.session.connection()),
        )
    looked = (then.at - timedelta(seconds=1)).astimezone(mill.terms.zone).date() if ends <= now else then.today
    planned = list(reference.bookings.values()) if reference else []
    standing = status(context, now) if ends > now else None
    return WeekReport(
        programme=mill.terms.programme, currency=mill.terms.currency, zone=mill.terms.zone, week=iso_week(monday), first=monday,
        last=monday + timedelta(days=6), at=then.at, is_over=ends <= now, looms=len(mill.looms),
        counts=by_week(planned, then.done, then.to_come, looked, mill.terms), done=len(then.done), plan=then.number,
        finish_on=then.finish_on, target=mill.terms.target_finish,
        pace=pace(then.done, len(then.to_come), first_day, looked), rehearsed=then.rehearsed,
        money=_money(mill, reference, then, begins, ends <= now),
        late=standing.late if standing else (), risks=standing.risks if standing else (),
        missed=_missed(made, then, begins, min(then.at, ends)), savings=measured_savings(context, then.at),
        last_hash=seal, made_at=context.now(),
    )  # fmt: skip


class _Then:
    """What was known, or is told today, of a moment."""

    def __init__(self, uow: UnitOfWork, mill: Mill, at: datetime):
        self.at, self.zone = at, mill.terms.zone
        self.today = at.astimezone(self.zone).date()
        history = [change for change in uow.stage_history() if change.at <= at]
        self.stages: dict[LoomKey, Stage] = {change.key: change.stage for change in history}
        self.done = done_on(history, mill.terms)
        self.number = _in_force(uow, at)
        self.plan: Plan | None = uow.plan(self.number) if self.number is not None else None
        booked = uow.last_bookings(mill.looms.keys(), before=(self.number or 0) + 1)
        self.to_come = still_to_come(self.plan, self.stages, booked)
        self.movements: list[Movement] = [one for one in uow.movements() if one.at <= at]
        self.conversions: list[Conversion] = [
            one for one in uow.conversions() if (one.ended_at or one.started_at) <= at
        ]
        kept = uow.last_rehearsal(self.number) if self.number is not None else None
        self.rehearsed = promised(kept.result) if kept and kept.made_at <= at else None

    @property
    def finish_on(self) -> date | None:
        ends = [booking.end for booking in self.plan.bookings] if self.plan else []
        return max(ends).astimezone(self.zone).date() if ends else None


def _in_force(uow: UnitOfWork, at: datetime) -> int | None:
    return max((plan.number for plan in uow.plan_entries() if plan.published and plan.made_at <= at), default=None)


def _made(uow: UnitOfWork, begins: datetime) -> Plan | None:
    """The plan in force when the week began; in the first week the first."""
    published = [plan.number for plan in uow.plan_entries() if plan.published]
    number = _in_force(uow, begins) or min(published, default=None)
    return uow.plan(number) if number is not None else None


def _money(mill: Mill, reference: Reference | None, then: _Then, begins: datetime, is_over: bool) -> WeekMoney:
    labour = labour_recorded(then.conversions, mill)
    measured = [b for b in reference.bookings.values() if b.end <= then.at] if reference else []

    def spent(since: datetime | None) -> float:
        issued = [-m.quantity * mill.parts[m.part].price for m in then.movements
                  if m.key and m.part in mill.parts and (since is None or m.at >= since)]  # fmt: skip
        return sum(issued) + sum(one.cost for one in labour if since is None or one.ended_at >= since)

    planned = list(reference.bookings.values()) if reference else []
    months = by_month(mill, planned, then.movements, labour)
    last = f"{then.at.astimezone(then.zone):%Y-%m}"
    return WeekMoney(
        spent(None), spent(begins), sum(b.cost.labour + b.cost.parts for b in measured),
        tuple(one for one in months if one.month <= last) if is_over else months,
        None if is_over else sum(one.committed for one in months),
    )  # fmt: skip


def _missed(
    made: Plan | None, then: _Then, begins: datetime, until: datetime
) -> tuple[tuple[Booking, Stage | None], ...]:
    ended: Iterable[Booking] = (b for b in made.bookings if begins <= b.end <= until) if made else ()
    stages: Mapping[LoomKey, Stage] = then.stages
    missed = [(b, stages.get(b.key)) for b in ended if b.key not in then.done]
    return tuple(sorted(missed, key=lambda one: (one[0].end, one[0].key.sort_key)))


def _monday(day: date) -> date:
    return day - timedelta(days=day.weekday())
