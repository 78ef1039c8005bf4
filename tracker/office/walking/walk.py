"""What a grid reader leaves out of a workbook, sheet by sheet; every part is unpacked once."""

import zipfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from xml.parsers import expat

from tracker.office.refusal import refuse
from tracker.office.sheet import Extras
from tracker.office.walking.comments import comments_of
from tracker.office.walking.extent import Extent
from tracker.office.walking.ods import OdsWalk
from tracker.office.walking.xlsx import Struck, sheet_extent, sheet_extras
from tracker.office.walking.xlsx_parts import listed_sheets, shared_texts, struck_styles, style_codes
from tracker.office.walking.xml import scan, utf8


@dataclass(frozen=True, slots=True)
class WalkedSheet:
    name: str
    extent: Extent
    """Empty for a sheet of ordinary size."""
    extras: Extras


Check = Callable[[str, Extent], object]
"""Called with the name and extent of each sheet before its cells are kept; raises where they are too many."""


def walk(path: Path, check: Check) -> tuple[WalkedSheet, ...]:
    """The worksheets of an xlsx, xlsm or ods whose archive has been checked.

    Raises `InputRefused` where the XML is broken, and what `check` raises.
    """
    with opened(path) as archive:
        return tuple(_ods(archive, check) if is_ods(archive) else _xlsx(archive, check))


def is_ods(archive: zipfile.ZipFile) -> bool:
    """True for an OpenDocument spreadsheet, False for an Office Open XML workbook."""
    return "content.xml" in archive.namelist()


@contextmanager
def opened(path: Path) -> Iterator[zipfile.ZipFile]:
    """The archive; broken XML inside becomes `InputRefused`."""
    try:
        with zipfile.ZipFile(path) as archive:
            yield archive
    except (expat.ExpatError, ValueError, LookupError, zipfile.BadZipFile) as error:
        refuse(path, "damaged", how="xml", why=str(error))


def _xlsx(archive: zipfile.ZipFile, check: Check) -> Iterator[WalkedSheet]:
    codes, texts = style_codes(archive), shared_texts(archive)
    struck = Struck.of(struck_styles(archive), texts)
    for sheet in listed_sheets(archive):
        xml = utf8(archive.read(sheet.part))
        extent = sheet_extent(xml, texts)
        check(sheet.name, extent)
        extras = sheet_extras(xml, codes, struck, sheet.hidden)
        extras.comments = comments_of(archive, sheet.part)
        yield WalkedSheet(sheet.name, extent, extras)


def _ods(archive: zipfile.ZipFile, check: Check) -> Iterator[WalkedSheet]:
    walk = OdsWalk()
    for part in ("styles.xml", "content.xml"):
        if part in archive.namelist():
            scan(archive.read(part), walk.start, walk.end, walk.text)
    for sheet in walk.sheets:
        check(sheet.name, sheet.extent)
        yield WalkedSheet(sheet.name, sheet.extent, sheet.extras())
