"""Loom number and machine type in one cell: `101 / AJ-190` (READING.md, section 4)."""

import re
from collections.abc import Sequence
from dataclasses import replace

from tracker.intake.layout.blocks import TableBlock
from tracker.intake.layout.body import BodyRow, Sort
from tracker.intake.report import raw_text
from tracker.intake.vocabulary.headings import match_heading
from tracker.intake.vocabulary.type_codes import are_places, named_type, usual_type

_JOINTS = [
    re.compile(joint) for joint in (r"\s*\n\s*", r"\s+[/|]\s+", r"\s+[-–—]\s+", r"\s*[/|]\s*", r"\s*:\s+", r"\s*[(（]")
]
"""What may stand between the two, the plainest first."""
_FEWEST = 3
_DISTINCT, _REPEATED = 0.9, 0.5
"""Share of numbers that differ, and of types that may."""


def split(block: TableBlock, rows: Sequence[BodyRow]) -> dict[int, tuple[str, str]]:
    """Row → (number, machine type), where every cell of the loom's column holds both and no other column is the type."""
    column = block.recognised.column_of("loom")
    if column is None or block.recognised.column_of("machine_type") is not None:
        return {}
    texts = {row.row: raw_text(block.sheet.value(row.row, column)) for row in rows if row.sort is Sort.DATA}
    says_type = any(entry.field == "machine_type" for entry in match_heading(block.headings[column]).candidates)
    for joint in _JOINTS if len(texts) >= _FEWEST else ():
        parts = {row: joint.split(text.rstrip(")）")) for row, text in texts.items()}
        if all(len(part) == 2 and all(part) for part in parts.values()):
            for at in (0, 1):
                found = {row: (part[at].strip(), part[1 - at].strip()) for row, part in parts.items()}
                if _are_numbers_and_types(list(found.values()), says_type):
                    return found
    return {}


def _are_numbers_and_types(pairs: Sequence[tuple[str, str]], says_type: bool) -> bool:
    numbers, types = {number for number, _ in pairs}, sorted({kind for _, kind in pairs})
    if len(numbers) < _DISTINCT * len(pairs) or len(types) > _REPEATED * len(pairs) or are_places(types):
        return False
    return all(any(sign.isdigit() for sign in number) for number in numbers) and all(
        map(named_type if says_type else usual_type, types)
    )


def with_types_in_cells(block: TableBlock, rows: Sequence[BodyRow]) -> list[BodyRow]:
    """The rows with the types that stand beside their numbers."""
    found = split(block, rows)
    return [replace(row, machine_type=found[row.row][1]) if row.row in found else row for row in rows]
