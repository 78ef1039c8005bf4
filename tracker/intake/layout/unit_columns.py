"""A column beside one of figures that holds the unit of each (`75 | inch`, `190 | cm`): figure and unit are one value."""

from collections.abc import Iterator
from typing import Any

from tracker.domain.findings import Severity
from tracker.intake.layout.blocks import TableBlock
from tracker.intake.report import Report
from tracker.intake.vocabulary.units import dimension_of, unit_named

_MOST = 0.9
"""Share of the rows with a figure whose unit must stand beside it."""


def join_units(block: TableBlock, report: Report) -> None:
    """Put the units of such a column behind their figures, and note it; the column stays one of the mill's own."""
    for column, dimension in list(_of_figures(block)):
        units = column + 1
        rows = [row for row in range(block.bottom + 1, block.end) if block.sheet.value(row, column) is not None]
        named = [row for row in rows if _names_unit(block.sheet.value(row, units), dimension)]
        others = sum(block.sheet.value(row, units) is not None for row in rows) - len(named)
        if len(named) < 2 or others or len(named) < _MOST * len(rows):
            continue
        block.recognised.meanings.pop(units, None)
        for row in named:
            figure, unit = block.sheet.value(row, column), block.sheet.value(row, units)
            block.sheet.rows[row][column] = f"{figure:.12g} {unit}" if isinstance(figure, float) else f"{figure} {unit}"
        report.whole(
            Severity.NOTE, "units-beside", block.sheet, block.sheet.name_of(block.bottom, units),
            heading=block.headings[units], field=block.recognised.table.column(block.recognised.meanings[column].field).heading,
        )  # fmt: skip


def _of_figures(block: TableBlock) -> Iterator[tuple[int, str]]:
    """(column, what it measures) of the fields with a unit that have another column, of no field surely, to their right."""
    meanings = block.recognised.meanings
    for column, meaning in meanings.items():
        dimension = dimension_of(block.recognised.table.column(meaning.field))
        beside = meanings.get(column + 1)
        if dimension and column + 1 in block.headings and (beside is None or beside.certainty < 1):
            yield column, dimension


def _names_unit(value: Any, dimension: str) -> bool:
    return isinstance(value, str) and unit_named(dimension, value.strip("()[] ")) is not None
