"""Who did what, the newest first: the rows of history, each with the act that it was written by."""

import json
from bisect import bisect_left
from collections import defaultdict
from collections.abc import Callable, Iterator, Mapping
from contextlib import suppress
from datetime import datetime
from functools import partial
from heapq import merge
from typing import Any

from sqlalchemy import Select, select
from sqlalchemy.orm import Session

from tracker.domain.columns import word_named
from tracker.domain.mill import LoomKey
from tracker.domain.people import Deed
from tracker.domain.tables import TABLES, Column, Kind, Table
from tracker.domain.units import percent
from tracker.errors import Message, message
from tracker.office.writing.values import workbook_value
from tracker.store.loads import OF_SCENARIO
from tracker.store.models import (
    ActRow,
    AnswerRow,
    JobRow,
    LoadRow,
    MethodVersion,
    MovementRow,
    PhotoRow,
    PlanRow,
    RehearsalRow,
    RowChangeRow,
    SealRow,
    SeenAlarmRow,
    SourceTableRow,
    StageRow,
    WithdrawalRow,
)
from tracker.store.plans import ASIDE
from tracker.store.rows import key_text, typed_values

AT_ONCE = 500
"""Rows taken from the database at a time."""


class Acts:
    """Which act a row of history was written by, as the seals say: those of one unit of work follow that of its act, and share
    its moment."""

    def __init__(self, session: Session):
        self.acts = {row.id: row for row in session.scalars(select(ActRow))}
        self.ends: dict[str, list[int]] = defaultdict(list)
        self.by: dict[str, list[ActRow | None]] = defaultdict(list)
        self.tables: dict[int, set[str]] = defaultdict(set)
        """Number of an act → tables of history to which it added."""
        act, moment = None, None
        for _, at, table, last_id, _ in session.execute(select(SealRow.__table__).order_by(SealRow.id)):
            if table == ActRow.__tablename__:
                act, moment = self.acts.get(last_id), at
            self.ends[table].append(last_id)
            self.by[table].append(act if at == moment else None)
            if act and at == moment and table != ActRow.__tablename__:
                self.tables[act.id].add(table)

    def of(self, table: str, number: int) -> ActRow | None:
        place = bisect_left(self.ends[table], number)
        return self.by[table][place] if place < len(self.by[table]) else None


def read_deeds(
    session: Session, acts: Acts, loom: LoomKey | None = None, since: datetime | None = None
) -> Iterator[Deed]:
    """All of it, or of one loom, or from a moment on; taken from the database as it is asked for."""
    streams = (
        _stream(session, acts, _of(loom, model, _since(since, moment, select(model))))
        for model, (moment, _) in SOURCES.items()
        if loom is None or model is RowChangeRow or hasattr(model, "loom")
    )
    yield from merge(*streams, key=lambda deed: (deed.at, deed.act or 0), reverse=True)


def read_loads(session: Session, acts: Acts) -> Iterator[Deed]:
    """The loads alone, the newest first."""
    yield from _stream(session, acts, select(LoadRow))


def _since(since: datetime | None, moment: Any, query: Select) -> Select:
    return query if since is None else query.where(moment >= since)


def _of(loom: LoomKey | None, model: Any, query: Select) -> Select:
    if loom is None:
        return query
    if model is not RowChangeRow:
        return query.where(model.hall == loom.hall, model.loom == loom.loom)
    key = key_text((loom.loom, loom.hall))
    return query.where((model.key == key) | model.key.startswith(f"{key} | ", autoescape=True))


def _stream(session: Session, acts: Acts, query: Select) -> Iterator[Deed]:
    model = query.column_descriptions[0]["entity"]
    says: Callable[..., tuple[str, Message]] = SOURCES[model][1]
    if model is LoadRow:
        says = partial(says, _scenarios(session))
    for row in session.scalars(query.order_by(key_of(model).desc()).execution_options(yield_per=AT_ONCE)):
        if isinstance(row, ActRow) and not row.details:
            continue  # its rows of history tell it
        number = getattr(row, key_of(model).key)
        act = row if isinstance(row, ActRow) else acts.of(model.__tablename__, number)
        told, what = says(row)
        who = act.who if act else told
        yield Deed(
            act.at if act else _moment(row), who, told if told != who else "", tuple(act.roles) if act else (),
            act.through if act else "", what, model.__tablename__, number, act.id if act else None,
        )  # fmt: skip


def key_of(model: Any) -> Any:
    """The number of its rows."""
    return getattr(model, model.__mapper__.primary_key[0].key)


def _moment(row: Any) -> datetime:
    return getattr(row, "entered_at", None) or getattr(row, "made_at", None) or getattr(row, "began_at", None) or row.at


def _change(row: RowChangeRow) -> tuple[str, Message]:
    table = TABLES.get(row.table)
    fields = [
        _field(table, field, old, new)
        for field, (old, new) in row.values.items()
        if old != new and not (row.kind == "added" and table and field in table.key)
    ]
    key = list(_key_parts(table, row.key)) if table else [part for part in row.key.split(" | ") if part]
    sheet = table.named if table else row.table
    return row.who, message("deed-row", how=row.kind, table=sheet, key=key, fields=fields or None)


def _key_parts(table: Table, text: str) -> Iterator[Any]:
    """What tells a row from the others of its sheet, as the sheet has it; as it was kept where it cannot be taken apart."""
    parts = text.split(" | ")
    kinds = {field: table.column(field).kind for field in table.key}
    if len(parts) != len(kinds):
        yield text
        return
    for (field, kind), part in zip(kinds.items(), parts, strict=True):
        if part:
            kept = json.loads(part) if kind is Kind.WEEKDAYS else part
            yield workbook_value(kind, typed_values(table, {field: kept})[field])


def _field(table: Table | None, field: str, old: Any, new: Any) -> Message:
    column = next((column for column in table.columns if column.field == field), None) if table else None
    first, then = (_value(table, column, value) for value in (old, new))
    named = column.titled if column else field
    return message("deed-field", field=named, old=first, new=then or message("deed-none"))


def _value(table: Table | None, column: Column | None, value: Any) -> Message | None:
    """As the sheet has it; what cannot be read as that any more as it was kept."""
    if value is None:
        return None
    if table and column:
        with suppress(ValueError, TypeError):
            value = typed_values(table, {column.field: value})[column.field]
            if value in column.words:
                return word_named(value)
            value = percent(value) if column.kind is Kind.FRACTION else workbook_value(column.kind, value)
    return message("own-value", value=value)


def _movement(row: MovementRow) -> tuple[str, Message]:
    loom = LoomKey(row.hall, row.loom) if row.hall and row.loom else None
    return row.who, message(
        "deed-stock", kind=row.kind, part=row.part, quantity=row.quantity, loom=loom, why=row.why or None
    )


def _stage(row: StageRow) -> tuple[str, Message]:
    return row.who, message("deed-stage", loom=LoomKey(row.hall, row.loom), stage=row.stage, at=row.at, why=row.reason)


def _plan(row: PlanRow) -> tuple[str, Message]:
    how = "published" if row.published else "scenario" if row.scenario else "made"
    return row.who, message("deed-plan", how=how, number=str(row.id), scenario=row.scenario)


def _rehearsal(row: RehearsalRow) -> tuple[str, Message]:
    return row.who, message("deed-rehearsal", plan=str(row.plan_id))


def _job(row: JobRow) -> tuple[str, Message]:
    return row.who, message("deed-job", kind=row.kind)


def _scenarios(session: Session) -> dict[int, str]:
    """Number of a load → the scenario that it put in force: its rows come from no file."""
    place = SourceTableRow.sheet
    from_none = select(SourceTableRow.load_id, place).where(SourceTableRow.file == "", place.startswith(OF_SCENARIO))
    return {load: sheet.removeprefix(OF_SCENARIO) for load, sheet in session.execute(from_none)}


def _load(scenarios: Mapping[int, str], row: LoadRow) -> tuple[str, Message]:
    return row.who, message("deed-load", files=row.files or None, scenario=scenarios.get(row.id))


def _answer(row: AnswerRow) -> tuple[str, Message]:
    return row.who, message("deed-answer", question=row.question, answer=row.answer)


def _act(row: ActRow) -> tuple[str, Message]:
    said = row.details
    if "undoes" in said:
        return row.who, message("deed-undone", number=said["undoes"])
    if "backup" in said:
        return row.who, message("deed-backup", file=said["backup"])
    if "scenario" in said:
        return row.who, message("deed-scenario-aside", scenario=said["scenario"], aside=said[ASIDE] is not None)
    if "how" in said:
        return row.who, message("deed-person", how=said["how"], person=said["person"], roles=said.get("roles"))
    roles, by = said.get("roles"), said.get("by")
    why, address = said.get("why"), said.get("address", "")
    return row.who, message("deed-door", what=row.what, address=address, by=by, roles=roles, why=why)


def _method(row: MethodVersion) -> tuple[str, Message]:
    return row.who, message("deed-method", version=str(row.version))


def _seen_alarm(row: SeenAlarmRow) -> tuple[str, Message]:
    loom = LoomKey(row.hall, row.loom)
    return row.who, message("deed-alarm", loom=loom, setting=row.setting, side=row.side, why=row.why)


def _photo(row: PhotoRow) -> tuple[str, Message]:
    loom = LoomKey(row.hall, row.loom)
    return row.who, message("deed-photo", loom=loom, about=row.operation, remark=row.remark)


def _withdrawal(row: WithdrawalRow) -> tuple[str, Message]:
    loom, table = LoomKey(row.hall, row.loom), TABLES.get(row.table)
    return row.who, message("deed-withdrawn", loom=loom, table=table.sheet if table else row.table, why=row.why)


SOURCES: Mapping[Any, tuple[Any, Callable[..., tuple[str, Message]]]] = {
    RowChangeRow: (RowChangeRow.at, _change),
    MovementRow: (MovementRow.entered_at, _movement),
    StageRow: (StageRow.at, _stage),
    WithdrawalRow: (WithdrawalRow.at, _withdrawal),
    SeenAlarmRow: (SeenAlarmRow.at, _seen_alarm),
    PhotoRow: (PhotoRow.at, _photo),
    PlanRow: (PlanRow.made_at, _plan),
    RehearsalRow: (RehearsalRow.made_at, _rehearsal),
    JobRow: (JobRow.began_at, _job),
    LoadRow: (LoadRow.at, _load),
    MethodVersion: (MethodVersion.at, _method),
    AnswerRow: (AnswerRow.at, _answer),
    ActRow: (ActRow.at, _act),
}
"""Each table of history that says who → when a row of it was written down, and what it says; of a load, beside the names of the
scenarios that were put in force."""
