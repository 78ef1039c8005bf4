"""What became of each filled cell of the files: READING.md, section 9. Every cell has one place, found row by row."""

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from tracker.domain.account import HEADING, OWN, REFUSED, TAKEN, Account, Aside, Filled, SheetAccount
from tracker.domain.addresses import Cell, range_name, ranges
from tracker.domain.own_sheets import OWN_TITLES
from tracker.intake.columns.table_reading import TableReading
from tracker.intake.layout.blocks import TableBlock
from tracker.intake.layout.body import Sort
from tracker.office.sheet import Sheet

_OF_ROWS = {
    Sort.HEADING: "heading again", Sort.SECTION: "section", Sort.TOTAL: "total", Sort.NOTE: "note", Sort.NUMBERED: "number",
    Sort.EMPTY: "note", Sort.LEFT_OUT: "left out",
}  # fmt: skip
Line = tuple["TableReading | TableBlock", str, int]
"""What a line of a sheet is to a table: (the table, what becomes of all its cells or TAKEN, index of the row)."""


@dataclass
class Files:
    """What was opened and recognised, gathered while the files are read."""

    sheets: list[Sheet] = field(default_factory=list)
    blocks: list[TableBlock] = field(default_factory=list)
    """Every table that was recognised, also those passed over."""
    left_out: list[Sheet] = field(default_factory=list)
    """Sheets that an answer leaves out."""

    def account(self, readings: Sequence[TableReading]) -> Account:
        rows: dict[tuple[int, int], list[int]] = defaultdict(lambda: [0, 0])
        numbers = {id(reading): i for i, reading in enumerate(readings)}
        found = []
        for sheet in self.sheets:
            blocks = [block for block in self.blocks if _is_of(block.sheet, sheet)]
            grid = blocks[0].sheet if blocks else sheet
            counts: Counter[str] = Counter()
            aside: dict[str, list[Cell]] = defaultdict(list)
            for r, c, what, reading in self._places(sheet, grid, blocks, readings):
                counts[what] += 1
                if reading is not None:
                    rows[numbers[id(reading)], grid.line_number(r)][what == OWN] += 1
                elif what not in (HEADING, REFUSED):
                    aside[what].append(grid.place(r, c))
            sets = tuple(Aside(what, counts.pop(what), _where(cells)) for what, cells in aside.items())
            found.append(SheetAccount(sheet.file, sheet.name, dict(counts), sets))
        return Account(tuple(found), {row: Filled(*both) for row, both in rows.items()})

    def _places(
        self, sheet: Sheet, grid: Sheet, blocks: Sequence[TableBlock], readings: Sequence[TableReading]
    ) -> Iterator[tuple[int, int, str, TableReading | None]]:
        """(row, column, what became of it, the table whose value it is) of every filled cell, once."""
        reason = "left out" if sheet in self.left_out else "own report" if is_own(sheet) else "sheet"
        lines = _lines_of(blocks, readings)
        first, last = min(lines, default=0), max(lines, default=-1)
        repeated = _merged_away(sheet)
        for r, row in enumerate(grid.rows):
            kinds = _kinds(lines[r], row) if r in lines else {}
            rest = reason if not blocks else "title" if r < first else "below" if r > last else "beside"
            for c, value in enumerate(row):
                if value is not None and not (repeated and grid.place(r, c) in repeated):
                    yield r, c, *kinds.get(c, (rest, None))


def _lines_of(blocks: Sequence[TableBlock], readings: Sequence[TableReading]) -> dict[int, list[Line]]:
    """Row → what it is to each of the tables, the leftmost first: what looms of a row share counts for the first."""
    lines: dict[int, list[Line]] = defaultdict(list)
    for block in blocks:
        reading = next((one for one in readings if one.block is block), None)
        for r in range(block.top, block.bottom + 1):
            lines[r].append((block, HEADING, 0))
        if reading is None:
            for r in range(block.bottom + 1, block.end):
                lines[r].append((block, "table", 0))
            continue
        for i, body in enumerate(reading.rows):
            what = REFUSED if i in reading.refused else "unfilled" if i in reading.unfilled else TAKEN
            lines[body.row].append((reading, what, i))
        for body in reading.others:
            lines[body.row].append((block, _OF_ROWS[body.sort], 0))
    return lines


def _kinds(lines: Sequence[Line], row: Sequence[object]) -> dict[int, tuple[str, TableReading | None]]:
    """Column → what became of the cell in this row, and whose value it is."""
    found: dict[int, tuple[str, TableReading | None]] = {}
    headless: set[int] = set()
    for of, what, i in lines:
        block = of.block if isinstance(of, TableReading) else of
        for c in block.columns:
            if c not in found and c < len(row):
                found[c] = _kind(of, i, c) if isinstance(of, TableReading) and what == TAKEN else (what, None)
        if isinstance(of, TableReading):
            headless.update(range(block.columns[0], block.columns[-1]))
    for c in headless.difference(found):
        found[c] = ("no heading", None)
    return found


def _kind(reading: TableReading, i: int, c: int) -> tuple[str, TableReading | None]:
    if (i, c) in reading.empties:
        return "empty value", None
    if c not in reading.values:
        return "column", None
    return (TAKEN if c in reading.block.recognised.meanings else OWN), reading


def _merged_away(sheet: Sheet) -> set[Cell]:
    """The cells of merged areas that repeat the first one, or would."""
    return {
        sheet.place(r, c)
        for r1, c1, r2, c2 in sheet.merged
        for r in range(r1, r2 + 1)
        for c in range(c1, c2 + 1)
        if (r, c) != (r1, c1)
    }


def _is_of(part: Sheet, sheet: Sheet) -> bool:
    """Is a sheet the same one, turned or in another order?"""
    return (part.file, part.name) == (sheet.file, sheet.name)


def is_own(sheet: Sheet) -> bool:
    """Is it a guide, a list of findings or of cards that we wrote?"""
    return bool(sheet.rows and sheet.rows[0] and sheet.rows[0][0] in OWN_TITLES)


def _where(cells: Sequence[Cell], most: int = 200) -> str:
    """Addresses in short; of many the range that holds them."""
    if len(cells) <= most:
        return ranges(cells)
    rows, columns = [row for row, _ in cells], [column for _, column in cells]
    return range_name((min(rows), min(columns)), (max(rows), max(columns)))
