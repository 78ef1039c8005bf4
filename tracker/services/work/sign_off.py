"""What is open of a loom's conversion before it may be signed off, from what was recorded."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.cards.sign_off import Recorded, open_points
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking
from tracker.domain.progress import Stage, StageChange
from tracker.domain.scopes import LoomScope
from tracker.domain.tables import TABLES
from tracker.domain.work import WorkContent
from tracker.errors import DataError, Message, message
from tracker.services.work.method_then import MethodThen
from tracker.store import UnitOfWork
from tracker.store.rows import read_rows

Rows = Mapping[str, Iterable[Mapping[str, Any]]]
"""Table of records → rows."""
MOST = 6
"""Open points that are told by name."""


def refuse_open(uow: UnitOfWork, mill: Mill, key: LoomKey, at: datetime) -> None:
    """DataError where points of the loom's conversion are open (`open_then`)."""
    if said := sign_off_message(key, open_then(uow, mill, key, at)):
        raise DataError(said.code, **said.params)


def open_then(uow: UnitOfWork, mill: Mill, key: LoomKey, at: datetime) -> tuple[Message, ...]:
    """The open points of the loom's conversion when it was signed off, by the method under which it was begun; one that has none
    asks for nothing."""
    begun, then = begun_at(uow.stage_history()).get(key), MethodThen(uow, mill)
    method = then.mill(begun).method
    if not (method.checks or method.setpoints or any(row.waivable is False for row in method.operations)):
        return ()
    rows = {name: read_rows(uow.session, TABLES[name], uow.zone, key).values() for name in OF_SIGN_OFF}
    since = local_time(begun, uow.zone) if begun else datetime.min
    return open_of(then.scope(key, begun), uow.last_bookings({key}).get(key), rows, since, local_time(at, uow.zone))


def local_time(at: datetime, zone: ZoneInfo) -> datetime:
    """As the rows of records have it."""
    return at.astimezone(zone).replace(tzinfo=None)


def sign_off_message(key: LoomKey, points: Sequence[Message]) -> Message | None:
    """Which points are open, the first of them by name; None where none is."""
    if not points:
        return None
    more = len(points) - MOST if len(points) > MOST else None
    return message("sign-off-open", loom=key, many=len(points), points=list(points[:MOST]), more=more)


OF_SIGN_OFF = ("work_done", "set_values", "check_results")


def open_of(
    scope: LoomScope, booking: Booking | None, rows: Rows, since: datetime, until: datetime
) -> tuple[Message, ...]:
    """The open points of one loom; `since` is when its conversion began, `until` when it was signed off, in the mill's local
    time as the rows have it."""
    content = content_of(scope, booking)
    if content is None:
        return ()
    work, values, results = (tuple(rows.get(name, ())) for name in OF_SIGN_OFF)
    told = Recorded(work, values, results, until).since(since)
    return open_points(content.operations, content.setpoints, content.checks, told)


def content_of(scope: LoomScope, booking: Booking | None) -> WorkContent | None:
    """The loom's work as it was booked, by the method of its scope; where it never was, or not so, the largest it can be."""
    contents = [content for of in scope.contents.values() for content in of]
    booked = [c for c in contents if booking and (c.kind, c.choices) == (booking.kind, booking.choices)]
    return next(iter(booked), None) or max(contents, key=lambda content: content.on_loom_min, default=None)


def begun_at(history: Iterable[StageChange]) -> dict[LoomKey, datetime]:
    """Loom → when the work on it began last."""
    return {change.key: change.at for change in history if change.stage is Stage.IN_WORK}
