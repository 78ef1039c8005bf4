"""History is only ever added to: the database itself refuses all else, and seals show what was done behind its back.

Each unit of work ends with a seal for every table of history that it added rows to: the SHA-256 of the seal before it and of
those rows as a backup writes them. So a row changed, removed or put in between no longer fits its seal, and a seal taken out
does not fit the next. Whoever writes the file with means of their own could seal all of it anew; that is why the last hash
goes out with every backup.
"""

from collections.abc import Iterator, Mapping
from datetime import UTC, datetime
from hashlib import sha256
from typing import Any, cast

from sqlalchemy import Connection, Table, func, insert, literal, select, text, union_all

from tracker.errors import Message, message
from tracker.store.backup import json_line, rows_of
from tracker.store.base import AppendOnly, Base
from tracker.store.models import SealRow

SEALS = cast(Table, SealRow.__table__)
HISTORY = tuple(
    sorted(
        (cast(Table, m.local_table) for m in Base.registry.mappers if issubclass(m.class_, AppendOnly)),
        key=lambda table: table.name,
    )
)
FIRST_SEALED = "0005"
"""The version of the schema from which on there are seals."""
SEALED = tuple(table for table in HISTORY if table is not SEALS)


def guard(connection: Connection) -> None:
    """Let the database refuse changes of history, also to other programs that open it."""
    sqlite = connection.dialect.name == "sqlite"
    if not sqlite:
        connection.execute(text(
            "CREATE OR REPLACE FUNCTION history_is_only_added_to() RETURNS trigger LANGUAGE plpgsql AS "
            "$$ BEGIN RAISE EXCEPTION '% is history, which is only ever added to', TG_TABLE_NAME; END $$"
        ))  # fmt: skip
    for table in HISTORY:
        for name, rest in (_sqlite_guards if sqlite else _postgresql_guards)(table).items():
            connection.execute(text(f"DROP TRIGGER IF EXISTS {name}" + ("" if sqlite else f" ON {table.name}")))
            connection.execute(text(f"CREATE TRIGGER {name} {rest}"))


def _sqlite_guards(table: Table) -> dict[str, str]:
    """To put in a row with a number that is there already would replace it, where that is asked for."""
    refuse = f"BEGIN SELECT RAISE(ABORT, '{table.name} is history, which is only ever added to'); END"
    key = _key(table).name
    there = f"WHEN EXISTS (SELECT 1 FROM {table.name} WHERE {key} = NEW.{key})"
    return {
        f"{table.name}_insert": f"BEFORE INSERT ON {table.name} {there} {refuse}",
        f"{table.name}_update": f"BEFORE UPDATE ON {table.name} {refuse}",
        f"{table.name}_delete": f"BEFORE DELETE ON {table.name} {refuse}",
    }


def _postgresql_guards(table: Table) -> dict[str, str]:
    refuse = "EXECUTE FUNCTION history_is_only_added_to()"
    return {
        f"{table.name}_change": f"BEFORE UPDATE OR DELETE ON {table.name} FOR EACH ROW {refuse}",
        f"{table.name}_truncate": f"BEFORE TRUNCATE ON {table.name} FOR EACH STATEMENT {refuse}",
    }


def _key(table: Table) -> Any:
    (key,) = table.primary_key.columns
    return key


def seal(connection: Connection, at: datetime) -> None:
    """Seal what was added to history since the last seal; to be done under the write lock, last before the commit."""
    ends = _numbers(connection, union_all(*(select(literal(t.name), func.max(_key(t))) for t in SEALED)))
    sealed = _numbers(connection, select(SEALS.c.table, func.max(SEALS.c.last_id)).group_by(SEALS.c.table))
    before = last_hash(connection)
    for table in SEALED:
        start, end = sealed.get(table.name, 0), ends.get(table.name, 0)
        if end > start:
            rows = rows_of(connection, table, _key(table) > start)
            before = _hash(before, at, table.name, end, rows)
            connection.execute(insert(SEALS), {"at": at, "table": table.name, "last_id": end, "hash": before})


def _numbers(connection: Connection, query: Any) -> dict[str, int]:
    rows: Any = connection.execute(query)
    return {name: number for name, number in rows if number is not None}


def last_hash(connection: Connection) -> str:
    """The hash of the last seal; empty where there is none. Where it is still so, nothing before it was touched."""
    return connection.scalar(select(SEALS.c.hash).order_by(SEALS.c.id.desc()).limit(1)) or ""


def sealed_at(connection: Connection) -> dict[str, datetime]:
    """Hash of every seal → when it was made, oldest first."""
    return {hashed: at for hashed, at in connection.execute(select(SEALS.c.hash, SEALS.c.at).order_by(SEALS.c.id))}  # noqa: C416


def _hash(before: str, at: datetime, table: str, last_id: int, rows: Iterator[Mapping[str, Any]]) -> str:
    digest = sha256(json_line({"before": before, "at": at, "table": table, "last_id": last_id}))
    for row in rows:
        digest.update(json_line(row))
    return digest.hexdigest()


def touched(connection: Connection) -> list[Message]:
    """What was done to history behind the program's back; nothing where it reads as it was written."""
    unguarded = [table.name for table in HISTORY if not _guards_of(table, connection) <= _triggers(connection)]
    said = [message("history-unguarded", table=name) for name in unguarded]
    rows = {table.name: _Rows(connection, table) for table in SEALED}
    before = ""
    for _, at, table, last_id, stored in connection.execute(select(SEALS).order_by(SEALS.c.id)):
        if _hash(before, at, table, last_id, rows[table].until(last_id)) != stored:
            moment = f"{at.astimezone(UTC):%Y-%m-%d %H:%M:%S} UTC"
            said.append(message("history-changed", table=table, at=moment))
        before = stored
    for name, more in rows.items():
        if unsealed := sum(1 for _ in more.until(None)):
            said.append(message("history-foreign", rows=unsealed, table=name))
    return said


def _guards_of(table: Table, connection: Connection) -> set[str]:
    return set((_sqlite_guards if connection.dialect.name == "sqlite" else _postgresql_guards)(table))


def _triggers(connection: Connection) -> set[str]:
    if connection.dialect.name == "sqlite":
        return set(connection.scalars(text("SELECT name FROM sqlite_master WHERE type = 'trigger'")))
    return set(connection.scalars(text("SELECT tgname FROM pg_trigger WHERE tgenabled = 'O' AND NOT tgisinternal")))


class _Rows:
    """The rows of a table by number, taken piece by piece."""

    def __init__(self, connection: Connection, table: Table):
        self.key = _key(table).name
        self.rows = rows_of(connection, table)
        self.next = next(self.rows, None)

    def until(self, last: int | None) -> Iterator[Mapping[str, Any]]:
        """Those that were not taken yet up to a number, or to the end."""
        while self.next is not None and (last is None or self.next[self.key] <= last):
            yield self.next
            self.next = next(self.rows, None)
