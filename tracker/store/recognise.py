"""Whose database this is. Nothing is read, made or changed in one that is not ours."""

from enum import Enum, auto

from sqlalchemy import Connection, inspect, select, text

from tracker.errors import DataError
from tracker.store.migrate import version_of, versions
from tracker.store.models import AboutRow
from tracker.store.schema import tables_of

APPLICATION_ID = int.from_bytes(b"beam", "big")
"""In the head of an SQLite file of ours, where programs that list files look for it."""
FIRST_TABLES = frozenset({"looms", "warps", "stock_movements", "row_changes", "method_versions", "plan_left_over"})
"""By which a database of the first release is known, which had no mark yet."""


class State(Enum):
    EMPTY = auto()
    """Without a table: a mill may begin in it."""
    OLDER = auto()
    CURRENT = auto()


def state_of(connection: Connection, name: str) -> State:
    """What is to be done with a database. DataError for one that is not ours, or of a version that is not known here."""
    tables = set(inspect(connection).get_table_names())
    if not tables:
        return State.EMPTY
    if not (tables >= FIRST_TABLES or _is_marked(connection, tables)):
        others = sorted(tables - {"alembic_version"}) or sorted(tables)
        raise DataError("database-not-ours", name=name, tables=others)
    version = version_of(connection)
    if version is None:
        raise DataError("database-without-version", name=name)
    if version not in versions():
        raise DataError("database-newer", name=name, version=version, known=versions()[-1])
    return State.CURRENT if version == versions()[-1] else State.OLDER


def _is_marked(connection: Connection, tables: set[str]) -> bool:
    if connection.dialect.name == "sqlite" and connection.scalar(text("PRAGMA application_id")) == APPLICATION_ID:
        return True
    said = select(AboutRow.value).where(AboutRow.what == "program")
    return AboutRow.__tablename__ in tables and connection.scalar(said) == "beamslot"


def require_tables_of(connection: Connection, version: str, name: str) -> None:
    """Refuse a database whose tables are not those that its version has: one from before the first release."""
    found = inspect(connection)
    there = set(found.get_table_names())
    for table in tables_of(version):
        columns = {column["name"] for column in found.get_columns(table.name)} if table.name in there else set()
        if columns != set(table.columns.keys()):
            raise DataError("database-unreleased", name=name, table=table.name, version=version)
