"""Open a database, and make it where one is meant to be made."""

import logging
from pathlib import Path

from sqlalchemy import Engine
from sqlalchemy.exc import ArgumentError, DBAPIError

from tracker.errors import TrackerError
from tracker.store.address import shown
from tracker.store.connecting import connect, for_reading
from tracker.store.drives import network_drive
from tracker.store.migrate import upgrade, version_of, versions
from tracker.store.place import Place, find
from tracker.store.unit_of_work import UnitOfWork, reason

log = logging.getLogger(__name__)
"""What the user should hear of beside the answer: the command prints it, the server logs it."""


class Store:
    """A database, brought to the newest schema."""

    def __init__(self, engine: Engine, place: Place):
        self.engine, self.place = engine, place

    def unit_of_work(self) -> UnitOfWork:
        """For writing: holds the write lock from its beginning, so that what was read still holds when it is written.

        Raises TrackerError for a file without write permission, and where another writes for too long.
        """
        if self.place.read_only:
            raise TrackerError(
                f"the database {self.place.name} can only be read: its file or folder has no write permission; "
                "nothing was written"
            )
        return UnitOfWork(self.engine, self.place.name)

    def reading(self) -> UnitOfWork:
        """For reading: one consistent view that waits for nobody; committing writes in it is a mistake."""
        return UnitOfWork(for_reading(self.engine), self.place.name)


def open_store(database: str | Path, make: bool = False) -> Store:
    """Open a database: a SQLAlchemy URL or the path of an SQLite file, which is made only where `make` says so.

    Raises DataError where the file is missing and TrackerError where the database cannot be opened.
    """
    try:
        place = find(database, make)
        _warn_of_drive(place)
        engine = connect(place)
        _bring_up_to_date(engine, place)
    except (ArgumentError, DBAPIError, ImportError, ValueError) as error:
        raise TrackerError(f"cannot open the database {shown(database)}: {reason(error)}") from error
    return Store(engine, place)


def _bring_up_to_date(engine: Engine, place: Place) -> None:
    with for_reading(engine).connect() as connection:
        if version_of(connection) == versions()[-1]:
            return
    if place.read_only:
        raise TrackerError(
            f"the database {place.name} is of another version and can only be read; open it once where it may be written"
        )
    with engine.begin() as connection:
        upgrade(connection)  # under the lock: another may have done so meanwhile, and then there is nothing to do


def _warn_of_drive(place: Place) -> None:
    if place.file and (kind := network_drive(place.file.absolute().parent)):
        log.warning(
            "the database %s lies on a network drive (%s), where several computers that write can destroy it and a confirmed "
            "entry may be lost in a power cut; keep it on a disk of this computer, or use PostgreSQL", place.name, kind,
        )  # fmt: skip
