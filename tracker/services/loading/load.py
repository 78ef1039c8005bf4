"""Read spreadsheets, say what they would change, and write it, all of it or nothing."""

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.findings import Finding, Severity
from tracker.domain.rows import Change, ReadResult, SourceTable, TypedRow
from tracker.domain.tables import TABLES
from tracker.domain.words import natural_key
from tracker.errors import InputRefused, Message, message
from tracker.intake.answers import Answers
from tracker.intake.reader import Progress
from tracker.intake.rows.around import NEEDS
from tracker.intake.rows.compare import compare, key_of
from tracker.intake.rows.cross_checks import cross_findings
from tracker.kits.refusals import stock_findings
from tracker.scope.difference import MethodDifference
from tracker.services.context import Context
from tracker.services.loading.accounting import settled
from tracker.services.loading.load_report import LoadedTable, LoadReport, against, where
from tracker.services.loading.marking import Marking
from tracker.services.loading.method import load_method
from tracker.services.loading.permission import needed, refuse_names
from tracker.services.loading.readings import ReadingTask, remembered_answers
from tracker.services.loading.reference import reference_findings
from tracker.services.loading.replacing import Retiring, replaceable, retiring
from tracker.services.parts.reservations import follow_stock
from tracker.services.parts.stock_report import parts_listed
from tracker.services.plans.reference import published_numbers
from tracker.services.work.records import Records
from tracker.store import UnitOfWork
from tracker.store.loads import LoadWriter, RowPlace
from tracker.store.opening import is_new
from tracker.store.scratch import scratch
from tracker.words import Speaker

Also = Callable[[UnitOfWork, LoadReport], None]
"""Writes something else in the unit of work of a load."""


@dataclass(frozen=True, slots=True)
class LoadRequest:
    """How spreadsheets are to be loaded."""

    dry_run: bool = False
    """Only say what it would do."""
    partial: bool = False
    """Leave refused rows out, which stop it otherwise; an open question always does."""
    answers: Mapping[str, str] = field(default_factory=dict)
    """What a heading asks → what is said to it."""
    marked: Path | None = None
    """Write a copy of each file that has findings, with their cells marked: under this name where one file is given, else
    under a name made of it and the file's. Where no copy can be written nothing is loaded either."""
    today: date | None = None
    """None = by the programme's clock."""
    replaces: Collection[str] = ()
    """Tables whose sheets are the whole truth (`replacing`)."""
    records_only: bool = False
    """Refuse sheets that are no records of what was done."""
    correct: str | None = None
    """The reason for which records replace others of the same key."""


AS_THEY_ARE = LoadRequest()


def load(
    context: Context,
    files: Sequence[Path],
    request: LoadRequest = AS_THEY_ARE,
    progress: Progress | None = None,
    before: Callable[[LoadReport], None] | None = None,
) -> LoadReport:
    """Load spreadsheets as one load, into a new database where there is none.

    A file that cannot be read at all gives a report with a refusal, too. `before` is shown the report once all is ready to be
    written, before it is.
    Raises UsageError for an answer that fits no heading and for a `marked` that cannot be the name of a copy.
    """
    marking = Marking(files, request.marked, Speaker(context.language)) if request.marked else None
    day, replaces = request.today or context.now().date(), replaceable(request.replaces)
    asked, remembered = _Asked(files, request, marking, day, replaces, progress), remembered_answers(context)
    try:
        result = asked.read(remembered)
        if not request.dry_run:
            context.require(needed(result.tables))
        if request.dry_run or is_new(context.database):
            tried = _try_out(context, asked, result)
            if request.dry_run or tried.refusal:
                return asked.marked(tried, remembered)
            del tried  # of a large list it holds as much as the list; it is worked out anew under the lock
        return _write(context, asked, result, remembered, before)
    except InputRefused as refusal:
        return LoadReport(findings=_of_file(refusal), refusal=refusal.message, dry_run=request.dry_run)


def enter(
    context: Context,
    result: ReadResult,
    correct: str | None = None,
    records_only: bool = True,
    also: Also | None = None,
) -> LoadReport:
    """Write rows that were told by a command or a screen as a load would, all of them or nothing; `correct` and `records_only`
    as in `load`. `also` writes what belongs to it."""
    asked = _Asked((), LoadRequest(records_only=records_only, correct=correct), None, context.now().date())
    with context.unit_of_work(needed(result.tables)) as uow:
        loading = _Loading(uow, result, asked)
        refuse_names(context, uow, loading.comparison.changes)
        report = loading.run(dry_run=False)
        if report.written:
            if also:
                also(uow, report)
            uow.commit()
    return report


@dataclass(frozen=True, slots=True)
class _Asked:
    """The files and the request, made ready."""

    files: Sequence[Path]
    request: LoadRequest
    marking: Marking | None
    today: date
    replaces: frozenset[str] = frozenset()
    progress: Progress | None = None

    def read(self, remembered: Mapping[str, str]) -> ReadResult:
        return ReadingTask(tuple(self.files), self.request.answers, remembered, self.today).run(self.progress)

    def marked(self, report: LoadReport, remembered: Mapping[str, str]) -> LoadReport:
        """The report, once the marked copies that were asked for are there."""
        if self.marking is None:
            return report
        written = self.marking.write(report.findings, Answers(self.request.answers, remembered).code_page)
        return replace(report, said=(*report.said, *written))


def code_pages(context: Context, answers: Mapping[str, str]) -> Callable[[str], str | None]:
    """Name of a text file → the code page that the answers, given or remembered, say for it."""
    return Answers(answers, remembered_answers(context)).code_page


def _try_out(context: Context, asked: _Asked, result: ReadResult) -> LoadReport:
    """What the load would do, found out on a copy in memory: a database is made only for a load that is not refused.

    Only a method is checked against the mill as the load leaves it; without one nothing needs to be written twice.
    """
    with scratch(context.database).unit_of_work(context.actor.name, context.now) as uow:
        loading, dry_run = _Loading(uow, result, asked), asked.request.dry_run
        return loading.run(dry_run) if dry_run or loading.comparison.method_changed else loading.checked(dry_run)


def _write(
    context: Context, asked: _Asked, result: ReadResult, remembered: Mapping[str, str],
    before: Callable[[LoadReport], None] | None,
) -> LoadReport:  # fmt: skip
    """The files were read before the database is locked; they are read again where somebody gave other answers since."""
    while True:
        with context.making().unit_of_work(needed(result.tables)) as uow:
            if (newest := uow.answers()) == remembered:
                loading = _Loading(uow, result, asked)
                refuse_names(context, uow, loading.comparison.changes)
                report = asked.marked(loading.run(dry_run=False), remembered)
                if report.written:
                    if before:
                        before(report)
                    uow.commit()
                return report
        remembered, result = newest, asked.read(newest)


class _Loading:
    """One load inside its unit of work."""

    def __init__(self, uow: UnitOfWork, result: ReadResult, asked: _Asked):
        request = asked.request
        self.uow, self.result, self.answers, self.partial = uow, result, request.answers, request.partial
        self.files, self.today = asked.files, asked.today
        names = {source.table for source in result.tables} | {"looms"}
        self.current = {name: uow.rows(name) for name in names}
        self.comparison = compare(result, self.current, request.correct)
        self.records_only = request.records_only
        self.replaces, self.retiring = asked.replaces, Retiring()
        self.findings = [*result.findings, *self.comparison.findings]
        self.records = Records(uow, self.comparison.rows, self.comparison.changes, result.tables)

    def run(self, dry_run: bool) -> LoadReport:
        """Write the load into the unit of work; the caller commits where the report says `written`."""
        report = self.checked(dry_run)
        if report.refusal:
            return report
        writer = self.uow.load_writer()
        writer.begin([path.name for path in self.files], self.result.tables)
        self._write(writer)
        decision = None
        if self.comparison.method_changed:
            answers = {**self.uow.answers(), **self.answers}
            decision = load_method(self.uow.mill(), self.comparison.method, self.result.tables, answers)
            self.findings += decision.findings
            if (refusal := self._refusal()) or not (decision.accepted or self.partial):
                return self._report(refusal or message("method-refused"), dry_run=dry_run)
        version = None
        if decision and decision.changed and decision.accepted:
            version = writer.write_method(self.comparison.method, self.result.tables)
        writer.add_findings(self.findings)
        self.uow.add_answers({**self.result.answers_used, **(decision.answers_used if decision else {})})
        report = self._report(
            None, decision.difference if decision else None, version, written=not dry_run, dry_run=dry_run
        )
        return replace(report, said=tuple(self._share_out_stock()))

    def checked(self, dry_run: bool) -> LoadReport:
        """What stands against the load before anything is written; a refusal of its method comes later."""
        self._check_against_the_mill()
        self._refuse_stock_rows()
        self._refuse_reference()
        self._take(self.records.findings())
        if self.records_only:
            self.findings += _not_records(self.result.tables)
        self._retire()
        return self._report(self._refusal(), dry_run=dry_run)

    def _retire(self) -> None:
        """Find the rows of the database that have ended by the sheets that are declared the whole truth."""
        tables = zip(self.result.tables, self.comparison.counts, strict=True)
        refused = {source.table for source, counts in tables if counts.refused}
        self.retiring = retiring(
            self.replaces, self.result.tables, self.comparison.rows, refused, self.current, self.answers
        )
        self.findings += self.retiring.findings
        for name, rows in self.retiring.rows.items():
            left = [key for key in self.comparison.missing.pop(name, ()) if key not in rows]
            self.comparison.missing |= {name: left} if left else {}

    def _share_out_stock(self) -> Iterator[Message]:
        """Settle what is held of the parts whose stock the load changes; says what is given up by it."""
        stock = {"", "on_hand", "safety_stock"}
        parts = {str(c.key[0]) for c in self.comparison.changes if c.table == "parts" and c.field in stock}
        given_up = follow_stock(self.uow, parts) if parts else {}
        if given_up:
            looms = [message("loom-gives-up", loom=key, parts=parts_listed(lost)) for key, lost in given_up.items()]
            yield message("stock-given-up", looms=looms)

    def _write(self, writer: LoadWriter) -> None:
        new_zone = next(
            (_value(c) for c in self.comparison.changes if c.table == "terms" and c.key == ("time zone",)), None
        )
        if new_zone and str(writer.zone) != new_zone:
            writer.change_zone(writer.zone, ZoneInfo(str(new_zone)))
        places = {key: RowPlace(*place) for key, place in self.comparison.places.items()}
        writer.write(self.comparison.changes, places)
        for name, rows in self.retiring.rows.items():
            writer.retire(name, rows)
        self.records.write()

    def _check_against_the_mill(self) -> None:
        """Refuse rows, and note values, that do not fit what else there is in the mill."""
        stored = {name: self.uow.rows(name) for name in NEEDS}
        self._take(cross_findings(self.comparison.rows, self.result.tables, stored, self.today))

    def _refuse_stock_rows(self) -> None:
        """Refuse rows of parts and receipts that the stockroom cannot take."""
        if not any(row.table in ("parts", "receipts") for row in self.comparison.rows):
            return
        mill = self.uow.mill()
        found = stock_findings(
            self.comparison.rows, self.result.tables, mill.parts, mill.receipts, self.uow.movements()
        )
        self._take(found)

    def _refuse_reference(self) -> None:
        """Refuse a reference plan that was never published."""
        rows = [row for row in self.comparison.rows if row.table == "terms" and row.values["term"] == "reference plan"]
        if rows:
            self._take(list(reference_findings(rows, self.result.tables, published_numbers(self.uow))))

    def _take(self, found: Sequence[Finding]) -> None:
        """Add findings, and drop the rows that they refuse."""
        self.findings += found
        places = {place for finding in found for place in finding.rows}
        rows = [row for row in self.comparison.rows if (row.source, row.number) in places] if places else []
        if rows:
            self._drop(rows)

    def _drop(self, rows: Sequence[TypedRow]) -> None:
        found = self.comparison
        first = {(change.table, change.key): change for change in reversed(found.changes)}
        for row in rows:
            change, counts = first.get((row.table, key_of(row))), found.counts[row.source]
            counts.refused += 1
            if change is None:
                counts.unchanged -= 1
            elif change.field:
                counts.changed -= 1
            else:
                counts.added -= 1
        dropped = {(row.table, key_of(row)) for row in rows}
        found.changes = [change for change in found.changes if (change.table, change.key) not in dropped]

    def _refusal(self) -> Message | None:
        """Why nothing may be written yet; None where nothing stands against it."""
        standing = against(self.findings)
        if not standing or (self.partial and standing[0].severity is Severity.REFUSED):
            return None
        asked = standing[0].severity is Severity.DOUBT
        one, several = (
            ("records-refusal", "records-refusals") if self.records_only else ("load-refusal", "load-refusals")
        )
        if len(standing) == 1:
            return message("load-question" if asked else one, where=where(standing[0]), what="")
        places = [where(finding) for finding in standing]
        return message("load-questions" if asked else several, many=len(standing), places=places)

    def _report(
        self, refusal: Message | None, difference: MethodDifference | None = None, version: int | None = None,
        written: bool = False, dry_run: bool = False,
    ) -> LoadReport:  # fmt: skip
        tables = zip(self.result.tables, self.comparison.counts, strict=True)
        missing = {
            name: sorted(keys, key=lambda key: tuple(natural_key("" if part is None else part) for part in key))
            for name, keys in self.comparison.missing.items()
        }
        return LoadReport(
            tuple(LoadedTable(source, rows) for source, rows in tables), tuple(self.findings),
            tuple(self.comparison.changes), missing, difference, version, refusal, written, dry_run,
            retired=self.retiring.rows, account=settled(self.result, self.comparison.rows, self.findings),
        )  # fmt: skip


def _not_records(tables: Sequence[SourceTable]) -> list[Finding]:
    others = (source for source in tables if not TABLES[source.table].history)
    return [
        Finding("sheets-of-records", Severity.REFUSED, file=source.file, sheet=source.sheet,
                params={"table": TABLES[source.table].sheet})
        for source in others
    ]  # fmt: skip


def _value(change: Change) -> Any:
    return change.new if change.field else change.new["value"]


def _of_file(refusal: InputRefused) -> tuple[Finding, ...]:
    file = str(refusal.message.params.get("file", ""))
    whole = Finding("file-refused", Severity.REFUSED, file=file, params={"why": refusal.message})
    return (*refusal.findings, whole)
