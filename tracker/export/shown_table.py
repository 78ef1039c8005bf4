"""A table as a screen shows it, as a file: text that a spreadsheet would run stays text."""

import csv
import io
from collections.abc import Sequence
from typing import Any

from tracker.domain.tables import Kind
from tracker.office.writing.sheets import Col, TidySheet, content, shown_in, tables_book
from tracker.office.writing.values import csv_text

CSV = ".csv"


def table_file(title: str, headings: Sequence[str], rows: Sequence[Sequence[Any]], ending: str) -> bytes:
    """The rows in the order given, moments local without a zone, as a .csv in UTF-8 or a workbook of one sheet. DataError where
    there is no room for them."""
    kinds = [_kind([row[i] for row in rows]) for i in range(len(headings))]
    sheet = TidySheet(title, [*map(Col, headings, kinds)], rows)
    return csv_content(sheet) if ending == CSV else content(tables_book([sheet]), title)


def csv_content(sheet: TidySheet) -> bytes:
    """The table of a sheet as a .csv, with the mark by which spreadsheets know UTF-8."""
    text = io.StringIO(newline="")
    out = csv.writer(text)
    out.writerow([csv_text(column.heading) for column in sheet.columns])
    for row in sheet.rows:
        cells = zip(sheet.columns, row, strict=True)
        out.writerow([csv_text(shown_in(column, value, sheet.words)) for column, value in cells])
    return text.getvalue().encode("utf-8-sig")


def _kind(values: Sequence[Any]) -> Kind:
    """A column of text has the look of text, one of numbers stands on the right."""
    there = [value for value in values if value is not None]
    if all(isinstance(value, str) for value in there):
        return Kind.TEXT
    return Kind.NUMBER if all(isinstance(value, float | int) for value in there) else Kind.ANY
