"""The line of a sheet that is most likely its headings, where none of its words is known."""

from typing import Any

from tracker.intake.vocabulary.heading_forms import one_line
from tracker.office.sheet import Sheet

_LOOK = 30
"""Rows in which it may stand."""
_BELOW = 4
"""Rows below it that must look like rows of a table."""


def likely_headings(sheet: Sheet) -> list[str]:
    """The texts of the first line of several short, different words above rows that fill most of its columns."""
    for r, row in enumerate(sheet.rows[:_LOOK]):
        cells = {c: value for c, value in enumerate(row) if value is not None}
        if len(cells) >= 3 and all(map(_may_head, cells.values())) and len(set(cells.values())) == len(cells):
            below = [line for line in sheet.rows[r + 1 : r + 1 + _BELOW] if any(v is not None for v in line)]
            full = [
                line for line in below if sum(c < len(line) and line[c] is not None for c in cells) * 2 >= len(cells)
            ]
            if full and len(full) * 2 >= len(below):
                return [one_line(value) for value in cells.values()]
    return []


def _may_head(value: Any) -> bool:
    return (
        isinstance(value, str)
        and len(value) <= 40
        and sum(c.isalpha() for c in value) * 2 > len(value.replace(" ", ""))
    )
