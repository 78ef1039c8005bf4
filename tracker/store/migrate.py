"""The versions of the schema. Each is a file in `migrations/versions`, kept for ever: a database of any version that was
released is brought to the newest one. The library that does it is imported when one has to be: most commands find the newest."""

from functools import cache
from pathlib import Path

from sqlalchemy import Connection, inspect, text

HERE = Path(__file__).parent / "migrations"


@cache
def versions() -> tuple[str, ...]:
    """Every version, the first one first: the number that its file's name begins with."""
    return tuple(sorted(path.name[:4] for path in (HERE / "versions").glob("[0-9][0-9][0-9][0-9]_*.py")))


def version_of(connection: Connection) -> str | None:
    """The version that a database says it has; None where it says none."""
    if not inspect(connection).has_table("alembic_version"):
        return None
    return connection.execute(text("SELECT version_num FROM alembic_version")).scalar()


def upgrade(connection: Connection, version: str = "head") -> None:
    """Apply the migrations that are missing, as far as a version."""
    from alembic import command
    from alembic.config import Config

    config = Config()
    config.set_main_option("script_location", str(HERE))
    config.attributes["connection"] = connection
    command.upgrade(config, version)
