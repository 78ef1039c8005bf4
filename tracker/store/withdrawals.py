"""Rows of what was done that were withdrawn: they stay in their tables, and nothing counts them any more."""

from collections.abc import Iterable, Mapping
from datetime import datetime
from typing import Any

from sqlalchemy import ColumnElement, insert, select
from sqlalchemy.orm import Session, aliased

from tracker.domain.mill import LoomKey
from tracker.domain.progress import Withdrawal
from tracker.store.models import WithdrawalRow

_GONE, _BACK = aliased(WithdrawalRow), aliased(WithdrawalRow)
_UNDONE = select(_BACK.row_id).where(_BACK.table == WithdrawalRow.__tablename__)
"""Withdrawals that are themselves withdrawn, since they were undone."""


def stands(model: Any) -> ColumnElement[bool]:
    """The condition that a row of a table of history was not withdrawn, or its withdrawal was undone."""
    return model.id.not_in(select(_GONE.row_id).where(_GONE.table == model.__tablename__, _GONE.id.not_in(_UNDONE)))


def standing_rows(session: Session, model: Any, key: LoomKey) -> list[Any]:
    """The rows of a loom that count, oldest first."""
    query = select(model).where(model.hall == key.hall, model.loom == key.loom, stands(model)).order_by(model.id)
    return list(session.scalars(query))


def withdraw_rows(
    session: Session, key: LoomKey, rows: Mapping[str, Iterable[int]], at: datetime, who: str, why: str
) -> None:
    """Note that rows (table → numbers) count no more."""
    gone = [
        {"hall": key.hall, "loom": key.loom, "table": table, "row_id": number, "at": at, "who": who, "why": why}
        for table, numbers in rows.items()
        for number in numbers
    ]
    session.execute(insert(WithdrawalRow), gone)


def read_withdrawals(session: Session, key: LoomKey) -> list[Withdrawal]:
    """What of a loom was withdrawn and stays so, oldest first."""
    of_rows = WithdrawalRow.table != WithdrawalRow.__tablename__, stands(WithdrawalRow)
    query = select(WithdrawalRow).where(WithdrawalRow.hall == key.hall, WithdrawalRow.loom == key.loom, *of_rows)
    rows = session.scalars(query.order_by(WithdrawalRow.id))
    return [Withdrawal(row.table, row.row_id, row.at, row.who, row.why) for row in rows]
