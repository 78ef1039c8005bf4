"""Machine types that stand in no column: beside the loom's number in its cell, or in the sheet's name (READING.md, 4)."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import replace

from tracker.domain.findings import Choice, Severity
from tracker.domain.tables import LOOMS
from tracker.intake.answers import HALL, SHEET, TYPE, Answers
from tracker.intake.columns.table_reading import TableReading
from tracker.intake.layout.types_in_cells import split
from tracker.intake.report import Report
from tracker.intake.vocabulary.type_codes import named_type, usual_type


def cut_types(reading: TableReading, report: Report) -> None:
    """Leave the number alone where its cell holds the machine type, too; noted once."""
    column = reading.column_of("loom")
    found = split(reading.block, reading.rows) if reading.table is LOOMS and column in reading.values else {}
    if not found or column is None:
        return
    values, sheet = reading.values[column], reading.block.sheet
    for i, body in enumerate(reading.rows):
        values[i] = found[body.row][0]
    first = reading.rows[0].row
    report.whole(
        Severity.NOTE, "type-beside-number", sheet, sheet.name_of(first, column), heading=reading.block.headings[column],
        raw=sheet.value(first, column), number=found[first][0], machine_type=found[first][1],
    )  # fmt: skip


def name_types_by_sheets(readings: Sequence[TableReading], answers: Answers, report: Report) -> set[int]:
    """The looms of a sheet that is called like a machine type, where nothing else says theirs: asked once for a file.

    Gives the ids of the readings about which it is asked."""
    asked: set[int] = set()
    by_file: dict[str, list[TableReading]] = defaultdict(list)
    for reading in readings:
        if _lacks_types(reading) and (_said(reading, answers) or usual_type(reading.block.sheet.name)):
            by_file[reading.block.sheet.file].append(reading)
    for some in by_file.values():
        if any(_said(reading, answers) for reading in some):
            for reading in some:
                _name(reading, report)
        else:
            _ask(some, report)
            asked.update(map(id, some))
    return asked


def _lacks_types(reading: TableReading) -> bool:
    known = reading.column_of("machine_type") is not None or all(body.machine_type for body in reading.rows)
    return reading.table is LOOMS and not reading.block.joins and bool(reading.rows) and not known


def _said(reading: TableReading, answers: Answers) -> bool:
    return answers.sheet(reading.block.sheet.name) == TYPE


def _name(reading: TableReading, report: Report) -> None:
    sheet = reading.block.sheet
    kind = named_type(sheet.name) or sheet.name
    reading.rows = [body if body.machine_type else replace(body, machine_type=kind) for body in reading.rows]
    report.whole(Severity.NOTE, "type-from-sheet", sheet, "", understood=kind)


def _ask(readings: Iterable[TableReading], report: Report) -> None:
    names = list(dict.fromkeys(reading.block.sheet.name for reading in readings))
    first = next(iter(readings)).block.sheet
    halls = [Choice(first.name, HALL)] if all(reading.column_of("hall") is None for reading in readings) else []
    report.ask(SHEET, first, first.name, "", [Choice(first.name, TYPE), *halls], code="sheet-is-type", sheets=names)
