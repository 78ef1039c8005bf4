"""A sheet as the reader sees it: cleaned cell values, and what a grid reader leaves out beside them."""

import unicodedata
from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from tracker.domain.addresses import Area, Cell, cell_name, cell_of, range_name

_BLANKS = dict.fromkeys(
    map(ord, "\u00a0\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u3000"), " "
)
_NOTHING = dict.fromkeys(map(ord, "\u200b\u200c\u200d\u200e\u200f\ufeff\u2060\u00ad"))
_TABLE = {**_BLANKS, **_NOTHING}


def clean(text: str) -> str:
    """The text without outer and invisible blanks, every kind of blank as a plain one, letters composed (NFC)."""
    if text.isascii():
        return text.strip()
    return unicodedata.normalize("NFC", text.translate(_TABLE)).strip()


@dataclass(slots=True)
class Extras:
    """What a sheet shows beside its values. Cells are (row, column) from 1 as in the file."""

    hidden: bool = False
    codes: dict[Cell, str] = field(default_factory=dict)
    """Filled cells whose number format matters → its code: `000`, `"A-"0`, `0.0" cm"`, `0%`, `dd/mm/yyyy`.

    `[$-x-sysdate]` stands for the date format of whatever computer shows the file, so it proves no order.
    """
    hidden_rows: frozenset[int] = frozenset()
    hidden_columns: frozenset[int] = frozenset()
    merged: tuple[Area, ...] = ()
    """As the file says: an area may reach far beyond the filled cells, so clip it before filling."""
    filtered: str = ""
    """Range of the list that a filter is set on: `A1:O161`; `` = none."""
    no_value: set[Cell] = field(default_factory=set)
    """Formulas without a cached value."""
    errors: dict[Cell, str] = field(default_factory=dict)
    """Error cells: `#REF!`."""
    struck: set[Cell] = field(default_factory=set)
    """Filled cells whose text is struck through, wholly or in part."""
    comments: dict[Cell, str] = field(default_factory=dict)
    """Cell → what a comment on it says, filled or not; ours are none."""
    lost_letters: list[Cell] = field(default_factory=list)
    """Of a text file: cells with a byte that is no letter in its code page, shown as U+FFFD."""
    code_pages: tuple[tuple[str, str], ...] = ()
    """Of a text file that may be in several: (code page, how it reads the first word that tells)."""


@dataclass(frozen=True, slots=True)
class Mark:
    """Stands in the grid where a cell holds no value that could be read."""

    kind: str
    """`error`, `formula` for a formula without a cached value, `empty text` for one that gave nothing, or gives nothing
    yet: an old .xls does not tell."""
    text: str


@dataclass
class Sheet:
    """Rows and columns count from 0 here; `name_of` gives the address as the spreadsheet shows it."""

    file: str
    name: str
    rows: list[list[Any]]
    """Cleaned values; empty cells are None. Rows may be of different lengths."""
    extras: Extras
    row_number: Callable[[int], int] | None = None
    """Row number in the user's file (from 1) of a row given from 1, where rows were left out."""
    transposed: bool = False

    @cached_property
    def width(self) -> int:
        return max((len(row) for row in self.rows), default=0)

    @property
    def hidden(self) -> bool:
        return self.extras.hidden

    def value(self, row: int, column: int) -> Any:
        cells = self.rows[row]
        return cells[column] if column < len(cells) else None

    def place(self, row: int, column: int) -> Cell:
        """(row, column) from 1 in the user's file."""
        if self.transposed:
            row, column = column, row
        number = self.row_number(row + 1) if self.row_number else row + 1
        return number, column + 1

    def name_of(self, row: int, column: int) -> str:
        return cell_name(self.place(row, column))

    def value_at(self, address: str) -> Any:
        """What stands in a cell named as the user's file names it; None for an empty one, and beyond the filled part."""
        number, column = cell_of(address)
        row = number - 1
        if self.row_number:
            row = next((i for i in range(len(self.rows)) if self.row_number(i + 1) == number), -1)
        if self.transposed:
            row, column = column - 1, row + 1
        return self.value(row, column - 1) if 0 <= row < len(self.rows) else None

    def line_number(self, row: int) -> int:
        """Number of a row as the spreadsheet counts; the column's number where transposed."""
        return self.place(row, 0)[1 if self.transposed else 0]

    def row_range(self, row: int, columns: list[int]) -> str:
        """Address of a row's cells: `A7:N7`."""
        return range_name(self.place(row, min(columns)), self.place(row, max(columns)))

    def lone_texts(self) -> list[str]:
        """The texts that stand alone in their rows."""
        filled = ([value for value in row if value is not None] for row in self.rows)
        return [values[0] for values in filled if len(values) == 1 and isinstance(values[0], str)]

    @cached_property
    def coded_columns(self) -> set[int]:
        """Columns with a cell whose number format matters."""
        at = 0 if self.transposed else 1
        codes = self.extras.codes
        if not self.transposed or self.row_number is None:
            return {cell[at] - 1 for cell in codes}
        return set(range(self.width)) if codes else set()

    @cached_property
    def merged(self) -> list[Area]:
        """Merged areas from 0, ends included, clipped to the filled part."""
        height = len(self.rows)
        areas = [(r1 - 1, c1 - 1, r2 - 1, c2 - 1) for r1, c1, r2, c2 in self.extras.merged]
        if self.transposed:
            areas = [(c1, r1, c2, r2) for r1, c1, r2, c2 in areas]
        return [
            (r1, c1, min(r2, height - 1), min(c2, self.width - 1))
            for r1, c1, r2, c2 in areas
            if r1 < height and c1 < self.width
        ]

    def turned(self) -> "Sheet":
        """The same sheet with rows and columns exchanged; addresses stay those of the file."""
        width = self.width
        rows = [[row[c] if c < len(row) else None for row in self.rows] for c in range(width)]
        turned = Sheet(self.file, self.name, rows, self.extras, self.row_number, transposed=True)
        _fill_merged(turned)
        return turned


def marked(sheet: Sheet) -> Sheet:
    """The sheet with marks in place of error cells and unvalued formulas, and merged columns filled downwards."""
    marks = {cell: Mark("error", text) for cell, text in sheet.extras.errors.items()}
    marks |= {cell: Mark("formula", "formula without a value") for cell in sheet.extras.no_value}
    index = {sheet.row_number(i + 1): i for i in range(len(sheet.rows))} if sheet.row_number and marks else None
    for (number, column), mark in marks.items():
        row = number - 1 if index is None else index.get(number, -1)
        if 0 <= row < len(sheet.rows) + 10_000:
            _set(sheet.rows, row, column - 1, mark)
    sheet.__dict__.pop("width", None)
    _fill_merged(sheet)
    return sheet


def _fill_merged(sheet: Sheet) -> None:
    """The value of a merged area in every row of its first column."""
    for r1, c1, r2, _ in sheet.merged if sheet.row_number is None else ():
        value = sheet.value(r1, c1)
        if r2 > r1 and value is not None:
            for row in range(r1 + 1, r2 + 1):
                if sheet.value(row, c1) is None:
                    _set(sheet.rows, row, c1, value)


def _set(rows: list[list[Any]], row: int, column: int, value: Any) -> None:
    while len(rows) <= row:
        rows.append([])
    cells = rows[row]
    cells.extend([None] * (column + 1 - len(cells)))
    cells[column] = value
