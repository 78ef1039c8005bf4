"""A change of a load in the mill's words: its sheet, its row, its heading, and both values as the workbook shows them."""

from dataclasses import dataclass
from typing import Any

from tracker.domain.formats import shown
from tracker.domain.rows import Change, RowKey
from tracker.domain.tables import TABLES, TERMS, Kind
from tracker.domain.units import percent
from tracker.office.writing.values import workbook_value


@dataclass(frozen=True, slots=True)
class ToldChange:
    sheet: str
    row: str
    """Which row of the sheet: the words of its key."""
    heading: str
    old: str
    """Values as the mill would write them under the heading, `empty` where there is none; as is `new`."""
    new: str

    def line(self) -> str:
        return f"{self.sheet} {self.row}: {self.heading} {self.old} → {self.new}"


def told(change: Change) -> ToldChange:
    """The change of one value."""
    table = TABLES[change.table]
    column = next((column for column in table.columns if column.field == change.field), None)
    share = str(change.key[0]).endswith("(%)") if table is TERMS else bool(column and column.kind is Kind.FRACTION)
    kind = Kind.FRACTION if share else column.kind if column else Kind.ANY
    old, new = (_shown(value, kind) or "empty" for value in (change.old, change.new))
    return ToldChange(
        table.sheet, row_words(change.table, change.key), column.title if column else change.field, old, new
    )


def row_words(table_name: str, key: RowKey) -> str:
    """`007 Hall 1`: the key of a row as the workbook writes its parts."""
    table = TABLES[table_name]
    parts = zip(table.key, key, strict=True)
    return " ".join(_shown(part, table.column(name).kind) for name, part in parts if part is not None)


def _shown(value: Any, kind: Kind) -> str:
    """The value as the mill would write it under its heading: a share in percent, weekdays as words."""
    if kind is Kind.FRACTION and isinstance(value, float | int):
        return shown(percent(value))
    return shown(workbook_value(kind, value))
