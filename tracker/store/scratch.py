"""A copy of the mill in memory, to try on what a load would do: it locks nobody out and makes nothing on disk."""

from pathlib import Path

from sqlalchemy import Connection, insert, select

from tracker.store.base import Base
from tracker.store.connecting import connect
from tracker.store.models import (
    ActRow,
    FindingRow,
    JobEndRow,
    JobRow,
    OtherDateRow,
    PersonRow,
    PhotoRow,
    RowChangeRow,
    SessionRow,
)
from tracker.store.opening import Store, is_new, open_store
from tracker.store.place import find

_TOLD = (ActRow, FindingRow, JobEndRow, JobRow, OtherDateRow, PersonRow, PhotoRow, RowChangeRow, SessionRow)
NOT_COPIED = {model.__tablename__ for model in _TOLD}
"""The bulk of a large database, which is only ever told: what was found and changed, who did it, and what else could be
booked; the photos; and the accounts and jobs, which no load touches."""


def scratch(database: str | Path) -> Store:
    """The mill as it is now, in memory; an empty one where there is no database yet."""
    place = find("sqlite://")
    engine = connect(place)
    with engine.begin() as copy:
        Base.metadata.create_all(copy)
        if not is_new(database):
            with open_store(database).reading() as uow:
                _copy(uow.session.connection(), copy)
    return Store(engine, place)


def _copy(source: Connection, target: Connection) -> None:
    for table in Base.metadata.sorted_tables:
        if table.name not in NOT_COPIED:
            rows = [row._asdict() for row in source.execute(select(table))]
            if rows:
                target.execute(insert(table), rows)
