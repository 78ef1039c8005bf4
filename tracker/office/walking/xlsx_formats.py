"""What a grid reader leaves out: number formats that change what a cell shows, hidden rows and sheets, merged cells."""

import re
import zipfile
from collections.abc import Iterator, Mapping
from pathlib import Path

from tracker.office.addresses import Cell, area_of, cell_of
from tracker.office.guarding.archive import is_ods
from tracker.office.walking.format_codes import BUILT_IN, matters, tidy
from tracker.office.walking.ods_formats import ods_formats
from tracker.office.walking.parts import SheetFormat, opened, scan, xlsx_sheets

__all__ = ["SheetFormat", "sheet_formats"]

_HIDDEN_ROW = re.compile(rb"""<(?:\w+:)?row\s[^>]*?\bhidden\s*=\s*["'](?:1|true)["'][^>]*>""")
_COL = re.compile(rb"<(?:\w+:)?col\s[^>]*>")
_MERGE = re.compile(rb"<(?:\w+:)?mergeCell\s[^>]*>")
_FILTER = re.compile(rb"<(?:\w+:)?autoFilter\s[^>]*(?<!/)>\s*<(?:\w+:)?filterColumn")
_ATTRIBUTE = re.compile(rb"""([\w:]+)\s*=\s*(?:"([^"]*)"|'([^']*)')""")
_TRUE = ("1", "true")
_LAST_COLUMN = 16_384


def sheet_formats(path: str | Path) -> dict[str, SheetFormat]:
    """Sheet → its formats, for every worksheet of an xlsx, xlsm or ods; any other file gives {}.

    The file must have passed `check_file`; raises `InputRefused` where the XML is broken.
    """
    with opened(path) as archive:
        if archive is None:
            return {}
        return ods_formats(archive) if is_ods(archive) else _xlsx(archive)


def _xlsx(archive: zipfile.ZipFile) -> dict[str, SheetFormat]:
    codes = _style_codes(archive)
    found = {}
    for sheet in xlsx_sheets(archive):
        xml = archive.read(sheet.part)
        merged = tuple(area_of(at["ref"]) for at in _tags(_MERGE, xml) if "ref" in at) if b"mergeCell" in xml else ()
        found[sheet.name] = SheetFormat(
            sheet.name,
            hidden=sheet.hidden,
            codes=_cell_codes(xml, codes),
            hidden_rows=_hidden_rows(xml),
            hidden_columns=_hidden_columns(xml),
            merged=merged,
            filtered=_filter(xml),
        )
    return found


def _style_codes(archive: zipfile.ZipFile) -> dict[int, str]:
    """Index of a cell style → number format code, for the codes that matter."""
    if "xl/styles.xml" not in archive.namelist():
        return {}
    own: dict[int, str] = {}
    used: list[int] = []
    inside = False

    def start(tag: str, at: dict[str, str]) -> None:
        nonlocal inside
        if tag == "numFmt":
            own[int(at["numFmtId"])] = tidy(at.get("formatCode", "General"))
        elif tag == "cellXfs":
            inside = True
        elif tag == "xf" and inside:
            used.append(int(at.get("numFmtId", 0)))

    def end(tag: str) -> None:
        nonlocal inside
        inside = inside and tag != "cellXfs"

    scan(archive.read("xl/styles.xml"), start, end)
    codes = {index: own.get(number, BUILT_IN.get(number, "General")) for index, number in enumerate(used)}
    return {index: code for index, code in codes.items() if matters(code)}


def _cell_codes(xml: bytes, codes: Mapping[int, str]) -> dict[Cell, str]:
    """Cells that hold a value and whose style has a code that matters."""
    if not codes:
        return {}
    styles = b"|".join(str(index).encode() for index in codes)
    wanted = re.compile(
        rb"""<(?:\w+:)?c(\s[^>]*?\bs\s*=\s*["'](""" + styles + rb""")["'][^>]*?)(?<!/)>\s*<(?:\w+:)?[fv][\s/>]"""
    )
    found: dict[Cell, str] = {}
    for hit in wanted.finditer(xml):
        name = _attributes(hit[1]).get("r")
        if name is None:
            return _counted_codes(xml, codes)
        found[cell_of(name)] = codes[int(hit[2])]
    return found


def _counted_codes(xml: bytes, codes: Mapping[int, str]) -> dict[Cell, str]:
    """The same where cells do not say where they stand, so that they must be counted."""
    found: dict[Cell, str] = {}
    cell, style = (0, 0), -1

    def start(tag: str, at: dict[str, str]) -> None:
        nonlocal cell, style
        if tag == "row":
            cell = (int(at.get("r", cell[0] + 1)), 0)
        elif tag == "c":
            cell, style = cell_of(at["r"]) if "r" in at else (cell[0], cell[1] + 1), int(at.get("s", 0))
        elif tag == "v" and style in codes:
            found[cell] = codes[style]

    scan(xml, start)
    return found


def _hidden_rows(xml: bytes) -> frozenset[int]:
    """Rows that say they are hidden; rows carry their number in every file that a spreadsheet programme writes."""
    return frozenset(int(at["r"]) for at in _tags(_HIDDEN_ROW, xml) if "r" in at)


def _hidden_columns(xml: bytes) -> frozenset[int]:
    head = xml[: max(0, xml.find(b"sheetData"))]
    return frozenset(
        column
        for at in _tags(_COL, head)
        if at.get("hidden") in _TRUE
        for column in range(int(at["min"]), min(int(at["max"]), _LAST_COLUMN) + 1)
    )


def _filter(xml: bytes) -> str:
    hit = _FILTER.search(xml) if b"filterColumn" in xml else None
    return _attributes(hit[0]).get("ref", "") if hit else ""


def _tags(pattern: re.Pattern[bytes], xml: bytes) -> Iterator[dict[str, str]]:
    return (_attributes(hit[0]) for hit in pattern.finditer(xml))


def _attributes(tag: bytes) -> dict[str, str]:
    return {name.decode(): (one or two).decode() for name, one, two in _ATTRIBUTE.findall(tag)}
