"""Read spreadsheets, say what they would change, and write it, all of it or nothing."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import asdict, dataclass, field, replace
from datetime import date
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.clock import now
from tracker.domain.findings import Finding, Severity
from tracker.domain.formats import count
from tracker.domain.rows import Change, ReadResult, RowCounts, RowKey, SourceTable, TypedRow
from tracker.domain.tables import TABLES
from tracker.domain.words import natural_key
from tracker.errors import InputRefused
from tracker.export.marked import write_marked
from tracker.intake.compare import compare, key_of
from tracker.intake.reader import read_files
from tracker.kits.refusals import stock_findings
from tracker.scope.difference import MethodDifference
from tracker.services.method import load_method
from tracker.store import UnitOfWork, open_store
from tracker.store.loads import LoadWriter, Place
from tracker.store.rows import plain

Progress = Callable[[str, float], None]


@dataclass(frozen=True, slots=True)
class LoadedTable:
    source: SourceTable
    rows: RowCounts


@dataclass(frozen=True)
class LoadReport:
    """What a load read, found and changed, or would have."""

    tables: tuple[LoadedTable, ...] = ()
    findings: tuple[Finding, ...] = ()
    changes: tuple[Change, ...] = ()
    missing: Mapping[str, Sequence[RowKey]] = field(default_factory=dict)
    """Table → rows that the database has and the files have not; they stay."""
    method: MethodDifference | None = None
    """What a new method version changes; None where the load brings no new one."""
    method_version: int | None = None
    refusal: str = ""
    """Why nothing was written; empty where the load went through."""
    written: bool = False
    dry_run: bool = False
    said: tuple[str, ...] = ()
    """What else a person should know."""

    @property
    def questions(self) -> tuple[Finding, ...]:
        return tuple(f for f in self.findings if f.severity is Severity.DOUBT)

    @property
    def refused(self) -> tuple[Finding, ...]:
        return tuple(f for f in self.findings if f.severity is Severity.REFUSED)

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        return {
            "tables": [_table_record(table) for table in self.tables],
            "findings": [finding.record() for finding in self.findings],
            "changes": [
                {"table": c.table, "key": plain(c.key), "field": c.field, "old": plain(c.old), "new": plain(c.new)}
                for c in self.changes
            ],
            "missing": {table: [plain(key) for key in keys] for table, keys in self.missing.items()},
            "written": self.written,
        }

    def lines(self) -> list[str]:
        """What changed, in a few lines."""
        added = sum(t.rows.added for t in self.tables)
        changed = sum(t.rows.changed for t in self.tables)
        lines = [_change_line(change) for change in self.changes if change.field][:20]
        more = sum(1 for change in self.changes if change.field) - len(lines)
        if more > 0:
            lines.append(f"… and {more} more values changed; all of them with --json FILE")
        lines += [
            f"{TABLES[table].sheet}: {count(len(keys), 'row')} of the database not in these files; they stay."
            for table, keys in self.missing.items()
        ]
        lines += self.said
        if self.method_version:
            looms = sum(len(change.looms) for change in self.method.looms) if self.method else 0
            lines.append(f"Method version {self.method_version}: it changes the scope of {count(looms, 'loom')}.")
        if self.written:
            unchanged = " Nothing had changed." if not added and not changed else ""
            lines.append(f"Loaded: {count(added, 'row')} added, {changed} changed.{unchanged}")
        elif self.dry_run and not self.refusal:
            lines.append(f"Would load: {count(added, 'row')} added, {changed} changed. Nothing was written.")
        return lines


def load(
    db: str,
    files: Sequence[Path],
    dry_run: bool = False,
    partial: bool = False,
    answers: Mapping[str, str] | None = None,
    marked: Path | None = None,
    today: date | None = None,
    progress: Progress | None = None,
) -> LoadReport:
    """Load spreadsheets as one load. Refused rows stop it unless `partial`; an open question always does.

    A file that cannot be read at all gives a report with a refusal, too. `marked` writes a copy of the first file with
    the cells of the findings marked. Raises UsageError for an answer that fits no heading.
    """
    given = dict(answers or {})
    day = today or now().date()
    with open_store(db).unit_of_work() as uow:
        try:
            result = read_files(files, given, uow.answers(), day, progress)
        except InputRefused as refusal:
            return LoadReport(findings=_of_file(refusal, files), refusal=str(refusal), dry_run=dry_run)
        report = _Loading(uow, result, given, partial, files).run(dry_run)
    if marked:
        said = [write_marked(files[0], report.findings, marked), f"Wrote the marked copy {marked}."]
        report = replace(report, said=(*report.said, *filter(None, said)))
    return report


class _Loading:
    """One load inside its unit of work."""

    def __init__(
        self, uow: UnitOfWork, result: ReadResult, answers: Mapping[str, str], partial: bool, files: Sequence[Path]
    ):
        self.uow, self.result, self.answers, self.partial, self.files = uow, result, answers, partial, files
        names = {source.table for source in result.tables} | {"looms"}
        self.comparison = compare(result, {name: uow.rows(name) for name in names})
        self.findings = [*result.findings, *self.comparison.findings]

    def run(self, dry_run: bool) -> LoadReport:
        self._refuse_stock_rows()
        writer = self.uow.load_writer()
        if refusal := self._refusal():
            return self._report(refusal, dry_run=dry_run)
        writer.begin([path.name for path in self.files], self.result.tables)
        self._write(writer)
        decision = None
        if self.comparison.method_changed:
            decision = load_method(self.uow.mill(), self.comparison.method, self.result.tables, self.answers)
            self.findings += decision.findings
            if (refusal := self._refusal()) or not (decision.accepted or self.partial):
                return self._report(refusal or "the method is refused; the version in force stays", dry_run=dry_run)
        version = None
        if decision and decision.changed and decision.accepted:
            version = writer.write_method(self.comparison.method, self.result.tables)
        writer.add_findings(self.findings)
        self.uow.add_answers(self.result.answers_used)
        if not dry_run:
            self.uow.commit()
        return self._report(
            "", decision.difference if decision else None, version, written=not dry_run, dry_run=dry_run
        )

    def _write(self, writer: LoadWriter) -> None:
        new_zone = next(
            (_value(c) for c in self.comparison.changes if c.table == "terms" and c.key == ("time zone",)), None
        )
        if new_zone and str(writer.zone) != new_zone:
            writer.change_zone(writer.zone, ZoneInfo(str(new_zone)))
        places = {key: Place(*place) for key, place in self.comparison.places.items()}
        writer.write(self.comparison.changes, places)

    def _refuse_stock_rows(self) -> None:
        """Refuse rows of parts and receipts that the store room cannot take."""
        if not any(row.table in ("parts", "receipts") for row in self.comparison.rows):
            return
        mill = self.uow.mill()
        found = stock_findings(
            self.comparison.rows, self.result.tables, mill.parts, mill.receipts, self.uow.movements()
        )
        self.findings += found
        cells = {(finding.file, finding.sheet, finding.cell) for finding in found}
        for row in self.comparison.rows:
            if cells & _cells(row, self.result.tables):
                self._drop(row)

    def _drop(self, row: TypedRow) -> None:
        key, counts = key_of(row), self.comparison.counts[row.source]
        mine = [c for c in self.comparison.changes if (c.table, c.key) == (row.table, key)]
        self.comparison.changes = [c for c in self.comparison.changes if (c.table, c.key) != (row.table, key)]
        counts.refused += 1
        if not mine:
            counts.unchanged -= 1
        elif mine[0].field:
            counts.changed -= 1
        else:
            counts.added -= 1

    def _refusal(self) -> str:
        """Why nothing may be written yet; empty where nothing stands against it."""
        doubts = [f for f in self.findings if f.severity is Severity.DOUBT]
        refused = [f for f in self.findings if f.severity is Severity.REFUSED]
        if doubts:
            first = doubts[0]
            return (
                f"{count(len(doubts), 'question')} open, nothing was written. {first.message} {first.hint}"
            ).strip()  # fmt: skip
        if refused and not self.partial:
            first = refused[0]
            where = " ".join(part for part in (first.file, first.sheet, first.cell) if part)
            return (
                f"{count(len(refused), 'refusal')}, nothing was written; the first: {where}: {first.message} "
                "Mend them, or load the rest with --partial."
            )
        return ""

    def _report(
        self, refusal: str, difference: MethodDifference | None = None, version: int | None = None,
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
        )  # fmt: skip


def _value(change: Change) -> Any:
    return change.new if change.field else change.new["value"]


def _cells(row: TypedRow, tables: Sequence[SourceTable]) -> set[tuple[str, str, str]]:
    table = tables[row.source]
    return {
        (table.file, table.sheet, table.cell_of(column.field, row.number)) for column in table.columns if column.field
    }


def _of_file(refusal: InputRefused, files: Sequence[Path]) -> tuple[Finding, ...]:
    file = next((path.name for path in files if path.name in str(refusal)), files[0].name)
    whole = Finding("file-refused", Severity.REFUSED, str(refusal), "Give a workbook that can be read.", file=file)
    return (*refusal.findings, whole)


def _change_line(change: Change) -> str:
    key = " ".join(str(plain(part)) for part in change.key if part is not None)
    old, new = ("empty" if value is None else plain(value) for value in (change.old, change.new))
    return f"{TABLES[change.table].sheet} {key}: {change.field} {old} → {new}"


def _table_record(table: LoadedTable) -> dict[str, Any]:
    source = table.source
    return {
        "file": source.file,
        "sheet": source.sheet,
        "table": source.table,
        "heading_row": source.heading_row,
        "columns": [
            {"heading": c.heading, "cell": c.cell, "field": c.field, "unit": c.unit, "certainty": c.certainty}
            for c in source.columns
        ],
        "rows": asdict(table.rows),
    }
