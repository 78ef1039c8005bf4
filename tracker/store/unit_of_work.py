"""A store and its units of work: everything inside one is written together or not at all."""

import json
import os
from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from getpass import getuser
from pathlib import Path
from types import TracebackType
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import Engine, create_engine, event
from sqlalchemy.engine import make_url
from sqlalchemy.exc import ArgumentError, DBAPIError
from sqlalchemy.orm import Session
from sqlalchemy.pool import NullPool

from tracker.domain.clock import now
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Plan, PlanEntry
from tracker.domain.progress import Conversion, StageChange
from tracker.domain.rows import RowKey
from tracker.domain.stock import Movement, Reservation
from tracker.domain.tables import TABLES
from tracker.domain.terms import Terms
from tracker.errors import TrackerError
from tracker.store import loads, mill, plans, progress, stock
from tracker.store.migrate import upgrade
from tracker.store.rows import plain, read_rows


class Store:
    """A database, brought to the newest schema."""

    def __init__(self, engine: Engine):
        self.engine = engine

    def unit_of_work(self) -> "UnitOfWork":
        """For writing: takes the write lock at once, so that what was read still holds when it is written."""
        return UnitOfWork(self.engine)

    def reading(self) -> "UnitOfWork":
        """For reading: one consistent view that waits for nobody; committing writes in it is a mistake."""
        if self.engine.dialect.name == "postgresql":
            return UnitOfWork(self.engine.execution_options(isolation_level="REPEATABLE READ"))
        return UnitOfWork(self.engine.execution_options(begin="DEFERRED"))


def open_store(database: str | Path) -> Store:
    """Open (and make, where it is missing) the database: a SQLAlchemy URL or the path of an SQLite file.

    Connections are not kept: a unit of work closes its own, so that an SQLite file is whole when nobody works on it.
    """
    try:
        url = make_url(str(database)) if "://" in str(database) else make_url(f"sqlite:///{database}")
        engine = create_engine(url, json_serializer=_json, poolclass=NullPool)
        if engine.dialect.name == "sqlite":
            _prepare_sqlite(engine)
        with engine.begin() as connection:
            upgrade(connection)
    except (ArgumentError, DBAPIError, ImportError) as error:
        raise TrackerError(f"cannot open the database {database}: {_reason(error)}") from error
    return Store(engine)


def _reason(error: Exception) -> str:
    return str(getattr(error, "orig", None) or error).splitlines()[0]


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, default=plain)


def _prepare_sqlite(engine: Engine) -> None:
    """Foreign keys on, write-ahead log, a busy timeout, and real transactions."""

    @event.listens_for(engine, "connect")
    def _on_connect(connection: Any, _record: Any) -> None:
        connection.isolation_level = None
        for pragma in ("foreign_keys=ON", "journal_mode=WAL", "busy_timeout=10000", "synchronous=NORMAL"):
            connection.execute(f"PRAGMA {pragma}")

    @event.listens_for(engine, "begin")
    def _on_begin(connection: Any) -> None:
        connection.exec_driver_sql("BEGIN " + connection.get_execution_options().get("begin", "IMMEDIATE"))


class UnitOfWork:
    """`with store.unit_of_work() as uow:` rolls back unless `uow.commit()` was called.

    Raises TrackerError where the database fails meanwhile: locked for too long, full, gone.
    """

    def __init__(self, engine: Engine):
        self.session = Session(engine, expire_on_commit=False)

    def __enter__(self) -> "UnitOfWork":
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        try:
            self.session.rollback()
            self.session.close()
        except DBAPIError as second:
            error = error or second
        if isinstance(error, DBAPIError):
            raise TrackerError(f"the database does not answer: {_reason(error)}; nothing was written") from error

    def commit(self) -> None:
        self.session.commit()

    # ---- the mill

    def mill(self) -> Mill:
        return mill.read_mill(self.session)

    def terms(self) -> Terms:
        return mill.read_terms(self.session)

    def rows(self, table: str) -> dict[RowKey, dict[str, Any]]:
        """Typed records of a table by key, kept headings beside the fields; moments in the mill's local time."""
        return read_rows(self.session, TABLES[table], self.zone)

    @property
    def zone(self) -> ZoneInfo:
        return self.terms().zone

    # ---- loads

    def load_writer(self, at: datetime | None = None, who: str | None = None) -> loads.LoadWriter:
        return loads.LoadWriter(self.session, self.zone, at or now(), who or user())

    def answers(self) -> dict[str, str]:
        return loads.read_answers(self.session)

    def add_answers(self, answers: Mapping[str, str]) -> None:
        loads.add_answers(self.session, answers, now(), user())

    def origin(self, table: str, key: RowKey, field: str) -> list[loads.Origin]:
        return loads.origin_of(self.session, TABLES[table], key, field)

    # ---- plans and progress

    def published_plan(self, before_it: int = 0) -> Plan | None:
        return plans.last_published(self.session, before_it)

    def plan(self, number: int) -> Plan | None:
        return plans.plan_of(self.session, number)

    def plan_entries(self) -> list[PlanEntry]:
        return plans.plan_entries(self.session)

    def save_plan(self, plan: Plan, published: bool, who: str | None = None, scenario: str | None = None) -> int:
        return plans.add_plan(self.session, plan, now(), who or user(), published, scenario)

    def stages(self) -> dict[LoomKey, StageChange]:
        return progress.read_stages(self.session)

    def stage_history(self) -> list[StageChange]:
        return progress.stage_history(self.session)

    def add_stage(self, change: StageChange) -> None:
        progress.add_stage(self.session, change)

    def conversions(self) -> list[Conversion]:
        return progress.read_conversions(self.session)

    def add_conversion(self, conversion: Conversion) -> None:
        progress.add_conversion(self.session, conversion)

    # ---- stock

    def movements(self, part: str | None = None) -> list[Movement]:
        return stock.read_movements(self.session, part)

    def add_movements(self, movements: Sequence[Movement]) -> None:
        stock.add_movements(self.session, movements)

    def reservations(self) -> list[Reservation]:
        return stock.read_reservations(self.session)

    def set_reservations(self, reservations: Iterable[Reservation], who: str | None = None) -> None:
        stock.set_reservations(self.session, reservations, now(), who or user())


def user() -> str:
    """Who is at the keyboard, for the log."""
    return os.environ.get("BEAMSLOT_USER") or getuser()
