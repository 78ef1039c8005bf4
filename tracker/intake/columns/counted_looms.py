"""A column headed `Looms` may name the looms of a list or say how many there are of each type: asked where it may be either."""

from itertools import pairwise
from typing import Any

from tracker.domain.findings import Choice
from tracker.domain.tables import LOOMS
from tracker.intake.answers import FIELD, IGNORE, Answers
from tracker.intake.columns.pool import ColumnPart
from tracker.intake.columns.table_reading import TableReading
from tracker.intake.report import Report, raw_text
from tracker.intake.vocabulary.dictionary import tokens, vocabulary

_MOST = 2_000
"""Looms of one type in a mill; what is more is a number."""


def ask_whether_counted(reading: TableReading, answers: Answers, report: Report) -> None:
    """Ask whether whole numbers that do not go up from row to row count looms: where the heading says `looms`, or where each
    row is a type of its own."""
    block = reading.block
    column = block.recognised.column_of("loom")
    if reading.table is not LOOMS or block.joins or column is None or answers.field(block.called(column)) is not None:
        return
    part = ColumnPart(block, column, reading.rows)
    if _may_count(reading, column, not vocabulary().words["looms"].isdisjoint(tokens(part.heading))):
        choices = [Choice(part.heading, "loom"), Choice(block.sheet.name, IGNORE)]
        report.ask(FIELD, block.sheet, part.heading, part.heading_cell, choices, code="looms-or-count",
                   raw=", ".join(map(raw_text, part.values[:3])))  # fmt: skip


def _may_count(reading: TableReading, column: int, plural: bool) -> bool:
    values = [
        (reading.block.sheet.value(body.row, column), _kind(reading, body.row, body.hall)) for body in reading.rows
    ]
    numbers = [number for value, _ in values if (number := _count(value)) is not None]
    if len(numbers) < len(values) or len(values) < (2 if plural else 3):
        return False
    kinds = [kind for _, kind in values]
    own = len(set(kinds)) == len(kinds) and all(any(kind) for kind in kinds)
    last: dict[Any, list[int]] = {}
    for (_, (hall, _)), number in zip(values, numbers, strict=True):
        last.setdefault(hall, []).append(number)
    up = all(below < above for some in last.values() for below, above in pairwise(some))
    return (own or not up) if plural else (own and not all(a < b for a, b in pairwise(numbers)))


def _kind(reading: TableReading, row: int, hall: str | None) -> tuple[str, str]:
    """Hall and machine type of a row, as written."""
    named = [reading.column_of(name) for name in ("hall", "machine_type")]
    own, kind = ("" if c is None else raw_text(reading.block.sheet.value(row, c) or "") for c in named)
    return own or hall or "", kind


def _count(value: Any) -> int | None:
    """A whole number that may be a count; None for a code, one with noughts before it, and all else."""
    if isinstance(value, str):
        value = int(value) if value.isascii() and value.isdigit() and value[0] != "0" else None
    if isinstance(value, bool) or not isinstance(value, int | float) or value != int(value):
        return None
    return int(value) if 0 < value <= _MOST else None
