"""What a load did with every cell: the reader's account, less the rows that were refused or found twice since, and the
mapping of the columns."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from tracker.domain.account import ASIDE, HEADING, OWN, REFUSED, TAKEN, Aside, SheetAccount
from tracker.domain.findings import Finding, Severity
from tracker.domain.rows import ReadResult, SourceColumn, SourceTable, TypedRow
from tracker.domain.tables import TABLES
from tracker.domain.words import fold
from tracker.errors import Message, message
from tracker.intake.vocabulary.own_headings import own_fields
from tracker.words import ENGLISH, Speaker


def settled(result: ReadResult, loaded: Iterable[TypedRow], findings: Iterable[Finding]) -> tuple[SheetAccount, ...]:
    """The accounts of the sheets once the rows that were read have been compared with each other and the mill."""
    kept = {(row.source, row.number) for row in loaded}
    refused = {place for finding in findings if finding.severity is Severity.REFUSED for place in finding.rows}
    accounts = {(one.file, one.sheet): one for one in result.account.sheets}
    places = {(row.source, row.number): row for row in result.rows}  # a row may stand for several looms
    for place, row in places.items():
        reason = REFUSED if place in refused else "same again" if place not in kept else ""
        filled = result.account.rows.get(place)
        if reason and filled:
            table = result.tables[row.source]
            sheet = (table.file, table.sheet)
            accounts[sheet] = accounts[sheet].without_row(filled, reason, table.row_cells(row.number))
    return tuple(accounts.values())


@dataclass(frozen=True, slots=True)
class ColumnMeaning:
    """What a column was taken for."""

    column: SourceColumn
    understood: Message

    def record(self, speaker: Speaker = ENGLISH) -> dict[str, Any]:
        said = {"heading": self.column.heading, "cell": self.column.cell, "field": self.column.field}
        return {**said, "understood": speaker.say(self.understood)}


def mapping(table: SourceTable, asked: Iterable[str] = ()) -> list[ColumnMeaning]:
    """One line a column. `asked`: cells of headings about which a question is open."""
    open_ones = set(asked)
    found = []
    for column in table.columns:
        how = "asked" if column.cell in open_ones else "field" if column.field else "own" if column.kept else "left"
        field = TABLES[table.table].column(column.field).named if column.field else None
        said = message("column-meaning", how=how, field=field, unit=column.unit or None,
                       sure="no" if column.field and column.certainty < 0.9 else "yes")  # fmt: skip
        found.append(ColumnMeaning(column, said))
    return found


def in_our_words(table: SourceTable) -> bool:
    """Is every column headed as our own templates head it, so that nothing had to be understood?"""
    ours = {column.field: {fold(column.heading), fold(column.title)} for column in TABLES[table.table].columns}
    whole = own_fields(TABLES[table.table], {i: column.heading for i, column in enumerate(table.columns)})
    return all(
        column.field and (fold(column.heading) in ours[column.field] or whole.get(i) == column.field)
        for i, column in enumerate(table.columns)
    )


def asked_cells(findings: Sequence[Finding], table: SourceTable) -> Iterator[str]:
    """The cells that open questions about a sheet name."""
    for finding in findings:
        if finding.severity is Severity.DOUBT and (finding.file, finding.sheet) == (table.file, table.sheet):
            yield from finding.cell.split(", ")


def mapping_messages(tables: Sequence[SourceTable], findings: Sequence[Finding]) -> Iterator[Message]:
    """The mapping, a message a column. A table beside the looms that is headed in our words is one message."""
    for table in tables:
        yield message("table-meaning", file=table.file, sheet=table.sheet, table=TABLES[table.table].named,
                      columns=len(table.columns), ours="yes" if _is_short(table) else "no")  # fmt: skip
        if not _is_short(table):
            for one in mapping(table, asked_cells(findings, table)):
                cell, heading = one.column.cell, one.column.heading
                yield message("column-taken-for", cell=cell, heading=heading, what=one.understood)


def _is_short(table: SourceTable) -> bool:
    return table.table != "looms" and in_our_words(table)


def account_message(account: SheetAccount) -> Message:
    """`a.xlsx Looms: 720 cells: 12 in headings, 600 taken, 96 under own headings, 0 refused, 12 set aside: 2 above …`."""
    counts = account.counts
    return message(
        "account-of-sheet", file=account.file, sheet=account.sheet, cells=account.cells, headings=counts.get(HEADING, 0),
        taken=counts.get(TAKEN, 0), own=counts.get(OWN, 0), refused=counts.get(REFUSED, 0), aside=account.set_aside,
        parts=[set_aside(one) for one in account.aside] or None,
    )  # fmt: skip


def set_aside(part: Aside) -> Message:
    """How many cells were set aside, why and where."""
    assert part.reason in ASIDE, part.reason
    return message("cells-set-aside", cells=part.cells, reason=part.reason.replace(" ", "-"), where=part.where)
