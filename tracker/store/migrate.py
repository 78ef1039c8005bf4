"""Bring a database to the newest schema. `python -m tracker.store.migrate renew` rewrites the one migration
that stands until the first release, after a model has changed."""

import sys
from pathlib import Path

from alembic import command
from alembic.config import Config
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, create_engine, inspect, text

HERE = Path(__file__).parent / "migrations"


def _config(connection: Connection | None = None) -> Config:
    config = Config()
    config.set_main_option("script_location", str(HERE))
    config.attributes["connection"] = connection
    return config


def is_current(connection: Connection) -> bool:
    """Whether the database has the newest schema."""
    if not inspect(connection).has_table("alembic_version"):
        return False
    current = connection.execute(text("SELECT version_num FROM alembic_version")).scalar()
    return current == ScriptDirectory.from_config(_config()).get_current_head()


def upgrade(connection: Connection) -> None:
    """Apply the migrations that are missing; under the lock, since another may have done so meanwhile."""
    if not is_current(connection):
        command.upgrade(_config(connection), "head")


def renew() -> None:
    """Rewrite the initial migration from the models."""
    for old in (HERE / "versions").glob("0*.py"):
        old.unlink()
    with create_engine("sqlite://").connect() as connection:
        command.revision(_config(connection), "The first schema", autogenerate=True, rev_id="0001")


if __name__ == "__main__" and sys.argv[1:] == ["renew"]:
    renew()
