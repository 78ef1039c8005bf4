"""A machine type written once, in the first row of its group (READING.md, section 4)."""

from itertools import pairwise

from tracker.domain.findings import Severity
from tracker.domain.tables import LOOMS
from tracker.intake.columns.table_reading import TableReading
from tracker.intake.report import Report

_FEWEST = 0.3
"""Share of empty cells from which on the others may stand for groups."""


def add_types(reading: TableReading, report: Report) -> None:
    """Fill the empty types of a loom list with that above, noted, where the column names each group's once."""
    column = reading.column_of("machine_type") if reading.table is LOOMS else None
    if column is None or column not in reading.values or not _stands_for_groups(reading, column):
        return
    values, sheet = reading.values[column], reading.block.sheet
    for i, body in enumerate(reading.rows):
        same_hall = i > 0 and reading.rows[i - 1].hall == body.hall
        if sheet.value(body.row, column) is None and same_hall and values[i - 1]:
            values[i] = values[i - 1]
            report.cell(Severity.NOTE, "type-from-above", sheet, body.row, column,
                        heading=reading.block.headings[column], understood=values[i])  # fmt: skip


def _stands_for_groups(reading: TableReading, column: int) -> bool:
    """Is the first cell filled, are many others empty, and does no row say again what the one above it says?"""
    values = reading.values[column]
    empty = sum(reading.block.sheet.value(body.row, column) is None for body in reading.rows)
    again = any(above and above == value for above, value in pairwise(values))
    return bool(values) and bool(values[0]) and empty >= _FEWEST * len(values) and not again
