"""Six weeks of the sample mill are lived through: what came in and was handed out, what was recorded, what the hall says now."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from pathlib import Path

from sample_data.six_weeks.books import BOOKS, hall_book, records_book
from sample_data.six_weeks.jobs import LATE_ORDER, NOW, Job, endings, jobs_of
from tracker.domain.clock import horizon_end, start_of_day
from tracker.domain.days import Days
from tracker.domain.mill import LoomKey, Mill, Receipt
from tracker.domain.needs import OrderLine
from tracker.domain.stock import MovementKind, received
from tracker.errors import TrackerError
from tracker.forecast.beam_outs import forecast
from tracker.scope.content import scope_looms
from tracker.services.context import Context
from tracker.services.loading.load import LoadRequest, load
from tracker.services.loading.load_report import LoadReport
from tracker.services.own_clock import set_clock
from tracker.services.parts.stock_entry import Entry
from tracker.services.people.permissions import May
from tracker.store import UnitOfWork

BEFORE_START = timedelta(minutes=30)
"""A kit is handed out so long before its conversion begins."""


@dataclass(frozen=True, slots=True)
class SixWeeks:
    jobs: tuple[Job, ...]
    """Every conversion that began, as it stands now."""
    loads: tuple[LoadReport, ...]
    written: tuple[Path, ...]
    """The workbooks that were loaded."""

    @property
    def rows(self) -> int:
        return sum(table.rows.added + table.rows.changed for load in self.loads for table in load.tables)


def live_six_weeks(context: Context, folder: Path, as_of: datetime, orders: Sequence[OrderLine]) -> SixWeeks:
    """Play what became of the published plan of `as_of`, place the `orders` that were due meanwhile, write the workbooks with
    which the mill tells it into `folder`, load them, and set the programme's clock to the seventh week."""
    later = replace(context, clock=lambda: NOW)
    with later.reading() as uow:
        mill, plan = uow.mill(), uow.published_plan()
    assert plan
    windows, scopes = forecast(mill, as_of, horizon_end(mill.terms, as_of)), scope_looms(mill)
    hall_file, records_file = (folder / name for name in BOOKS)
    hall_book(hall_file, mill, windows, plan.bookings, _placed(mill, orders))
    loads = [_loaded(later, hall_file, ("warps",))]
    jobs = jobs_of(mill, plan.bookings, scopes)
    with later.unit_of_work(May.STOCK) as uow:
        jobs = endings(_supply(uow, jobs))
        _take_back(uow, jobs)
        uow.commit()
    records_book(records_file, mill, windows, jobs)
    loads.append(_loaded(later, records_file))
    set_clock(context, NOW)
    return SixWeeks(tuple(jobs), tuple(loads), (hall_file, records_file))


def _placed(mill: Mill, orders: Iterable[OrderLine]) -> list[Receipt]:
    """The orders that purchasing placed by now, each on its day."""
    today = Days(mill).local(NOW)
    return [Receipt(o.order, o.part, o.quantity, o.expected, o.supplier) for o in orders if o.order_by <= today]


def _loaded(context: Context, file: Path, replaces: Sequence[str] = ()) -> LoadReport:
    report = load(context, [file], LoadRequest(replaces=replaces))
    if report.refusal:
        raise TrackerError("demo-not-loaded", database=context.database, why=report.refusal)
    return report


def _supply(uow: UnitOfWork, jobs: Sequence[Job]) -> list[Job]:
    """Book what came in and hand out the kits, in order of time; the jobs whose kits were whole when they began."""
    entry = Entry(uow)
    due = [
        (start_of_day(line.due, entry.room.mill.terms) + timedelta(hours=10), line) for line in entry.room.mill.receipts
    ]
    coming = sorted(((at, line) for at, line in due if at < NOW and line.order != LATE_ORDER), key=lambda one: one[0])
    served = []
    for job in jobs:
        at = job.started_at - BEFORE_START
        while coming and coming[0][0] < at:
            _receive(entry, *coming.pop(0))
        if not entry.room.short(job.key):
            _issue(entry, at, job.key)
            served.append(job)
    for arrival in coming:
        _receive(entry, *arrival)
    return served


def _receive(entry: Entry, at: datetime, line: Receipt) -> None:
    entry.at = at
    entry.move(MovementKind.RECEIPT, {line.part: line.quantity}, "", order=line.order)
    entry.leave_open(line, 0.0, received(line.quantity))
    entry.settle([line.part], "received")


def _issue(entry: Entry, at: datetime, key: LoomKey) -> None:
    entry.at = at
    kit = entry.room.held(key)
    entry.hold({(key, part): 0.0 for part in kit}, "issued")
    entry.move(MovementKind.ISSUE, {part: -quantity for part, quantity in kit.items()}, "", key)


def _take_back(uow: UnitOfWork, jobs: Iterable[Job]) -> None:
    """Book back what the method says comes back, when each loom was signed off."""
    entry = Entry(uow)
    coming_back = entry.room.coming_back
    for job in jobs:
        back = coming_back.get(job.key, {})
        if job.signed_at and back:
            entry.at = job.signed_at
            entry.move(MovementKind.RECOVERED, back, "", job.key)
    entry.settle(sorted(entry.parts), "recovered")
