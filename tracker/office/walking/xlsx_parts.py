"""The parts of an xlsx package: which sheet stands in which part; formats of its styles, what is struck through, shared texts."""

import posixpath
import re
import zipfile
from dataclasses import dataclass

from tracker.office.walking.format_codes import BUILT_IN, matters, tidy
from tracker.office.walking.xml import scan


@dataclass(frozen=True, slots=True)
class ListedSheet:
    """A worksheet as the workbook lists it."""

    name: str
    part: str
    """Name of the XML part in the archive."""
    hidden: bool


def listed_sheets(archive: zipfile.ZipFile) -> list[ListedSheet]:
    """The worksheets in workbook order (charts and macro sheets left out)."""
    targets: dict[str, str] = {}
    sheets: list[ListedSheet] = []

    def relation(tag: str, at: dict[str, str]) -> None:
        if tag == "Relationship" and at.get("Type", "").endswith("/worksheet"):
            targets[at["Id"]] = posixpath.normpath(posixpath.join("/xl", at["Target"])).lstrip("/")

    def sheet(tag: str, at: dict[str, str]) -> None:
        target = targets.get(next((value for name, value in at.items() if name.endswith(":id")), ""))
        if tag == "sheet" and target:
            sheets.append(ListedSheet(at.get("name", ""), target, at.get("state", "visible") != "visible"))

    scan(archive.read("xl/_rels/workbook.xml.rels"), relation)
    scan(archive.read("xl/workbook.xml"), sheet)
    parts = set(archive.namelist())
    return [found for found in sheets if found.part in parts]


def style_codes(archive: zipfile.ZipFile) -> dict[bytes, str]:
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
    codes = {b"%d" % index: own.get(number, BUILT_IN.get(number, "General")) for index, number in enumerate(used)}
    return {index: code for index, code in codes.items() if matters(code)}


def struck_styles(archive: zipfile.ZipFile) -> frozenset[bytes]:
    """Indices of the cell styles whose font is struck through."""
    fonts: list[bool] = []
    used: list[int] = []
    inside: list[str] = []

    def start(tag: str, at: dict[str, str]) -> None:
        if tag in ("fonts", "cellXfs"):
            inside.append(tag)
        elif inside == ["fonts"] and tag == "font":
            fonts.append(False)
        elif inside == ["fonts"] and tag == "strike":
            fonts[-1] = at.get("val", "1") not in ("0", "false")
        elif inside == ["cellXfs"] and tag == "xf":
            used.append(int(at.get("fontId", 0)))

    def end(tag: str) -> None:
        if tag in ("fonts", "cellXfs"):
            inside.clear()

    if "xl/styles.xml" in archive.namelist() and b"strike" in (xml := archive.read("xl/styles.xml")):
        scan(xml, start, end)
    return frozenset(b"%d" % i for i, font in enumerate(used) if font < len(fonts) and fonts[font])


def shared_texts(archive: zipfile.ZipFile) -> list[bytes]:
    """The shared texts as the part writes them, markup and all."""
    part = next((name for name in archive.namelist() if name.casefold() == "xl/sharedstrings.xml"), None)
    return re.split(rb"</(?:\w+:)?si>", archive.read(part)) if part else []
