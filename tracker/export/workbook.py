"""The mill's tables as a workbook: empty to fill in, or filled, in exactly the shape that loads back."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from pathlib import Path
from typing import Any

from tracker.domain.columns import unit_named
from tracker.domain.tables import TABLES, TERM_COLUMNS, TERMS, Column, Kind, Table, term_named
from tracker.domain.units import percent
from tracker.errors import UsageError
from tracker.export.shown_table import CSV, csv_content
from tracker.export.term_sheet import term_sheet
from tracker.export.wording import Wording
from tracker.office import files
from tracker.office.writing.sheets import Col, TidySheet, add_sheet, new_book, rows_of, save
from tracker.office.writing.values import shown_share

Record = Mapping[str, Any]
"""Field of the table, or heading kept as the mill wrote it → value as the domain has it."""

_DATE_TERMS = tuple(column.title for column in TERM_COLUMNS if column.kind is Kind.DATE)
_KINDS = {
    Kind.TEXT: "holds-text", Kind.IDENTIFIER: "holds-identifier", Kind.NUMBER: "holds-number", Kind.INTEGER: "holds-integer",
    Kind.FRACTION: "holds-percent", Kind.YES_NO: "holds-yes-no", Kind.DATE: "holds-date", Kind.MOMENT: "holds-moment",
    Kind.TIME: "holds-time", Kind.WEEKDAYS: "holds-weekdays", Kind.ANY: "holds-any",
}  # fmt: skip


def write_template(path: str | Path, language: str = "en") -> None:
    """Write an empty workbook (.xlsx) with a sheet for every table: headings, notes, drop-downs, and a guide."""
    write = Wording(language)
    sheets = {name: _sheet(table, [], write) for name, table in TABLES.items()}
    terms = term_sheet([template_column(column, write) for column in TERMS.columns], write)
    _write_workbook(Path(path), sheets | {TERMS.name: terms}, write)


def write_export(path: str | Path, rows: Mapping[str, Iterable[Record]], language: str = "en") -> None:
    """Write the rows of each named table, in the order given, to a workbook, or one table to a .csv.

    Loading the file untouched changes nothing, in whichever language its headings and our own words stand: text stays text
    (loom number 007, `=1+1`), fractions are percent without dust, days are dates. In a .csv text that a spreadsheet would run
    has an apostrophe before it.
    """
    path, write = Path(path), Wording(language)
    tables = {name: list(records) for name, records in rows.items()}
    if path.suffix.lower() != CSV:
        _write_workbook(path, {name: _sheet(TABLES[name], records, write) for name, records in tables.items()}, write)
    elif len(tables) != 1:
        raise UsageError("one-table-to-csv", target=str(path), tables=list(tables))
    else:
        ((name, records),) = tables.items()
        files.write(path, csv_content(_sheet(TABLES[name], records, write)), CSV)


def _write_workbook(path: Path, sheets: Mapping[str, TidySheet], write: Wording) -> None:
    book = new_book()
    _add_guide(book, [TABLES[name] for name in sheets], write)
    for sheet in sheets.values():
        add_sheet(book, sheet)
    book.active = min(1, len(book.worksheets) - 1)
    save(book, path)


def _sheet(table: Table, records: Sequence[Record], write: Wording) -> TidySheet:
    fields = {column.field for column in table.columns}
    kept = list(dict.fromkeys(name for record in records for name in record if name not in fields))
    columns = [template_column(column, write) for column in table.columns] + [
        Col(heading, Kind.ANY) for heading in kept
    ]
    names = [column.field for column in table.columns] + kept
    shown = (_shown_term(record, write) for record in records) if table is TERMS else records
    rows = rows_of(names, (in_words(table, record, write) for record in shown))
    return write.named(write.speaker.say(table.named), columns, rows, frozen=1)


def in_words(table: Table, record: Record, write: Wording) -> Record:
    """Our own words in the language of the sheet."""
    said = {c.field: write.word(record[c.field]) for c in table.columns if c.words and record.get(c.field) in c.words}
    return {**record, **said} if said else record


def _shown_term(record: Record, write: Wording) -> Record:
    """The term by its name; a share as the percent that the name promises; a day, which the store keeps as ISO text, as a
    day."""
    term, value = record.get("term"), record.get("value")
    if isinstance(term, str) and term.endswith("(%)") and isinstance(value, float | int):
        value = shown_share(value)
    elif term in _DATE_TERMS and isinstance(value, str):
        value = date.fromisoformat(value)
    named = write.speaker.say(term_named(term)) if isinstance(term, str) else term
    return {**record, "term": named, "value": value}


def template_column(column: Column, write: Wording) -> Col:
    """How a column of a table stands in the sheets that we write."""
    low, high = (_limit(column, limit) for limit in (column.low, column.high))
    return Col(
        write.speaker.say(column.titled), column.kind, words=tuple(map(write.word, column.words)), about=_about(column, write),
        needed=column.needed, low=low, high=high,
    )  # fmt: skip


def _limit(column: Column, limit: float | None) -> float | None:
    return percent(limit) if limit is not None and column.kind is Kind.FRACTION else limit


def _about(column: Column, write: Wording) -> str:
    """`Needed. Text. The loom number, as text. For example: 007`"""
    kind = (
        write.say("book-one-of", words=", ".join(map(write.word, column.words)))
        if column.words
        else write.say(_KINDS[column.kind])
    )
    means = write.speaker.say(column.meaning).rstrip(".") if column.meaning else ""
    parts = [write.say("book-needed") if column.needed else "", kind, means, _limits(column, write)]
    text = ". ".join(part[0].upper() + part[1:] for part in parts if part) + "."
    example = write.word(column.example) if column.example in column.words else column.example
    return text + (f" {write.say('book-example', example=example)}" if example else "")


def _limits(column: Column, write: Wording) -> str:
    low, high = (_limit(column, limit) for limit in (column.low, column.high))
    if low is None or column.words:
        return ""
    unit = "%" if column.kind is Kind.FRACTION else write.speaker.say(unit_named(column.unit)) if column.unit else ""
    if high is None:
        return write.say("book-from", low=f"{low:g} {unit}".rstrip())
    return write.say("book-from-to", low=f"{low:g}", high=f"{high:g} {unit}".rstrip())


def _add_guide(book: Any, tables: Sequence[Table], write: Wording) -> None:
    """Sentences, not a table: a reader must not take the list of headings for a table of its own."""
    rows: list[list[str | None]] = []
    for table in tables:
        named, means = write.speaker.say(table.named), write.speaker.say(table.meaning)
        rows.append([write.say("book-guide-sheet", sheet=named), means])
        rows.extend([None, f"{write.speaker.say(column.titled)}: {_about(column, write)}"] for column in table.columns)
        if table.open_columns:
            rows.append([None, write.say(_OPEN[table.open_columns])])
    columns = [write.col("book-guide-where", width=22), write.col("book-guide-what", width=110)]
    add_sheet(book, write.sheet("book-guide", columns, rows, map(write.say, _GUIDE), frozen=0))


_GUIDE = (
    "book-guide-title", "book-guide-nothing-deleted", "book-guide-needed", "book-guide-numbers", "book-guide-terms",
    "book-guide-method",
)  # fmt: skip
_OPEN = {"attributes": "book-guide-open-attributes", "conditions": "book-guide-open-conditions"}
