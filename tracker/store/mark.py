"""A mark that differs whenever the database says something else than before."""

from sqlalchemy import select
from sqlalchemy.orm import Session

from tracker.store.models import ActRow, SealRow

Mark = tuple[int, str]


def read_mark(session: Session) -> Mark:
    """The number and the hash of the last seal of history: no change goes without one, and none is like another. That somebody
    signed in changes nothing of the mill: the seals of acts by themselves do not count."""
    of_the_mill = select(SealRow.id, SealRow.hash).where(SealRow.table != ActRow.__tablename__)
    last = session.execute(of_the_mill.order_by(SealRow.id.desc()).limit(1)).first()
    return (last.id, last.hash) if last else (0, "")
