"""Addresses of cells as spreadsheets write them: `C7`, `A1:C3`, `C7, C12:C14`."""

import re
from collections.abc import Iterable

Cell = tuple[int, int]
"""(row, column), both from 1: `C7` is (7, 3)."""

Area = tuple[int, int, int, int]
"""(first row, first column, last row, last column), all from 1, ends included."""

_NAME = re.compile(r"\$?([A-Z]{1,3})\$?(\d+)")


def column_number(letters: str) -> int:
    """`A` → 1, `AA` → 27."""
    number = 0
    for letter in letters:
        number = number * 26 + ord(letter) - 64
    return number


def column_letters(number: int) -> str:
    """1 → `A`, 27 → `AA`."""
    letters = ""
    while number > 0:
        number, rest = divmod(number - 1, 26)
        letters = chr(65 + rest) + letters
    return letters


def cell_of(name: str) -> Cell:
    """`C7` → (7, 3). Raises ValueError for what is no address."""
    letters = name.rstrip("0123456789")
    return int(name[len(letters) :]), column_number(letters)


def cell_in(text: str) -> Cell | None:
    """`C7` or `$C$7` → (7, 3); None for anything else."""
    hit = _NAME.fullmatch(text.strip())
    return (int(hit[2]), column_number(hit[1])) if hit else None


def area_of(reference: str) -> Area:
    """`A1:C3` → (1, 1, 3, 3)."""
    first, _, last = reference.replace("$", "").partition(":")
    return (*cell_of(first), *cell_of(last or first))


def areas_in(text: str) -> list[Area]:
    """`C7, D9:C8` → [(7, 3, 7, 3), (8, 3, 9, 4)]; pieces that are no addresses are left out."""
    areas: list[Area] = []
    for piece in re.split(r"[,; ]+", text.strip()):
        first, _, last = piece.partition(":")
        start, end = cell_in(first), cell_in(last or first)
        if start and end:
            (r1, c1), (r2, c2) = start, end
            areas.append((min(r1, r2), min(c1, c2), max(r1, r2), max(c1, c2)))
    return areas


def cell_name(cell: Cell) -> str:
    """(7, 3) → `C7`."""
    return f"{column_letters(cell[1])}{cell[0]}"


def range_name(first: Cell, last: Cell) -> str:
    """(7, 3), (7, 5) → `C7:E7`; one cell stands alone."""
    return cell_name(first) if first == last else f"{cell_name(first)}:{cell_name(last)}"


def ranges(cells: Iterable[Cell]) -> str:
    """Addresses in short, runs down a column joined: `C7, C12:C14`."""
    runs: list[tuple[Cell, Cell]] = []
    for cell in sorted(set(cells), key=lambda c: (c[1], c[0])):
        if runs and cell == (runs[-1][1][0] + 1, runs[-1][1][1]):
            runs[-1] = (runs[-1][0], cell)
        else:
            runs.append((cell, cell))
    return ", ".join(range_name(*run) for run in runs)


def in_line(heading: str, number: int, transposed: bool = False) -> str:
    """The cell under a heading in row `number`: `C3`, 7 → `C7`; where the list lies on its side (`transposed`) the cell
    beside it in column `number`: `C3`, 7 → `G3`."""
    letters = heading.rstrip("0123456789")
    return f"{column_letters(number)}{heading[len(letters) :]}" if transposed else f"{letters}{number}"
