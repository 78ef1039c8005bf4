"""The versions of the schema. Each is a file in `migrations/versions`, kept for ever: a database of any version that was
released is brought to the newest one."""

from functools import cache
from pathlib import Path

from alembic import command
from alembic.config import Config
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, inspect, text

HERE = Path(__file__).parent / "migrations"


def _config(connection: Connection | None = None) -> Config:
    config = Config()
    config.set_main_option("script_location", str(HERE))
    config.attributes["connection"] = connection
    return config


@cache
def versions() -> tuple[str, ...]:
    """Every version, the first one first."""
    script = ScriptDirectory.from_config(_config())
    return tuple(revision.revision for revision in script.walk_revisions())[::-1]


def version_of(connection: Connection) -> str | None:
    """The version that a database says it has; None where it says none."""
    if not inspect(connection).has_table("alembic_version"):
        return None
    return connection.execute(text("SELECT version_num FROM alembic_version")).scalar()


def upgrade(connection: Connection, version: str = "head") -> None:
    """Apply the migrations that are missing, as far as a version."""
    command.upgrade(_config(connection), version)
