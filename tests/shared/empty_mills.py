"""Empty mills, whose tables are the same each time: their statements are worked out by the migrations once in a process for each
kind of database and then only said again, since hundreds of tests begin with a new mill and the migrations take 0.15 s of each."""

from sqlalchemy import Connection, event

from tracker.store import migrate

_said: dict[str, list[tuple[str, tuple | dict]]] = {}
"""Name of the database's dialect → its statements with their values."""


def upgrade(connection: Connection, version: str = "head") -> None:
    """As `tracker.store.migrate.upgrade` does it."""
    if version != "head" or migrate.version_of(connection):
        migrate.upgrade(connection, version)
    elif said := _said.get(connection.dialect.name):
        for statement, values in said:
            connection.exec_driver_sql(statement, values)
    else:
        _said[connection.dialect.name] = _upgraded_listening(connection)


def _upgraded_listening(connection: Connection) -> list[tuple[str, tuple | dict]]:
    heard = []

    def hear(_connection: object, _cursor: object, statement: str, values: tuple | dict, *_: object) -> None:
        heard.append((statement, values))

    event.listen(connection, "before_cursor_execute", hear)
    migrate.upgrade(connection)
    event.remove(connection, "before_cursor_execute", hear)
    return heard
