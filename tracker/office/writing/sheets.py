"""Tidy worksheets: one look for every workbook that we write."""

from collections.abc import Iterable, Mapping, Sequence
from copy import copy
from datetime import date, datetime, time
from io import BytesIO
from pathlib import Path
from tempfile import gettempdir
from textwrap import wrap
from typing import Any

from openpyxl import Workbook
from openpyxl.cell import Cell
from openpyxl.comments import Comment
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.pagebreak import Break
from openpyxl.worksheet.properties import PageSetupProperties
from openpyxl.worksheet.worksheet import Worksheet

from tracker.domain.addresses import column_letters
from tracker.domain.plain_text import is_risky
from tracker.domain.tables import Kind
from tracker.errors import DataError
from tracker.office.files import telling, write
from tracker.office.walking.comments import OURS
from tracker.office.writing.tidy import Col, SheetWords, TidySheet
from tracker.office.writing.values import MAX_TEXT, Share, workbook_value, xml_text

MAX_ROWS = 1_048_576
MAX_COLUMNS = 16_384

_INK, _HEAD, _HEAD_NEEDED, _WARN = "1F2A30", "DDE5E8", "B9D3D8", "FBE3C4"
_RULE = Border(bottom=Side(style="hair", color="9AA5AB"))
_ASKED, _EDGE = PatternFill("solid", fgColor="FFF3CD"), Side(style="medium", color="8A6D1B")
_FRAME = Border(_EDGE, _EDGE, _EDGE, _EDGE)
_HAND_HIGH = 21
"""Points: room for handwriting."""
_WIDEST, _NARROWEST = 46, 8
_LANDSCAPE_IN, _MARGIN_IN = 11.69, 0.4
"""Inches: A4 across, and what stays white on either side."""
_CHARACTER_IN = 0.099
"""Inches of a character of a column's width, where the font is replaced by a wider one (measured in LibreOffice)."""
_MOST_RULED = 20_000
"""Cells of a table up to which empty cells are ruled as well; beyond, they only cost time."""
_TEXT_KINDS = (Kind.TEXT, Kind.IDENTIFIER, Kind.WORD, Kind.YES_NO, Kind.WEEKDAYS)
_TIME = "hh:mm"
_RIGHT = ("number", "count", "share")
_ROOM_BELOW = 1000
"""Empty rows below the last one that still have the drop-downs."""


def write_tables(
    path: str | Path, sheets: Sequence[TidySheet | tuple[str, Sequence[Col], Sequence[Sequence[Any]]]]
) -> None:
    """Write a workbook (.xlsx) of tidy sheets; a plain (title, columns, rows) does for one without sentences."""
    save(tables_book(sheets), path)


def tables_book(sheets: Sequence[TidySheet | tuple[str, Sequence[Col], Sequence[Sequence[Any]]]]) -> Workbook:
    """The workbook of `write_tables`."""
    book = new_book()
    for sheet in sheets:
        add_sheet(book, sheet if isinstance(sheet, TidySheet) else TidySheet(*sheet))
    return book


def new_book() -> Workbook:
    """A workbook without sheets."""
    book = Workbook()
    book.remove(book.worksheets[0])
    book.properties.creator = OURS
    return book


def save(book: Workbook, path: str | Path) -> None:
    write(path, content(book, path), ".xlsx")


def content(book: Workbook, path: str | Path) -> bytes:
    """The file of a workbook that is to go to `path`; the library keeps each sheet in a temporary file meanwhile."""
    made = BytesIO()
    with telling(path, gettempdir()):
        book.save(made)
    return made.getvalue()


def add_sheet(book: Workbook, sheet: TidySheet) -> Worksheet:
    """Add one sheet and give it back, for what only its caller knows how to add."""
    first = len(sheet.lines) + (2 if sheet.lines else 1)
    if first + len(sheet.rows) > MAX_ROWS or len(sheet.columns) > MAX_COLUMNS:
        raise DataError(
            "sheet-too-large", sheet=sheet.title, rows=len(sheet.rows), columns=len(sheet.columns), most_rows=MAX_ROWS,
            most_columns=MAX_COLUMNS,
        )  # fmt: skip
    page: Worksheet = book.create_sheet(sheet.title)
    for number, line in enumerate(sheet.lines, 1):
        cell: Cell = page.cell(number, 1)  # type: ignore[assignment]
        _put_text(cell, line)
        cell.font = _font(bold=number == 1, size=14 if number == 1 else 11)
    _headings(page, sheet, first)
    _rows(page, sheet, first + 1)
    _widths(page, sheet, first)
    _frames(page, sheet, first + 1)
    for index, column in enumerate(sheet.columns, 1):
        _validate(page, column, index, (first + 1, first + len(sheet.rows) + _ROOM_BELOW), sheet.words)
    page.freeze_panes = page.cell(first + 1, min(sheet.frozen, len(sheet.columns)) + 1).coordinate
    _print_setup(page, first, sheet.words)
    _breaks(page, sheet, first + 1)
    return page


def mark_cell(cell: Any, colour: str, text: str = "") -> None:
    """Fill a cell with a colour (RRGGBB) and hang a note on it."""
    cell.fill = PatternFill("solid", fgColor=colour)
    if text:
        cell.comment = Comment(xml_text(text[:MAX_TEXT]), OURS, width=300, height=120)


def put(cell: Cell, shown: Any) -> None:
    """Write a value of `workbook_value` into a cell; text stays text whatever it begins with."""
    if isinstance(shown, str):
        _put_text(cell, shown)
    elif shown is not None:
        cell.value = float(shown) if isinstance(shown, Share) else shown


def _put_text(cell: Cell, text: str) -> None:
    cell.value = xml_text(text)
    cell.data_type = "s"  # not a formula, nor an error value, whatever it looks like
    if is_risky(text):
        cell.quotePrefix = True  # so that editing the cell does not turn it into a formula either


def _headings(page: Worksheet, sheet: TidySheet, row: int) -> None:
    for index, column in enumerate(sheet.columns, 1):
        cell: Cell = page.cell(row, index)  # type: ignore[assignment]
        _put_text(cell, column.heading)
        cell.font = _font(bold=True)
        cell.fill = PatternFill("solid", fgColor=_HEAD_NEEDED if column.needed else _HEAD)
        cell.alignment = Alignment(
            wrap_text=True,
            vertical="bottom",
            horizontal="right" if _numeric(column) else "left",
            indent=_indent(column),
        )
        if column.about:
            cell.comment = Comment(xml_text(column.about), OURS, width=280, height=30 + 18 * _lines(column.about, 38))


def _rows(page: Worksheet, sheet: TidySheet, first: int) -> None:
    styles: dict[tuple[int, str, bool], Any] = {}
    """Of each column by what stands in it, made once: setting them one property at a time costs most of the writing."""
    ruled = len(sheet.rows) * len(sheet.columns) <= _MOST_RULED
    for number, values in enumerate(sheet.rows, first):
        shaded = sheet.marks is not None and number - first in sheet.marks
        for index, (column, value) in enumerate(zip(sheet.columns, values, strict=True), 1):
            shown = shown_in(column, value, sheet.words)
            if shown is None and not ruled and not shaded:
                continue
            cell: Cell = page.cell(number, index)  # type: ignore[assignment]
            style = (index, _style_key(column, shown), shaded)
            if style not in styles:
                styles[style] = _style(page, column, sheet.words, *style[1:])
            cell._style = copy(styles[style])
            put(cell, shown)
    _totals(page, sheet, first)


def _frames(page: Worksheet, sheet: TidySheet, first: int) -> None:
    for row in range(len(sheet.rows)) if sheet.framed is not None else ():
        page.row_dimensions[first + row].height = _HAND_HIGH
        for column in (sheet.framed or {}).get(row, ()):
            cell = page.cell(first + row, column + 1)
            cell.fill, cell.border = _ASKED, _FRAME


def _totals(page: Worksheet, sheet: TidySheet, first: int) -> None:
    """A sum below the columns that ask for one, written as a number so that every reader has it."""
    if not sheet.rows or not any(column.total for column in sheet.columns):
        return
    row = first + len(sheet.rows)
    page.cell(row, 1, sheet.words.total).font = _font(bold=True)
    page.cell(row, 1).alignment = Alignment(horizontal="left", indent=1)
    for index, column in enumerate(sheet.columns):
        if column.total:
            cell = page.cell(row, index + 1, workbook_value(column.kind, sum(r[index] or 0 for r in sheet.rows)))
            cell.number_format, cell.font = _number_format(column, sheet.words), _font(bold=True)


def shown_in(column: Col, value: Any, words: SheetWords) -> Any:
    """A value as its cell has it: yes, no and days of the week in the words of the sheet."""
    if isinstance(value, bool) and column.kind is not Kind.ANY:
        return words.yes if value else words.no
    return workbook_value(column.kind, value, words.weekdays)


def _style(page: Worksheet, column: Col, words: SheetWords, key: str, shaded: bool) -> Any:
    """How the cells of a column look that hold what `_style_key` names `key`."""
    formats = {"text": "@", "count": "#,##0", "share": "0.0##%", "moment": f"{words.day} {_TIME}", "day": words.day,
               "time": _TIME}  # fmt: skip
    probe: Cell = Cell(page, 1, 1)
    probe.number_format = formats.get(key, _number_format(column, words))
    probe.font, probe.border = _font(), _RULE
    probe.alignment = (
        Alignment(vertical="top", wrap_text=True, horizontal="left", indent=1)
        if key == "text"
        else Alignment(vertical="top", horizontal="right" if key in _RIGHT else "left", indent=int(key not in _RIGHT))
    )
    if shaded:
        probe.fill = PatternFill("solid", fgColor=_WARN)
    return probe._style


def _style_key(column: Col, value: Any) -> str:
    match value:
        case str() | bool():
            return "text"
        case Share():
            return "share"
        case datetime():
            return "moment"
        case date():
            return "day"
        case time():
            return "time"
        case int() if column.kind is Kind.ANY and column.digits is not None:
            return "count"
        case None if column.kind in _TEXT_KINDS:
            return "text"
    return "number"


def _number_format(column: Col, words: SheetWords) -> str:
    if column.kind in _TEXT_KINDS:
        return "@"
    if column.digits is not None:
        return "#,##0" + ("." + "0" * column.digits if column.digits else "")
    formats = {Kind.DATE: words.day, Kind.MOMENT: f"{words.day} {_TIME}", Kind.TIME: _TIME, Kind.INTEGER: "0"}
    return formats.get(column.kind, "General")


def _widths(page: Worksheet, sheet: TidySheet, heading_row: int) -> None:
    """Columns as wide as the longest word of their heading and their values, within limits; rows as high as they wrap."""
    widths = []
    for index, column in enumerate(sheet.columns):
        longest = max((len(word) for word in column.heading.split()), default=0)
        words = longest * 4 // 3 + 2  # headings are bold
        values = max((_shown_width(column, row[index]) for row in sheet.rows), default=0) + 3
        fitting = max(_NARROWEST, min(_WIDEST, max(words, values)), min(len(column.heading), 12))
        widths.append(column.width or fitting)
        dimension = page.column_dimensions[column_letters(index + 1)]
        dimension.width = widths[-1]
        dimension.number_format = _number_format(column, sheet.words)
    headings = [column.heading for column in sheet.columns]
    _height(page, heading_row, headings, widths)
    if len(sheet.rows) * len(sheet.columns) <= _MOST_RULED:
        for number, row in enumerate(sheet.rows, heading_row + 1):
            _height(page, number, row, widths)


def _height(page: Worksheet, number: int, values: Sequence[Any], widths: Sequence[int]) -> None:
    """Set only where something wraps; spreadsheets do not fit rows of their own accord when they open a file."""
    lines = max(
        (_lines(value, width - 3) for value, width in zip(values, widths, strict=True) if isinstance(value, str)),
        default=1,
    )
    if lines > 1:
        page.row_dimensions[number].height = min(15.5 * lines + 2, 400)


def _shown_width(column: Col, value: Any) -> int:
    match value:
        case None:
            return 0
        case datetime():
            return 16
        case date():
            return 10
        case float() | int() if column.digits is not None and not isinstance(value, bool):
            return len(f"{value:,.{column.digits}f}")
    return max(map(len, str(workbook_value(column.kind, value)).split("\n")))


def _lines(text: str, width: float) -> int:
    """About how many lines a text takes where it wraps at words."""
    return sum(len(wrap(line, max(int(width), 1))) or 1 for line in text.split("\n"))


def _indent(column: Col) -> int:
    """Text keeps off the number to its left; numbers stand at the edge."""
    return 0 if _numeric(column) else 1


def _font(bold: bool = False, size: int = 11) -> Font:
    return Font(name="Calibri", size=size, bold=bold, color=_INK)


def _numeric(column: Col) -> bool:
    return column.kind in (Kind.NUMBER, Kind.INTEGER, Kind.FRACTION)


def _validate(page: Worksheet, column: Col, index: int, rows: tuple[int, int], says: SheetWords) -> None:
    """A drop-down for a closed list, a warning for a number out of its usual limits; from the first to the last of the rows."""
    words = column.words or ((says.yes, says.no) if column.kind is Kind.YES_NO else ())
    if words and len(",".join(words)) <= 255 and not any("," in word or '"' in word for word in words):
        rule = DataValidation(
            "list", formula1=f'"{",".join(words)}"', allow_blank=True, errorStyle="stop" if column.closed else "warning"
        )
        rule.error = f"{says.allowed}: {', '.join(words)}"[:225]
    elif _numeric(column) and column.low is not None:
        upper = column.high is not None
        rule = DataValidation(
            "decimal", "between" if upper else "greaterThanOrEqual", f"{column.low:g}", f"{column.high:g}" if upper else None,
            allow_blank=True, errorStyle="warning",
        )  # fmt: skip
        rule.error = f"{says.usual}: " + (
            f"{column.low:g} – {column.high:g}" if upper else f"{column.low:g} {says.and_more}"
        )
    else:
        return
    rule.errorTitle, rule.showErrorMessage = column.heading[:32], True
    letter = column_letters(index)
    rule.add(f"{letter}{rows[0]}:{letter}{min(rows[1], MAX_ROWS)}")
    page.add_data_validation(rule)


def _print_setup(page: Worksheet, heading_row: int, words: SheetWords) -> None:
    """Landscape A4, all columns on one page's width, the headings on every page."""
    page.page_setup.orientation, page.page_setup.paperSize = "landscape", page.PAPERSIZE_A4
    page.page_setup.fitToHeight = 0
    page.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    page.print_title_rows = f"{heading_row}:{heading_row}"
    page.oddHeader.left.text, page.oddHeader.right.text = "&A", words.page  # type: ignore[union-attr]


def _breaks(page: Worksheet, sheet: TidySheet, first: int) -> None:
    """New pages where the sheet asks for them. Fitting a page's width makes spreadsheets ignore them, so the scale is worked
    out here."""
    if not sheet.breaks:
        return
    page.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=False)
    page.page_margins.left = page.page_margins.right = _MARGIN_IN
    characters = sum(page.column_dimensions[column_letters(i + 1)].width for i in range(len(sheet.columns)))
    page.page_setup.scale = max(
        10, min(100, int(100 * (_LANDSCAPE_IN - 2 * _MARGIN_IN) / (characters * _CHARACTER_IN)))
    )
    for row in sheet.breaks:
        page.row_breaks.append(Break(id=first + row - 1))


def rows_of(columns: Iterable[str], records: Iterable[Mapping[str, Any]]) -> list[list[Any]]:
    """Records as rows in the order of the columns; what a record lacks is empty."""
    fields = list(columns)
    return [[record.get(field) for field in fields] for record in records]
