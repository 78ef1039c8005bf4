"""Open a database, and make it where one is meant to be made."""

import json
from pathlib import Path
from typing import Any

from sqlalchemy import Engine, create_engine, event
from sqlalchemy.exc import ArgumentError, DBAPIError
from sqlalchemy.pool import NullPool

from tracker.errors import TrackerError
from tracker.store.migrate import is_current, upgrade
from tracker.store.place import Place, find
from tracker.store.rows import plain
from tracker.store.unit_of_work import UnitOfWork, reason


class Store:
    """A database, brought to the newest schema."""

    def __init__(self, engine: Engine, place: Place):
        self.engine, self.place = engine, place

    def unit_of_work(self) -> UnitOfWork:
        """For writing: takes the write lock at once, so that what was read still holds when it is written.

        Raises TrackerError for a file without write permission.
        """
        if self.place.read_only:
            raise TrackerError(
                f"the database {self.place.name} can only be read: its file or folder has no write permission; "
                "nothing was written"
            )
        return UnitOfWork(self.engine, self.place.name)

    def reading(self) -> UnitOfWork:
        """For reading: one consistent view that waits for nobody; committing writes in it is a mistake."""
        return UnitOfWork(_for_reading(self.engine), self.place.name)


def open_store(database: str | Path, make: bool = False) -> Store:
    """Open a database: a SQLAlchemy URL or the path of an SQLite file, which is made only where `make` says so.

    Connections are not kept: a unit of work closes its own, so that an SQLite file is whole when nobody works on it.
    Raises DataError where the file is missing and TrackerError where the database cannot be opened.
    """
    try:
        place = find(database, make)
        engine = create_engine(place.url, json_serializer=_json, poolclass=NullPool)
        if engine.dialect.name == "sqlite":
            _prepare_sqlite(engine, place.read_only)
        _bring_up_to_date(engine, place)
    except (ArgumentError, DBAPIError, ImportError) as error:
        raise TrackerError(f"cannot open the database {database}: {reason(error)}") from error
    return Store(engine, place)


def _bring_up_to_date(engine: Engine, place: Place) -> None:
    with _for_reading(engine).connect() as connection:
        if is_current(connection):
            return
    if place.read_only:
        raise TrackerError(
            f"the database {place.name} is of another version and can only be read; open it once where it may be written"
        )
    with engine.begin() as connection:
        upgrade(connection)


def _for_reading(engine: Engine) -> Engine:
    if engine.dialect.name == "postgresql":
        return engine.execution_options(isolation_level="REPEATABLE READ")
    return engine.execution_options(begin="DEFERRED")


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, default=plain)


def _prepare_sqlite(engine: Engine, read_only: bool) -> None:
    """Foreign keys on, write-ahead log (which is written in the file), a busy timeout, and real transactions."""
    pragmas = ("foreign_keys=ON", "busy_timeout=10000", "synchronous=NORMAL")
    if not read_only:
        pragmas += ("journal_mode=WAL",)

    @event.listens_for(engine, "connect")
    def _on_connect(connection: Any, _record: Any) -> None:
        connection.isolation_level = None
        for pragma in pragmas:
            connection.execute(f"PRAGMA {pragma}")

    @event.listens_for(engine, "begin")
    def _on_begin(connection: Any) -> None:
        connection.exec_driver_sql("BEGIN " + connection.get_execution_options().get("begin", "IMMEDIATE"))
