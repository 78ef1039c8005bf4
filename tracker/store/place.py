"""Where a database stands, and what may be done there: a file is made only where one is meant to be made."""

import os
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import unquote, urlsplit

from sqlalchemy.engine import URL

from tracker.errors import DataError
from tracker.store.address import shown, url_of

SMALLEST_BYTES = 512
"""Of an SQLite database that is not empty: one page of the smallest size; https://www.sqlite.org/fileformat.html, 1.3.2"""


@dataclass(frozen=True, slots=True)
class Place:
    name: str
    """As the user gave it, without the password."""
    url: URL
    """To connect to; for a file that is there, one that never makes it anew."""
    read_only: bool
    """An SQLite file that may not be written, or lies in a folder that may not."""
    file: Path | None = None
    """Of an SQLite database on disk."""

    @property
    def in_memory(self) -> bool:
        return self.url.get_backend_name() == "sqlite" and self.file is None

    @property
    def title(self) -> str:
        """What files of this database are named after."""
        return self.file.stem if self.file else (self.url.database or "mill").rpartition("/")[2]

    def beside(self, ending: str) -> Path:
        """A file named after the database: beside its own, or in the folder worked in."""
        return (
            self.file.with_name(self.file.name + ending)
            if self.file
            else Path(f"{self.url.database}{ending}").absolute()
        )


def find(database: str | Path, make: bool = False) -> Place:
    """Find a database: a SQLAlchemy URL or the path of an SQLite file. DataError where its file is missing, unless it
    is to be made."""
    url, name = url_of(database), shown(database)
    file = _file(url)
    if file is None:
        return Place(name, url, read_only=False)
    if not (make or file.exists()):
        raise DataError("database-missing", name=name)
    if file.is_dir():
        raise DataError("database-is-folder", name=name)
    if not _may_be_sqlite(file):
        raise DataError("not-sqlite", name=name)
    read_only = (file.exists() and not _may_write(file)) or url.query.get("mode") == "ro"
    return Place(name, _connecting(url, file, _ways(file, make, read_only)), read_only, file)


def is_missing(database: str | Path) -> bool:
    """Whether the file of an SQLite database is not there."""
    file = _file(url_of(database))
    return file is not None and not file.exists()


def file_of(database: str | Path) -> Path | None:
    """The file of an SQLite database on disk, whether it is there or not; None for any other."""
    return _file(url_of(database))


def _file(url: URL) -> Path | None:
    """The file of an SQLite database on disk."""
    path = url.database
    if url.get_backend_name() != "sqlite" or not path or ":memory:" in path or url.query.get("mode") == "memory":
        return None
    return Path(unquote(urlsplit(path).path) if path.startswith("file:") else path)


def _may_be_sqlite(file: Path) -> bool:
    """Empty or large enough for one; a missing file may become one. SQLite itself takes a file of some bytes for empty, and
    says of a larger one whether it is a database.

    The file is never opened here: to close it would take away the locks by which SQLite in this process holds it (POSIX
    locks belong to the process; https://www.sqlite.org/howtocorrupt.html, 2.2), and another writer would take it for free.
    """
    try:
        return not 0 < file.stat().st_size < SMALLEST_BYTES
    except OSError:  # missing, or not to be looked at: SQLite says why
        return True


def _may_write(file: Path) -> bool:
    """SQLite keeps its log beside the file, so that the folder counts, too."""
    return os.access(file, os.W_OK) and os.access(file.absolute().parent, os.W_OK)


def _ways(file: Path, make: bool, read_only: bool) -> dict[str, str]:
    """How SQLite is to open the file. A write-ahead log that is not there cannot be laid out for reading in a folder
    without write permission, so that the file is then read as it lies; where somebody is writing there is a log."""
    if not read_only:
        return {"mode": "rwc" if make else "rw"}
    return {"mode": "ro"} if file.with_name(f"{file.name}-wal").exists() else {"mode": "ro", "immutable": "1"}


def _connecting(url: URL, file: Path, ways: dict[str, str]) -> URL:
    return url.set(database=file.absolute().as_uri()).update_query_dict({"uri": "true", **ways})
