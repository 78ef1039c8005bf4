"""Rows between a file and the store: what a reader understood, where each value stood, and what a load would change."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from tracker.domain.account import Account
from tracker.domain.addresses import in_line
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
    told: bool = False
    """An answer, not its heading, says which field it is."""


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
        return in_line(heading, number, self.transposed) if heading else ""

    def row_cells(self, number: int) -> str:
        """Address of a row, from its first column to its last; `` where the table has no columns."""
        named = [column.cell for column in self.columns if column.cell]
        if not named:
            return ""
        first, last = (in_line(named[i], number, self.transposed) for i in (0, -1))
        return first if first == last else f"{first}:{last}"


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
    account: Account = field(default_factory=Account)
    """What became of every filled cell."""
