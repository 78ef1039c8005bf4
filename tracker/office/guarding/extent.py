"""How far the filled cells of a workbook reach, and how much text they repeat: what a reader would have to hold.

A grid reader keeps every cell of the box around the filled ones, so one stray value in the last row costs as much as a
full sheet, and one long shared text costs its length at every cell that refers to it.
"""

import re
import zipfile
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from tracker.office.addresses import cell_name, column_number
from tracker.office.guarding.archive import is_ods
from tracker.office.refusal import refuse
from tracker.office.walking.parts import opened, scan, xlsx_sheets

MAX_CELLS = 2_000_000
"""Cells of the box around the filled ones, of one sheet: ten times 5,000 looms × 40 columns."""
MAX_TEXT_CHARS = 100_000_000
"""Characters of all text cells of one sheet together."""
GAP_ROWS = 3
"""Empty rows that stay of a longer gap when a sheet is compacted."""

_FAR = re.compile(rb"""\br\s*=\s*["'](?:[A-Z]{3}\d|[A-Z]+\d{5})""")
_FILLED = re.compile(
    rb"""<(?:\w+:)?c\s[^>]*?\br\s*=\s*["']([A-Z]+)(\d+)["'][^>]*(?<!/)>\s*<(?:\w+:)?(?:f|v|is)[\s/>]"""
)
_SHARED_CELL = re.compile(rb"""\bt\s*=\s*["']s["'][^>]*>\s*<(?:\w+:)?v\b[^>]*>\s*(\d+)""")
_REPEATED = re.compile(rb"""-repeated\s*=\s*["']\d{3}""")


@dataclass(slots=True)
class Extent:
    """What one sheet holds."""

    sheet: str
    rows: list[int] = field(default_factory=list)
    """Filled rows, ascending, from 1; a run of rows repeated in the file is named by its first and last."""
    last_row: int = 0
    last_column: int = 0
    filled_rows: int = 0
    chars: int = 0

    @property
    def cells(self) -> int:
        """Cells of the box that a grid reader holds."""
        return self.last_row * self.last_column

    @property
    def costly(self) -> bool:
        return self.cells > MAX_CELLS or self.chars > MAX_TEXT_CHARS

    @property
    def compact_cells(self) -> int:
        """Cells of the box once gaps are closed to `GAP_ROWS`."""
        gaps = sum(min(GAP_ROWS, later - row - 1) for row, later in zip([0, *self.rows], self.rows, strict=False))
        return (self.filled_rows + gaps) * self.last_column


def check_extent(path: Path) -> None:
    """Refuse a workbook of which a sheet could not be held even with the gaps between its rows closed."""
    for extent in suspects(path):
        if extent.compact_cells > MAX_CELLS:
            corner = cell_name((extent.last_row, extent.last_column))
            what = f"The filled cells reach to {corner}, {extent.compact_cells:,} cells; the limit is {MAX_CELLS:,}"
            to_do = "Delete what stands far from the lists and save it again."
            refuse(path, "cells-far-apart", what, to_do, sheet=extent.sheet)
        if extent.chars > MAX_TEXT_CHARS:
            what = f"The texts of the cells add up to {extent.chars:,} characters; the limit is {MAX_TEXT_CHARS:,}"
            refuse(path, "too-much-text", what, "Shorten the texts that many cells repeat.", sheet=extent.sheet)


def suspects(path: Path) -> list[Extent]:
    """Extents of the sheets that might cost a reader too much; the ordinary ones are passed over by a quick look."""
    with opened(path) as archive:
        if archive is None:
            return []
        return list(_ods_extents(archive) if is_ods(archive) else _xlsx_extents(archive))


def _xlsx_extents(archive: zipfile.ZipFile) -> Iterator[Extent]:
    texts = _shared_texts(archive)
    longest = max(map(len, texts), default=0)
    for sheet in xlsx_sheets(archive):
        xml = archive.read(sheet.part)
        extent = _xlsx_extent(sheet.name, xml) if _FAR.search(xml) else Extent(sheet.name)
        if not extent.costly and longest * xml.count(b"v>") // 2 > MAX_TEXT_CHARS:
            extent.chars = _shared_chars(xml, texts)
        if extent.costly:
            yield extent


def _shared_texts(archive: zipfile.ZipFile) -> list[bytes]:
    part = next((name for name in archive.namelist() if name.casefold() == "xl/sharedstrings.xml"), None)
    return re.split(rb"</(?:\w+:)?si>", archive.read(part)) if part else []


def _shared_chars(xml: bytes, texts: list[bytes]) -> int:
    """Bytes of shared texts, each counted as often as a cell refers to it: never less than the characters."""
    uses = Counter(int(found[1]) for found in _SHARED_CELL.finditer(xml))
    return sum(len(texts[index]) * count for index, count in uses.items() if index < len(texts))


def _xlsx_extent(name: str, xml: bytes) -> Extent:
    rows: set[int] = set()
    columns: set[bytes] = set()
    for count, found in enumerate(_FILLED.finditer(xml)):
        columns.add(found[1])
        rows.add(int(found[2]))
        if count > MAX_CELLS:
            break
    last_column = max((column_number(letters.decode()) for letters in columns), default=0)
    return Extent(name, sorted(rows), max(rows, default=0), last_column, len(rows))


def _ods_extents(archive: zipfile.ZipFile) -> list[Extent]:
    xml = archive.read("content.xml")
    if not _REPEATED.search(xml):
        return []
    found: list[Extent] = []
    row = row_repeat = column = cell_repeat = row_chars = filled_to = 0
    covered = False

    def start(tag: str, at: dict[str, str]) -> None:
        nonlocal row, row_repeat, column, cell_repeat, row_chars, filled_to, covered
        if tag == "table":
            found.append(Extent(at.get("table:name", "")))
            row = 0
        elif tag == "table-row":
            row_repeat = int(at.get("table:number-rows-repeated", 1))
            column = filled_to = row_chars = 0
        elif tag in ("table-cell", "covered-table-cell"):
            cell_repeat = int(at.get("table:number-columns-repeated", 1))
            column += cell_repeat
            covered = True
            if "office:value-type" in at or "table:formula" in at:
                filled_to = column
                row_chars += cell_repeat * len(at.get("office:string-value", ""))

    def text(data: str) -> None:
        nonlocal row_chars
        if covered:
            row_chars += cell_repeat * len(data)

    def end(tag: str) -> None:
        nonlocal row, covered
        if tag in ("table-cell", "covered-table-cell"):
            covered = False
        elif tag == "table-row" and found:
            if filled_to:
                _add_rows(found[-1], row + 1, row + row_repeat, filled_to, row_chars * row_repeat)
            row += row_repeat

    scan(xml, start, end, text)
    return [extent for extent in found if extent.costly]


def _add_rows(extent: Extent, first: int, last: int, columns: int, chars: int) -> None:
    extent.rows.extend((first, last) if last > first else (first,))
    extent.filled_rows += last - first + 1
    extent.last_row = last
    extent.last_column = max(extent.last_column, columns)
    extent.chars += chars
