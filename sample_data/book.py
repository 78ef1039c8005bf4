"""Writing tidy workbooks by the list of tables, the same bytes for the same content."""

import re
from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime, time
from io import BytesIO
from math import ceil
from pathlib import Path
from typing import Any
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo
from zoneinfo import ZoneInfo

from openpyxl import Workbook
from openpyxl.styles import Alignment, Font, PatternFill
from openpyxl.worksheet.properties import PageSetupProperties

from tracker.domain.tables import Column, Kind, Table

STAMP = (2027, 1, 2, 12, 0, 0)
BOLD, SHADE = Font(bold=True), PatternFill("solid", fgColor="E7E6E1")
HEAD = Alignment(wrap_text=True, vertical="bottom", horizontal="left", indent=1)
TEXT, NUMBER = Alignment(wrap_text=True, vertical="top", horizontal="left", indent=1), Alignment(vertical="top")
DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
FORMATS = ((datetime, "yyyy-mm-dd hh:mm"), (date, "yyyy-mm-dd"), (time, "hh:mm"))
EMPTY_IS_YES = ("learns", "waivable")
WIDEST, LINE_HEIGHT = 48, 13.5


def add_table(book: Workbook, table: Table, rows: Iterable[Any], zone: ZoneInfo) -> None:
    """One sheet of a table: its used columns, then the condition columns of the rows in order of appearance."""
    rows = list(rows)
    fields = [c for c in table.columns if c.needed or c.key or any(getattr(r, c.field) is not None for r in rows)]
    extra: list[str] = []
    if table.open_columns == "conditions":
        extra = list(dict.fromkeys(heading for row in rows for heading in row.conditions))
    lines = [
        [cell_value(column, getattr(row, column.field), zone) for column in fields]
        + [row.conditions.get(heading) for heading in extra]
        for row in rows
    ]
    add_sheet(book, table.sheet, [column.title for column in fields] + extra, lines)


def add_sheet(book: Workbook, title: str, headings: Sequence[str], lines: Iterable[Sequence[Any]]) -> None:
    sheet = book.create_sheet(title)
    sheet.append(list(headings))
    for line in lines:
        sheet.append(list(line))
    for cell in sheet[1]:
        cell.font, cell.fill, cell.alignment = BOLD, SHADE, HEAD
    for cells in sheet.iter_rows(min_row=2):
        for cell in cells:
            cell.alignment = TEXT if isinstance(cell.value, str) else NUMBER
            cell.number_format = number_format(cell.value, cell.number_format)
    _fit(sheet)
    sheet.freeze_panes = "A2"
    print_wide(sheet)


def _fit(sheet: Any) -> None:
    """Columns as wide as their text or a word of their heading, rows as high as what wraps in them."""
    widths = []
    for column in sheet.iter_cols():
        heading, *cells = (_shown(cell.value) for cell in column)
        words = max(map(len, heading.split()))
        widths.append(min(WIDEST, max([words + 1, *map(len, cells)]) + 3))
        sheet.column_dimensions[column[0].column_letter].width = widths[-1]
    sheet.row_dimensions[1].height = 3 * LINE_HEIGHT
    for row in sheet.iter_rows(min_row=2):
        lines = max(ceil(len(_shown(cell.value)) / (w - 2)) for cell, w in zip(row, widths, strict=True))
        sheet.row_dimensions[row[0].row].height = LINE_HEIGHT * max(lines, 1)


def _shown(value: Any) -> str:
    """About the text that a spreadsheet shows."""
    if isinstance(value, datetime):
        return f"{value:%Y-%m-%d %H:%M}"
    return f"{value:%H:%M}" if isinstance(value, time) else str("" if value is None else value)


def print_wide(sheet: Any) -> None:
    """Landscape, all columns on one page's width."""
    sheet.page_setup.orientation, sheet.page_setup.paperSize = "landscape", sheet.PAPERSIZE_A4
    sheet.page_setup.fitToHeight = 0
    sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)


def number_format(value: Any, otherwise: str) -> str:
    """Unambiguous dates and times; text as text, so that 007 stays 007."""
    if isinstance(value, str):
        return "@"
    return next((code for kind, code in FORMATS if isinstance(value, kind)), otherwise)


def cell_value(column: Column, value: Any, zone: ZoneInfo) -> Any:
    """The value as a workbook shows it: percent for fractions, local time for moments, words for the rest."""
    match column.kind, value:
        case _, None:
            return None
        case Kind.FRACTION, _:
            return tidy(round(value * 100, 6))
        case Kind.MOMENT, datetime():
            return value.astimezone(zone).replace(tzinfo=None)
        case Kind.YES_NO, _ if column.field in EMPTY_IS_YES:
            return None if value else "no"
        case Kind.YES_NO, _:
            return "yes" if value else None
        case Kind.WEEKDAYS, _:
            return weekdays(value)
        case _, float():
            return tidy(value)
    return value


def tidy(value: float) -> float | int:
    return int(value) if value == int(value) else value


def weekdays(days: Iterable[int]) -> str:
    """`Mon-Fri` for a run of days, `Sat` for one, `Mon, Wed` otherwise."""
    order = sorted(days)
    if len(order) > 2 and order[-1] - order[0] == len(order) - 1:
        return f"{DAYS[order[0]]}-{DAYS[order[-1]]}"
    return ", ".join(DAYS[day] for day in order)


def new_book(title: str) -> Workbook:
    book = Workbook()
    book.remove(book.worksheets[0])
    book.properties.title = f"{title} (invented)"
    book.properties.creator = "sample_data"
    return book


def save(book: Workbook, path: Path) -> Path:
    """Write the workbook with fixed times inside, so that equal content gives equal bytes."""
    written = BytesIO()
    book.save(written)
    with ZipFile(written) as source, ZipFile(path, "w", ZIP_DEFLATED) as target:
        for name in source.namelist():
            data = source.read(name)
            if name == "docProps/core.xml":
                data = re.sub(rb"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ", b"2027-01-02T12:00:00Z", data)
            entry = ZipInfo(name, STAMP)
            entry.compress_type = ZIP_DEFLATED
            target.writestr(entry, data)
    return path


def term_rows(headings: Mapping[str, str], terms: Any) -> list[tuple[str, Any]]:
    """Term and value as the Terms sheet writes them; percent for the terms that are headed so."""
    rows = []
    for heading, field in headings.items():
        value = getattr(terms, field)
        if value is not None:
            percent = heading.endswith("(%)")
            number = round(value * 100, 6) if percent else value
            rows.append((heading, tidy(number) if isinstance(number, float) else number))
    return rows + [(f"pilot of {machine_type}", loom) for machine_type, loom in terms.pilots.items()]
