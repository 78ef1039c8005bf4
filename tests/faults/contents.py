"""What a database says, in a form that two runs of the same command give alike: moments of entry, times that a search took
and gaps in numbers do not count."""

import re
from collections.abc import Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Engine, MetaData, Table, create_engine, event, inspect
from sqlalchemy.pool import NullPool

BEGAN = datetime.now(UTC).replace(tzinfo=None).isoformat()
"""Moments after this one are those of entries made here; the mill's own lie before."""
MOMENT = re.compile(r"\d{4}-\d\d-\d\d[ T]\d\d:\d\d:\d\d(\.\d+)?")
TOOK = {"seconds", "last_id", "hash", "password_hash"}
"""Columns that hold how long something took, a hash with a random part, and those of seals, which hold moments and numbers:
`Mill.check_sound` asks whether these fit."""

Rows = list[tuple[str, ...]]
Contents = dict[str, Rows]
"""Table → rows, sorted, each value as text."""


def engine_of(db: str) -> Engine:
    """For looking only: a file as SQLite finds it after a crash, its write-ahead log included."""
    engine = create_engine(db if "://" in db else f"sqlite:///{db}", poolclass=NullPool)
    if engine.dialect.name == "sqlite":
        event.listen(engine, "connect", lambda connection, _: connection.execute("PRAGMA query_only=ON"))
    return engine


def contents(db: str) -> Contents:
    """Every table of a database, nothing where there is no file; of an SQLite file it also asks whether it is sound."""
    if "://" not in db and not Path(db).exists():
        return {}
    engine = engine_of(db)
    with engine.connect() as connection:
        metadata = _tables(connection)
        if engine.dialect.name == "sqlite":
            assert connection.exec_driver_sql("PRAGMA integrity_check").scalar() == "ok"
            assert connection.exec_driver_sql("PRAGMA foreign_key_check").all() == []
        found = {t.name: _all_of(connection, t) for t in metadata.sorted_tables}
    numbers = {t.name: _numbers(t, found[t.name]) for t in metadata.sorted_tables}
    return {t.name: _rows(t, found[t.name], numbers) for t in metadata.sorted_tables}


def _all_of(connection: Connection, table: Table) -> Any:
    """Straight from the driver: to put together and convert by column takes ten times as long."""
    return connection.exec_driver_sql(f'SELECT * FROM "{table.name}"').mappings().all()


def anything_in(found: Contents) -> bool:
    """Whether a database holds anything of a mill: a load says so."""
    return bool(found.get("loads"))


SEEN: dict[tuple[str, ...], MetaData] = {}


def _tables(connection: Connection) -> MetaData:
    """What tables there are; looked at closely once for each set of names."""
    names = (connection.dialect.name, *inspect(connection).get_table_names())
    if names not in SEEN:
        metadata = MetaData()
        metadata.reflect(connection)
        SEEN[names] = metadata
    return SEEN[names]


def _numbers(table: Table, rows: Any) -> dict[int, int]:
    """A row's own number → its place, so that a number left out by a transaction that ended does not count."""
    own = [column.name for column in table.primary_key]
    if len(own) != 1 or not all(isinstance(row[own[0]], int) for row in rows):
        return {}
    return {number: place for place, number in enumerate(sorted(row[own[0]] for row in rows))}


def _rows(table: Table, rows: Any, numbers: Mapping[str, Mapping[int, int]]) -> Rows:
    renumber: dict[str, Mapping[int, int]] = {}
    for column in table.columns:
        if column.primary_key and len(table.primary_key) == 1:
            renumber[column.name] = numbers[table.name]
        for key in column.foreign_keys:
            if len(key.column.table.primary_key) == 1 and key.column.primary_key:
                renumber[column.name] = numbers[key.column.table.name]
    names = [column.name for column in table.columns if column.name not in TOOK]
    return sorted(tuple(_text(row[n], renumber.get(n, {})) for n in names) for row in rows)


def _text(value: Any, renumber: Mapping[int, int]) -> str:
    if isinstance(value, int) and value in renumber:
        return str(renumber[value])
    return MOMENT.sub(lambda found: "now" if found[0].replace(" ", "T") >= BEGAN else found[0], str(value))


def difference(one: Contents, other: Contents, most: int = 6) -> str:
    """What stands in one of them only, for a message."""
    lines = []
    for name in sorted(one.keys() | other.keys()):
        here, there = one.get(name, []), other.get(name, [])
        lines += [f"{name} - {row}" for row in here if row not in there][:most]
        lines += [f"{name} + {row}" for row in there if row not in here][:most]
    return "\n".join(line[:400] for line in lines) or "nothing"
