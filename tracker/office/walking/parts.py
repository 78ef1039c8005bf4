"""The parts of a workbook's package: which sheet stands in which XML part. Only for files that `check_file` passed."""

import posixpath
import zipfile
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from xml.parsers import expat

from tracker.office.addresses import Area, Cell
from tracker.office.refusal import refuse


@dataclass(frozen=True, slots=True)
class SheetFormat:
    """What a worksheet shows beyond its values."""

    sheet: str
    hidden: bool = False
    codes: Mapping[Cell, str] = field(default_factory=dict)
    """Filled cells whose number format matters → its code: `000`, `"A-"0`, `0.0" cm"`, `0%`, `dd/mm/yyyy`.

    `[$-x-sysdate]` stands for the date format of whatever computer shows the file, so it proves no order.
    """
    hidden_rows: frozenset[int] = frozenset()
    hidden_columns: frozenset[int] = frozenset()
    merged: tuple[Area, ...] = ()
    """As the file says: an area may reach far beyond the filled cells, so clip it before filling."""
    filtered: str = ""
    """Range of the list that a filter is set on: `A1:O161`; `` = none."""


@dataclass(frozen=True, slots=True)
class SheetPart:
    name: str
    part: str
    """Name of the XML part in the archive."""
    hidden: bool


@contextmanager
def opened(path: str | Path) -> Iterator[zipfile.ZipFile | None]:
    """The archive of an xlsx or ods, None for any other file; broken XML inside becomes `InputRefused`."""
    path = Path(path)
    if not zipfile.is_zipfile(path):
        yield None
        return
    try:
        with zipfile.ZipFile(path) as archive:
            yield archive
    except (expat.ExpatError, ValueError, KeyError, zipfile.BadZipFile) as error:
        refuse(path, "damaged", f"The workbook is damaged ({error})", "Get a fresh copy.")


def xlsx_sheets(archive: zipfile.ZipFile) -> list[SheetPart]:
    """The worksheets of an xlsx in workbook order (charts and macro sheets left out)."""
    targets: dict[str, str] = {}
    sheets: list[SheetPart] = []

    def relation(tag: str, at: dict[str, str]) -> None:
        if tag == "Relationship" and at.get("Type", "").endswith("/worksheet"):
            targets[at["Id"]] = posixpath.normpath(posixpath.join("/xl", at["Target"])).lstrip("/")

    def sheet(tag: str, at: dict[str, str]) -> None:
        target = targets.get(next((value for name, value in at.items() if name.endswith(":id")), ""))
        if tag == "sheet" and target:
            sheets.append(SheetPart(at.get("name", ""), target, at.get("state", "visible") != "visible"))

    scan(archive.read("xl/_rels/workbook.xml.rels"), relation)
    scan(archive.read("xl/workbook.xml"), sheet)
    parts = set(archive.namelist())
    return [found for found in sheets if found.part in parts]


def scan(
    xml: bytes,
    start: Callable[[str, dict[str, str]], object],
    end: Callable[[str], object] | None = None,
    text: Callable[[str], object] | None = None,
) -> None:
    """Run through an XML part without building a tree; tags come without their namespace prefix.

    A document type declaration raises `ValueError`, so no entity is ever expanded.
    """
    parser = expat.ParserCreate()
    parser.buffer_text = True
    parser.StartElementHandler = lambda tag, at: start(tag.rpartition(":")[2], at)
    if end is not None:
        parser.EndElementHandler = lambda tag: end(tag.rpartition(":")[2])
    if text is not None:
        parser.CharacterDataHandler = text
    parser.StartDoctypeDeclHandler = _no_doctype
    parser.Parse(xml, True)


def _no_doctype(*_: object) -> None:
    raise ValueError("a document type declaration")
