"""Sheets whose cells know what they are, so that the truth can name them wherever a layout puts them."""

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any, NamedTuple

Tag = Hashable
"""What a cell is: (loom's key, column), ("head", column), or any other name a question wants to point at."""


class Cell(NamedTuple):
    value: Any
    tag: Tag = None
    code: str = ""
    """Number format, where it is not the general one."""


Row = list[Cell | None]


@dataclass
class Sheet:
    name: str
    rows: list[Row]
    merged: list[tuple[int, int, int, int]] = field(default_factory=list)
    """First row, first column, last row, last column; counted from 0."""
    hidden_rows: set[int] = field(default_factory=set)
    hidden: bool = False
    columns: list[str] = field(default_factory=list)
    """Names of the columns of the list, left to right; `` where there is none. Empty where rows cannot be put below it."""

    def places(self) -> Iterator[tuple[Tag, str]]:
        """(tag, address) of every cell that has a tag."""
        for r, row in enumerate(self.rows):
            for c, cell in enumerate(row):
                if cell is not None and cell.tag is not None:
                    yield cell.tag, f"{letters(c)}{r + 1}"


@dataclass
class File:
    name: str
    sheets: list[Sheet]
    encoding: str = "utf-8"
    delimiter: str = ";"
    odd_byte: bytes = b""
    """A byte that is no text in the encoding, put in place of `ODD`."""


LIST = "list"
"""Name of the file that holds the looms, without its ending."""

ODD = "\ue000"
"""Stands in a text for the odd byte of the file."""


def letters(column: int) -> str:
    """0 → A, 25 → Z, 26 → AA."""
    name = ""
    column += 1
    while column:
        column, rest = divmod(column - 1, 26)
        name = chr(65 + rest) + name
    return name


def row_of(values: Sequence[Any]) -> Row:
    """A row of cells without tags."""
    return [None if value is None else Cell(value) for value in values]


def beside(*parts: Sequence[Row]) -> list[Row]:
    """Rows of several parts side by side, each as wide as its widest row."""
    height = max(map(len, parts))
    found: list[Row] = [[] for _ in range(height)]
    for part in parts:
        width = max((len(row) for row in part), default=0)
        for r in range(height):
            row = list(part[r]) if r < len(part) else []
            found[r] += row + [None] * (width - len(row))
    return found


def turned(rows: Sequence[Row]) -> list[Row]:
    """Rows as columns."""
    width = max(map(len, rows))
    return [[row[c] if c < len(row) else None for row in rows] for c in range(width)]
