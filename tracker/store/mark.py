"""A mark that differs whenever the database says something else than before."""

from sqlalchemy import select
from sqlalchemy.orm import Session

from tracker.store.models import SealRow

Mark = tuple[int, str]


def read_mark(session: Session) -> Mark:
    """The number and the hash of the last seal of history: no change goes without one, and none is like another."""
    last = session.execute(select(SealRow.id, SealRow.hash).order_by(SealRow.id.desc()).limit(1)).first()
    return (last.id, last.hash) if last else (0, "")
