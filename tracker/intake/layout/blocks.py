"""Where the tables of a sheet are: heading rows (one to three lines), columns, tables beside and below each other."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Any

from tracker.domain.words import fold
from tracker.intake.answers import Called
from tracker.intake.layout.beside import goes_with, without_legend
from tracker.intake.layout.called import SaidAt, called
from tracker.intake.layout.joined_headings import certainty, join_headings
from tracker.intake.layout.named_looms import with_named_looms
from tracker.intake.layout.recognise import Recognised, recognise
from tracker.intake.layout.side_by_side import Group, groups_of
from tracker.intake.layout.told_apart import alike
from tracker.intake.vocabulary.heading_forms import one_line
from tracker.intake.vocabulary.headings import ENOUGH, Match, known_heading, match_heading
from tracker.intake.vocabulary.units import is_unit
from tracker.office.sheet import Sheet

MAX_LINES = 3
"""Lines of a heading."""
MAX_TRIES = 300
"""Rows of a sheet that are tried as headings: a sheet with more is none that a mill keeps."""
MAX_MISSES = 100
"""How many of these may be none: a table of other things holds heading words in many of its rows."""
MAX_COLUMNS = 500
"""Columns in which headings are looked for."""
_BROKEN_OFF = 2.0
"""What it takes from a heading that the row below belongs to it as well."""
_LOOK_BELOW = 30
"""Rows below a heading in which a column must hold something to count."""


@dataclass(slots=True)
class TableBlock:
    """One heading and the rows below it. Rows and columns count from 0."""

    sheet: Sheet
    top: int
    bottom: int
    """First and last heading line."""
    headings: dict[int, str]
    """Column → heading on one line."""
    recognised: Recognised
    end: int = 0
    """First row that is no longer below this heading."""
    heading_rows: dict[int, int] = field(default_factory=dict)
    """Column → row whose cell is named as the heading's cell."""
    shared: frozenset[int] = frozenset()
    """Columns that it shares with the other looms of each row."""
    joins: bool = False
    """It says more of the looms of another table, and is no list of its own."""

    def called(self, column: int) -> Called:
        """By what an answer may call a column."""
        return called(self.sheet, self.top, self.bottom, self.headings, column)

    @property
    def columns(self) -> list[int]:
        return sorted(self.headings)


@dataclass(frozen=True, slots=True)
class _Lines:
    """Lines of a sheet that may be a heading, and what is known of it beforehand."""

    sheet: Sheet
    top: int
    bottom: int
    said: SaidAt
    only: str
    """The one table that may be found; `` = any."""

    def recognised(self, headings: dict[int, str]) -> Recognised | None:
        said = self.said(self.sheet, self.top, self.bottom, headings)
        return recognise(headings, self.sheet.name, said=said, only=self.only)


def find_blocks(sheet: Sheet, said: SaidAt, only: str = "") -> list[TableBlock]:
    """The recognised tables of a sheet, top to bottom and left to right."""
    hits = _heading_hits(sheet)
    _add_named(hits, sheet, said)
    _add_told_apart(hits, sheet)
    blocks: list[TableBlock] = []
    done = -1
    tries = misses = 0
    rows = range(min(len(sheet.rows), MAX_TRIES)) if only else sorted(hits)
    for row in rows:
        heads = _may_head(sheet.rows[row], hits.get(row, {})) or (only and _may_be_heading(sheet, row))
        if row <= done or not heads:
            continue
        tries += 1
        if tries > MAX_TRIES or misses > MAX_MISSES:
            break
        found = _blocks_at(sheet, row, said, only, blocks)
        misses += not found
        if found:
            blocks.extend(block for block in found if not any(_continues(block, earlier) for earlier in blocks))
            done = max(block.bottom for block in found)
            for block in found:
                _leave_rows_of_others(block, [other for other in blocks if other not in found])
    _set_ends(sheet, blocks)
    return blocks


def _leave_rows_of_others(block: TableBlock, earlier: list[TableBlock]) -> None:
    """The heading of a table that begins beside a row of another one: what stands in that row is none of its headings."""
    for other in earlier:
        if not block.recognised.meanings.keys() & other.headings.keys():
            for column in block.headings.keys() & other.headings.keys():
                del block.headings[column]


def _may_head(row: list[Any], hits: dict[int, Match]) -> bool:
    """A row of data holds more figures than words that are headings by chance."""
    if len(hits) < 2:
        return False
    cells = [value for value in row if value is not None]
    texts = [value for value in cells if isinstance(value, str)]
    room = len(hits) - (len(cells) - len(texts))
    if room < 0 or (len(hits) * 4 < len(cells) and len(hits) < 5):
        return False
    return room >= sum(map(_is_figure, texts))


def _continues(block: TableBlock, earlier: TableBlock) -> bool:
    """The heading of a printed page again: the same words in the same columns."""
    return {c: fold(text) for c, text in block.headings.items()} == {
        c: fold(text) for c, text in earlier.headings.items()
    }


def _heading_hits(sheet: Sheet) -> dict[int, dict[int, Match]]:
    """Row → column → match, of the cells that a quick look takes for headings."""
    known: dict[str, Match | None] = {}
    hits: dict[int, dict[int, Match]] = {}
    for r, row in enumerate(sheet.rows):
        for c, value in enumerate(row[:MAX_COLUMNS] if len(row) > MAX_COLUMNS else row):
            if type(value) is str:
                if value not in known:
                    known[value] = known_heading(value)
                match = known[value]
                if match is not None:
                    hits.setdefault(r, {})[c] = match
    return hits


def _add_told_apart(hits: dict[int, dict[int, Match]], sheet: Sheet) -> None:
    """Add `Loom 1`, `Loom 2` where others are numbered like them: alone they may as well be names."""
    for r, row in enumerate(sheet.rows[:_LOOK_BELOW]):
        texts = {c: one_line(value) for c, value in enumerate(row[:MAX_COLUMNS]) if isinstance(value, str)}
        for c, text in alike(texts).items() if len(texts) > 3 else ():
            if text != texts[c]:
                hits.setdefault(r, {}).setdefault(c, Match(texts[c]))


def _add_named(hits: dict[int, dict[int, Match]], sheet: Sheet, said: SaidAt) -> None:
    """Add the cells that answers call a field: in a language that we do not know nothing else is a heading."""
    for r, row in enumerate(sheet.rows[:MAX_TRIES]):
        texts = {c: one_line(value) for c, value in enumerate(row[:MAX_COLUMNS]) if isinstance(value, str)}
        says = said(sheet, r, r, texts)
        for c, text in texts.items() if len(texts) > 1 else ():
            if says(c, text) is not None:
                hits.setdefault(r, {}).setdefault(c, Match(text))


def _blocks_at(sheet: Sheet, row: int, said: SaidAt, only: str, earlier: list[TableBlock]) -> list[TableBlock]:
    """The tables whose heading has a line in this row."""
    best: tuple[float, list[TableBlock]] = (0.0, [])
    for top, bottom in _windows(sheet, row, earlier):
        best = max(best, _scored(_Lines(sheet, top, bottom, said, only)), key=lambda one: one[0])
    if best[1]:  # a title above the heading adds nothing
        top, bottom = best[1][0].top, best[1][0].bottom
        shorter = [_scored(_Lines(sheet, later, bottom, said, only)) for later in range(top + 1, bottom + 1)]
        best = max([*reversed(shorter), best], key=lambda one: one[0])
    return [_with_units_row(block) for block in best[1]]


def _scored(lines: _Lines) -> tuple[float, list[TableBlock]]:
    """The tables under a heading of these lines, and how good they are together."""
    sheet, top, bottom = lines.sheet, lines.top, lines.bottom
    headings = with_named_looms(sheet, alike(join_headings(sheet, top, bottom)), bottom)
    blocks = [
        block
        for own, shared in _segments(lines, headings)
        if (block := _block(lines, {c: headings[c] for c in sorted(own + shared)}, shared))
    ]
    score = sum(block.recognised.score + 0.15 * _filled(sheet, block) for block in blocks) - 0.25 * (bottom - top)
    return score - _BROKEN_OFF * _goes_on_below(sheet, top, bottom), blocks


def _goes_on_below(sheet: Sheet, top: int, bottom: int) -> bool:
    """Does the next row only divide headings of this one: texts below a heading and below the empty cells to its right?"""
    if bottom + 1 >= len(sheet.rows):
        return False
    below = {c: v for c, v in enumerate(sheet.rows[bottom + 1]) if v is not None}
    divided = 0
    for c, value in below.items():
        if not isinstance(value, str) or len(value) > 30 or _is_figure(value):
            return False
        above = sheet.value(bottom, c)
        if above is None:
            divided += c - 1 in below
            if c - 1 not in below or not any(sheet.value(r, c) is None for r in range(top, bottom + 1)):
                return False
        elif above != value and not (c + 1 in below and sheet.value(bottom, c + 1) is None):
            return False
    return divided > 0


def _windows(sheet: Sheet, row: int, earlier: list[TableBlock]) -> Iterator[tuple[int, int]]:
    """(top, bottom) of the headings that may stand around a row, the smallest first."""
    floor = max((block.bottom + 1 for block in earlier), default=0)
    for size in range(1, MAX_LINES + 1):
        for top in range(row - size + 1, row + 1):
            bottom = top + size - 1
            lines = range(top, bottom + 1)
            if top >= floor and bottom < len(sheet.rows) and all(r == row or _may_be_heading(sheet, r) for r in lines):
                yield top, bottom


def _may_be_heading(sheet: Sheet, row: int) -> bool:
    """Only texts, several of them, none that is mostly figures."""
    cells = [value for value in sheet.rows[row] if value is not None]
    return len(cells) >= 2 and all(isinstance(v, str) and len(v) <= 60 and not _is_figure(v) for v in cells)


def _is_figure(text: str) -> bool:
    digits = sum(c.isdigit() for c in text)
    return digits * 2 > len(text.replace(" ", "")) and not is_unit(text)


def _segments(lines: _Lines, headings: dict[int, str]) -> list[Group]:
    """The columns of each table in a heading row: split where headings repeat, and at gaps between whole tables."""
    columns = sorted(headings)
    groups = groups_of(columns, headings) or [Group(part, []) for part in _split_repeats(columns, headings)]
    return [Group(part, group.shared) for group in groups for part in _split_gaps(lines, group, headings)]


def _split_repeats(columns: list[int], headings: dict[int, str]) -> list[list[int]]:
    """Tables of the same kind beside one another: the row of headings starts again."""
    texts = [fold(headings[c]) for c in columns]
    for start in range(min(3, len(texts))):
        again = [
            i
            for i in range(start + 2, len(texts) - 1)
            if texts[i] == texts[start]
            and texts[i + 1] == texts[start + 1]
            and certainty(headings[columns[i]]) >= ENOUGH
        ]
        if again:
            edges = [0, *(i - start for i in again), len(columns)]
            return [columns[a:b] for a, b in pairwise(edges)]
    return [columns]


def _split_gaps(lines: _Lines, group: Group, headings: dict[int, str]) -> list[list[int]]:
    """Different tables beside one another stand apart; an empty column inside one table splits nothing."""
    sheet, bottom = lines.sheet, lines.bottom

    def is_table(columns: list[int]) -> bool:
        return lines.recognised({c: headings[c] for c in sorted(columns + group.shared)}) is not None

    parts = [group.own[:1]]
    for column in group.own[1:]:
        if column == parts[-1][-1] + 1:
            parts[-1].append(column)
        else:
            parts.append([column])
    if len(parts) == 1:
        left = without_legend(sheet, parts[0], bottom)
        found = lines.recognised({c: headings[c] for c in sorted(parts[0] + group.shared)})
        fields = found.meanings.keys() if found else ()
        return parts if any(c in fields for c in parts[0] if c not in left) else [left]  # what is a field is no legend
    whole = [is_table(part) for part in parts]
    if not any(whole) and not is_table(group.own):
        return []
    if sum(whole) > 1:
        return [part for part, one in zip(parts, whole, strict=True) if one]
    main = max(range(len(parts)), key=lambda i: (whole[i], len(parts[i])))
    words = {fold(headings[c]) for c in parts[main]}
    kept = [
        part for i, part in enumerate(parts)
        if i == main or goes_with(
            sheet, parts[main], part, bottom, has_fields=_adds_fields(sheet, headings, parts[main], part),
            headed_again=any(fold(headings[c]) in words for c in part),
        )
    ]  # fmt: skip
    return [sorted(c for part in kept for c in part)]


def _adds_fields(sheet: Sheet, headings: dict[int, str], main: list[int], part: list[int]) -> bool:
    """Are all columns of a part fields that the table lacks without it?"""
    found = recognise({c: headings[c] for c in (*main, *part)}, sheet.name)
    return found is not None and all(c in found.meanings and found.meanings[c].certainty >= 0.9 for c in part)


def _block(lines: _Lines, headings: dict[int, str], shared: list[int]) -> TableBlock | None:
    sheet, top, bottom = lines.sheet, lines.top, lines.bottom
    found = lines.recognised(headings)
    if found is None or (sheet.transposed and len(found.meanings) < 4):
        return None
    if sheet.transposed:  # a title stands in the same line as the headings
        headings = {c: text for c, text in headings.items() if c in found.meanings or _has_values(sheet, c, bottom)}
    rows = {c: next((r for r in range(bottom, top - 1, -1) if sheet.value(r, c) is not None), bottom) for c in headings}
    return TableBlock(sheet, top, bottom, headings, found, heading_rows=rows, shared=frozenset(shared))


def _has_values(sheet: Sheet, column: int, bottom: int) -> bool:
    return any(sheet.value(row, column) is not None for row in range(bottom + 1, len(sheet.rows)))


def _filled(sheet: Sheet, block: TableBlock) -> int:
    """Columns with a heading that hold something below."""
    below = range(block.bottom + 1, min(len(sheet.rows), block.bottom + 1 + _LOOK_BELOW))
    return sum(any(sheet.value(r, c) is not None for r in below) for c in block.columns)


def _with_units_row(block: TableBlock) -> TableBlock:
    """A line of units below the headings belongs to them (`Speed` above `picks/min`), so does one in another language, with the
    columns that only it heads; both may be there."""
    if _takes_other_language(block):
        _takes_units(block)
    elif _takes_units(block):
        _takes_other_language(block)
    return block


def _line_below(block: TableBlock) -> dict[int, str]:
    """Column → text of the line below the headings."""
    row = block.bottom + 1
    line = block.sheet.rows[row] if row < len(block.sheet.rows) else []
    return {c: one_line(v).strip("()[]") for c, v in enumerate(line) if v is not None and v not in ("-", "–")}


def _takes_units(block: TableBlock) -> bool:
    texts = {c: text for c, text in _line_below(block).items() if c in block.headings}
    units = {column: text for column, text in texts.items() if is_unit(text)}
    if len(units) < 2 or not all(column in units or _heads_units(text) for column, text in texts.items()):
        return False
    for column, text in units.items():
        block.headings[column] = f"{block.headings[column]} ({text})"
    block.bottom += 1
    return True


def _takes_other_language(block: TableBlock) -> bool:
    texts = _line_below(block)
    if not _says_the_same(block, {c: text for c, text in texts.items() if c in block.headings}):
        return False
    block.bottom += 1
    for column in sorted(texts):  # one beside the others that has nothing to say in the first language
        if (
            column not in block.headings
            and column - 1 in block.headings
            and _has_values(block.sheet, column, block.bottom)
        ):
            block.headings[column], block.heading_rows[column] = texts[column], block.bottom
    return True


def _heads_units(text: str) -> bool:
    """`Unit`, `Einheit`: the word before the units of a list whose looms stand side by side."""
    return any(entry.field == "unit" and entry.weight >= ENOUGH for entry in match_heading(text).candidates)


def _says_the_same(block: TableBlock, texts: dict[int, str]) -> bool:
    """Does a line head most columns with other words for the same fields?"""
    meanings = block.recognised.meanings
    same = sum(
        any(entry.field == meanings[c].field and entry.weight >= ENOUGH for entry in match_heading(text).candidates)
        for c, text in texts.items()
        if c in meanings
    )
    return same >= 3 and same >= 0.6 * sum(c in meanings for c in texts)


def _set_ends(sheet: Sheet, blocks: list[TableBlock]) -> None:
    for block in blocks:
        below = [b.top for b in blocks if b.top > block.bottom and set(b.columns) & set(block.columns)]
        block.end = min(below, default=len(sheet.rows))
