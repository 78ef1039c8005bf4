"""Open a database, and make it where one is meant to be made."""

import logging
from collections.abc import Iterator
from contextlib import contextmanager
from itertools import chain, count
from pathlib import Path
from sqlite3 import SQLITE_NOTADB

from sqlalchemy import Connection, Engine
from sqlalchemy.exc import ArgumentError, DBAPIError

from tracker.domain.clock import now
from tracker.domain.people import Act
from tracker.errors import DataError, TrackerError
from tracker.office import files
from tracker.store.address import shown
from tracker.store.backup import make_backup
from tracker.store.connecting import connect, for_reading
from tracker.store.drives import network_drive
from tracker.store.history import FIRST_SEALED, guard, last_hash, seal
from tracker.store.migrate import upgrade, version_of, versions
from tracker.store.place import Place, find, is_missing
from tracker.store.recognise import State, require_tables_of, state_of
from tracker.store.unit_of_work import First, Moment, UnitOfWork, reason, user

log = logging.getLogger(__name__)
"""What the user should hear of beside the answer: the command prints it, the server logs it."""


class Store:
    """A database, brought to the newest schema."""

    def __init__(self, engine: Engine, place: Place):
        self.engine, self.place = engine, place

    def unit_of_work(
        self, who: str = "", at: Moment | None = None, act: Act | None = None, first: First | None = None
    ) -> UnitOfWork:
        """For writing: holds the write lock from its beginning, so that what was read still holds when it is written.

        Every change says `who` did it (empty = who is at the keyboard) and when, by the clock `at` (none = the machine's);
        `act` is what stands of it in the account of who did what; `first` is looked at under the lock before anything else.

        Raises TrackerError for a file without write permission, and where another writes for too long.
        """
        if self.place.read_only:
            raise TrackerError("database-read-only", name=self.place.name)
        return UnitOfWork(self.engine, self.place.name, who or user(), at or now, act, first)

    def reading(self) -> UnitOfWork:
        """For reading: one consistent view that waits for nobody; committing writes in it is a mistake."""
        return UnitOfWork(for_reading(self.engine), self.place.name)


def open_store(database: str | Path, make: bool = False) -> Store:
    """Open a database: a SQLAlchemy URL or the path of an SQLite file. Only where `make` says so is the file made, and are
    tables made in an empty database. One of an earlier version is brought up, after a backup of it.

    Raises DataError where there is none, and for one that is not ours or of a newer version; TrackerError where the
    database cannot be opened.
    """
    with _telling(database):
        place = find(database, make)
        _warn_of_drive(place)
        engine = connect(place)
        state = _state(engine, place)
        if state is State.EMPTY and not make:
            raise DataError("database-empty", name=place.name)
        if state is not State.CURRENT:
            _bring_up(engine, place)
        return Store(engine, place)


def is_new(database: str | Path) -> bool:
    """Whether there is no mill yet: no file, or nothing in the database. Raises as `open_store`."""
    if is_missing(database):
        return True
    with _telling(database):
        place = find(database)
        return _state(connect(place), place) is State.EMPTY


@contextmanager
def _telling(database: str | Path) -> Iterator[None]:
    try:
        yield
    except (ArgumentError, DBAPIError, ImportError, ValueError) as error:
        if getattr(getattr(error, "orig", None), "sqlite_errorcode", None) == SQLITE_NOTADB:
            raise DataError("not-sqlite", name=shown(database)) from error
        raise TrackerError("database-closed", name=shown(database), why=reason(error)) from error


def _state(engine: Engine, place: Place) -> State:
    with for_reading(engine).connect() as connection:
        return state_of(connection, place.name)


def _bring_up(engine: Engine, place: Place) -> None:
    """Make the tables, or bring them up: all of it under the write lock and in one transaction, and only once the backup is
    on the disk."""
    if place.read_only:
        raise TrackerError("database-older-read-only", name=place.name)
    with engine.begin() as connection:
        before = state_of(connection, place.name)  # another may have done it meanwhile
        if before is State.OLDER:
            _back_up(connection, place)
        if before is not State.CURRENT:
            upgrade(connection)
            guard(connection)
            seal(connection, now())


def _back_up(connection: Connection, place: Place) -> None:
    version = version_of(connection) or ""
    require_tables_of(connection, version, place.name)
    target = _free(place.beside(f".before-{versions()[-1]}.zip"))
    last = last_hash(connection) if version >= FIRST_SEALED else ""
    files.write(target, make_backup(connection, version, now(), last)[0])
    log.warning(
        "%s is brought from tables %s to %s; as it was before it stands in %s",
        place.name, version, versions()[-1], target,
    )  # fmt: skip


def _free(target: Path) -> Path:
    """The name, or one made of it that nothing has yet."""
    others = (target.with_name(f"{target.stem}-{i}{target.suffix}") for i in count(2))
    return next(name for name in chain([target], others) if not name.exists())


def _warn_of_drive(place: Place) -> None:
    if place.file and (kind := network_drive(place.file.absolute().parent)):
        log.warning(
            "the database %s lies on a network drive (%s), where several computers that write can destroy it and a confirmed "
            "entry may be lost in a power cut; keep it on a disk of this computer, or use PostgreSQL", place.name, kind,
        )  # fmt: skip
