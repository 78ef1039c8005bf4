"""Addresses of cells as spreadsheets write them: `C7`, `A1:C3`."""

Cell = tuple[int, int]
"""(row, column), both from 1: `C7` is (7, 3)."""

Area = tuple[int, int, int, int]
"""(first row, first column, last row, last column), all from 1, ends included."""


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
    """`C7` → (7, 3)."""
    letters = name.rstrip("0123456789")
    return int(name[len(letters) :]), column_number(letters)


def area_of(reference: str) -> Area:
    """`A1:C3` → (1, 1, 3, 3)."""
    first, _, last = reference.replace("$", "").partition(":")
    return (*cell_of(first), *cell_of(last or first))


def cell_name(cell: Cell) -> str:
    """(7, 3) → `C7`."""
    return f"{column_letters(cell[1])}{cell[0]}"
