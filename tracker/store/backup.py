"""Everything that a database holds in one file, the same kind for SQLite and PostgreSQL.

It is a zip: `tables/NAME.jsonl` holds a table, a row a line: a JSON object of its columns without those that have no value,
moments, days and times as in ISO 8601 (moments in UTC), pictures in base64. `manifest.json` says what the parts
must be, so that a damaged file is found out before anything of it is used.
"""

import json
from base64 import b64encode
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import asdict, dataclass, field
from datetime import UTC, date, datetime, time
from hashlib import sha256
from importlib.metadata import version as installed
from io import BytesIO
from typing import Any
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from sqlalchemy import Connection, LargeBinary, Table, select

from tracker.store.schema import tables_of

KIND = "beamslot backup"
FORMAT = 1
MANIFEST = "manifest.json"
AT_ONCE, PICTURES_AT_ONCE = 1000, 20
"""Rows that are in memory together, and of a table that holds pictures."""


@dataclass(frozen=True, slots=True)
class TablePart:
    """What one part of the file must be."""

    rows: int
    size_bytes: int
    sha256: str


@dataclass(frozen=True, slots=True)
class Manifest:
    made_at: str
    """ISO 8601, UTC."""
    program: str
    """The version of Beamslot that wrote it."""
    schema: str
    """The version of its tables."""
    parts: Mapping[str, TablePart]
    """By name within the zip."""
    last_hash: str = ""
    """Of the last seal of history; whoever kept it can tell later whether what was then is still so."""
    kind: str = field(default=KIND)
    format: int = field(default=FORMAT)

    @property
    def rows(self) -> int:
        return sum(part.rows for part in self.parts.values())


def part_name(table: Table) -> str:
    return f"tables/{table.name}.jsonl"


def make_backup(connection: Connection, schema: str, at: datetime, last_hash: str) -> tuple[bytes, Manifest]:
    """The file that backs up a database of that schema version as the connection sees it: one moment, if it reads in one
    view. `last_hash` of its history goes with it."""
    file = BytesIO()
    with ZipFile(file, "w") as archive:
        parts = {
            part_name(table): _write_part(archive, _entry(part_name(table), at), rows_of(connection, table))
            for table in tables_of(schema)
        }
        manifest = Manifest(at.isoformat(), installed("beamslot"), schema, parts, last_hash)
        archive.writestr(_entry(MANIFEST, at), json.dumps(asdict(manifest), indent=1))
    return file.getvalue(), manifest


def _entry(name: str, at: datetime) -> ZipInfo:
    entry = ZipInfo(name, at.timetuple()[:6])
    entry.compress_type = ZIP_DEFLATED
    return entry


def _write_part(archive: ZipFile, entry: ZipInfo, rows: Iterable[Mapping[str, Any]]) -> TablePart:
    written, size, digest = 0, 0, sha256()
    with archive.open(entry, "w", force_zip64=True) as part:
        for row in rows:
            line = json_line(row)
            part.write(line)
            digest.update(line)
            written, size = written + 1, size + len(line)
    return TablePart(written, size, digest.hexdigest())


def rows_of(connection: Connection, table: Table, *which: Any) -> Iterator[Mapping[str, Any]]:
    """The rows of a table in the order of its key, few at a time in memory."""
    query = select(table).where(*which).order_by(*table.primary_key.columns)
    for row in connection.execute(query, execution_options={"yield_per": at_once(table)}):
        yield row._asdict()


def at_once(table: Table) -> int:
    """How many of its rows are in memory together."""
    return PICTURES_AT_ONCE if any(isinstance(column.type, LargeBinary) for column in table.columns) else AT_ONCE


def json_line(row: Mapping[str, Any]) -> bytes:
    """The one way in which a row is written: columns by name, without those that have no value."""
    values = {name: value for name, value in row.items() if value is not None}
    return (
        json.dumps(values, default=_text, ensure_ascii=False, sort_keys=True, separators=(",", ":")) + "\n"
    ).encode()


def _text(value: Any) -> str:
    if isinstance(value, bytes):
        return b64encode(value).decode()
    if isinstance(value, datetime) and value.tzinfo:
        value = value.astimezone(UTC).replace(tzinfo=None)
    if isinstance(value, datetime | date | time):
        return value.isoformat()
    raise TypeError(f"{type(value).__name__} has no place in a backup")
