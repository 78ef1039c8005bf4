"""What each row below a heading is: a row of the table, a repeated heading, a hall line, a total, a note.

READING.md, section 4.
"""

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from enum import Enum
from functools import lru_cache
from typing import Any

from tracker.domain.own_sheets import remarks_among
from tracker.domain.tables import LOOMS
from tracker.domain.words import fold
from tracker.intake.layout.blocks import TableBlock
from tracker.intake.report import raw_text
from tracker.intake.vocabulary.dictionary import tokens, vocabulary
from tracker.intake.vocabulary.halls import hall_in, row_in
from tracker.intake.vocabulary.headings import match_heading
from tracker.intake.vocabulary.placeholders import emptiness
from tracker.intake.vocabulary.units import is_unit


class Sort(Enum):
    DATA = "data"
    EMPTY = "empty"
    HEADING = "repeated heading"
    SECTION = "section line"
    TOTAL = "total"
    NUMBERED = "numbered, otherwise empty"
    NOTE = "note"
    LEFT_OUT = "left out as answered"


@dataclass(frozen=True, slots=True)
class BodyRow:
    row: int
    sort: Sort
    hall: str | None = None
    """Hall of the section that the row stands in."""
    hall_row: str | None = None
    text: str = ""
    """What an ignored row says."""
    machine_type: str = ""
    """Machine type that a line above the row names."""
    section: str = ""
    """The weaver's section that such a line names."""
    heads_rows: bool = False
    """Does it stand alone above rows, so that it may say something of them?"""


@dataclass(slots=True)
class _Facts:
    """What the rows of a block are judged by."""

    key: int | None
    """Column of the first key field."""
    mapped: list[int]
    wide: int
    """How many columns a row usually fills."""
    shapes: Counter[str] = field(default_factory=Counter)
    serial: frozenset[int] = frozenset()
    type_column: int | None = None
    heading_texts: list[dict[int, str]] = field(default_factory=list)


def body_rows(block: TableBlock) -> Iterator[BodyRow]:
    """The rows below the heading, each with its kind and the section that it stands in."""
    facts = _facts(block)
    hall = hall_above(block) if block.recognised.table is LOOMS else None
    hall_row: str | None = None
    columns, rows = block.columns, block.sheet.rows
    for row in range(block.bottom + 1, block.end):
        line = rows[row]
        cells = {c: line[c] for c in columns if c < len(line) and line[c] is not None}
        sort = _sort(block, facts, row, cells)
        text = ""
        if sort is Sort.SECTION:
            text = cells[min(cells)]
            named = hall_in(text)
            hall, hall_row = (named, None) if named else (hall, row_in(text))
        elif sort not in (Sort.DATA, Sort.EMPTY):
            text = " | ".join(raw_text(v) for v in cells.values())[:120]
        yield BodyRow(row, sort, hall, hall_row, text)


def hall_above(block: TableBlock) -> str | None:
    """The hall named in the title lines above a heading, the nearest first; in its own columns before others."""
    sheet = block.sheet
    if sheet.transposed and (hall := _hall_over_turned(block)):
        return hall
    first, last = block.columns[0], block.columns[-1]
    for within in (True, False):
        for row in range(block.top - 1, max(-1, block.top - 12), -1):
            cells = {c: v for c, v in enumerate(sheet.rows[row]) if v is not None}
            own = {c: v for c, v in cells.items() if first <= c <= last}
            if within and len(own) > 3:
                break
            for value in (own if within else cells).values():
                if isinstance(value, str) and not says_total(value) and (hall := hall_in(value, alone=len(own) == 1)):
                    return hall
    return None


def _hall_over_turned(block: TableBlock) -> str | None:
    """Where the sheet is turned, the title stands in the line of the headings, before the first of them."""
    for column in range(block.columns[0] - 1, max(-1, block.columns[0] - 5), -1):
        for row in range(block.top, block.bottom + 1):
            value = block.sheet.value(row, column)
            if isinstance(value, str) and not says_total(value) and (hall := hall_in(value)):
                return hall
    return None


def _facts(block: TableBlock) -> _Facts:
    sheet, meanings = block.sheet, block.recognised.meanings
    table = block.recognised.table
    key = next((c for col in table.columns if (c := block.recognised.column_of(col.field)) is not None), None)
    if table is LOOMS:
        key = block.recognised.column_of("loom")
    counts: Counter[int] = Counter()
    shapes: Counter[str] = Counter()
    for row in range(block.bottom + 1, block.end):
        filled = sum(sheet.value(row, c) is not None for c in block.columns)
        if filled:
            counts[filled] += 1
        if key is not None and filled > len(block.columns) / 2 and (value := sheet.value(row, key)) is not None:
            shapes[shape(value)] += 1
    return _Facts(
        key,
        sorted(meanings),
        counts.most_common(1)[0][0] if counts else 0,
        shapes,
        frozenset(c for c, text in block.headings.items() if match_heading(text).serial),
        block.recognised.column_of("machine_type"),
        [
            {c: v for c in block.columns if isinstance(v := sheet.value(r, c), str)}
            for r in range(block.top, block.bottom + 1)
        ],
    )


@lru_cache(maxsize=50_000)
def shape(value: Any) -> str:
    """Figures as 9, letters as A, runs shortened: `A-07` → `A-9`."""
    if isinstance(value, float | int):
        return "9"
    return re.sub(r"9+", "9", re.sub(r"A+", "A", re.sub(r"[^\W\d_]", "A", re.sub(r"\d", "9", str(value)))))


@lru_cache(maxsize=50_000)
def says_total(text: str) -> bool:
    """Is a cell that of a sum line (`Summe Halle A`, `Hall 1 total`, `à reporter`, `合计`)?"""
    if text[:1] in "Σ∑Ø":
        return True
    words = tokens(text)
    totals = vocabulary().words["total"]
    if any(" ".join(words[:size]) in totals for size in (1, 2, 3) if len(words) >= size):
        return not re.match(r"[^\W\d_]+[-_./]?\d", text)
    if 1 < len(words) <= 4 and words[-1] in totals and hall_in(text, alone=False):
        return True
    solid = "".join(words)
    return any(
        solid.startswith(word) or solid.endswith(word) for word in totals if len(word) > 1 and word[0] > "\u3000"
    )


def _sort(block: TableBlock, facts: _Facts, row: int, cells: dict[int, Any]) -> Sort:
    if not cells:
        return Sort.EMPTY
    if _repeats_heading(facts, cells) or _numbers_columns(block, row, cells) or _only_units(block, row, cells):
        return Sort.HEADING
    if facts.serial and set(cells) <= facts.serial:
        return Sort.NUMBERED
    if len(cells) > 1 and all(isinstance(v, str) and emptiness(v) == "placeholder" for v in cells.values()):
        return Sort.NOTE
    leads = (cells[min(cells)], cells.get(facts.key) if facts.key is not None else None)
    if block.recognised.table.name != "terms" and any(isinstance(v, str) and says_total(v) for v in leads):
        return Sort.TOTAL
    if block.recognised.table is not LOOMS:
        return _sort_other(block, cells)
    if _is_section(facts, cells, leads[0]):
        return Sort.SECTION
    if block.shared and block.shared.issuperset(cells):
        return Sort.EMPTY  # the row has a loom beside this place
    return _sort_loom(facts, cells)


def _is_section(facts: _Facts, cells: dict[int, Any], first: Any) -> bool:
    """A line that names the hall or row of the looms below it, alone or with a word or two (`Halle A | 40 Maschinen`)."""
    if not isinstance(first, str) or not (hall_in(first) or row_in(first)):
        return False
    alone = len(set(map(str, cells.values()))) == 1
    return alone or (len(cells) <= 3 and len(facts.mapped) > 4 and facts.shapes[shape(first)] == 0)


def _sort_loom(facts: _Facts, cells: dict[int, Any]) -> Sort:
    """A row of the loom list, or a line that only stands between the rows."""
    number = cells.get(facts.key) if facts.key is not None else None
    mapped = [c for c in cells if c in facts.mapped]
    has_type = facts.type_column in cells
    if number is not None:
        known = facts.shapes[shape(number)] > 0
        plausible = known or not isinstance(number, str) or (len(number) <= 14 and any(c.isdigit() for c in number))
        if (has_type and len(cells) > 2) or len(mapped) * 2 >= len(facts.mapped):
            return Sort.DATA
        if plausible and not (len(cells) <= 2 and len(facts.mapped) > 3 and not known):
            return Sort.DATA
        return Sort.NOTE
    texts = any(isinstance(v, str) for c, v in cells.items() if c not in facts.serial)
    enough = 0.35 if has_type else 0.5
    if len(mapped) >= enough * len(facts.mapped) and len(mapped) > 2:
        return Sort.DATA if texts else Sort.TOTAL
    return Sort.NOTE if texts else Sort.TOTAL


def _sort_other(block: TableBlock, cells: dict[int, Any]) -> Sort:
    """A row of another table; a lone text is a note, and a term without a value is not given."""
    found = block.recognised
    columns = (found.column_of(column.field) for column in found.table.columns if column.needed)
    needed = [c for c in columns if c is not None]
    missing = [c for c in needed if c not in cells]
    if found.table.name == "terms":
        not_given = Sort.EMPTY if remarks_among("terms", block.headings) else Sort.NOTE  # our template lists every term
        return not_given if missing else Sort.DATA
    alone = len(cells) == 1 and len(block.columns) >= 3 and isinstance(next(iter(cells.values())), str)
    return Sort.NOTE if alone and len(missing) >= len(needed) - 1 else Sort.DATA


def _repeats_heading(facts: _Facts, cells: dict[int, Any]) -> bool:
    for line in facts.heading_texts:
        if any(line.get(c) == v for c, v in cells.items()):
            same = sum(isinstance(v, str) and fold(line.get(c, "")) == fold(v) for c, v in cells.items())
            if same >= max(2, 0.6 * len(cells)):
                return True
    return False


def _numbers_columns(block: TableBlock, row: int, cells: dict[int, Any]) -> bool:
    """The line `1 2 3 4 …` that some forms put below the headings."""
    if row > block.bottom + 2 or len(cells) < 4:
        return False
    found = [str(int(v)) if isinstance(v, float | int) else str(v).strip("()") for v in cells.values()]
    return found == [str(i) for i in range(1, len(found) + 1)] or found == [
        chr(64 + i) for i in range(1, len(found) + 1)
    ]


def _only_units(block: TableBlock, row: int, cells: dict[int, Any]) -> bool:
    return (
        row <= block.bottom + 2 and len(cells) >= 2 and all(isinstance(v, str) and is_unit(v) for v in cells.values())
    )
