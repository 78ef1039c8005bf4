"""A mark that differs whenever the database says something else than before."""

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from tracker.store.base import AppendOnly, Base
from tracker.store.models import PlanRow, RowChangeRow

Mark = tuple[int | str | None, ...]


def read_mark(session: Session) -> Mark:
    """The last entry of every append-only table: no change goes without one. The moments of the last change and of
    the last plan tell a database from another one that was put in its place."""
    keys = [mapper.primary_key[0] for mapper in Base.registry.mappers if issubclass(mapper.class_, AppendOnly)]
    last = [session.scalar(select(func.max(key))) for key in sorted(keys, key=lambda key: str(key))]
    moments = [session.scalar(select(func.max(at))) for at in (RowChangeRow.at, PlanRow.made_at)]
    return *last, *(str(at) for at in moments)
