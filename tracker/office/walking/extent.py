"""How far the filled cells of a sheet reach, and how much text they repeat: what a reader would have to hold.

A grid reader keeps every cell of the box around the filled ones, so one stray value in the last row costs as much as a
full sheet, and one long shared text costs its length at every cell that refers to it.
"""

from dataclasses import dataclass, field

MAX_CELLS = 2_100_000
"""Cells of the box around the filled ones, of one sheet: 50,000 looms × 40 columns and what stands around them."""
MAX_TEXT_CHARS = 100_000_000
"""Characters of all text cells of one sheet together."""
GAP_ROWS = 3
"""Empty rows that stay of a longer gap when a sheet is compacted."""


@dataclass(slots=True)
class Extent:
    """What one sheet holds."""

    rows: list[int] = field(default_factory=list)
    """Filled rows, ascending, from 1; a run of rows repeated in the file is named by its first and last."""
    last_row: int = 0
    last_column: int = 0
    filled_rows: int = 0
    chars: int = 0

    @property
    def costly(self) -> bool:
        """Is the box of cells, or the text, more than a reader should hold?"""
        return self.last_row * self.last_column > MAX_CELLS or self.chars > MAX_TEXT_CHARS

    @property
    def compact_cells(self) -> int:
        """Cells of the box once gaps are closed to `GAP_ROWS`."""
        gaps = sum(min(GAP_ROWS, later - row - 1) for row, later in zip([0, *self.rows], self.rows, strict=False))
        return (self.filled_rows + gaps) * self.last_column

    def add_rows(self, first: int, last: int, columns: int, chars: int) -> None:
        """A filled row, or a run of equal ones; `columns`: up to which column they are filled."""
        self.rows.extend((first, last) if last > first else (first,))
        self.filled_rows += last - first + 1
        self.last_row = last
        self.last_column = max(self.last_column, columns)
        self.chars += chars
