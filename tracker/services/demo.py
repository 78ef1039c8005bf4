"""The whole job on the sample mill, from its workbooks to the plan workbook."""

from dataclasses import dataclass, field
from importlib.resources import files
from pathlib import Path
from typing import Any

from sample_data.people import TERMS
from tracker.domain.calendars import iso_week
from tracker.domain.clock import start_of_day
from tracker.errors import DataError, Message, TrackerError, message
from tracker.office.files import check
from tracker.planning.planner import Progress
from tracker.services.context import Context
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


@dataclass(frozen=True)
class DemoReport:
    """What each step found, and where the files are."""

    database: Path
    load: LoadReport
    forecast: ForecastReport
    plan: PlanReport
    verify: VerifyReport
    kits: KitsReport
    needs: NeedsReport
    status: StatusReport
    written: tuple[Path, ...] = field(default=())

    def record(self) -> dict[str, Any]:
        return {
            "database": str(self.database),
            "files": [str(path) for path in self.written],
            "stages": dict(self.status.stages),
            "plan": plan_record(self.plan.plan, self.plan.zone),
            "verified": self.verify.sound,
        }

    def messages(self) -> list[Message]:
        """The job in a few words."""
        plan, zone, tables = self.plan.plan, self.plan.zone, self.load.tables
        first, last = min(b.start for b in plan.bookings), max(b.end for b in plan.bookings)
        return [
            message(
                "demo-read", rows=sum(t.rows.added + t.rows.changed + t.rows.unchanged for t in tables),
                tables=len(tables), workbooks=len(WORKBOOKS), findings=len(self.load.findings),
            ),
            message("demo-scoped", looms=self.status.looms, survey=self.status.stages["to survey"]),
            *self.forecast.messages()[:1],
            message("demo-booked", many=len(plan.bookings), first=first.astimezone(zone), last=last.astimezone(zone),
                    left_over=len(plan.left_over)),
            message("demo-proof", status=plan.status, cost=plan.objective, bound=plan.bound, currency=plan.currency,
                    gap=plan.gap, seconds=plan.seconds),
            *self.verify.messages(),
            *self.kits.messages(),
            *self.needs.messages(),
            message("demo-wrote", files=[str(path) for path in self.written], database=str(self.database)),
        ]  # fmt: skip


def run_demo(directory: Path, progress: Progress) -> DemoReport:
    """Load the sample workbooks into `directory`/beamslot.db, plan as of the sample's start, and write the files.

    Done again in the same folder it takes the same database and files; TrackerError where they are not the demo's.
    """
    try:
        directory.mkdir(parents=True, exist_ok=True)
    except (OSError, RecursionError) as error:  # thousands of folders within each other
        why = (getattr(error, "strerror", None) or str(error)).lower()
        raise TrackerError("cannot-make-folder", folder=str(directory), why=why) from error
    database = directory / "beamslot.db"
    assert TERMS.start
    as_of = start_of_day(TERMS.start, TERMS)
    context = Context(str(database))
    written = tuple(directory / name for name in ("plan.xlsx", "mill.xlsx", "cards.pdf", "cards.xlsx"))
    plan_book, mill_book, card_pages, card_book = written
    for file in written:
        check(file)
    if not context.is_missing:
        _refuse_another_mill(context)
    samples = [Path(str(files("sample_data") / name)) for name in WORKBOOKS]
    progress(message("demo-reading"), 0.02)
    context = give_own_clock(context, as_of)
    loaded = load(context, samples)
    if loaded.refusal:
        raise TrackerError("demo-not-loaded", database=str(database), why=loaded.refusal)
    progress(message("demo-forecasting"), 0.15)
    forecasts = forecast(context, as_of=as_of)
    planned = plan(
        context,
        PlanRequest(publish=True, as_of=as_of, afresh=True),
        Search(progress=lambda what, part: progress(what, 0.2 + 0.6 * part)),
    )
    progress(message("demo-checking"), 0.82)
    verified = verify(context)
    progress(message("demo-kits"), 0.88)
    kit_report, need_report = kits(context), net_needs(context, as_of)
    progress(message("demo-writing"), 0.92)
    write_plan_workbook(context, plan_book)
    export_workbook(context, mill_book)
    first = min(booking.start for booking in planned.plan.bookings).astimezone(planned.zone)
    write_cards(cards(context, week=iso_week(first.date()), as_of=as_of), card_pages, card_book)
    return DemoReport(database, loaded, forecasts, planned, verified, kit_report, need_report, status(context, as_of),
                      written)  # fmt: skip


def _refuse_another_mill(context: Context) -> None:
    with context.reading() as uow:
        others = files_loaded(uow.session) - set(WORKBOOKS)
    if others:
        raise DataError("demo-not-alone", database=context.database)
