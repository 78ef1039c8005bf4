"""What the screens ask first: has anything changed, and which moment are we looking at."""

from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from tracker.domain.clock import planning_moment
from tracker.errors import DataError
from tracker.services.context import Context
from tracker.store.mark import Mark, read_mark
from tracker.store.written import WhileUnwritten

STEP = timedelta(minutes=10)
"""The clock of the screens moves in steps, so that what was worked out holds for a while."""


@dataclass(frozen=True, slots=True)
class DatabaseState:
    mark: Mark
    """Equal marks: nothing was written in between."""
    as_of: datetime
    """Now, or the start of a programme or published plan that still lies ahead; UTC, in steps of ten minutes."""


def require_there(context: Context) -> None:
    """Refuse a database whose file has vanished, so that nothing is shown or written in its place."""
    if context.is_missing:
        raise DataError("database-gone", name=context.database)


def database_state(context: Context) -> DatabaseState:
    """The state of the database at this moment."""
    return _state(context) if context.clock else _STATES.of(context.database, None, lambda: _state(context))


_STATES: WhileUnwritten[DatabaseState] = WhileUnwritten()


def _state(context: Context) -> DatabaseState:
    with context.reading() as uow:
        mark, planned, terms = read_mark(uow.session), uow.published_as_of(), uow.terms()
    at = planning_moment(terms, None, context.now())
    at -= (at - datetime(1970, 1, 1, tzinfo=UTC)) % STEP
    return DatabaseState(mark, max(at, planned) if planned else at)
