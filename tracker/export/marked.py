"""The answer sheet: the user's own workbook with the cells marked that a load found fault with."""

import codecs
import csv
import io
import zipfile
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any
from xml.parsers import expat

from openpyxl.comments import Comment
from openpyxl.styles import PatternFill
from python_calamine import CalamineWorkbook

from tracker.domain.addresses import Cell, areas_in, cell_name
from tracker.domain.findings import Finding, Severity
from tracker.domain.tables import Kind
from tracker.errors import InputRefused, UsageError
from tracker.export import findings_sheet
from tracker.office.files import write
from tracker.office.patching.notes import AUTHOR, add_notes
from tracker.office.patching.package import Package
from tracker.office.patching.sheet_part import SheetPart
from tracker.office.patching.styles import EMPTY_STYLES, Styles
from tracker.office.writing.sheets import Col, TidySheet, add_sheet, new_book, put, save
from tracker.office.writing.values import MAX_TEXT, workbook_value, xml_text

CellFinding = tuple[Finding, bool]
"""A finding on a cell, and whether its comment stands there."""
Marks = dict[Cell, list[CellFinding]]
Grid = Sequence[Sequence[Any]]
_MOST_CELLS = 5000
"""Cells of one finding's range that are coloured; the range itself stands in the list."""
_MOST_NOTE = 2000
_STYLES_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"


def write_marked(
    source: str | Path, findings: Sequence[Finding], target: str | Path, grids: Mapping[str, Grid] | None = None
) -> str:
    """Write a copy of `source` with the cells of the findings coloured and commented, and the findings as first sheet.

    An xlsx or xlsm is copied as it is: formats, formulas, charts, drop-downs, pictures and other sheets survive byte
    for byte. Of any other file the values go into a new .xlsx: `grids` (sheet → rows from row 1, column A) as the
    reader had them; without it they are read here, text as UTF-8, UTF-16 or Windows-1252. Gives a sentence to tell the
    user, or ``.

    Findings with another file's name are left out. Raises UsageError for an ending that does not fit the source,
    TrackerError where the target cannot be written.
    """
    source, target = Path(source), Path(target)
    mine = [f for f in findings if Path(f.file).name in ("", source.name)]
    if not _is_xlsx(source):
        return _copy_values(source, mine, target, grids)
    ending = ".xlsm" if source.suffix.lower() == ".xlsm" else ".xlsx"
    if source.resolve() == target.resolve():
        raise UsageError(f"{target}: the marked copy would overwrite the workbook itself; give it another name")
    write(target, _mark_package(source, mine), ending)
    return ""


def _is_xlsx(path: Path) -> bool:
    if not zipfile.is_zipfile(path):
        return False
    with zipfile.ZipFile(path) as archive:
        return "xl/workbook.xml" in archive.namelist()


def _mark_package(source: Path, findings: Sequence[Finding]) -> bytes:
    package = Package(source)
    try:
        sheets = package.sheets()
        styles_part = next((r.part for r in package.relations("xl/workbook.xml") if r.type == "styles"), "")
        styles = Styles(package.read(styles_part) if styles_part in package.names else EMPTY_STYLES)
        unnoted = []
        for name, part in sheets.items():
            here = [f for f in findings if f.sheet == name or (f.sheet == "" and len(sheets) == 1)]
            marks = _marks(here)
            if marks:
                unnoted += [f"{name} {cell}" for cell in _mark_sheet(package, part, marks, styles)]
        lines = findings_sheet.summary(findings)
        if unnoted:
            lines.append("Cells with a discussion take no comment; they are coloured and listed: " + ", ".join(unnoted))
        xml = findings_sheet.sheet_xml(findings, lines, styles, frozenset(sheets))
        if not styles_part:
            styles_part = "xl/styles.xml"
            package.declare(styles_part, _STYLES_TYPE)
            package.relate("xl/workbook.xml", "styles", styles_part)
        package.write(styles_part, styles.written())
        package.add_first_sheet(free_name(findings_sheet.SHEET, sheets), xml)
        return package.saved()
    except (expat.ExpatError, ValueError, KeyError, StopIteration) as error:
        raise InputRefused(f"{source.name}: no marked copy can be made of this workbook ({error})") from error
    finally:
        package.close()


def _mark_sheet(package: Package, part: str, marks: Marks, styles: Styles) -> list[str]:
    """Colour and comment the cells; gives the cells that take no comment."""
    sheet = SheetPart(package.read(part), {row for row, _ in marks})
    shown: dict[Cell, list[CellFinding]] = {}
    for cell, here in marks.items():
        shown.setdefault(sheet.top_left(cell), []).extend(here)
    if shown.keys() - marks.keys():  # a merged area begins in a row that was not looked up
        sheet = SheetPart(package.read(part), {row for row, _ in shown})
    colours = {cell: findings_sheet.COLOURS[worst(here)] for cell, here in shown.items()}
    sheet.restyle({cell: lambda style, c=colour: styles.filled(style, c) for cell, colour in colours.items()})
    threads = add_notes(package, part, sheet, {cell: text for cell, here in shown.items() if (text := note(here))})
    package.write(part, sheet.written())
    return [cell_name(cell) for cell in threads]


def _marks(findings: Sequence[Finding]) -> Marks:
    """A range marks its cells, at most `_MOST_CELLS` of them, and has its comment at the first."""
    marks: Marks = {}
    for finding in findings:
        for number, cell in enumerate(cells_of(finding.cell)[:_MOST_CELLS]):
            marks.setdefault(cell, []).append((finding, number == 0))
    return marks


def cells_of(address: str) -> list[Cell]:
    """Cells of `C7`, `C7:D40` or `C7, D9`, at most `_MOST_CELLS` rows of a range; none for anything else."""
    return [
        (row, column)
        for r1, c1, r2, c2 in areas_in(address)
        for row in range(r1, min(r2, r1 + _MOST_CELLS) + 1)
        for column in range(c1, c2 + 1)
    ]


def worst(marks: Sequence[CellFinding]) -> Severity:
    order = list(Severity)
    return max((finding.severity for finding, _ in marks), key=order.index)


def note(marks: Sequence[CellFinding]) -> str:
    """Text of a cell's comment, the severity its first word; `` where only ranges that begin elsewhere pass over it."""
    text = "\n\n".join(dict.fromkeys(_sentence(finding) for finding, first in marks if first))
    return text if len(text) <= _MOST_NOTE else f"{text[:_MOST_NOTE]} … (more in the sheet {findings_sheet.SHEET})"


def _sentence(finding: Finding) -> str:
    parts = [f"{finding.severity.upper()}: {finding.message}"]
    parts += [f"Read as: {finding.understood}"] if finding.understood else []
    parts += [f"What to do: {finding.hint}"] if finding.hint else []
    return "\n".join(parts)


def free_name(name: str, taken: Mapping[str, object]) -> str:
    """A sheet name that no sheet has: `Findings`, `Findings 2` …"""
    used = {other.casefold() for other in taken}
    return next(n for n in (name, *(f"{name} {i}" for i in range(2, 1000))) if n.casefold() not in used)


# ------------------------------------------------------------------------------------------ copies of values


def _copy_values(source: Path, findings: Sequence[Finding], target: Path, grids: Mapping[str, Grid] | None) -> str:
    """A new workbook with the values of an xls, ods or text file, and the marks."""
    said = (
        f"{target.name} holds a copy of the values of {source.name} with the marks: such a file "
        "cannot be marked itself, so formats and formulas stay behind."
    )
    grids = _grids(source) if grids is None else grids
    book = new_book()
    lines = [*findings_sheet.summary(findings), said]
    columns = [Col(heading) for heading in findings_sheet.HEADINGS]
    list_page = add_sheet(
        book, TidySheet(free_name(findings_sheet.SHEET, grids), columns, findings_sheet.rows(findings), lines, frozen=0)
    )  # fmt: skip
    for row in list_page.iter_rows(min_row=len(lines) + 3, max_row=len(lines) + 2 + len(findings), max_col=1):
        row[0].fill = PatternFill("solid", fgColor=findings_sheet.COLOURS[Severity(row[0].value)])
    for name, grid in grids.items():
        page = book.create_sheet(name[:31])
        for r, values in enumerate(grid, 1):
            for c, value in enumerate(values, 1):
                put(page.cell(r, c), workbook_value(Kind.ANY, value))  # type: ignore[arg-type]
        marks = _marks([f for f in findings if f.sheet == name or len(grids) == 1])
        for cell, here in marks.items():
            marked = page.cell(*cell)
            marked.fill = PatternFill("solid", fgColor=findings_sheet.COLOURS[worst(here)])
            if text := note(here):
                marked.comment = Comment(xml_text(text)[:MAX_TEXT], AUTHOR, width=300, height=120)
    save(book, target)
    return said


def _grids(source: Path) -> dict[str, Grid]:
    """The values from row 1, column A on; a text file is one sheet named after it, as a load names it."""
    with source.open("rb") as file:
        head = file.read(4)
    if not head.startswith((b"PK", b"\xd0\xcf\x11\xe0")):
        return {source.stem: _text_grid(source.read_bytes())}
    with CalamineWorkbook.from_path(str(source)) as book:
        return {name: book.get_sheet_by_name(name).to_python(skip_empty_area=False) for name in book.sheet_names}


def _text_grid(data: bytes) -> Grid:
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        text = data.decode("utf-16", "replace")
    else:
        try:
            text = data.decode("utf-8-sig")
        except UnicodeDecodeError:
            text = data.decode("cp1252", "replace")
    lines = text.splitlines()[:50]
    delimiter = max(";\t,|", key=lambda mark: sum(line.count(mark) > 0 for line in lines))
    return list(csv.reader(io.StringIO(text, newline=""), delimiter=delimiter))
