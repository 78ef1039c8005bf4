"""Rows that stand above their headings, as sorting or writing upwards leaves them (READING.md, section 2)."""

from dataclasses import replace
from typing import Any

from tracker.domain.tables import LOOMS
from tracker.intake.layout.blocks import TableBlock
from tracker.intake.layout.body import shape
from tracker.intake.layout.evidence import USUAL_NUMBERS, is_usual
from tracker.intake.vocabulary.placeholders import emptiness
from tracker.office.sheet import Mark, Sheet

_FILLED = 0.6
"""Share of the known columns that a row above the headings fills at least."""


def rows_above(block: TableBlock, floor: int) -> list[int]:
    """Rows between `floor` and the headings that look like rows of the loom list: numbers where the fields are numbers. Where
    there are such, one with an odd number is a row, too: its cells are read, asked about or refused, and no title."""
    if block.recognised.table is not LOOMS or block.sheet.transposed:
        return []
    known = {name: _shapes_below(block, name) for name in ("loom", "machine_type")}
    found = {row for row in range(floor, block.top) if _is_row(block, row, known)}
    return [row for row in range(floor, block.top) if row in found or (found and _fills(block, row))]


def _shapes_below(block: TableBlock, name: str) -> set[str]:
    column, value = block.recognised.column_of(name), block.sheet.value
    rows = range(block.bottom + 1, block.end) if column is not None else ()
    return {shape(v) for row in rows if (v := value(row, column or 0)) is not None}


def _cells(block: TableBlock, row: int) -> dict[str, Any]:
    """Field → cell, of a row with a loom and enough others; empty for any other."""
    meanings = block.recognised.meanings
    cells = {m.field: v for c, m in meanings.items() if (v := block.sheet.value(row, c)) is not None}
    return cells if "loom" in cells and len(cells) >= max(3, _FILLED * len(meanings)) else {}


def _fills(block: TableBlock, row: int) -> bool:
    figures = (value for name, value in _cells(block, row).items() if name in USUAL_NUMBERS)
    return any(any(map(str.isdigit, str(value))) for value in figures)


def _is_row(block: TableBlock, row: int, known: dict[str, set[str]]) -> bool:
    cells = _cells(block, row)
    if not cells:
        return False
    if any(shapes and name in cells and shape(cells[name]) not in shapes for name, shapes in known.items()):
        return False
    numbers = {name: v for name, v in cells.items() if name in USUAL_NUMBERS and not _says_nothing(v)}
    return all(is_usual(name, v) for name, v in numbers.items()) and (bool(numbers) or bool(known["loom"]))


def _says_nothing(value: Any) -> bool:
    return type(value) is Mark or (isinstance(value, str) and bool(emptiness(value)))


def with_headings_first(sheet: Sheet, block: TableBlock, above: list[int]) -> Sheet:
    """The sheet with these rows below the headings; addresses stay those of the file."""
    heading = list(range(block.top, block.bottom + 1))
    before = [row for row in range(block.top) if row not in set(above)]
    order = [*before, *heading, *above, *range(block.bottom + 1, len(sheet.rows))]
    numbers = [sheet.place(row, 0)[0] for row in order]
    moved = len(before) - block.top
    merged = tuple(
        (r1 + moved, c1, r2 + moved, c2)
        for r1, c1, r2, c2 in sheet.extras.merged
        if sheet.row_number is None and block.top < r1 and r2 <= block.bottom + 1
    )
    return Sheet(
        sheet.file, sheet.name, [sheet.rows[row] for row in order], replace(sheet.extras, merged=merged),
        lambda number: numbers[number - 1] if number <= len(numbers) else number,
    )  # fmt: skip
