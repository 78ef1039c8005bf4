"""Rows of the loaded tables, between the database and the plain records that loads, exports and the domain use."""

from collections.abc import Iterable, Mapping
from datetime import date, datetime, time
from functools import cache
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from tracker.domain.mill import LoomKey
from tracker.domain.quantities import tidy
from tracker.domain.rows import RowKey
from tracker.domain.tables import TABLES, Kind, Table
from tracker.store.base import Base
from tracker.store.models import (
    AbsenceRow,
    AlternativeRow,
    ArticleRow,
    BobbinRow,
    ChangeRow,
    CheckResultRow,
    CheckRow,
    ClosureRow,
    CrewRow,
    KitLineRow,
    LoomRow,
    MethodVersion,
    MovementRow,
    OperationRow,
    OvertimeRow,
    PartRow,
    PartUsedRow,
    ReadingRow,
    ReceiptRow,
    RunningRow,
    SetpointRow,
    SetValueRow,
    StandingRow,
    StopsRow,
    TermRow,
    ToolRow,
    WarpRow,
    WasteRow,
    WorkDoneRow,
)
from tracker.store.withdrawals import stands

Record = dict[str, Any]

MODELS: dict[str, type[Base]] = {
    "looms": LoomRow, "warps": WarpRow, "readings": ReadingRow, "articles": ArticleRow, "changes": ChangeRow,
    "standing": StandingRow, "parts": PartRow, "receipts": ReceiptRow, "crews": CrewRow, "absences": AbsenceRow,
    "overtime": OvertimeRow, "running": RunningRow,
    "closures": ClosureRow, "tools": ToolRow, "terms": TermRow, "operations": OperationRow, "kit_lines": KitLineRow,
    "choices": AlternativeRow, "setpoints": SetpointRow, "checks": CheckRow,
    "work_done": WorkDoneRow, "set_values": SetValueRow, "check_results": CheckResultRow, "parts_used": PartUsedRow,
    "stops": StopsRow, "waste": WasteRow, "bobbins": BobbinRow,
}  # fmt: skip

DERIVED = {"parts": {"on_hand"}}
"""Fields that are no column: stock on hand is the sum of the ledger."""


def read_rows(session: Session, table: Table, zone: ZoneInfo, of: LoomKey | None = None) -> dict[RowKey, Record]:
    """All rows of a table as typed records, kept headings beside the fields; moments in local time.

    Method tables give the version in force, in order, keyed (1,), (2,) …; of history the last row of each key is in force.
    `of`: only those of a loom, of a table that names looms.
    """
    if table.whole:
        return _method_rows(session, table)
    model = MODELS[table.name]
    on_hand = stock_on_hand(session) if table.name == "parts" else {}
    found: dict[RowKey, Record] = {}
    fields = [column.field for column in table.columns if column.field not in DERIVED.get(table.name, ())]
    moments = [column.field for column in table.columns if column.kind is Kind.MOMENT]
    kept = [model.attributes] if table.open_columns == "attributes" else []  # type: ignore[attr-defined]
    query = select(*(getattr(model, field) for field in fields), *kept)
    if of is not None:
        query = query.where(model.hall == of.hall, model.loom == of.loom)  # type: ignore[attr-defined]
    if table.history:
        query = query.where(stands(model)).order_by(model.id)  # type: ignore[attr-defined]
    for values in session.execute(query):
        record: Record = dict(zip(fields, values, strict=False))
        for field in moments:
            if record[field] is not None:
                record[field] = record[field].astimezone(zone).replace(tzinfo=None)
        if table.name == "parts":
            record["on_hand"] = on_hand.get(record["part"], 0.0)
        found[tuple(record[field] for field in table.key)] = record | (values[-1] if kept else {})
    return found


def _method_rows(session: Session, table: Table) -> dict[RowKey, Record]:
    model = MODELS[table.name]
    version = session.scalar(select(func.max(MethodVersion.version)))
    rows = session.scalars(select(model).where(model.version == version).order_by(model.id))  # type: ignore[attr-defined]
    return {
        (i,): {c.field: getattr(row, c.field) for c in table.columns} | row.conditions  # type: ignore[attr-defined]
        for i, row in enumerate(rows, 1)
    }


def stock_on_hand(session: Session) -> dict[str, float]:
    """Part → sum of its movements."""
    query = select(MovementRow.part, func.sum(MovementRow.quantity)).group_by(MovementRow.part)
    return {part: tidy(float(total)) for part, total in session.execute(query)}


def database_values(table: Table, values: Mapping[str, Any], zone: ZoneInfo) -> Record:
    """Fields that are columns of the table, moments as UTC."""
    fields, moments = _fields_of(table.name)
    return {
        field: value.replace(tzinfo=zone) if field in moments and value is not None and value.tzinfo is None else value
        for field, value in values.items()
        if field in fields
    }


@cache
def _fields_of(name: str) -> tuple[frozenset[str], frozenset[str]]:
    """The fields of a table that are columns of the database, and those of them that are moments."""
    columns = TABLES[name].columns
    moments = frozenset(column.field for column in columns if column.kind is Kind.MOMENT)
    return frozenset(column.field for column in columns) - DERIVED.get(name, set()), moments


def kept_values(table: Table, values: Mapping[str, Any]) -> Record:
    """Values under a heading of the mill's own."""
    fields = _fields_of(table.name)[0] | DERIVED.get(table.name, set())
    return {heading: plain(value) for heading, value in values.items() if heading not in fields}


_AS_IT_IS = frozenset({str, int, float, bool, type(None)})


def plain(value: Any) -> Any:
    """A value as JSON can hold it: dates and times as ISO text, weekdays as a list."""
    if type(value) in _AS_IT_IS:
        return value
    if isinstance(value, datetime | date | time):
        return value.isoformat()
    if isinstance(value, frozenset | set):
        return sorted(value)
    if isinstance(value, Mapping):
        return {str(key): plain(item) for key, item in value.items()}
    if isinstance(value, tuple | list):
        return [plain(item) for item in value]
    return value


def typed_values(table: Table, values: Mapping[str, Any]) -> Record:
    """Values of the change log, as the tables have them; moments in local time."""
    kinds = {column.field: column.kind for column in table.columns}
    return {field: _typed(kinds.get(field), value) for field, value in values.items()}


def _typed(kind: Kind | None, value: Any) -> Any:
    if value is None:
        return None
    match kind:
        case Kind.DATE:
            return date.fromisoformat(value)
        case Kind.MOMENT:
            return datetime.fromisoformat(value)
        case Kind.TIME:
            return time.fromisoformat(value)
        case Kind.WEEKDAYS:
            return frozenset(value)
    return value


def key_text(key: Iterable[Any]) -> str:
    """A row's key as the change log stores it."""
    return " | ".join("" if part is None else str(plain(part)) for part in key)


def check_models() -> list[str]:
    """Fields of the tables that have no column in their model; empty when both agree."""
    return [
        f"{table.name}.{column.field}"
        for table in TABLES.values()
        for column in table.columns
        if column.field not in DERIVED.get(table.name, ()) and not hasattr(MODELS[table.name], column.field)
    ]
