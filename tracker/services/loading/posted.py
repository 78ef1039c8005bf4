"""Rows that a program posts: written as a load would, all of them or none, and once for each key that the program gives.

What was answered to a key is kept in the same transaction as the rows, so that a program that heard no answer posts again and hears
the first one, whatever happened between.
"""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from hashlib import sha256
from typing import Any

from sqlalchemy import delete, select
from sqlalchemy.orm import Session

from tracker.domain.columns import Column, Kind
from tracker.domain.people import Role
from tracker.domain.rows import SourceTable
from tracker.domain.tables import TABLES
from tracker.errors import UsageError
from tracker.services.context import Actor, Context
from tracker.services.loading.by_hand import Given, type_in
from tracker.services.loading.load_report import LoadReport
from tracker.services.loading.permission import needed
from tracker.store import UnitOfWork
from tracker.store.models import AnsweredPostRow

POSTABLE = {
    "readings": frozenset({Role.PLANNER}),
    "set_values": frozenset({Role.FITTER}),
    "stops": frozenset({Role.FITTER}),
}
"""Tables that a program may add to, and in which role it does: what collects data of looms knows these."""
MOST_ROWS, LONGEST_KEY = 10_000, 200
KEPT = timedelta(days=30)
"""So long the answer to a key is kept."""
POSTED = "posted"
"""Where the rows stand, as the account of changes names it."""


@dataclass(frozen=True, slots=True)
class Post:
    token: int
    """Number of the token by which it came."""
    key: str
    table: str
    rows: Sequence[Given]
    """Field → value; moments as ISO 8601 text, in the mill's local time or with an offset."""

    @property
    def body_hash(self) -> str:
        return sha256(json.dumps([self.table, self.rows], sort_keys=True).encode()).hexdigest()


@dataclass(frozen=True, slots=True)
class Posted:
    record: Mapping[str, Any]
    """As `beamslot load --json` writes it."""
    written: bool
    again: bool = False
    """Whether it was written when the same was posted before."""


def fields_of(table: str) -> tuple[Column, ...]:
    """What a row of that table may hold. A waiver is a person's."""
    return tuple(column for column in TABLES[table].columns if not column.field.startswith("waived"))


def post_rows(context: Context, post: Post) -> Posted:
    """Write the rows, unless they were written under that key before. UsageError for rows that are none of that table, or a key
    under which something else was posted."""
    _check(post)
    context = context.acting(_in_its_role(context.actor, post.table))
    context.require(needed([SourceTable("", POSTED, post.table, 0)]))
    with context.reading() as uow:
        if known := _answered(uow.session, post):
            return known
    rows = [{name: _moment(post.table, name, value) for name, value in row.items()} for row in post.rows]
    try:
        report = type_in(context, post.table, rows, POSTED, lambda uow, done: _keep(uow, post, done))
    except _Meanwhile as other:
        return other.known
    return Posted(report.record(), report.written)


def _in_its_role(actor: Actor, table: str) -> Actor:
    """In the role that these rows take, where the actor has it among others."""
    return replace(actor, roles=actor.roles & POSTABLE[table] or actor.roles)


class _Meanwhile(Exception):
    """The same was posted by somebody else between the look and the write."""

    def __init__(self, known: Posted) -> None:
        super().__init__()
        self.known = known


def _check(post: Post) -> None:
    if post.table not in POSTABLE:
        raise UsageError("post-table", table=post.table, tables=sorted(POSTABLE))
    if not (1 <= len(post.key) <= LONGEST_KEY and post.key.isprintable()):
        raise UsageError("post-key", most=LONGEST_KEY)
    if not 1 <= len(post.rows) <= MOST_ROWS:
        raise UsageError("post-rows", rows=len(post.rows), most=MOST_ROWS)
    known = [column.field for column in fields_of(post.table)]
    for number, row in enumerate(post.rows, 1):
        if unknown := [name for name in row if name not in known]:
            raise UsageError("post-field", row=number, field=unknown[0], fields=known)


def _moment(table: str, field: str, value: Any) -> Any:
    """A text as the moment that it tells; one that tells none is refused by its row later."""
    if isinstance(value, str) and TABLES[table].column(field).kind is Kind.MOMENT:
        try:
            return datetime.fromisoformat(value)
        except ValueError:
            return value
    return value


def _answered(session: Session, post: Post) -> Posted | None:
    mine = AnsweredPostRow.token_id == post.token, AnsweredPostRow.key == post.key
    row = session.scalar(select(AnsweredPostRow).where(*mine))
    if row is None:
        return None
    if row.body_hash != post.body_hash:
        raise UsageError("post-key-used", key=post.key)
    return Posted(row.answer, True, again=True)


def _keep(uow: UnitOfWork, post: Post, report: LoadReport) -> None:
    """Keep the answer with the rows; forget those of long ago."""
    if known := _answered(uow.session, post):
        raise _Meanwhile(known)
    at = uow.now()
    uow.session.execute(delete(AnsweredPostRow).where(AnsweredPostRow.at < at - KEPT))
    answer = json.loads(json.dumps(report.record()))
    uow.session.add(AnsweredPostRow(token_id=post.token, key=post.key, body_hash=post.body_hash, answer=answer, at=at))
