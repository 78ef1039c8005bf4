"""How the turns of a crew came about, plan by published plan."""

from collections.abc import Iterator
from datetime import datetime
from typing import NamedTuple

from sqlalchemy import select
from sqlalchemy.orm import Session

from tracker.domain.mill import LoomKey
from tracker.domain.plan import CrewTurn
from tracker.store.models import BookingRow, PlanRow


class PublishedBooking(NamedTuple):
    plan: int
    published_at: datetime
    key: LoomKey
    firm: bool
    turns: tuple[CrewTurn, ...]


def published_bookings(session: Session) -> Iterator[PublishedBooking]:
    """Every booking of every published plan, the oldest plan first."""
    b = BookingRow
    asked = (
        select(b.plan_id, PlanRow.made_at, b.hall, b.loom, b.firm, b.crews)
        .join(PlanRow, PlanRow.id == b.plan_id)
        .where(PlanRow.published)
        .order_by(b.plan_id, b.id)
    )
    for plan, at, hall, loom, firm, crews in session.execute(asked):
        turns = (CrewTurn(crew, *map(datetime.fromisoformat, span)) for crew, *span in crews or ())
        yield PublishedBooking(plan, at, LoomKey(hall, loom), firm, tuple(turns))
