"""What each row below a heading is: a row of the table, a repeated heading, a hall line, a total, a note."""

import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from enum import Enum
from typing import Any

from tracker.domain.tables import LOOMS
from tracker.domain.words import fold
from tracker.intake.halls import hall_in, row_in
from tracker.intake.headings import match_heading, one_line
from tracker.intake.layout import Block
from tracker.intake.report import raw_text
from tracker.intake.units import is_unit
from tracker.intake.vocabulary import tokens, vocabulary


class Sort(Enum):
    DATA = "data"
    EMPTY = "empty"
    HEADING = "repeated heading"
    SECTION = "section line"
    TOTAL = "total"
    NUMBERED = "numbered, otherwise empty"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class BodyRow:
    row: int
    sort: Sort
    hall: str | None = None
    """Hall of the section that the row stands in."""
    hall_row: str | None = None
    text: str = ""
    """What an ignored row says."""


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


def body_rows(block: Block) -> Iterator[BodyRow]:
    """The rows below the heading, each with its kind and the section that it stands in."""
    facts = _facts(block)
    hall = hall_above(block) if block.recognised.table is LOOMS else None
    hall_row: str | None = None
    for row in range(block.bottom + 1, block.end):
        cells = {c: v for c in block.columns if (v := block.sheet.value(row, c)) is not None}
        sort, text = _sort(block, facts, row, cells)
        if sort is Sort.SECTION:
            named = hall_in(text)
            hall, hall_row = (named, None) if named else (hall, row_in(text))
        yield BodyRow(row, sort, hall, hall_row, text)


def hall_above(block: Block) -> str | None:
    """The hall named in the title lines above a heading, the nearest first; in its own columns before others."""
    sheet = block.sheet
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


def _facts(block: Block) -> _Facts:
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
            {c: fold(one_line(v)) for c in block.columns if isinstance(v := sheet.value(r, c), str)}
            for r in range(block.top, block.bottom + 1)
        ],
    )


def shape(value: Any) -> str:
    """Figures as 9, letters as A, runs shortened: `A-07` → `A-9`."""
    if isinstance(value, float | int):
        return "9"
    return re.sub(r"9+", "9", re.sub(r"A+", "A", re.sub(r"[^\W\d_]", "A", re.sub(r"\d", "9", str(value)))))


def says_total(text: str) -> bool:
    """Does a cell begin like a sum line (`Summe Halle A`, `à reporter`, `合计`)?"""
    words = tokens(text)
    totals = vocabulary().words["total"]
    if any(" ".join(words[:size]) in totals for size in (1, 2, 3) if len(words) >= size):
        return not re.search(r"\d", text.partition(" ")[0])
    solid = "".join(words)
    return any(solid.startswith(word) for word in totals if len(word) > 1 and not word.isascii() and word[0] > "\u3000")


def _sort(block: Block, facts: _Facts, row: int, cells: dict[int, Any]) -> tuple[Sort, str]:
    if not cells:
        return Sort.EMPTY, ""
    texts = [one_line(v) for v in cells.values() if isinstance(v, str)]
    said = " | ".join(raw_text(v) for v in cells.values())[:120]
    if _repeats_heading(facts, cells) or _numbers_columns(block, row, cells) or _only_units(block, row, cells):
        return Sort.HEADING, said
    if facts.serial and set(cells) <= facts.serial:
        return Sort.NUMBERED, said
    first = cells[min(cells)]
    leads = [v for c, v in cells.items() if c == facts.key or c == min(cells)]
    if block.recognised.table.name != "terms" and any(isinstance(v, str) and says_total(v) for v in leads):
        return Sort.TOTAL, said
    if block.recognised.table is not LOOMS:
        return _sort_other(block, facts, cells, said)
    if len(set(map(str, cells.values()))) == 1 and isinstance(first, str) and (hall_in(first) or row_in(first)):
        return Sort.SECTION, first
    return _sort_loom(facts, cells, said, texts), said


def _sort_loom(facts: _Facts, cells: dict[int, Any], said: str, texts: list[str]) -> Sort:
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
    others = [v for c, v in cells.items() if c not in facts.serial]
    if (has_type and len(others) > 2) or len(mapped) * 2 >= len(facts.mapped):
        return Sort.TOTAL if not texts else Sort.DATA
    return Sort.NOTE if texts else Sort.TOTAL


def _sort_other(block: Block, facts: _Facts, cells: dict[int, Any], said: str) -> tuple[Sort, str]:
    needed = [c for col in block.recognised.table.columns if col.needed and (c := block.recognised.column_of(col.field)) is not None]  # fmt: skip  # noqa: E501
    missing = [c for c in needed if c not in cells]
    alone = len(cells) == 1 and len(block.columns) >= 3
    if block.recognised.table.name == "terms" and missing:
        return Sort.NOTE, said
    if alone and len(missing) >= len(needed) - 1 and isinstance(next(iter(cells.values())), str):
        return Sort.NOTE, said
    return Sort.DATA, said


def _repeats_heading(facts: _Facts, cells: dict[int, Any]) -> bool:
    for line in facts.heading_texts:
        same = sum(isinstance(v, str) and line.get(c) == fold(one_line(v)) for c, v in cells.items())
        if same >= max(2, 0.6 * len(cells)):
            return True
    return False


def _numbers_columns(block: Block, row: int, cells: dict[int, Any]) -> bool:
    """The line `1 2 3 4 …` that some forms put below the headings."""
    if row > block.bottom + 2 or len(cells) < 4:
        return False
    found = [str(int(v)) if isinstance(v, float | int) else str(v).strip("()") for v in cells.values()]
    return found == [str(i) for i in range(1, len(found) + 1)] or found == [
        chr(64 + i) for i in range(1, len(found) + 1)
    ]


def _only_units(block: Block, row: int, cells: dict[int, Any]) -> bool:
    return (
        row <= block.bottom + 2 and len(cells) >= 2 and all(isinstance(v, str) and is_unit(v) for v in cells.values())
    )
