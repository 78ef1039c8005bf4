"""What one unit of work added to history, what stood before it and what came since: what an undo asks the database."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any, TypeGuard
from zoneinfo import ZoneInfo

from sqlalchemy import Column, ColumnElement, between, false, func, select
from sqlalchemy.orm import Session

from tracker.domain.rows import RowKey
from tracker.domain.stock import Movement
from tracker.domain.tables import TABLES
from tracker.store.base import Base
from tracker.store.deeds import key_of
from tracker.store.models import (
    ActRow,
    AnswerRow,
    MethodVersion,
    MovementRow,
    PlanRow,
    RowChangeRow,
    SealRow,
    WithdrawalRow,
)
from tracker.store.rows import MODELS, Record, key_text, read_rows
from tracker.store.since import BY_LOADS, order_and_part
from tracker.store.stock import read_movements
from tracker.store.withdrawals import stands


@dataclass(frozen=True, slots=True)
class Written:
    """One unit of work, as the seals tell it from the others."""

    act: ActRow
    first: Mapping[str, int]
    """Table → number of the first row that it added there."""
    last: Mapping[str, int]
    """Table → number of the last row that stood there when it was done."""

    def by_it(self, model: Any) -> ColumnElement[bool]:
        """Rows that it added."""
        first = self.first.get(model.__tablename__)
        return false() if first is None else between(key_of(model), first, self.last[model.__tablename__])

    def since(self, model: Any) -> ColumnElement[bool]:
        """Rows that were added later."""
        return key_of(model) > self.last.get(model.__tablename__, 0)


def written_by(session: Session, number: int) -> Written | None:
    """The unit of work of that number; None where there is none."""
    act = session.get(ActRow, number)
    of_acts = SealRow.table == ActRow.__tablename__
    seal = session.scalar(select(func.min(SealRow.id)).where(of_acts, SealRow.last_id >= number)) if act else None
    if act is None or seal is None:
        return None
    next_one = session.scalar(select(func.min(SealRow.id)).where(of_acts, SealRow.id > seal))
    before = _ends(session, SealRow.id < seal)
    mine = _ends(session, SealRow.id > seal, SealRow.at == act.at, *([SealRow.id < next_one] if next_one else []))
    return Written(act, {table: before.get(table, 0) + 1 for table in mine}, before | mine)


def _ends(session: Session, *which: ColumnElement[bool]) -> dict[str, int]:
    query = select(SealRow.table, func.max(SealRow.last_id)).where(*which).group_by(SealRow.table)
    return {table: number for table, number in session.execute(query)}  # noqa: C416


def undone_by(session: Session, what: str) -> dict[int, ActRow]:
    """Number of a unit of work → that which undid it and was not itself undone since. `what`: the permission that it takes."""
    by: dict[int, list[ActRow]] = {}
    for act in session.scalars(select(ActRow).where(ActRow.what == what).order_by(ActRow.id)):
        by.setdefault(act.details["undoes"], []).append(act)

    def standing(number: int) -> ActRow | None:
        return next((act for act in by.get(number, ()) if standing(act.id) is None), None)

    return {number: act for number in by if (act := standing(number))}


def added_rows(session: Session, written: Written, model: Any, standing: bool = True) -> Sequence[Any]:
    """Rows of history of looms that it added; those that count, or those that were withdrawn since."""
    counts = stands(model) if standing else ~stands(model)
    return session.scalars(select(model).where(written.by_it(model), counts).order_by(model.id)).all()


def later_rows(session: Session, written: Written, model: Any) -> Sequence[Any]:
    """Rows of history of looms that were added since and count."""
    return session.scalars(select(model).where(written.since(model), stands(model)).order_by(model.id)).all()


def counts(session: Session, model: Any, number: int) -> bool:
    """Whether the row of that number was not withdrawn."""
    return session.scalar(select(model.id).where(model.id == number, stands(model))) is not None


def withdrawal_of(session: Session, table: str, number: int) -> WithdrawalRow:
    """By which a row was withdrawn last."""
    w = WithdrawalRow
    query = select(w).where(w.table == table, w.row_id == number).order_by(w.id.desc()).limit(1)
    return session.scalars(query).one()


def entries_by(session: Session, written: Written) -> list[Movement]:
    """Entries in the stockroom's book that it made."""
    return read_movements(session, which=written.by_it(MovementRow))


def entries_since(session: Session, written: Written) -> list[Movement]:
    return read_movements(session, which=written.since(MovementRow))


def booked_parts(session: Session) -> set[str]:
    """Parts that the stockroom's book names."""
    return set(session.scalars(select(MovementRow.part).distinct()))


def plan_since(session: Session, written: Written) -> int | None:
    """Number of the last plan that was published since."""
    return session.scalar(select(func.max(PlanRow.id)).where(PlanRow.published, written.since(PlanRow)))


def versions(session: Session) -> list[MethodVersion]:
    """Of the method, oldest first."""
    return list(session.scalars(select(MethodVersion).order_by(MethodVersion.version)))


def given_answers(session: Session) -> list[AnswerRow]:
    """Oldest first."""
    return list(session.scalars(select(AnswerRow).order_by(AnswerRow.id)))


@dataclass(slots=True)
class ChangedBy:
    """Who changed a value of a row since."""

    who: str | None
    at: datetime | None


@dataclass(slots=True)
class RowStory:
    """A row of a table as the change log tells it; values as the log has them, None where there was no such row."""

    before: Record | None = None
    """Just before the unit of work."""
    after: Record | None = None
    """Just after it."""
    since: dict[str, ChangedBy] = field(default_factory=dict)
    """Field → who changed it last since; `` = the row."""


def row_stories(session: Session, written: Written) -> dict[str, dict[str, RowStory]]:
    """Table → key → story of every row whose values the unit of work changed."""
    query = select(RowChangeRow.table, RowChangeRow.key).where(written.by_it(RowChangeRow)).distinct()
    keys: dict[str, set[str]] = {}
    for table, key in session.execute(query):
        keys.setdefault(table, set()).add(key)
    return {table: _stories(session, written, table, of) for table, of in keys.items()}


def _stories(session: Session, written: Written, table: str, keys: Collection[str]) -> dict[str, RowStory]:
    """All of the log of the table is gone through once, however many rows are asked for."""
    log = RowChangeRow
    query = select(log.id, log.at, log.who, log.key, log.kind, log.values).where(log.table == table).order_by(log.id)
    first, last = written.first[log.__tablename__], written.last[log.__tablename__]
    found: dict[str, RowStory] = {}
    state: dict[str, Record | None] = {}
    for number, at, who, key, kind, values in session.execute(query.execution_options(yield_per=500)):
        if key not in keys:
            continue
        if number > last:
            found[key].since |= dict.fromkeys(("", *values), ChangedBy(who, at))
            continue
        if number >= first and key not in found:
            found[key] = RowStory(_before(state.get(key), kind, values))
        after = _after(state.get(key), kind, values)
        state[key] = (
            after | dict(zip(TABLES[table].key, order_and_part(key), strict=True)) if _is_line(after, table) else after
        )
        if key in found:
            found[key].after = state[key]
    return found


def _is_line(after: Record | None, table: str) -> TypeGuard[Record]:
    """An order line, whose entries in the log do not say its key again."""
    return after is not None and table == "receipts"


def _before(state: Record | None, kind: str, values: Mapping[str, Any]) -> Record | None:
    """As it stood before the entry. What was there before there was a log, its entries still say."""
    new = kind == "added" or (kind not in BY_LOADS and values.get("quantity", [0, 0])[0] is None)
    return None if new else (state or {}) | {name: old for name, (old, _) in values.items()}


def _after(state: Record | None, kind: str, values: Mapping[str, Any]) -> Record | None:
    if kind == "retired" or (kind not in BY_LOADS and values.get("quantity", [0, 0])[1] is None):
        return None  # an order line of which nothing is left to come is no longer open
    return (state or {}) | {name: new for name, (_, new) in values.items()}


def rests_on(session: Session, name: str, but: Mapping[str, Collection[str]], zone: ZoneInfo) -> dict[RowKey, str]:
    """Key of a row → another table that holds it there by a row of its own. `but`: table → keys, as the log has them, of rows
    that do not count."""
    found: dict[RowKey, str] = {}
    for table in Base.metadata.sorted_tables:
        for constraint in table.foreign_key_constraints:
            if constraint.referred_table is MODELS[name].__table__:
                held = {one.column.name: one.parent for one in constraint.elements}
                columns = [held[field] for field in TABLES[name].key]
                found |= dict.fromkeys(_held(session, columns, but.get(table.name), zone), table.name)
    return found


def _held(session: Session, columns: Sequence[Column], but: Collection[str] | None, zone: ZoneInfo) -> Iterator[RowKey]:
    if not but:
        yield from map(tuple, session.execute(select(*columns).distinct()))
        return
    for key, row in read_rows(session, TABLES[columns[0].table.name], zone).items():
        if key_text(key) not in but:
            yield tuple(row[column.name] for column in columns)
