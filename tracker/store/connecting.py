"""Connections to a database, and what they lock: one writer at a time, readers wait for nobody.

Who writes holds the one write lock from the beginning to the end of the unit of work, so that what it read still holds
when it writes: SQLite's own, on PostgreSQL an advisory lock of the database. Making and upgrading tables takes it, too.
"""

import json
from functools import lru_cache
from typing import Any

from sqlalchemy import URL, Connection, Engine, create_engine, event
from sqlalchemy.pool import NullPool, Pool, StaticPool

from tracker.store.place import Place
from tracker.store.rows import plain

WAIT_S = 30
"""For another who is writing; then the unit of work is given up."""
WRITE_LOCK = 0x6265616D
"""The number of the advisory lock on PostgreSQL: `beam` in ASCII; any would do that nobody else takes."""


def connect(place: Place) -> Engine:
    """Connections are not kept: a unit of work closes its own, so that an SQLite file is whole when nobody works on it.
    Only a database in memory lives in one. What is kept for a process is the engine, with the statements that it has
    worked out (two thirds of the time of a short reading)."""
    return _engine(place.url, StaticPool) if place.in_memory else _kept(place.url, NullPool)


def _engine(url: URL, pool: type[Pool]) -> Engine:
    engine = create_engine(url, json_serializer=_json, poolclass=pool)
    if engine.dialect.name == "sqlite":
        _prepare_sqlite(engine)
    elif engine.dialect.name == "postgresql":
        event.listen(engine, "begin", _lock_postgresql)
    return engine


_kept = lru_cache(maxsize=64)(_engine)


def for_reading(engine: Engine) -> Engine:
    """The same database with one consistent view and no lock."""
    if engine.dialect.name == "postgresql":
        return engine.execution_options(reading=True, isolation_level="REPEATABLE READ")
    return engine.execution_options(reading=True)


def _reads(connection: Connection) -> bool:
    return connection.get_execution_options().get("reading", False)


def _lock_postgresql(connection: Connection) -> None:
    """Waiting here comes before everything that the unit of work reads: each statement sees what is there by then."""
    if not _reads(connection):
        connection.exec_driver_sql(f"SET LOCAL lock_timeout = '{WAIT_S}s'")
        connection.exec_driver_sql(f"SELECT pg_advisory_xact_lock({WRITE_LOCK})")


def _prepare_sqlite(engine: Engine) -> None:
    """Foreign keys on, waiting for others, and real transactions that are on the disk when they are confirmed, so that they
    survive a power cut. Who writes writes by the write-ahead log, which is then written in the file."""

    @event.listens_for(engine, "connect")
    def _on_connect(connection: Any, _record: Any) -> None:
        connection.isolation_level = None
        for pragma in ("foreign_keys=ON", f"busy_timeout={WAIT_S * 1000}", "synchronous=FULL"):
            connection.execute(f"PRAGMA {pragma}")

    @event.listens_for(engine, "begin")
    def _on_begin(connection: Connection) -> None:
        if _reads(connection):
            connection.exec_driver_sql("BEGIN DEFERRED")
        else:
            connection.exec_driver_sql("PRAGMA journal_mode=WAL")
            connection.exec_driver_sql("BEGIN IMMEDIATE")


def _json(value: Any) -> str:
    """Numbers that JSON has (RFC 8259, section 6): neither infinity nor NaN, which SQLite would keep and PostgreSQL refuses."""
    return json.dumps(value, ensure_ascii=False, default=plain, allow_nan=False)
