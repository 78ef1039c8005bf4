"""Rows that a person types in on a screen: checked like the cells of a sheet, written like a load, all of them or none."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.columns import Column, Kind, Table
from tracker.domain.findings import Finding, Severity
from tracker.domain.rows import ReadResult, RowKey, SourceTable, TypedRow
from tracker.domain.tables import TABLES, TERM_COLUMNS, TERMS
from tracker.errors import DataError, InputRefused, Message, UsageError, message
from tracker.intake.columns.single_values import possible, single_value
from tracker.intake.rows.pairs import contradiction, fits
from tracker.services.context import Context
from tracker.services.loading.load import Also, enter
from tracker.services.loading.load_report import LoadReport
from tracker.services.loading.permission import needed
from tracker.services.loading.replacing import REPLACEABLE
from tracker.services.loading.told_changes import row_named

TYPED = "typed in"
"""Where the rows stand, as the account of changes names it."""
Given = Mapping[str, Any]


def type_in(
    context: Context, table: str, rows: Sequence[Given], where: str = TYPED, also: Also | None = None
) -> LoadReport:
    """Write rows of a table as one load. Each row: field → value, moments in the mill's local time or aware; fields that a row
    leaves out stay as they are in the database. A finding of the report names its row by its place in `rows`, from 1
    (`findings_by_row`); nothing is written where one row is refused. `where`: as the account of changes names the place; `also`
    as in `enter`."""
    source = SourceTable("", where, table, 0)
    context.require(needed([source]))
    with context.reading() as uow:
        zone = uow.terms().zone
    found: list[Finding] = []
    typed: list[TypedRow] = []
    for number, row in enumerate(rows, 1):
        values = {name: _plain(value, zone) for name, value in row.items()}
        wrong = [_finding(table, number, column, what) for column, what in _faults(TABLES[table], values)]
        found += wrong
        if not wrong:
            typed.append(TypedRow(table, dict(_read(TABLES[table], values)), {}, 0, number))
    read = ReadResult((source,), tuple(typed), tuple(found), refused={0: len(rows) - len(typed)})
    return enter(context, read, records_only=False, also=also)


def take_out(context: Context, table: str, key: RowKey) -> None:
    """Take a row out that has ended, of a table that a load may retire rows of, or a term, whose default holds then; the account
    of changes keeps its values. DataError where it is gone already."""
    if table not in (*REPLACEABLE, "terms"):
        raise UsageError("cannot-take-out", sheet=TABLES[table].named)
    source = SourceTable("", TYPED, table, 0)
    with context.unit_of_work(needed([source])) as uow:
        stored = uow.rows(table)
        if key not in stored:
            raise DataError("row-gone", sheet=TABLES[table].named, row=row_named(table, key))
        writer = uow.load_writer()
        writer.begin([], [source])
        writer.retire(table, {key: stored[key]})
        uow.commit()


def findings_by_row(report: LoadReport) -> dict[int, list[Finding]]:
    """The place of each row that is refused → why; 0 = what is said of all."""
    found: dict[int, list[Finding]] = {}
    for finding in report.refused:
        for number in [number for _, number in finding.rows] or [0]:
            found.setdefault(number, []).append(finding)
    return found


def or_refused(report: LoadReport, names: Sequence[str]) -> LoadReport:
    """The report of rows that were typed in; InputRefused where one does not fit, naming every such row by its name (`names`, in
    the order of the rows) and what is wrong in it. What is noted is said with what was done."""
    by_row = findings_by_row(report)
    lines = tuple(
        message("typed-row", row=names[number - 1], what=_said(finding)) if number else _said(finding)
        for number in sorted(by_row)
        for finding in by_row[number]
    )
    if report.refusal:
        raise InputRefused("typed-refused", lines, rows=len(by_row.keys() - {0}))
    notes = (_said(finding) for finding in report.findings if finding.severity is Severity.NOTE)
    return replace(report, said=(*report.said, *notes))


def _said(finding: Finding) -> Message:
    """A finding as a message: there is no cell to name."""
    return message(finding.code, **{"raw": finding.raw, "heading": finding.heading, "cell": "", **finding.params})


def _plain(value: Any, zone: ZoneInfo) -> Any:
    """Nothing for an empty field, local wall clock time for a moment."""
    if isinstance(value, str):
        return value.strip() or None
    if isinstance(value, datetime):
        return value.astimezone(zone).replace(tzinfo=None) if value.tzinfo else value
    return value


def _faults(table: Table, values: Given) -> Iterator[tuple[Column, Message]]:
    for column in _columns(table, values):
        given = values.get(column.field)
        if given is None and column.needed and (column.field in values or column.key):
            yield column, message("typed-lacks", heading=column.named, possible=column.possible)
        elif given is not None and _value(column, given) is None:
            said = message(
                "typed-impossible", heading=column.titled, given=str(given), possible=possible(column, given)
            )
            yield column, said
    for pair in table.pairs:
        first, second = table.column(pair.first), table.column(pair.second)
        one, other = values.get(pair.first), values.get(pair.second)
        if not fits(pair, one, other):
            yield first, contradiction((first.named, second.named), one, other, first.unit or "")


def _columns(table: Table, values: Given) -> tuple[Column, ...]:
    """The columns of the table; the value of a term as that term has it."""
    if table is not TERMS:
        return table.columns
    term = next((column for column in TERM_COLUMNS if column.title == values.get("term")), None)
    return table.columns if term is None else (TERMS.column("term"), _as_value(term))


def _as_value(term: Column) -> Column:
    """The column of a term, under the field of the sheet's values."""
    return Column(
        "value", term.title, term.kind, needed=True, unit=term.unit, low=term.low, high=term.high, words=term.words
    )


def _value(column: Column, given: Any) -> Any:
    if column.kind is Kind.MOMENT:
        return given if isinstance(given, datetime) else None
    if column.kind is Kind.ANY or (column.kind is Kind.YES_NO and isinstance(given, bool)):
        return given
    return single_value(column, given)


def _read(table: Table, values: Given) -> Iterator[tuple[str, Any]]:
    columns = {column.field: column for column in _columns(table, values)}
    for name, given in values.items():
        yield name, None if given is None else _value(columns[name], given)


def _finding(table: str, number: int, column: Column, what: Message) -> Finding:
    return Finding(
        what.code, Severity.REFUSED, sheet=TABLES[table].sheet, heading=column.heading, params=what.params,
        rows=((0, number),),
    )  # fmt: skip
