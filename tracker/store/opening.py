"""Open a database, and make it where one is meant to be made."""

from pathlib import Path

from sqlalchemy import Engine
from sqlalchemy.exc import ArgumentError, DBAPIError

from tracker.errors import TrackerError
from tracker.store.address import shown
from tracker.store.connecting import connect, for_reading
from tracker.store.migrate import is_current, upgrade
from tracker.store.place import Place, find
from tracker.store.unit_of_work import UnitOfWork, reason


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
        engine = connect(place)
        _bring_up_to_date(engine, place)
    except (ArgumentError, DBAPIError, ImportError, ValueError) as error:
        raise TrackerError(f"cannot open the database {shown(database)}: {reason(error)}") from error
    return Store(engine, place)


def _bring_up_to_date(engine: Engine, place: Place) -> None:
    with for_reading(engine).connect() as connection:
        if is_current(connection):
            return
    if place.read_only:
        raise TrackerError(
            f"the database {place.name} is of another version and can only be read; open it once where it may be written"
        )
    with engine.begin() as connection:
        upgrade(connection)
