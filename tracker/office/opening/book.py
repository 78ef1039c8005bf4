"""Open a file as sheets of cleaned values: workbooks through a grid reader, .xls through its own, text as delimited."""

import zipfile
from collections.abc import Callable
from math import isfinite
from pathlib import Path
from typing import Any

import python_calamine

from tracker.office.guarding.check_file import check_file
from tracker.office.guarding.compound import COMPOUND_MAGIC
from tracker.office.opening.text import LanguageOf, text_sheet
from tracker.office.opening.xls import xls_sheets
from tracker.office.refusal import refuse
from tracker.office.sheet import Extras, Mark, Sheet, clean, marked
from tracker.office.walking.error_cells import error_cells
from tracker.office.walking.formulas import formulas_without_value
from tracker.office.walking.gaps import Readable, readable
from tracker.office.walking.parts import SheetFormat
from tracker.office.walking.xlsx_formats import sheet_formats


def open_book(path: Path, language_of: LanguageOf) -> list[Sheet]:
    """The sheets of an xlsx, xls, ods or delimited text file, hidden ones too; `language_of` helps to tell code pages apart.

    Raises InputRefused for what is no workbook, or is locked, broken or hostile.
    """
    check_file(path)
    with path.open("rb") as file:
        head = file.read(8)
    try:
        if head.startswith(COMPOUND_MAGIC):
            return xls_sheets(path)
        if zipfile.is_zipfile(path):
            return _grid_sheets(path)
    except (
        python_calamine.CalamineError,
        zipfile.BadZipFile,
        ValueError,
        IndexError,
        KeyError,
        AssertionError,
    ) as error:
        words = " ".join(str(error).split())[:120] or type(error).__name__
        refuse(path, "damaged", f"The workbook cannot be read ({words})", "Open it in a spreadsheet and save it again.")
    return [text_sheet(path, language_of)]


def _grid_sheets(path: Path) -> list[Sheet]:
    source = readable(path)
    book = python_calamine.load_workbook(source.file)
    formats, unvalued, errors = sheet_formats(path), formulas_without_value(path), error_cells(path)
    sheets = []
    for meta in book.sheets_metadata:
        if meta.typ != python_calamine.SheetTypeEnum.WorkSheet:
            continue
        hidden = meta.visible != python_calamine.SheetVisibleEnum.Visible
        extras = Extras(
            formats.get(meta.name, SheetFormat(meta.name, hidden)),
            unvalued.get(meta.name, set()),
            errors.get(meta.name, {}),
        )
        rows = tidy_rows(book.get_sheet_by_name(meta.name).to_python(skip_empty_area=False))
        sheets.append(marked(Sheet(path.name, meta.name, rows, extras, _row_number(source, meta.name))))
    return sheets


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
