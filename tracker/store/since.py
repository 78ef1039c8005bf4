"""What was entered since a plan was made: by the change log and the stockroom's book, from where they stood at its seal."""

from collections.abc import Iterator
from datetime import date
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import ColumnElement, func, select
from sqlalchemy.orm import Session

from tracker.domain.since import EnteredSince, RowChanged
from tracker.domain.tables import TABLES, Table
from tracker.store.models import MethodVersion, MovementRow, PlanRow, RowChangeRow, SealRow
from tracker.store.rows import Record, key_text, read_rows, typed_values
from tracker.store.stock import read_movements

TOLD = ("absences", "overtime", "closures", "crews", "running", "tools", "terms", "receipts", "parts")
"""Tables whose changes may take a booking's place away or give it another."""
BY_LOADS = ("added", "changed", "retired")
"""Kinds of change; the others say what came in of an order line."""


def since_plan(session: Session, number: int, zone: ZoneInfo) -> EnteredSince:
    """Since the plan of that number was saved; what was changed and changed back is left out."""
    mark = _Mark(session, number)
    methods = session.scalar(
        select(func.max(MethodVersion.version)).where(mark.after(MethodVersion, MethodVersion.version))
    )
    return EnteredSince(
        tuple(found for name in TOLD for found in _changed(session, TABLES[name], mark, zone)),
        tuple(read_movements(session, which=mark.after(MovementRow, MovementRow.id, MovementRow.entered_at))),
        _promised(session),
        methods if methods and methods > 1 else None,
    )


class _Mark:
    """Where each table of history stood when a plan was saved. Seals are kept in the order of the commits, and so tell apart
    what was written within one moment, as on a programme's own clock, which stands."""

    def __init__(self, session: Session, number: int):
        self.session = session
        self.at = session.scalar(select(PlanRow.made_at).where(PlanRow.id == number))
        self.seal = session.scalar(
            select(func.min(SealRow.id)).where(SealRow.table == PlanRow.__tablename__, SealRow.last_id >= number)
        )

    def after(self, model: Any, key: Any, at: Any = None) -> ColumnElement[bool]:
        """Rows written later; by their moment where none of the table was sealed before the plan."""
        sealed = select(func.max(SealRow.last_id)).where(SealRow.table == model.__tablename__, SealRow.id < self.seal)
        last = self.session.scalar(sealed) if self.seal else None
        return (at if at is not None else model.at) >= self.at if last is None else key > last


def _changed(session: Session, table: Table, mark: _Mark, zone: ZoneInfo) -> Iterator[RowChanged]:
    log = select(RowChangeRow.key, RowChangeRow.kind, RowChangeRow.values).where(
        RowChangeRow.table == table.name, RowChangeRow.kind.in_(BY_LOADS), mark.after(RowChangeRow, RowChangeRow.id)
    )
    first: dict[str, Record] = {}
    added: set[str] = set()
    for key, kind, values in session.execute(log.order_by(RowChangeRow.id)):
        if key not in first and kind == "added":
            added.add(key)
        first.setdefault(key, {})
        first[key] = {field: old for field, (old, _) in values.items()} | first[key]
    if not first:
        return
    rows = {key_text(key): record for key, record in read_rows(session, table, zone).items()}
    for key, olds in first.items():
        now = rows.get(key, {})
        was = {} if key in added else now | typed_values(table, olds)
        if was != now:
            yield RowChanged(table.name, was, now)


def _promised(session: Session) -> dict[tuple[str, str], date]:
    log = (
        select(RowChangeRow.key, RowChangeRow.values).where(RowChangeRow.table == "receipts").order_by(RowChangeRow.id)
    )
    found: dict[str, date] = {}
    for key, values in session.execute(log):
        if "due" in values and values["due"][1]:
            found[key] = date.fromisoformat(values["due"][1])
    return {order_and_part(key): due for key, due in found.items()}


def order_and_part(key: str) -> tuple[str, str]:
    order, _, part = key.rpartition(" | ")
    return order, part
