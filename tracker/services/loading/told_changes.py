"""A change of a load as the mill's workbook has it: its sheet, its row, its heading, and both values."""

from dataclasses import dataclass
from typing import Any

from tracker.domain.rows import Change, RowKey
from tracker.domain.tables import TABLES, TERMS, Kind
from tracker.domain.units import percent
from tracker.errors import Message, message
from tracker.office.writing.values import workbook_value


@dataclass(frozen=True, slots=True)
class ToldChange:
    sheet: Message
    row: tuple[Any, ...]
    """Which row of the sheet: the values of its key."""
    heading: Message | str
    """One of the mill's own as it is."""
    old: Any
    """Values as the mill would write them under the heading, None where there is none; as is `new`."""
    new: Any

    @property
    def says(self) -> Message:
        old, new = (
            message("empty-value") if value is None else message("own-value", value=value)
            for value in (self.old, self.new)
        )
        return message("value-changed", sheet=self.sheet, row=self.row, heading=self.heading, old=old, new=new)


def told(change: Change) -> ToldChange:
    """The change of one value."""
    table = TABLES[change.table]
    column = next((column for column in table.columns if column.field == change.field), None)
    share = str(change.key[0]).endswith("(%)") if table is TERMS else bool(column and column.kind is Kind.FRACTION)
    kind = Kind.FRACTION if share else column.kind if column else Kind.ANY
    old, new = (_shown(value, kind) for value in (change.old, change.new))
    heading = column.titled if column else change.field
    return ToldChange(table.named, row_named(change.table, change.key), heading, old, new)


def row_named(table_name: str, key: RowKey) -> tuple[Any, ...]:
    """`("007", "Hall 1")`: the key of a row as the workbook writes its parts; those that are empty left out."""
    table = TABLES[table_name]
    parts = zip(table.key, key, strict=True)
    return tuple(_shown(part, table.column(name).kind) for name, part in parts if part is not None)


def _shown(value: Any, kind: Kind) -> Any:
    """The value as the mill would write it under its heading: a share in percent, weekdays as words."""
    if kind is Kind.FRACTION and isinstance(value, float | int):
        return percent(value)
    return workbook_value(kind, value)
