"""The mill's tables as a workbook: empty to fill in, or filled, in exactly the shape that loads back."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from pathlib import Path
from typing import Any

from tracker.domain.own_sheets import GUIDE_TITLE
from tracker.domain.tables import TABLES, TERM_COLUMNS, TERMS, Column, Kind, Table
from tracker.domain.units import percent
from tracker.errors import UsageError
from tracker.export.shown_table import CSV, csv_content
from tracker.export.term_sheet import term_sheet
from tracker.office.files import write
from tracker.office.writing.sheets import Col, TidySheet, add_sheet, new_book, rows_of, save
from tracker.office.writing.values import shown_share
from tracker.words import ENGLISH

Record = Mapping[str, Any]
"""Field of the table, or heading kept as the mill wrote it → value as the domain has it."""

GUIDE = "How to fill in"
_DATE_TERMS = tuple(column.title for column in TERM_COLUMNS if column.kind is Kind.DATE)
_KINDS = {
    Kind.TEXT: "text", Kind.IDENTIFIER: "text, also where it looks like a number", Kind.NUMBER: "number",
    Kind.INTEGER: "whole number", Kind.FRACTION: "percent", Kind.YES_NO: "yes or no", Kind.DATE: "date",
    Kind.MOMENT: "date and time, local", Kind.TIME: "time of day", Kind.WEEKDAYS: "weekdays, such as Mon-Fri",
    Kind.ANY: "text, number or date",
}  # fmt: skip


def write_template(path: str | Path) -> None:
    """Write an empty workbook (.xlsx) with a sheet for every table: headings, notes, drop-downs, and a guide."""
    sheets = {name: _sheet(table, []) for name, table in TABLES.items()}
    _write_workbook(
        Path(path), sheets | {TERMS.name: term_sheet([template_column(column) for column in TERMS.columns])}
    )


def write_export(path: str | Path, rows: Mapping[str, Iterable[Record]]) -> None:
    """Write the rows of each named table, in the order given, to a workbook, or one table to a .csv.

    Loading the file untouched changes nothing: text stays text (loom number 007, `=1+1`), fractions are percent without
    dust, days are dates. In a .csv text that a spreadsheet would run has an apostrophe before it.
    """
    path = Path(path)
    tables = {name: list(records) for name, records in rows.items()}
    if path.suffix.lower() != CSV:
        _write_workbook(path, {name: _sheet(TABLES[name], records) for name, records in tables.items()})
    elif len(tables) != 1:
        raise UsageError("one-table-to-csv", target=str(path), tables=list(tables))
    else:
        ((name, records),) = tables.items()
        write(path, csv_content(_sheet(TABLES[name], records)), CSV)


def _write_workbook(path: Path, sheets: Mapping[str, TidySheet]) -> None:
    book = new_book()
    _add_guide(book, [TABLES[name] for name in sheets])
    for sheet in sheets.values():
        add_sheet(book, sheet)
    book.active = min(1, len(book.worksheets) - 1)
    save(book, path)


def _sheet(table: Table, records: Sequence[Record]) -> TidySheet:
    fields = {column.field for column in table.columns}
    kept = list(dict.fromkeys(name for record in records for name in record if name not in fields))
    columns = [template_column(column) for column in table.columns] + [Col(heading, Kind.ANY) for heading in kept]
    names = [column.field for column in table.columns] + kept
    rows = rows_of(names, map(_shown_term, records) if table is TERMS else records)
    return TidySheet(table.sheet, columns, rows, frozen=1)


def _shown_term(record: Record) -> Record:
    """A share as the percent that the term's name promises; a day, which the store keeps as ISO text, as a day."""
    term, value = record.get("term"), record.get("value")
    if isinstance(term, str) and term.endswith("(%)") and isinstance(value, float | int):
        return {**record, "value": shown_share(value)}
    if term in _DATE_TERMS and isinstance(value, str):
        return {**record, "value": date.fromisoformat(value)}
    return record


def template_column(column: Column) -> Col:
    """How a column of a table stands in the sheets that we write."""
    low, high = (_limit(column, limit) for limit in (column.low, column.high))
    return Col(
        column.title, column.kind, words=column.words, about=_about(column), needed=column.needed, low=low, high=high
    )  # fmt: skip


def _limit(column: Column, limit: float | None) -> float | None:
    return percent(limit) if limit is not None and column.kind is Kind.FRACTION else limit


def _about(column: Column) -> str:
    """`Needed. Text. The loom number, as text. For example: 007`"""
    kind = f"one of: {', '.join(column.words)}" if column.words else _KINDS[column.kind]
    parts = ["needed" if column.needed else "", kind, _means(column).rstrip("."), _limits(column)]
    text = ". ".join(part[0].upper() + part[1:] for part in parts if part) + "."
    return text + (f" For example: {column.example}" if column.example else "")


def _means(column: Column) -> str:
    return ENGLISH.say(column.meaning) if column.meaning else ""


def _limits(column: Column) -> str:
    low, high = (_limit(column, limit) for limit in (column.low, column.high))
    if low is None or column.words:
        return ""
    unit = f" {column.unit}" if column.unit else " %" if column.kind is Kind.FRACTION else ""
    return f"{low:g} to {high:g}{unit}" if high is not None else f"{low:g}{unit} or more"


def _add_guide(book: Any, tables: Sequence[Table]) -> None:
    """Sentences, not a table: a reader must not take the list of headings for a table of its own."""
    lines = [
        GUIDE_TITLE,
        "Fill in the sheets you have and leave the others empty; nothing is deleted by loading an emptier sheet.",
        "Darker headings are needed. Rest the pointer on a heading to read what belongs there.",
        "Loom numbers are text: 007, 3/12 and A-07 stay as they are. Units stand in the headings.",
        "A term whose value is left empty keeps its default, or what was loaded before.",
        "The sheets Operations, Kit lines, Choices, Setpoints and Checks are one method: loading one replaces all its rows.",
    ]
    rows: list[list[str | None]] = []
    for table in tables:
        rows.append([f"Sheet {table.sheet}", ENGLISH.say(table.meaning)])
        rows.extend([None, f"{column.title}: {_about(column)}"] for column in table.columns)
        if table.open_columns:
            rows.append([None, _OPEN[table.open_columns]])
    add_sheet(
        book, TidySheet(GUIDE, [Col("Where", width=22), Col("What belongs there", width=110)], rows, lines, frozen=0)
    )


_OPEN = {
    "attributes": "Any other column is kept under its own heading, and the method may ask for it.",
    "conditions": "Any other column is a condition: its heading is a column of Looms, `window` or the name of a choice; "
    "its cells say for which value the row holds: undrilled; left, both; <= 12; [8..16]; not(none); - or empty for any.",
}
