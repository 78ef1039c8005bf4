"""Formulas without a cached value: a grid reader gives such a cell as empty, and the loss would be silent."""

import re
import zipfile
from pathlib import Path

from tracker.office.addresses import Cell, cell_of
from tracker.office.guarding.archive import is_ods
from tracker.office.walking.parts import opened, scan, xlsx_sheets

_FORMULA = re.compile(rb"<(?:\w+:)?f[\s/>]")


def formulas_without_value(path: str | Path) -> dict[str, set[Cell]]:
    """Sheet → cells, (row, column) from 1, that hold a formula but no value; sheets without such a cell are left out.

    Works for xlsx, xlsm and ods; any other file gives {}. An empty text that a formula returned is a value. The file
    must have passed `check_file`; raises `InputRefused` where the XML is broken.
    """
    with opened(path) as archive:
        if archive is None:
            return {}
        found = _ods(archive) if is_ods(archive) else _xlsx(archive)
        return {sheet: cells for sheet, cells in found.items() if cells}


def _xlsx(archive: zipfile.ZipFile) -> dict[str, set[Cell]]:
    found: dict[str, set[Cell]] = {}
    for sheet in xlsx_sheets(archive):
        xml = archive.read(sheet.part)
        if _FORMULA.search(xml):
            found[sheet.name] = _sheet_cells(xml)
    return found


def _sheet_cells(xml: bytes) -> set[Cell]:
    cells: set[Cell] = set()
    cell: Cell = (0, 0)
    is_text = formula = value = inside_value = False

    def start(tag: str, at: dict[str, str]) -> None:
        nonlocal cell, is_text, formula, value, inside_value
        if tag == "c":
            cell = cell_of(at["r"]) if "r" in at else (cell[0], cell[1] + 1)
            is_text, formula, value = at.get("t") == "str", False, False
        elif tag == "v":
            inside_value, value = True, is_text
        elif tag == "f":
            formula = True
        elif tag == "is":
            value = True
        elif tag == "row":
            cell = (int(at["r"]) if "r" in at else cell[0] + 1, 0)

    def text(data: str) -> None:
        nonlocal value
        if inside_value and data.strip():
            value = True

    def end(tag: str) -> None:
        nonlocal inside_value
        if tag == "v":
            inside_value = False
        elif tag == "c" and formula and not value:
            cells.add(cell)

    scan(xml, start, end, text)
    return cells


def _ods(archive: zipfile.ZipFile) -> dict[str, set[Cell]]:
    xml = archive.read("content.xml")
    found: dict[str, set[Cell]] = {}
    if b":formula=" not in xml:
        return found
    name, row, next_row, column = "", 0, 1, 0
    pending: list[Cell] = []

    def start(tag: str, at: dict[str, str]) -> None:
        nonlocal name, row, next_row, column
        if tag == "table":
            name, next_row = at.get("table:name", ""), 1
        elif tag == "table-row":
            row, column = next_row, 0
            next_row = row + int(at.get("table:number-rows-repeated", 1))
        elif tag in ("table-cell", "covered-table-cell"):
            repeat = int(at.get("table:number-columns-repeated", 1))
            if "table:formula" in at and not _ods_value(at):
                pending.extend((r, c) for r in range(row, next_row) for c in range(column + 1, column + repeat + 1))
            column += repeat
        elif tag == "p":
            pending.clear()  # a formula that returned an empty text has an empty paragraph and no value

    def end(tag: str) -> None:
        if pending and tag in ("table-cell", "covered-table-cell"):
            found.setdefault(name, set()).update(pending)
            pending.clear()

    scan(xml, start, end)
    return found


def _ods_value(at: dict[str, str]) -> bool:
    kind = at.get("office:value-type", "")
    if kind == "string":
        return True
    return any(f"office:{name}" in at for name in ("value", "date-value", "time-value", "boolean-value"))
