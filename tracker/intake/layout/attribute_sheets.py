"""A table that says more of the looms of a list: keyed by their numbers, without what makes a loom list (READING.md, 2)."""

from collections.abc import Sequence

from tracker.domain.tables import LOOMS
from tracker.intake.layout.blocks import TableBlock, find_blocks
from tracker.intake.layout.body import Sort, body_rows
from tracker.intake.layout.called import SaidAt
from tracker.intake.report import raw_text
from tracker.office.sheet import Sheet

_IDENTITY = frozenset({"loom", "hall", "row", "place", "machine_type", "insertion"})
_KNOWN = 0.8
"""Share of its numbers that the list has at least."""


def attributes_on(sheet: Sheet, lists: Sequence[TableBlock], said: SaidAt) -> list[TableBlock]:
    """The tables of a sheet that add to the looms of these lists."""
    if not lists or sheet.hidden:
        return []
    return [block for block in find_blocks(sheet, said, LOOMS.name) if adds_to(block, lists)]


def adds_to(block: TableBlock, lists: Sequence[TableBlock]) -> bool:
    """Does the table name most looms of the lists once each, and say nothing of them that the lists say, too?"""
    own, theirs = _fields(block), set().union(*map(_fields, lists))
    if "loom" not in own or (own & theirs) - _IDENTITY or len(block.headings) <= len(own & _IDENTITY):
        return False
    numbers, known = _numbers(block), {number for one in lists for number in _numbers(one)}
    if len(numbers) < 2 or (len(set(numbers)) < len(numbers) and "hall" not in own):
        return False
    return sum(number in known for number in numbers) >= _KNOWN * len(numbers)


def _fields(block: TableBlock) -> set[str]:
    return {meaning.field for meaning in block.recognised.meanings.values()}


def _numbers(block: TableBlock) -> list[str]:
    column = block.recognised.column_of("loom")
    if column is None:
        return []
    values = (block.sheet.value(body.row, column) for body in body_rows(block) if body.sort is Sort.DATA)
    return [raw_text(value).lstrip("0") for value in values if value is not None]
