"""The terms in force, for those who type a moment."""

from datetime import datetime

from tracker.domain import clock
from tracker.store import open_store


def local_moment(db: str, text: str) -> datetime:
    """A moment as typed in the mill's local time; UTC. Raises ValueError where it is none."""
    with open_store(db).reading() as uow:
        return clock.local_moment(text, uow.terms())
