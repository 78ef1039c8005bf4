"""Saves whose ground has moved: what a form showed goes with what is saved, and where it is no longer so nothing is written; both
values are told, with who changed it and when.

    context = context.having_shown(OnTheForm("receipts", ("PO-1", "RAIL"), {"due": line.due}))
    expect(context, "PO-1", due=day)

It is looked at under the write lock, before anything else, for every service alike: each opens its unit of work by the context.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from tracker.domain.mill import LoomKey
from tracker.domain.people import Role
from tracker.domain.rows import Change
from tracker.domain.tables import TABLES
from tracker.errors import ChangedSince, Message, message
from tracker.intake.rows.compare import same
from tracker.services.loading.told_changes import told
from tracker.services.moved import Moved, value_of
from tracker.store import UnitOfWork
from tracker.store.ground import last_change, last_change_of_account, last_entry
from tracker.store.people import find_row
from tracker.store.rows import key_text, read_rows

STAGE, ROLES, PLAN = "stage", "roles", "plan"
"""What can be shown beside rows of tables. Each has one value, under its own name."""


@dataclass(frozen=True, slots=True)
class OnTheForm:
    """What a form showed. `table`: a table of the mill's workbook with a row's key in its order, moments local; or `stage` of a
    loom (`(loom, hall)`), `roles` of an account (`(name,)`), the number of the published `plan` (`()`)."""

    table: str
    key: tuple[Any, ...]
    values: Mapping[str, Any]
    """Field → value, None where there was none; `{"stage": Stage.IN_WORK}`."""


def refuse_moved(uow: UnitOfWork, shown: Iterable[OnTheForm]) -> None:
    """ChangedSince where something is no longer as it was shown."""
    moved = tuple(one.says(uow.zone) for what in shown for one in _moved(uow, what))
    if moved:
        raise ChangedSince("ground-moved", moved)


def _moved(uow: UnitOfWork, shown: OnTheForm) -> Iterator[Moved]:
    now = _NOW.get(shown.table, _row)(uow, shown)
    for field, then in shown.values.items():
        if not same(then, now.get(field)):
            what, one, other = _named(shown, field, then, now.get(field))
            who, at = _changed(uow, shown, field)
            yield Moved(what, who, at, one, other)


def _row(uow: UnitOfWork, shown: OnTheForm) -> Mapping[str, Any]:
    """The row as it is; nothing where it is gone."""
    table = TABLES[shown.table]
    named = dict(zip(table.key, shown.key, strict=True))
    of = LoomKey(named["hall"], named["loom"]) if {"loom", "hall"} <= named.keys() else None
    return read_rows(uow.session, table, uow.zone, of).get(shown.key, {})


def _stage(uow: UnitOfWork, shown: OnTheForm) -> Mapping[str, Any]:
    loom, hall = shown.key
    change = uow.stages().get(LoomKey(hall, loom))
    return {STAGE: change.stage if change else None}


def _roles(uow: UnitOfWork, shown: OnTheForm) -> Mapping[str, Any]:
    row = find_row(uow.session, shown.key[0])
    return {ROLES: tuple(map(Role, row.roles)) if row and not row.ended_at else None}


_NOW = {STAGE: _stage, ROLES: _roles, PLAN: lambda uow, _: {PLAN: uow.published_number()}}


def _named(shown: OnTheForm, field: str, then: Any, now: Any) -> tuple[Message, Any, Any]:
    """Which value it is, and both values, as the mill would write them."""
    match shown.table:
        case "stage":
            return message("undo-stage", loom=LoomKey(*reversed(shown.key))), _listed(then), _listed(now)
        case "roles":
            return message("ground-roles", person=shown.key[0]), _listed(then), _listed(now)
        case "plan":
            return message("ground-plan"), then, now
    change = told(Change(shown.table, shown.key, field, then, now))
    return value_of(shown.table, shown.key, field), change.old, change.new


def _listed(value: Any) -> Any:
    """Words of ours, said in the reader's language."""
    return value if value is None else message("just", value=value)


def _changed(uow: UnitOfWork, shown: OnTheForm, field: str) -> tuple[str | None, datetime | None]:
    """Who changed it last, and when."""
    if shown.table == STAGE:
        change = uow.stages().get(LoomKey(*reversed(shown.key)))
        return (change.who, change.at) if change else (None, None)
    if shown.table == PLAN:
        entry = next((one for one in uow.plan_entries() if one.number == uow.published_number()), None)
        return (entry.who, entry.made_at) if entry else (None, None)
    if shown.table == ROLES:
        return last_change_of_account(uow.session, shown.key[0])
    if (shown.table, field) == ("parts", "on_hand"):
        return last_entry(uow.session, shown.key[0])
    return last_change(uow.session, shown.table, key_text(shown.key), field)
