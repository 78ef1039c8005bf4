"""The tables of one version of the schema, as its migrations make them, whatever database they stand in."""

from functools import cache

from sqlalchemy import MetaData, Table, create_engine, event
from sqlalchemy.types import JSON, TypeEngine

from tracker.store.migrate import upgrade


@cache
def tables_of(version: str) -> tuple[Table, ...]:
    """The tables of a version (`0001`), what others refer to first; with columns as each database knows them."""
    schema = MetaData()
    engine = create_engine("sqlite://")
    with engine.begin() as connection:
        upgrade(connection, version)
        event.listen(schema, "column_reflect", _general)
        schema.reflect(connection)
    engine.dispose()
    return tuple(table for table in schema.sorted_tables if table.name != "alembic_version")


def _general(_inspector: object, _table: object, column: dict) -> None:
    """A column as any database understands it. None is no value where there need be none, else the JSON value null."""
    kind: TypeEngine = column["type"].as_generic()
    column["type"] = JSON(none_as_null=column["nullable"]) if isinstance(kind, JSON) else kind
