"""What is open of a loom's conversion before it may be signed off, from what was recorded."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from typing import Any

from tracker.cards.sign_off import Recorded, open_points
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking
from tracker.domain.progress import Stage, StageChange
from tracker.domain.scopes import LoomScope
from tracker.domain.tables import TABLES
from tracker.domain.work import WorkContent
from tracker.errors import DataError, Message, message
from tracker.scope.content import scope_looms
from tracker.store import UnitOfWork
from tracker.store.rows import read_rows

Rows = Mapping[str, Iterable[Mapping[str, Any]]]
"""Table of records → rows."""
MOST = 6
"""Open points that are told by name."""


def refuse_open(uow: UnitOfWork, mill: Mill, key: LoomKey) -> None:
    """DataError where points of the loom's conversion are open; a method without any asks for nothing."""
    if not (
        mill.method.checks or mill.method.setpoints or any(row.waivable is False for row in mill.method.operations)
    ):
        return
    rows = {name: read_rows(uow.session, TABLES[name], uow.zone, key).values() for name in OF_SIGN_OFF}
    begun = begun_at(uow.stage_history()).get(key)
    booking = uow.last_bookings({key}).get(key)
    since = begun.astimezone(uow.zone).replace(tzinfo=None) if begun else datetime.min
    points = open_of(scope_looms(mill)[key], booking, rows, since)
    if said := sign_off_message(key, points):
        raise DataError(said.code, **said.params)


def sign_off_message(key: LoomKey, points: Sequence[Message]) -> Message | None:
    """Which points are open, the first of them by name; None where none is."""
    if not points:
        return None
    more = len(points) - MOST if len(points) > MOST else None
    return message("sign-off-open", loom=key, many=len(points), points=list(points[:MOST]), more=more)


OF_SIGN_OFF = ("work_done", "set_values", "check_results")


def open_of(scope: LoomScope, booking: Booking | None, rows: Rows, since: datetime) -> tuple[Message, ...]:
    """The open points of one loom; `since` is when its conversion began, in the mill's local time as the rows have it."""
    content = content_of(scope, booking)
    if content is None:
        return ()
    told = Recorded(*(tuple(rows.get(name, ())) for name in OF_SIGN_OFF)).since(since)
    return open_points(content.operations, content.setpoints, content.checks, told)


def content_of(scope: LoomScope, booking: Booking | None) -> WorkContent | None:
    """The loom's work as it was booked, by today's method; where it never was, or not so, the largest that it can be."""
    contents = [content for of in scope.contents.values() for content in of]
    booked = [c for c in contents if booking and (c.kind, c.choices) == (booking.kind, booking.choices)]
    return next(iter(booked), None) or max(contents, key=lambda content: content.on_loom_min, default=None)


def begun_at(history: Iterable[StageChange]) -> dict[LoomKey, datetime]:
    """Loom → when the work on it began last."""
    return {change.key: change.at for change in history if change.stage is Stage.IN_WORK}
