"""A sheet of looms that cannot be meant as it is read: nothing came out of it, or many of its looms stand in it twice."""

from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence

from tracker.domain.addresses import range_name
from tracker.intake.answers import IGNORE, READ, SHEET, Answers
from tracker.intake.columns.table_reading import TableReading
from tracker.intake.report import Report, answers_for

_FEWEST, _SHARE = 3, 0.25
"""How many looms twice, and which share of all, are more than a slip."""


def ask_whole_sheets(
    lists: Sequence[TableReading], halls: Mapping[tuple[int, int], str], answers: Answers, report: Report
) -> None:
    """Ask whether a loom list is to be read so, once for a sheet. `halls`: (id of the reading, row index) → hall."""
    by_sheet: dict[tuple[str, str], list[TableReading]] = defaultdict(list)
    for reading in lists:
        by_sheet[reading.block.sheet.file, reading.block.sheet.name].append(reading)
    for some in by_sheet.values():
        sheet = some[0].block.sheet
        if answers.sheet(sheet.name) is not None:
            continue
        if not any(reading.rows for reading in some) and (cells := _filled_above(some[0])):
            options = answers_for(sheet.name, IGNORE)
            report.ask(SHEET, sheet, sheet.name, cells, options, code="no-rows-below")
        elif twice := _twice(some, halls):
            options = answers_for(sheet.name, READ, IGNORE)
            report.ask(SHEET, sheet, sheet.name, "", options, code="looms-twice", looms=twice[:5], count=len(twice))


def _filled_above(reading: TableReading) -> str:
    """Where rows stand above headings without any below; `` where there are none, as in an empty template."""
    block = reading.block
    columns = [*block.recognised.meanings]
    above = [
        row for row in range(block.top)
        if 2 * sum(block.sheet.value(row, c) is not None for c in columns) > len(columns)
    ]  # fmt: skip
    place = block.sheet.place
    return range_name(*sorted((place(above[0], min(columns)), place(above[-1], max(columns))))) if above else ""


def _twice(some: Sequence[TableReading], halls: Mapping[tuple[int, int], str]) -> list[str]:
    """The numbers of the looms that stand more than once in their hall, where they are many."""
    counts: Counter[tuple[str, str]] = Counter()
    for reading in some:
        column = reading.column_of("loom")
        for i, loom in enumerate(reading.values[column] if column is not None else ()):
            if loom and i not in reading.refused:
                counts[str(loom), halls.get((id(reading), i), "")] += 1
    twice = [loom for (loom, _), count in counts.items() if count > 1]
    return twice if len(twice) >= max(_FEWEST, _SHARE * len(counts)) else []
