"""The answer sheet: the user's own workbook with the cells marked that a load found fault with."""

import zipfile
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any
from xml.parsers import expat

from tracker.domain.addresses import Cell, areas_in, cell_name
from tracker.domain.findings import Severity
from tracker.domain.tables import Kind
from tracker.errors import InputRefused, Message, UsageError, message
from tracker.export import findings_sheet
from tracker.export.wording import Wording
from tracker.office.files import write
from tracker.office.opening.values import sheet_values
from tracker.office.patching.notes import add_notes
from tracker.office.patching.package import Package
from tracker.office.patching.sheet_part import SheetPart
from tracker.office.patching.styles import EMPTY_STYLES, Styles
from tracker.office.writing.sheets import Col, add_sheet, mark_cell, new_book, put, save
from tracker.office.writing.values import workbook_value
from tracker.words.findings import FindingInWords

CellFinding = tuple[FindingInWords, bool]
"""A finding on a cell, and whether its comment stands there."""
Marks = dict[Cell, list[CellFinding]]
Grid = Sequence[Sequence[Any]]
_MOST_CELLS = 5000
"""Cells of one finding's range that are coloured; the range itself stands in the list."""
_MOST_NOTE = 2000
_STYLES_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"


def write_marked(
    source: str | Path, findings: Sequence[FindingInWords], target: str | Path, grids: Mapping[str, Grid] | None = None,
    language: str = "en",
) -> Message | None:  # fmt: skip
    """Write a copy of `source` with the cells of the findings coloured and commented, and the findings as first sheet, both in a
    language that the findings are said in already.

    An xlsx or xlsm is copied as it is: formats, formulas, charts, drop-downs, pictures and other sheets survive byte
    for byte. Of any other file the values go into a new .xlsx: `grids` (sheet → rows from row 1, column A) as the
    reader had them, which a text file needs; those of a workbook are read here where they are not given. Gives what
    there is to tell, or None.

    Findings with another file's name are left out. Raises UsageError for an ending that does not fit the source,
    TrackerError where the target cannot be written.
    """
    source, target = Path(source), Path(target)
    mine = [f for f in findings if Path(f.file).name in ("", source.name)]
    if not _is_xlsx(source):
        return _copy_values(source, mine, target, grids, Wording(language))
    ending = ".xlsm" if source.suffix.lower() == ".xlsm" else ".xlsx"
    if source.resolve() == target.resolve():
        raise UsageError("marked-over-itself", target=str(target), what="workbook")
    write(target, _mark_package(source, mine, Wording(language)), ending)
    return None


def _is_xlsx(path: Path) -> bool:
    if not zipfile.is_zipfile(path):
        return False
    with zipfile.ZipFile(path) as archive:
        return "xl/workbook.xml" in archive.namelist()


def _mark_package(source: Path, findings: Sequence[FindingInWords], said: Wording) -> bytes:
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
                unnoted += [f"{name} {cell}" for cell in _mark_sheet(package, part, marks, styles, said)]
        lines = findings_sheet.summary(findings, said)
        if unnoted:
            lines.append(said.say("book-findings-unnoted", cells=", ".join(unnoted)))
        xml = findings_sheet.sheet_xml(findings, lines, styles, frozenset(sheets), said)
        if not styles_part:
            styles_part = "xl/styles.xml"
            package.declare(styles_part, _STYLES_TYPE)
            package.relate("xl/workbook.xml", "styles", styles_part)
        package.write(styles_part, styles.written())
        package.add_first_sheet(free_name(findings_sheet.title(said), sheets), xml)
        return package.saved()
    except (expat.ExpatError, ValueError, KeyError, StopIteration) as error:
        raise InputRefused("marked-impossible", file=source.name, why=str(error)) from error
    finally:
        package.close()


def _mark_sheet(package: Package, part: str, marks: Marks, styles: Styles, said: Wording) -> list[str]:
    """Colour and comment the cells; gives the cells that take no comment."""
    sheet = SheetPart(package.read(part), {row for row, _ in marks})
    shown: dict[Cell, list[CellFinding]] = {}
    for cell, here in marks.items():
        shown.setdefault(sheet.top_left(cell), []).extend(here)
    if shown.keys() - marks.keys():  # a merged area begins in a row that was not looked up
        sheet = SheetPart(package.read(part), {row for row, _ in shown})
    colours = {cell: findings_sheet.COLOURS[worst(here)] for cell, here in shown.items()}
    sheet.restyle({cell: lambda style, c=colour: styles.filled(style, c) for cell, colour in colours.items()})
    threads = add_notes(
        package, part, sheet, {cell: text for cell, here in shown.items() if (text := note(here, said))}
    )
    package.write(part, sheet.written())
    return [cell_name(cell) for cell in threads]


def _marks(findings: Sequence[FindingInWords]) -> Marks:
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


def note(marks: Sequence[CellFinding], said: Wording) -> str:
    """Text of a cell's comment, the severity its first word; `` where only ranges that begin elsewhere pass over it."""
    text = "\n\n".join(dict.fromkeys(_sentence(finding, said) for finding, first in marks if first))
    if len(text) <= _MOST_NOTE:
        return text
    return f"{text[:_MOST_NOTE]} … ({said.say('note-more', sheet=findings_sheet.title(said))})"


def _sentence(finding: FindingInWords, said: Wording) -> str:
    parts = [f"{findings_sheet.severity(said, finding.severity).upper()}: {finding.message}"]
    parts += [said.say("note-read-as", understood=finding.understood)] if finding.understood else []
    parts += [said.say("note-to-do", hint=finding.hint)] if finding.hint else []
    return "\n".join(parts)


def free_name(name: str, taken: Mapping[str, object]) -> str:
    """A sheet name that no sheet has: `Findings`, `Findings 2` …"""
    used = {other.casefold() for other in taken}
    return next(n for n in (name, *(f"{name} {i}" for i in range(2, 1000))) if n.casefold() not in used)


# ------------------------------------------------------------------------------------------ copies of values


def _copy_values(
    source: Path, findings: Sequence[FindingInWords], target: Path, grids: Mapping[str, Grid] | None, words: Wording
) -> Message:
    """A new workbook with the values of an xls, ods or text file, and the marks."""
    said = message("marked-values-only", target=target.name, file=source.name)
    grids = sheet_values(source) if grids is None else grids
    book = new_book()
    lines = [*findings_sheet.summary(findings, words), words.speaker.say(said)]
    columns = [Col(heading) for heading in findings_sheet.headings(words)]
    name, rows = free_name(findings_sheet.title(words), grids), findings_sheet.rows(findings, words)
    list_page = add_sheet(book, words.named(name, columns, rows, lines, frozen=0))
    listed = list_page.iter_rows(min_row=len(lines) + 3, max_row=len(lines) + 2 + len(findings), max_col=1)
    for row, finding in zip(listed, findings_sheet.ordered(findings), strict=True):
        mark_cell(row[0], findings_sheet.COLOURS[finding.severity])
    for name, grid in grids.items():
        page = book.create_sheet(name[:31])
        for r, values in enumerate(grid, 1):
            for c, value in enumerate(values, 1):
                put(page.cell(r, c), workbook_value(Kind.ANY, value))  # type: ignore[arg-type]
        marks = _marks([f for f in findings if f.sheet == name or len(grids) == 1])
        for cell, here in marks.items():
            mark_cell(page.cell(*cell), findings_sheet.COLOURS[worst(here)], note(here, words))
    save(book, target)
    return said
