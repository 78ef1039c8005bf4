"""Open a file as sheets of cleaned values: workbooks through a grid reader, .xls through its own, text as delimited."""

from collections.abc import Callable, Sequence
from math import isfinite
from pathlib import Path
from typing import Any
from zipfile import BadZipFile

import python_calamine

from tracker.domain.addresses import Area
from tracker.office.guarding.check_file import FileKind, check_file
from tracker.office.opening.code_pages import KnownWords
from tracker.office.opening.gaps import Readable, readable
from tracker.office.opening.text import text_sheet
from tracker.office.opening.xls import xls_sheets
from tracker.office.refusal import refuse
from tracker.office.sheet import Extras, Mark, Sheet, clean, marked
from tracker.office.walking.walk import WalkedSheet


def open_book(path: Path, known: KnownWords, page: str | None = None) -> list[Sheet]:
    """The sheets of an xlsx, xls, ods or delimited text file, hidden ones too; `known` helps to tell code pages apart, and
    `page` is the one that an answer names.

    Raises InputRefused for what is no workbook, or is locked, broken or hostile.
    """
    checked = check_file(path)
    try:
        match checked.kind:
            case FileKind.COMPOUND:
                return xls_sheets(path)
            case FileKind.ARCHIVE:
                return _grid_sheets(path, checked.sheets)
    except (python_calamine.CalamineError, BadZipFile, ValueError, IndexError, KeyError, AssertionError) as error:
        refuse(path, "damaged", how="unread", why=" ".join(str(error).split())[:120] or None)
    return [text_sheet(path, known, page)]


def _grid_sheets(path: Path, walked: Sequence[WalkedSheet]) -> list[Sheet]:
    source = readable(path, walked)
    book = python_calamine.load_workbook(source.file)
    extras = {sheet.name: sheet.extras for sheet in walked}
    sheets = []
    for meta in book.sheets_metadata:
        if meta.typ != python_calamine.SheetTypeEnum.WorkSheet:
            continue
        beside = extras.get(meta.name) or Extras(meta.visible != python_calamine.SheetVisibleEnum.Visible)
        grid = book.get_sheet_by_name(meta.name)
        beside.merged = beside.merged or _areas(grid.merged_cell_ranges)
        rows = tidy_rows(grid.to_python(skip_empty_area=False))
        sheets.append(marked(Sheet(path.name, meta.name, rows, beside, _row_number(source, meta.name))))
    return sheets


def _areas(ranges: Sequence[tuple[tuple[int, int], tuple[int, int]]] | None) -> tuple[Area, ...]:
    """Merged cells as the grid reader gives them, from 0; None for an ods."""
    return tuple((r1 + 1, c1 + 1, r2 + 1, c2 + 1) for (r1, c1), (r2, c2) in ranges or ())


def _row_number(source: Readable, sheet: str) -> Callable[[int], int] | None:
    return (lambda row: source.row(sheet, row)) if source.shifts.get(sheet) else None


def tidy_rows(rows: list[list[Any]]) -> list[list[Any]]:
    """Texts cleaned, empty texts as None, numbers beyond all bounds as errors; each text is cleaned once."""
    known: dict[str, str | None] = {"": None}
    for row in rows:
        for i, value in enumerate(row):
            if type(value) is str:
                if value not in known:
                    known[value] = clean(value) or None
                row[i] = known[value]
            elif type(value) is float and not isfinite(value):
                row[i] = Mark("error", "#NUM!")
    return rows
