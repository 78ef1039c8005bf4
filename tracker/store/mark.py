"""A mark that differs whenever the database says something else than before."""

from sqlalchemy import select
from sqlalchemy.orm import Session

from tracker.store.models import ActRow, JobEndRow, JobRow, SealRow

Mark = tuple[int, str]


def read_mark(session: Session) -> Mark:
    """The number and the hash of the last seal of history: no change goes without one, and none is like another. That somebody
    signed in, or that work began, changes nothing of the mill: the seals of acts and jobs by themselves do not count."""
    beside = [model.__tablename__ for model in (ActRow, JobRow, JobEndRow)]
    of_the_mill = select(SealRow.id, SealRow.hash).where(SealRow.table.not_in(beside))
    last = session.execute(of_the_mill.order_by(SealRow.id.desc()).limit(1)).first()
    return (last.id, last.hash) if last else (0, "")
