"""Error cells of a workbook, which a grid reader gives as empty: `#REF!`, `#N/A`, `#DIV/0!`."""

import zipfile
from pathlib import Path

from tracker.office.addresses import Cell, cell_of
from tracker.office.guarding.archive import is_ods
from tracker.office.walking.parts import opened, scan, xlsx_sheets

_MARKS = (b't="e"', b"t='e'", b't ="e"')


def error_cells(path: str | Path) -> dict[str, dict[Cell, str]]:
    """Sheet → (row, column) from 1 → the error as the cell shows it. Only for files that `check_file` passed."""
    with opened(path) as archive:
        if archive is None:
            return {}
        return _ods(archive) if is_ods(archive) else _xlsx(archive)


def _xlsx(archive: zipfile.ZipFile) -> dict[str, dict[Cell, str]]:
    found = {}
    for sheet in xlsx_sheets(archive):
        xml = archive.read(sheet.part)
        if any(mark in xml for mark in _MARKS):
            found[sheet.name] = _sheet_errors(xml)
    return found


def _sheet_errors(xml: bytes) -> dict[Cell, str]:
    errors: dict[Cell, str] = {}
    cell: Cell = (0, 0)
    is_error = inside_value = False

    def start(tag: str, at: dict[str, str]) -> None:
        nonlocal cell, is_error, inside_value
        if tag == "c":
            cell = cell_of(at["r"]) if "r" in at else (cell[0], cell[1] + 1)
            is_error = at.get("t") == "e"
        elif tag == "row":
            cell = (int(at["r"]) if "r" in at else cell[0] + 1, 0)
        elif tag == "v":
            inside_value = is_error

    def text(data: str) -> None:
        if inside_value:
            errors[cell] = errors.get(cell, "") + data

    def end(tag: str) -> None:
        nonlocal inside_value
        if tag == "v":
            inside_value = False

    scan(xml, start, end, text)
    return errors


def _ods(archive: zipfile.ZipFile) -> dict[str, dict[Cell, str]]:
    xml = archive.read("content.xml")
    found: dict[str, dict[Cell, str]] = {}
    if b"#" not in xml and b"Err:" not in xml:
        return found
    sheet, row, next_row, column, is_formula, shown = "", 0, 1, 0, False, ""

    def start(tag: str, at: dict[str, str]) -> None:
        nonlocal sheet, row, next_row, column, is_formula, shown
        if tag == "table":
            sheet, next_row = at.get("table:name", ""), 1
        elif tag == "table-row":
            row, column = next_row, 0
            next_row += int(at.get("table:number-rows-repeated", 1))
        elif tag in ("table-cell", "covered-table-cell"):
            column += int(at.get("table:number-columns-repeated", 1))
            is_formula, shown = "table:formula" in at or at.get("calcext:value-type") == "error", ""

    def text(data: str) -> None:
        nonlocal shown
        if is_formula:
            shown += data

    def end(tag: str) -> None:
        nonlocal is_formula
        if tag in ("table-cell", "covered-table-cell"):
            if is_formula and shown.strip().startswith(("#", "Err:")):
                found.setdefault(sheet, {})[(row, column)] = shown.strip()
            is_formula = False

    scan(xml, start, end, text)
    return found
