"""The whole job on the sample mill, from its workbooks to a programme half done."""

import os
from collections.abc import Iterator
from dataclasses import dataclass, field
from importlib.resources import files
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from sample_data.people import TERMS
from sample_data.six_weeks.books import BOOKS
from tracker.domain.calendars import iso_week
from tracker.domain.clock import start_of_day
from tracker.domain.progress import Stage
from tracker.errors import DataError, Message, TrackerError, message
from tracker.office.files import check
from tracker.planning.planner import Progress
from tracker.services.context import Context
from tracker.services.demo_weeks import SixWeeks, live_six_weeks
from tracker.services.loading.export import export_workbook
from tracker.services.loading.load import LoadReport, load
from tracker.services.own_clock import give_own_clock
from tracker.services.parts.kits import KitsReport, kits
from tracker.services.parts.needs import NeedsReport, net_needs
from tracker.services.plans.plan import PlanReport, PlanRequest, Search, plan
from tracker.services.plans.plan_record import plan_record
from tracker.services.plans.published import write_plan_workbook
from tracker.services.plans.verify import VerifyReport, verify
from tracker.services.screens.status import StatusReport, status
from tracker.services.work.cards import cards, write_cards
from tracker.services.work.forecast import ForecastReport, forecast
from tracker.store.loads import files_loaded

WORKBOOKS = ("loom_list.xlsx", "weaving.xlsx", "stores.xlsx", "people_and_tools.xlsx", "method.xlsx", "terms.xlsx")
WRITTEN = ("plan.xlsx", "mill.xlsx", "cards.pdf", "cards.xlsx")


@dataclass(frozen=True)
class Played:
    """What each step found on the way to the seventh week."""

    load: LoadReport
    forecast: ForecastReport
    first: PlanReport
    """The plan of the first day."""
    weeks: SixWeeks
    plan: PlanReport
    """The plan of the seventh week."""


@dataclass(frozen=True)
class DemoReport:
    """How the demo stands, and where its files are."""

    database: Path
    played: Played | None
    """None where it was there already: nothing was loaded or planned then."""
    verify: VerifyReport
    kits: KitsReport
    needs: NeedsReport
    status: StatusReport
    written: tuple[Path, ...] = field(default=())

    def record(self) -> dict[str, Any]:
        in_force = self.status.plan
        return {
            "database": str(self.database),
            "files": [str(path) for path in self.written],
            "stages": dict(self.status.stages),
            "first_plan": plan_record(self.played.first.plan, self.status.zone) if self.played else None,
            "plan": plan_record(in_force, self.status.zone) if in_force else None,
            "verified": self.verify.sound,
        }

    def messages(self) -> list[Message]:
        """The job in a few words."""
        now = self.status.as_of.astimezone(self.status.zone)
        there = [message("demo-there", database=str(self.database), now=now)]
        return [
            *(self._told(self.played) if self.played else there),
            *self.verify.messages(),
            *self.kits.messages(),
            *self.needs.messages(),
            message("demo-wrote", files=[str(path) for path in self.written], database=str(self.database)),
        ]

    def _told(self, played: Played) -> Iterator[Message]:
        tables, stages = played.load.tables, self.status.stages
        rows = sum(t.rows.added + t.rows.changed + t.rows.unchanged for t in tables)
        yield message(
            "demo-read", rows=rows, tables=len(tables), workbooks=len(WORKBOOKS), findings=len(played.load.findings)
        )
        yield message("demo-scoped", looms=self.status.looms, survey=stages["to survey"])
        yield from played.forecast.messages()[:1]
        yield from _booked(played.first)
        yield message(
            "demo-weeks", rows=played.weeks.rows, now=self.status.as_of.astimezone(self.status.zone),
            signed_off=stages[Stage.SIGNED_OFF], run_in=stages[Stage.RUN_IN], in_work=stages[Stage.IN_WORK],
            stopped=stages[Stage.STOPPED],
        )  # fmt: skip
        yield from _booked(played.plan)


def _booked(report: PlanReport) -> tuple[Message, Message]:
    """What a plan books, and how good it is known to be."""
    plan, zone = report.plan, report.zone
    first, last = min(b.start for b in plan.bookings), max(b.end for b in plan.bookings)
    return (
        message("demo-booked", many=len(plan.bookings), first=first.astimezone(zone), last=last.astimezone(zone),
                left_over=len(plan.left_over)),
        message("demo-proof", status=plan.status, cost=plan.objective, bound=plan.bound, currency=plan.currency,
                gap=plan.gap, seconds=plan.seconds),
    )  # fmt: skip


def run_demo(directory: Path, progress: Progress) -> DemoReport:
    """Load the sample workbooks into `directory`/beamslot.db, plan as of the sample's start, live six weeks of that plan, plan
    again and write the files.

    The database is there once all of that is done, and not before. Where the demo is there already it stays as it is, whatever
    was recorded in it, and only the files are written; TrackerError where what is there is not the demo's.
    """
    try:
        directory.mkdir(parents=True, exist_ok=True)
    except (OSError, RecursionError) as error:  # thousands of folders within each other
        why = (getattr(error, "strerror", None) or str(error)).lower()
        raise TrackerError("cannot-make-folder", folder=str(directory), why=why) from error
    database = directory / "beamslot.db"
    for name in WRITTEN:
        check(directory / name)
    played = None
    if Context(str(database)).is_missing:
        for name in BOOKS:
            check(directory / name)
        played = _make(database, progress)
    else:
        _refuse_another_mill(Context(str(database)))
    progress(message("demo-writing"), 0.92)
    return _standing(database, played)


def _make(database: Path, progress: Progress) -> Played:
    """Make the database aside, and put it in its place once it is whole."""
    with TemporaryDirectory(dir=database.parent, prefix=".demo-") as aside:
        made = Path(aside) / database.name
        played = _play(made, database.parent, progress)
        os.replace(made, database)
    return played


def _play(database: Path, folder: Path, progress: Progress) -> Played:
    assert TERMS.start
    as_of = start_of_day(TERMS.start, TERMS)
    samples = [Path(str(files("sample_data") / name)) for name in WORKBOOKS]
    progress(message("demo-reading"), 0.02)
    context = give_own_clock(Context(str(database)), as_of)
    loaded = load(context, samples)
    if loaded.refusal:
        raise TrackerError("demo-not-loaded", database=database.name, why=loaded.refusal)
    progress(message("demo-forecasting"), 0.1)
    forecasts = forecast(context, as_of=as_of)
    first = _plan(context, progress, 0.15, 0.4)
    progress(message("demo-playing"), 0.55)
    weeks = live_six_weeks(context, folder, as_of, net_needs(context, as_of).orders)
    return Played(loaded, forecasts, first, weeks, _plan(Context(str(database)), progress, 0.65, 0.25))


def _plan(context: Context, progress: Progress, begin: float, share: float) -> PlanReport:
    """Plan and publish as of the programme's clock."""
    search = Search(progress=lambda what, part: progress(what, begin + share * part))
    return plan(context, PlanRequest(publish=True), search)


def _standing(database: Path, played: Played | None) -> DemoReport:
    """How it stands by its clock, and its files."""
    context = Context(str(database))
    written = tuple(database.parent / name for name in WRITTEN)
    plan_book, mill_book, card_pages, card_book = written
    write_plan_workbook(context, plan_book)
    export_workbook(context, mill_book)
    stands = status(context)
    if stands.next_bookings:
        week = iso_week(min(b.start for b in stands.next_bookings).astimezone(stands.zone).date())
        write_cards(cards(context, week=week), card_pages, card_book)
    played_books = tuple(database.parent / name for name in BOOKS) if played else ()
    return DemoReport(
        database, played, verify(context), kits(context), net_needs(context), stands, (*written, *played_books)
    )


def _refuse_another_mill(context: Context) -> None:
    with context.reading() as uow:
        others = files_loaded(uow.session) - {*WORKBOOKS, *BOOKS}
    if others:
        raise DataError("demo-not-alone", database=context.database)
