"""The context in which tests call services: a database by its path, at the machine's clock unless said otherwise."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from tracker.services.context import Actor, Context


def here(database: str | Path | Context, who: str = "tester", clock: Callable[[], datetime] | None = None) -> Context:
    """A context for the database; one that is given already stays as it is."""
    return database if isinstance(database, Context) else Context(str(database), Actor(who), clock=clock)
