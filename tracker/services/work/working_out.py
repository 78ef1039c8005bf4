"""Minutes of a recorded conversion that nobody took, worked out from its times by the crew's hours and the method's minutes."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from tracker.cards.times import Times, shared, worked_min
from tracker.domain.calendars import Calendar
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking
from tracker.domain.progress import WHOLE
from tracker.domain.shifts import crew_calendar
from tracker.domain.words import fold
from tracker.domain.work import WorkContent
from tracker.scope.loads import Loader
from tracker.services.work.spent import crew_row


@dataclass(frozen=True, slots=True)
class WorkedOut:
    total_min: float
    """On the loom, pauses left out."""
    operation_min: Mapping[str, float]
    worked_out: frozenset[str]
    """Which of them nobody took; `WHOLE` for the total."""


@dataclass(frozen=True, slots=True)
class Noted:
    """What the floor wrote down of a conversion; moments in UTC."""

    crew: str
    started_at: datetime
    over_at: datetime
    operation_min: Mapping[str, float]
    total_min: float | None


def work_out(mill: Mill, key: LoomKey, noted: Noted, booking: Booking | None, content: WorkContent | None) -> WorkedOut:
    """The minutes of the whole and of each operation, as noted or shared out."""
    whole, taken, start, over = noted.total_min, noted.operation_min, noted.started_at, noted.over_at
    if whole is None:
        calendar = _calendar(mill, key, noted.crew, start, over)
        pause = booking.pause if booking else None
        pause_h = calendar.hours_between(*pause) if pause and start < pause[1] and over > pause[0] else 0.0
        whole = worked_min(Times(start, over, pause_h), calendar)
    loader = Loader(mill.terms.allowance)
    operations = content.operations if content else ()
    expected = {fold(row.operation): loader.minutes(row) for row in operations}
    more = shared(whole, operations, expected, taken)
    marks = frozenset(more) | (frozenset({WHOLE}) if noted.total_min is None else frozenset())
    return WorkedOut(whole, {**taken, **more}, marks)


def _calendar(mill: Mill, key: LoomKey, crew: str, start: datetime, over: datetime) -> Calendar:
    row = crew_row(mill, crew, key.hall, start)
    if row is None:
        return Calendar()
    first, last = (at.astimezone(mill.terms.zone).date() for at in (start, over))
    return crew_calendar(mill, row, key.hall, first, last)
