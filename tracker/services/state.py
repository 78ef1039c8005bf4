"""What the screens ask first: has anything changed, and which moment are we looking at."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from tracker.domain.clock import planning_moment
from tracker.errors import DataError
from tracker.store import open_store
from tracker.store.mark import Mark, read_mark
from tracker.store.place import is_missing

STEP = timedelta(minutes=10)
"""The clock of the screens moves in steps, so that what was worked out holds for a while."""


@dataclass(frozen=True, slots=True)
class DatabaseState:
    mark: Mark
    """Equal marks: nothing was written in between."""
    as_of: datetime
    """Now, or the start of a programme or published plan that still lies ahead; UTC, in steps of ten minutes."""


def require_there(db: str) -> None:
    """Refuse a database whose file has vanished, so that nothing is shown or written in its place."""
    if is_missing(db):
        raise DataError(
            f"the database {db} is not there any more; put it back, or end `beamslot serve` and start it with another"
        )


def database_state(db: str) -> DatabaseState:
    """The state of the database at this moment."""
    with open_store(db).reading() as uow:
        mark, plan, terms = read_mark(uow.session), uow.published_plan(), uow.terms()
    at = planning_moment(terms, None)
    at -= (at - datetime(1970, 1, 1, tzinfo=UTC)) % STEP
    return DatabaseState(mark, max(at, plan.as_of) if plan else at)
