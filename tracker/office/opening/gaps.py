"""A workbook with a stray cell far below its lists, made readable: the same values with the long empty gaps closed.

A grid reader holds every row up to the last filled one (0.5 to 1.1 GiB and seconds for one value in row 1,048,576), so
the rare sheet that would cost too much is read from a copy, and its row numbers are translated back.
"""

import io
import re
import zipfile
from bisect import bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from xml.sax.saxutils import unescape

from tracker.office.walking.extent import GAP_ROWS
from tracker.office.walking.walk import WalkedSheet, is_ods
from tracker.office.walking.xlsx_parts import listed_sheets
from tracker.office.walking.xml import utf8

Shifts = list[tuple[int, int]]
"""(first row of the copy, how many rows further down it stands in the file), ascending."""

_CELL = re.compile(rb"""(<(?:\w+:)?c\s[^>]*?\br\s*=\s*["'][A-Z]+)(\d+)(["'])""")
_ODS_PIECE = re.compile(
    rb'<table:table\s[^>]*?table:name="([^"]*)"|(<table:table-row\b[^>]*>)(.*?)</table:table-row>', re.DOTALL
)
_ODS_REPEAT = re.compile(rb'table:number-rows-repeated="(\d+)"')


@dataclass(frozen=True, slots=True)
class Readable:
    """What to hand to the grid reader."""

    file: Path | io.BytesIO
    """The file itself in all ordinary cases, else the copy."""
    shifts: Mapping[str, Shifts] = field(default_factory=dict)

    def row(self, sheet: str, row: int) -> int:
        """Row number in the user's file of a row (from 1) that the grid reader gave."""
        shifts = self.shifts.get(sheet)
        if not shifts:
            return row
        at = bisect_right(shifts, (row, 1 << 60)) - 1
        return row + shifts[at][1] if at >= 0 else row


def readable(path: Path, sheets: Sequence[WalkedSheet]) -> Readable:
    """The file in a form that a grid reader holds in bounded memory; `sheets` is what the walk through it found."""
    rows = {sheet.name: sheet.extent.rows for sheet in sheets if sheet.extent.costly}
    if not rows:
        return Readable(path)
    with zipfile.ZipFile(path) as archive:
        changed, shifts = _ods(archive) if is_ods(archive) else _xlsx(archive, rows)
        return Readable(_copy(archive, changed), shifts)


def _copy(archive: zipfile.ZipFile, changed: Mapping[str, bytes]) -> io.BytesIO:
    target = io.BytesIO()
    with zipfile.ZipFile(target, "w", zipfile.ZIP_STORED) as copy:
        for name in archive.namelist():
            copy.writestr(name, changed[name] if name in changed else archive.read(name))
    target.seek(0)
    return target


def _xlsx(archive: zipfile.ZipFile, rows: Mapping[str, list[int]]) -> tuple[dict[str, bytes], dict[str, Shifts]]:
    changed, shifts = {}, {}
    for sheet in listed_sheets(archive):
        if sheet.name in rows:
            moved, shifts[sheet.name] = _moved(rows[sheet.name])
            changed[sheet.part] = _CELL.sub(
                lambda hit, moved=moved: hit[1] + str(moved.get(int(hit[2]), int(hit[2]))).encode() + hit[3],
                utf8(archive.read(sheet.part)),
            )
    return changed, shifts


def _moved(rows: list[int]) -> tuple[dict[int, int], Shifts]:
    """Filled row → row in the copy, and the shifts that lead back."""
    moved: dict[int, int] = {}
    shifts: Shifts = []
    last = shift = 0
    for row in rows:
        if row - last - 1 > GAP_ROWS:
            shift += row - last - 1 - GAP_ROWS
            shifts.append((row - shift, shift))
        moved[row], last = row - shift, row
    return moved, shifts


def _ods(archive: zipfile.ZipFile) -> tuple[dict[str, bytes], dict[str, Shifts]]:
    shifts: dict[str, Shifts] = {}
    sheet, row, shift = "", 1, 0

    def close(hit: re.Match[bytes]) -> bytes:
        nonlocal sheet, row, shift
        if hit[1] is not None:
            sheet, row, shift = _unescaped(hit[1]), 1, 0
            return hit[0]
        repeat = _ODS_REPEAT.search(hit[2])
        rows = int(repeat[1]) if repeat else 1
        keep = rows if b"office:value-type" in hit[3] else min(rows, GAP_ROWS)
        row += keep
        if keep == rows:
            return hit[0]
        shift += rows - keep
        shifts.setdefault(sheet, []).append((row, shift))
        return _ODS_REPEAT.sub(b'table:number-rows-repeated="%d"' % keep, hit[2]) + hit[3] + b"</table:table-row>"

    return {"content.xml": _ODS_PIECE.sub(close, archive.read("content.xml"))}, shifts


def _unescaped(name: bytes) -> str:
    return unescape(name.decode(), {"&quot;": '"', "&apos;": "'"})
