"""Old .xls workbooks, read with a library that keeps number formats, error cells and hidden rows."""

from pathlib import Path
from typing import Any

import xlrd
from xlrd.biffh import XLRDError, error_text_from_code
from xlrd.xldate import XLDateError, xldate_as_datetime

from tracker.domain.addresses import Cell
from tracker.office.refusal import refuse
from tracker.office.sheet import Extras, Mark, Sheet, clean, marked
from tracker.office.walking.comments import Comment, said_by_others
from tracker.office.walking.format_codes import matters, tidy


def xls_sheets(path: Path) -> list[Sheet]:
    """The worksheets of an .xls; raises InputRefused where the library cannot read it."""
    try:
        with open("/dev/null", "w") as nowhere:
            book = xlrd.open_workbook(str(path), formatting_info=True, ragged_rows=True, logfile=nowhere)
            return [_sheet(path, book, sheet) for sheet in book.sheets()]
    except Exception as error:  # the library lets any error of a broken file through
        refuse(path, "damaged", how="unread", why=str(error) if isinstance(error, XLRDError) else None)


def _sheet(path: Path, book: Any, sheet: Any) -> Sheet:
    codes: dict[Cell, str] = {}
    errors: dict[Cell, str] = {}
    struck: set[Cell] = set()
    rows = []
    for r in range(sheet.nrows):
        cells: list[Any] = []
        for c in range(sheet.row_len(r)):
            cell = sheet.cell(r, c)
            code = _code(book, cell) if cell.ctype in (xlrd.XL_CELL_NUMBER, xlrd.XL_CELL_DATE) else ""
            if code:
                codes[(r + 1, c + 1)] = code
            if cell.ctype == xlrd.XL_CELL_ERROR:
                errors[(r + 1, c + 1)] = error_text_from_code.get(cell.value, "#N/A")
            if cell.ctype != xlrd.XL_CELL_EMPTY and _struck(book, sheet, r, c):
                struck.add((r + 1, c + 1))
            cells.append(_value(book, cell))
        rows.append(cells)
    merged = tuple((r1 + 1, c1 + 1, r2, c2) for r1, r2, c1, c2 in sheet.merged_cells)
    hidden_rows = frozenset(r + 1 for r, info in sheet.rowinfo_map.items() if info.hidden and r < sheet.nrows)
    hidden_columns = frozenset(c + 1 for c, info in sheet.colinfo_map.items() if info.hidden and c < sheet.ncols)
    comments = (Comment(r + 1, c + 1, note.author, note.text) for (r, c), note in sheet.cell_note_map.items())
    beside = Extras(sheet.visibility != 0, codes, hidden_rows, hidden_columns, merged, errors=errors, struck=struck,
                    comments=said_by_others(comments))  # fmt: skip
    return marked(Sheet(path.name, sheet.name, rows, beside))


def _code(book: Any, cell: Any) -> str:
    found = book.format_map.get(book.xf_list[cell.xf_index].format_key)
    code = tidy(found.format_str) if found is not None and found.format_str else ""
    return code if code and matters(code) else ""


def _struck(book: Any, sheet: Any, row: int, column: int) -> bool:
    """Is a cell struck through, wholly or in some of its letters?"""
    runs = sheet.rich_text_runlist_map.get((row, column), ())
    fonts = [book.xf_list[sheet.cell_xf_index(row, column)].font_index, *(font for _, font in runs)]
    return any(book.font_list[font].struck_out for font in fonts if font < len(book.font_list))


def _value(book: Any, cell: Any) -> Any:
    if cell.ctype == xlrd.XL_CELL_TEXT:
        return clean(cell.value) or (Mark("empty text", "formula that gives nothing") if cell.value == "" else None)
    if cell.ctype == xlrd.XL_CELL_NUMBER:
        return cell.value
    if cell.ctype == xlrd.XL_CELL_BOOLEAN:
        return bool(cell.value)
    if cell.ctype == xlrd.XL_CELL_DATE:
        return _date(cell.value, book.datemode)
    return None


def _date(value: float, datemode: int) -> Any:
    """A date, a moment, or a time of day (below 1), as the grid reader gives them for the other kinds of file."""
    try:
        moment = xldate_as_datetime(value, 1 if datemode else 0)
    except (XLDateError, OverflowError, ValueError):
        return value
    if 0 <= value < 1:
        return moment.time()
    return moment.date() if moment.time() == moment.min.time() else moment
