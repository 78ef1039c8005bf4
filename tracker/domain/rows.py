"""Rows between a file and the store: what a reader understood, where each value stood, and what a load would change."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from tracker.domain.findings import Finding

RowKey = tuple[Any, ...]
"""Values of the key columns of a table, in `Table.key` order (None where empty)."""


@dataclass(frozen=True, slots=True)
class SourceColumn:
    heading: str
    """As the file writes it; two-line headings joined by a space."""
    cell: str
    """Address of the heading: `C4`."""
    field: str
    """Field of the table; `` where the column is kept under its own heading or ignored."""
    unit: str = ""
    certainty: float = 1.0
    """0 to 1."""
    kept: bool = True
    """False where the column is ignored."""


@dataclass(frozen=True, slots=True)
class SourceTable:
    """One table recognised in a file."""

    file: str
    sheet: str
    table: str
    heading_row: int
    """As the spreadsheet counts (1 = first); the heading column where `transposed`."""
    columns: tuple[SourceColumn, ...] = ()
    transposed: bool = False

    def cell_of(self, field: str, number: int) -> str:
        """The cell of a row (its `TypedRow.number`) under the column of a field; `` where the file has no such column."""
        heading = next((column.cell for column in self.columns if column.field == field), "")
        letters, digits = heading.rstrip("0123456789"), heading.lstrip("ABCDEFGHIJKLMNOPQRSTUVWXYZ")
        if not heading:
            return ""
        return f"{_letters(number)}{digits}" if self.transposed else f"{letters}{number}"


def _letters(number: int) -> str:
    """Column number → letters: 1 → A, 27 → AA."""
    text = ""
    while number:
        number, rest = divmod(number - 1, 26)
        text = chr(65 + rest) + text
    return text


@dataclass(frozen=True, slots=True)
class TypedRow:
    """One row that reads without fault.

    `values` holds only fields that the file has a column for; empty cells are None.
    """

    table: str
    values: Mapping[str, Any]
    kept: Mapping[str, Any] = field(default_factory=dict)
    """Heading → value of the columns kept under their own heading (attributes, condition columns)."""
    source: int = 0
    """Index into the list of source tables of the load."""
    number: int = 0
    """Row number as the spreadsheet counts (column number where transposed)."""


@dataclass(frozen=True, slots=True)
class Change:
    """A value that a load changes; a row to add has one Change with field `` and new = all its values."""

    table: str
    key: RowKey
    field: str
    old: Any
    new: Any


@dataclass(slots=True)
class RowCounts:
    added: int = 0
    changed: int = 0
    unchanged: int = 0
    refused: int = 0
    ignored: int = 0


@dataclass(frozen=True, slots=True)
class ReadResult:
    """What a set of files says, before it is compared with the store."""

    tables: tuple[SourceTable, ...]
    rows: tuple[TypedRow, ...]
    findings: tuple[Finding, ...]
    refused: Mapping[int, int] = field(default_factory=dict)
    """Source table index → rows refused."""
    ignored: Mapping[int, int] = field(default_factory=dict)
    """Source table index → rows passed over (titles, sums, repeated headings, notes)."""
    answers_used: Mapping[str, str] = field(default_factory=dict)
    """Heading → answer that settled a question in this read, given now or remembered."""
