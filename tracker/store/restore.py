"""Bring a backup into a new database, once all of it has been checked."""

import json
from base64 import b64decode
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, time
from hashlib import sha256
from itertools import islice
from pathlib import Path
from typing import Any, NoReturn
from zipfile import BadZipFile, ZipFile
from zlib import error as ZlibError

from sqlalchemy import Connection, Date, DateTime, Integer, LargeBinary, Table, Time, inspect, text
from sqlalchemy.exc import SQLAlchemyError

from tracker.domain.clock import now
from tracker.errors import InputRefused, TrackerError
from tracker.store.address import shown
from tracker.store.backup import FORMAT, KIND, MANIFEST, Manifest, TablePart, at_once, part_name
from tracker.store.connecting import connect
from tracker.store.history import guard, seal
from tracker.store.migrate import upgrade, versions
from tracker.store.people import end_every_session
from tracker.store.place import Place, find
from tracker.store.schema import tables_of
from tracker.store.unit_of_work import reason

READ = {DateTime: datetime.fromisoformat, Date: date.fromisoformat, Time: time.fromisoformat, LargeBinary: b64decode}


@dataclass(frozen=True, slots=True)
class Backup:
    """A backup that was checked: every part is there and is what the manifest says."""

    path: Path
    manifest: Manifest


def read_backup(path: Path) -> Backup:
    """Check a backup from end to end. InputRefused says what is wrong with it."""
    try:
        with ZipFile(path) as archive:
            manifest = _manifest(path, archive)
            for table in tables_of(manifest.schema):
                _check_part(path, archive, table, manifest.parts[part_name(table)])
    except OSError as error:
        raise InputRefused("backup-unreadable", path=str(path), why=error.strerror or str(error)) from error
    except (
        BadZipFile,
        ZlibError,
        EOFError,
        KeyError,
        ValueError,
        TypeError,
        NotImplementedError,
        RuntimeError,
    ) as error:
        _damaged(path, "no-zip", why=str(error) or type(error).__name__)
    return Backup(path, manifest)


def _manifest(path: Path, archive: ZipFile) -> Manifest:
    said = json.loads(archive.read(MANIFEST))
    if said.get("kind") != KIND:
        _damaged(path, "foreign")
    if said["format"] != FORMAT or said["schema"] not in versions():
        raise InputRefused(
            "backup-newer", path=str(path), program=said["program"], version=str(said["schema"]), known=versions()[-1]
        )
    manifest = Manifest(**said | {"parts": {name: TablePart(**part) for name, part in said["parts"].items()}})
    expected = {part_name(table) for table in tables_of(manifest.schema)}
    if odd := expected ^ manifest.parts.keys():
        _damaged(path, "parts", version=manifest.schema, parts=sorted(odd))
    return manifest


def _check_part(path: Path, archive: ZipFile, table: Table, part: TablePart) -> None:
    name, rows, size, digest = part_name(table), 0, 0, sha256()
    if archive.getinfo(name).file_size != part.size_bytes:
        _damaged(path, "length", part=name)
    read = _Reader(table)
    with archive.open(name) as lines:
        for line in lines:
            rows, size = rows + 1, size + len(line)
            digest.update(line)
            read.row(line)
    if (rows, size, digest.hexdigest()) != (part.rows, part.size_bytes, part.sha256):
        _damaged(path, "content", part=name)


class _Reader:
    """Reads the lines of a table: each column with the type that it has there, None where a line leaves it out."""

    def __init__(self, table: Table):
        self.nothing = dict.fromkeys(table.columns.keys())
        self.read = {c.name: read for c in table.columns for kind, read in READ.items() if isinstance(c.type, kind)}

    def row(self, line: bytes) -> dict[str, Any]:
        values = json.loads(line)
        if unknown := values.keys() - self.nothing.keys():
            raise ValueError(f"unknown column {min(unknown)}")
        return self.nothing | {name: self.read.get(name, _as_it_is)(value) for name, value in values.items()}


def _as_it_is(value: Any) -> Any:
    return value


def _damaged(path: Path, how: str, **what: object) -> NoReturn:
    raise InputRefused("backup-damaged", path=str(path), how=how, **what)


def restore_into(database: str | Path, backup: Backup) -> None:
    """Make a new database of a backup, all of it or nothing. TrackerError where there is a database already, or none can
    be made."""
    try:
        place = find(database, make=True)
        if place.file is None:
            _fill(place, backup)
        else:
            _make(place.name, place.file, backup)
    except (SQLAlchemyError, ImportError, OSError) as error:
        raise TrackerError("restore-failed", name=shown(database), why=reason(error)) from error


def _make(name: str, file: Path, backup: Backup) -> None:
    """Under another name first, so that a restore that is killed leaves no half of a mill behind."""
    if file.exists():
        raise TrackerError("restore-over-file", name=name)
    unfinished = file.with_name(f"{file.name}.restoring")
    for each in (unfinished, *(unfinished.with_name(unfinished.name + end) for end in ("-wal", "-shm"))):
        each.unlink(missing_ok=True)  # of a restore that was killed
    try:
        _fill(find(unfinished, make=True), backup)
        unfinished.rename(file)
    finally:
        unfinished.unlink(missing_ok=True)


def _fill(place: Place, backup: Backup) -> None:
    with connect(place).begin() as connection:
        if there := inspect(connection).get_table_names():
            raise TrackerError("restore-over-tables", name=place.name, tables=len(there))
        upgrade(connection, backup.manifest.schema)
        with ZipFile(backup.path) as archive:
            for table in tables_of(backup.manifest.schema):
                connection.execute(table.delete())  # what the migrations put in comes from the backup, too
                for rows in _batches(archive, table):
                    connection.execute(table.insert(), rows)
                _count_on(connection, table)
        upgrade(connection)
        end_every_session(connection, now())
        guard(connection)
        seal(connection, now())


def _batches(archive: ZipFile, table: Table) -> Iterator[list[dict[str, Any]]]:
    read = _Reader(table)
    with archive.open(part_name(table)) as lines:
        while batch := [read.row(line) for line in islice(lines, at_once(table))]:
            yield batch


def _count_on(connection: Connection, table: Table) -> None:
    """PostgreSQL numbers rows by a counter of its own, which goes on after the highest number restored."""
    (key, *more) = table.primary_key.columns
    if connection.dialect.name == "postgresql" and not more and isinstance(key.type, Integer):
        connection.execute(
            text(
                f"SELECT setval(pg_get_serial_sequence(:table, :key), max({key.name})) FROM {table.name} "
                f"HAVING max({key.name}) IS NOT NULL AND pg_get_serial_sequence(:table, :key) IS NOT NULL"
            ),
            {"table": table.name, "key": key.name},
        )
