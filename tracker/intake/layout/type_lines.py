"""Lines between the rows that name the machine type of the looms below them (READING.md, section 4)."""

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Any

from tracker.intake.layout.blocks import TableBlock
from tracker.intake.layout.body import BodyRow, Sort
from tracker.intake.report import raw_text
from tracker.intake.vocabulary.halls import hall_in
from tracker.intake.vocabulary.type_codes import are_places, named_type

_LONGEST = 60


def lines_between(block: TableBlock, rows: Sequence[BodyRow]) -> dict[int, str]:
    """Index of each line that stands alone above rows of the table → its text: no hall, no sum, no row of looms."""
    whole = [row.row for row in rows if row.sort is Sort.DATA and _filled(block, row.row) > 2]
    key = block.recognised.column_of("loom")
    shapes = {fine_shape(block.sheet.value(row, key)) for row in whole} if key is not None else set()
    found: dict[int, str] = {}
    follows = False
    for i in range(len(rows) - 1, -1, -1):
        text = _alone(block, rows[i], shapes)
        if text and follows:
            found[i] = text
        elif rows[i].sort is Sort.DATA and not text:
            follows = True
        elif rows[i].sort in (Sort.NOTE, Sort.TOTAL):
            follows = False
    return dict(sorted(found.items()))


def _alone(block: TableBlock, row: BodyRow, shapes: set[str]) -> str:
    """The text of a line with nothing else in it; of one in the column of the loom only where no loom looks like it."""
    if row.sort not in (Sort.NOTE, Sort.DATA):
        return ""
    line = block.sheet.rows[row.row]
    values = (line[c] for c in block.columns if c < len(line) and line[c] is not None)
    first = next(values, None)
    text = raw_text(first) if first is not None else ""
    if any(raw_text(value) != text for value in values):
        return ""
    if not 0 < len(text) <= _LONGEST or (row.sort is Sort.DATA and fine_shape(first) in shapes):
        return ""
    return text


def _filled(block: TableBlock, row: int) -> int:
    line = block.sheet.rows[row]
    return sum(line[c] is not None for c in block.columns if c < len(line))


def fine_shape(value: Any) -> str:
    """Every figure as 9, every letter as A: `A-07` → `A-99`."""
    return re.sub(r"[^\W\d_]", "A", re.sub(r"\d", "9", raw_text(value)))


def titled(block: TableBlock, rows: Sequence[BodyRow]) -> list[BodyRow]:
    """The rows with the line above the heading put before them, where a line like it stands between them further down."""
    lines = lines_between(block, rows)
    above = next((r for r in range(block.top - 1, max(-1, block.top - 3), -1) if any(block.sheet.rows[r])), None)
    first = next((i for i, row in enumerate(rows) if row.sort is Sort.DATA), len(rows))
    if above is None or not lines or min(lines) < first or block.sheet.transposed:
        return list(rows)
    title = BodyRow(above, Sort.NOTE)
    text = _alone(block, title, set())
    return [replace(title, text=text), *rows] if text and not hall_in(text) else list(rows)


def with_types(block: TableBlock, rows: Sequence[BodyRow]) -> list[BodyRow]:
    """The rows, those below lines of machine types with their type; as they are where not every row stands below one, or one line
    stands above them all, which may be anything."""
    if block.recognised.column_of("machine_type") is not None:
        return list(rows)
    lines = lines_between(block, rows)
    kinds = {i: named_type(text) for i, text in lines.items()}
    if len(set(kinds.values())) < 2 or not all(kinds.values()) or are_places(list(kinds.values())):
        return list(rows)
    found = _filled_down(rows, lines, kinds)
    return found if all(row.machine_type for row in found if row.sort is Sort.DATA) else list(rows)


def _filled_down(rows: Sequence[BodyRow], lines: dict[int, str], kinds: dict[int, str]) -> list[BodyRow]:
    """A type holds until the next one; beyond a line for a hall only where it stood above that of the hall before, too."""
    found, kind, fresh, halls_inside = [], "", False, False
    for i, row in enumerate(rows):
        if i in lines:
            kind, fresh, halls_inside = kinds[i], True, False
            row = replace(row, sort=Sort.SECTION, text=lines[i])
        elif row.sort is Sort.SECTION:
            halls_inside = halls_inside or fresh
            kind = kind if halls_inside else ""
        elif row.sort is Sort.DATA:
            fresh = False
        found.append(replace(row, machine_type=kind))
    return found
