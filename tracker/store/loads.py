"""Write what a load brings, row by row, and say later where a value came from."""

from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import chain, islice
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import delete, func, insert, select, update
from sqlalchemy.orm import Session

from tracker.domain.addresses import areas_in, column_letters
from tracker.domain.findings import Finding
from tracker.domain.quantities import tidy
from tracker.domain.rows import Change, RowKey, SourceTable, TypedRow
from tracker.domain.stock import MovementKind
from tracker.domain.tables import METHOD_TABLES, TABLES, Table
from tracker.store.models import (
    AnswerRow,
    FindingRow,
    HallRow,
    LoadRow,
    LoomRow,
    MethodVersion,
    MovementRow,
    ReadingRow,
    RowChangeRow,
    SourceTableRow,
    StandingRow,
    WarpRow,
)
from tracker.store.rows import MODELS, database_values, kept_values, key_text, plain, stock_on_hand
from tracker.words.findings import in_words

ORDER = list(TABLES)
"""Looms before what refers to them, parts before receipts."""
OF_SCENARIO = "scenario "
"""Before the name of a scenario, as the place from which its rows came when it was put in force."""
_AT_ONCE = 1_000
"""Rows written by one statement."""


@dataclass(frozen=True, slots=True)
class Origin:
    """Where a stored value came from."""

    at: datetime
    who: str
    file: str
    sheet: str
    cell: str
    old: Any
    new: Any
    comment: str = ""
    """What a comment on the cell said when it was loaded."""


@dataclass(frozen=True, slots=True)
class RowPlace:
    """Where the row of a change stood: index of its source table and row number."""

    source: int
    number: int


class LoadWriter:
    """Writes one load; the caller commits."""

    def __init__(self, session: Session, zone: ZoneInfo, at: datetime, who: str):
        self.session, self.zone, self.at, self.who = session, zone, at, who
        self.load_id = 0
        self.source_ids: list[int] = []

    def begin(self, files: Sequence[str], sources: Sequence[SourceTable]) -> None:
        """Record the load and the tables that it recognised."""
        load = LoadRow(at=self.at, who=self.who, files=list(files))
        self.session.add(load)
        self.session.flush()
        rows = [self._source_row(load.id, source) for source in sources]
        self.session.add_all(rows)
        self.session.flush()
        self.load_id, self.source_ids = load.id, [row.id for row in rows]

    def add_findings(self, findings: Sequence[Finding]) -> None:
        """Record what the load found."""
        if findings:
            records = [in_words(finding).record() | {"load_id": self.load_id} for finding in findings]
            self.session.execute(insert(FindingRow), records)

    def _source_row(self, load_id: int, source: SourceTable) -> SourceTableRow:
        columns = {c.field or c.heading: "".join(ch for ch in c.cell if ch.isalpha()) for c in source.columns if c.kept}
        if source.transposed:
            columns = {c.field or c.heading: "".join(ch for ch in c.cell if ch.isdigit()) for c in source.columns}
        return SourceTableRow(
            load_id=load_id, file=source.file, sheet=source.sheet, table=source.table,
            transposed=source.transposed, columns=columns,
        )  # fmt: skip

    def write(self, changes: Sequence[Change], places: Mapping[tuple[str, RowKey], RowPlace]) -> None:
        """Apply the changes table by table: `field` empty = a row to add, else one value of a row to change."""
        added: dict[str, dict[RowKey, Mapping[str, Any]]] = defaultdict(dict)
        changed: dict[str, dict[RowKey, list[Change]]] = defaultdict(lambda: defaultdict(list))
        for change in changes:
            if change.field:
                changed[change.table][change.key].append(change)
            else:
                added[change.table][change.key] = change.new
        for name in sorted(added.keys() | changed.keys(), key=ORDER.index):
            self._add(TABLES[name], added[name])
            self._change(TABLES[name], changed[name])
            self._log(name, added[name], changed[name], places)

    def retire(self, name: str, rows: Mapping[RowKey, Mapping[str, Any]]) -> None:
        """Take rows out that have ended; the change log keeps their values."""
        for key in rows:
            self.session.execute(delete(MODELS[name]).where(*self._where(TABLES[name], key)))
        self.session.execute(insert(RowChangeRow), [
            self._entry(name, key, "retired", {f: [plain(v), None] for f, v in values.items() if v is not None}, {})
            for key, values in rows.items()
        ])  # fmt: skip

    def _add(self, table: Table, rows: Mapping[RowKey, Mapping[str, Any]]) -> None:
        if not rows:
            return
        if table.name == "looms":
            self._add_halls({str(values["hall"]) for values in rows.values()})
        for some in _batches(rows.values()):
            records = [self._record(table, values) for values in some]
            self.session.execute(insert(MODELS[table.name]), _same_keys(records))
        if table.name == "parts":
            self._count_stock({str(values["part"]): values.get("on_hand") for values in rows.values()})

    def _record(self, table: Table, values: Mapping[str, Any]) -> dict[str, Any]:
        record = database_values(table, values, self.zone)
        if table.open_columns == "attributes":
            record["attributes"] = {h: v for h, v in kept_values(table, values).items() if v is not None}
        return record

    def _add_halls(self, halls: set[str]) -> None:
        known = set(self.session.scalars(select(HallRow.hall)))
        self.session.add_all(HallRow(hall=hall) for hall in sorted(halls - known))
        self.session.flush()

    def _count_stock(self, counted: Mapping[str, float | None]) -> None:
        """Book the difference between the counted stock and the ledger."""
        on_hand = stock_on_hand(self.session)
        for part, quantity in counted.items():
            difference = tidy((quantity or 0.0) - on_hand.get(part, 0.0))
            kind = MovementKind.COUNT if part in on_hand else MovementKind.OPENING
            if difference:
                self.session.add(
                    MovementRow(part=part, kind=kind, quantity=difference, at=self.at, who=self.who,
                                why="parts list loaded", entered_at=self.at)
                )  # fmt: skip

    def _change(self, table: Table, rows: Mapping[RowKey, Sequence[Change]]) -> None:
        for key, changes in rows.items():
            values = {change.field: change.new for change in changes}
            if table.name == "parts" and "on_hand" in values:
                self._count_stock({str(key[0]): values.pop("on_hand")})
            record = database_values(table, values, self.zone)
            kept = kept_values(table, values) if table.open_columns == "attributes" else {}
            where = self._where(table, key)
            if table.history:
                self._complete(MODELS[table.name], where, record)
                continue
            if kept:
                old = self.session.scalar(select(LoomRow.attributes).where(*where)) or {}
                record["attributes"] = {h: v for h, v in (old | kept).items() if v is not None}
            if record:
                self.session.execute(update(MODELS[table.name]).where(*where).values(**record))

    def _complete(self, model: Any, where: Sequence[Any], more: Mapping[str, Any]) -> None:
        """Add the row in force once more, with what it had left empty."""
        row = self.session.scalars(select(model).where(*where).order_by(model.id.desc()).limit(1)).one()
        old = {c.name: getattr(row, c.name) for c in model.__table__.columns if c.name != "id"}
        self.session.execute(insert(model), [old | dict(more)])

    def _where(self, table: Table, key: RowKey) -> list[Any]:
        values = database_values(table, dict(zip(table.key, key, strict=True)), self.zone)
        model = MODELS[table.name]
        return [getattr(model, field).is_not_distinct_from(value) for field, value in values.items()]

    def _log(self, name: str, added: Mapping[RowKey, Mapping[str, Any]], changed: Mapping[RowKey, Sequence[Change]],
             places: Mapping[tuple[str, RowKey], RowPlace]) -> None:  # fmt: skip
        said = (
            (key, "added", {f: [None, plain(v)] for f, v in values.items() if v is not None})
            for key, values in added.items()
        )
        says = (
            (key, "changed", {c.field: [plain(c.old), plain(c.new)] for c in changes})
            for key, changes in changed.items()
        )
        for some in _batches(chain(said, says)):
            entries = [self._entry(name, key, kind, values, places) for key, kind, values in some]
            self.session.execute(insert(RowChangeRow), entries)

    def _entry(self, name: str, key: RowKey, kind: str, values: dict[str, Any],
               places: Mapping[tuple[str, RowKey], RowPlace]) -> dict[str, Any]:  # fmt: skip
        place = places.get((name, key))
        return {
            "at": self.at, "who": self.who, "table": name, "key": key_text(key), "kind": kind, "values": values,
            "load_id": self.load_id or None, "number": place.number if place else None,
            "source_table_id": self.source_ids[place.source] if place else None,
        }  # fmt: skip

    def write_method(self, rows: Mapping[str, Sequence[TypedRow]], sources: Sequence[SourceTable]) -> int:
        """Add a method version from the rows of its tables; a table that the load does not bring keeps its rows."""
        version = self._next_version()
        for name in METHOD_TABLES:
            if name in rows:
                records = [self._method_record(version, row, sources[row.source]) for row in rows[name]]
            else:
                records = self._rows_of(name, version - 1, version)
            if records:
                self.session.execute(insert(MODELS[name]), _same_keys(records))
        return version

    def write_method_again(self, earlier: int) -> int:
        """Add a method version that is as an earlier one; gives its number."""
        version = self._next_version()
        for name in METHOD_TABLES:
            if records := self._rows_of(name, earlier, version):
                self.session.execute(insert(MODELS[name]), _same_keys(records))
        return version

    def _next_version(self) -> int:
        version = (self.session.scalar(select(func.max(MethodVersion.version))) or 0) + 1
        self.session.add(MethodVersion(version=version, at=self.at, who=self.who))
        self.session.flush()
        return version

    def _rows_of(self, name: str, earlier: int, version: int) -> list[dict[str, Any]]:
        """Rows of a method version, to be those of another."""
        model: Any = MODELS[name]
        query = select(model).where(model.version == earlier).order_by(model.id)
        return [_copy(row, version) for row in self.session.scalars(query)]

    def _method_record(self, version: int, row: TypedRow, source: SourceTable) -> dict[str, Any]:
        columns = {c.field or c.heading: "".join(ch for ch in c.cell if ch.isalpha()) for c in source.columns if c.kept}
        conditions = {h: plain(v) for h, v in row.kept.items() if v not in (None, "")}
        return dict(database_values(TABLES[row.table], row.values, self.zone)) | {
            "version": version, "conditions": conditions, "columns": columns,
            "sheet": source.sheet, "number": row.number,
        }  # fmt: skip

    def change_zone(self, old: ZoneInfo, new: ZoneInfo) -> None:
        """The mill's zone changes: moments that were given as wall clock time keep it."""
        for model, fields in ((WarpRow, ("read_at",)), (ReadingRow, ("read_at",)), (StandingRow, ("from_at", "to_at"))):
            for row in self.session.scalars(select(model)):
                for field in fields:
                    at = getattr(row, field)
                    if at is not None:
                        setattr(row, field, at.astimezone(old).replace(tzinfo=new))
        self.session.flush()
        self.zone = new


def _batches(rows: Iterable[Any]) -> Iterator[list[Any]]:
    """Rows some at a time: written all at once, 50,000 looms of 40 columns would stand in memory three times over."""
    left = iter(rows)
    while some := list(islice(left, _AT_ONCE)):
        yield some


def _same_keys(records: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Bulk inserts want every record to have the same keys."""
    keys = {key: None for record in records for key in record}
    return [{key: record.get(key) for key in keys} for record in records]


def _copy(row: Any, version: int) -> dict[str, Any]:
    values = {c.name: getattr(row, c.name) for c in row.__table__.columns if c.name != "id"}
    return values | {"version": version}


def read_answers(session: Session) -> dict[str, str]:
    """Question → the newest answer; those that were taken back are asked anew."""
    query = select(AnswerRow.question, AnswerRow.answer).order_by(AnswerRow.id)
    newest = {question: answer for question, answer in session.execute(query)}  # noqa: C416
    return {question: answer for question, answer in newest.items() if answer}


def add_answers(session: Session, answers: Mapping[str, str], at: datetime, who: str) -> None:
    """Remember answers that are new or differ from the one in force; an empty one takes back what was answered."""
    known = read_answers(session)
    new = {q: a for q, a in answers.items() if known.get(q, "") != a}
    session.add_all(AnswerRow(question=q, answer=a, at=at, who=who) for q, a in new.items())


def origin_of(session: Session, table: Table, key: RowKey, field: str) -> list[Origin]:
    """Every event that set a value, the newest first."""
    query = (
        select(RowChangeRow, SourceTableRow)
        .outerjoin(SourceTableRow, SourceTableRow.id == RowChangeRow.source_table_id)
        .where(RowChangeRow.table == table.name, RowChangeRow.key == key_text(key))
        .order_by(RowChangeRow.id.desc())
    )
    found = [(entry, source) for entry, source in session.execute(query) if field in entry.values]
    comments = _comments(session, [source.load_id for _, source in found if source])
    return [_origin(entry, source, field, comments) for entry, source in found]


def _origin(entry: RowChangeRow, source: SourceTableRow | None, field: str, comments: Sequence[FindingRow]) -> Origin:
    old, new = entry.values[field]
    if source is None:
        return Origin(entry.at, entry.who, "", "", "", old, new)
    place, cell = (source.load_id, source.file, source.sheet), _cell(entry, source, field)
    said = [one.raw for one in comments if (one.load_id, one.file, one.sheet) == place and _names(one.cell, cell)]
    return Origin(entry.at, entry.who, source.file, source.sheet, cell, old, new, " / ".join(said))


def _comments(session: Session, loads: Collection[int]) -> Sequence[FindingRow]:
    """The findings of some loads that say what comments on cells say."""
    about = (FindingRow.code == "cell-comment", FindingRow.load_id.in_(loads))
    return session.scalars(select(FindingRow).where(*about)).all() if loads else []


def _names(cells: str, cell: str) -> bool:
    """Is a cell among the cells of a finding?"""
    return any(r1 <= r <= r2 and c1 <= c <= c2 for r, c, *_ in areas_in(cell) for r1, c1, r2, c2 in areas_in(cells))


def _cell(entry: RowChangeRow, source: SourceTableRow, field: str) -> str:
    if field not in source.columns:
        return ""
    along, across = source.columns[field], entry.number
    return f"{column_letters(across or 0)}{along}" if source.transposed else f"{along}{across}"


def files_loaded(session: Session) -> set[str]:
    """Names of all files that were ever loaded."""
    return {name for files in session.scalars(select(LoadRow.files)) for name in files}
