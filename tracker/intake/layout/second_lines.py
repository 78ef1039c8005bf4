"""Second lines of looms: rows without a number below rows with one, that say other values of them (`Plan`, `Actual`)."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from tracker.intake.layout.blocks import TableBlock
from tracker.intake.layout.body import BodyRow, Sort, says_total

_VALUES = 2
"""Figures in columns of ours that such a line holds at least."""


def with_second_lines(block: TableBlock, rows: Sequence[BodyRow]) -> list[BodyRow]:
    """The rows of a loom list; where at least every other loom has a second line of figures, those lines are rows too, which
    have no number and are refused: which of the lines holds is not known."""
    looms = sum(row.sort is Sort.DATA for row in rows)
    second = {i for i in range(1, len(rows)) if rows[i - 1].sort is Sort.DATA and _has_values(block, rows[i])}
    if len(second) < 3 or 2 * len(second) < looms:
        return list(rows)
    return [replace(row, sort=Sort.DATA, text="") if i in second else row for i, row in enumerate(rows)]


def _has_values(block: TableBlock, row: BodyRow) -> bool:
    if row.sort not in (Sort.TOTAL, Sort.NOTE):
        return False
    values = {c: block.sheet.value(row.row, c) for c in block.columns}
    if any(isinstance(value, str) and says_total(value) for value in values.values()):
        return False
    number = block.recognised.column_of("loom")
    figures = [c for c in block.recognised.meanings if c != number and _is_figure(values[c])]
    return number is not None and values[number] is None and len(figures) >= _VALUES


def _is_figure(value: Any) -> bool:
    text = value if isinstance(value, str) else ""
    return isinstance(value, float | int) or (any(map(str.isdigit, text)) and not any(map(str.isalpha, text)))
