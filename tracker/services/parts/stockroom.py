"""Read the stockroom."""

from dataclasses import replace
from datetime import datetime

from tracker.domain.clock import now, planning_moment
from tracker.domain.mill import Mill
from tracker.domain.plan import Plan
from tracker.domain.progress import NOT_TO_COME
from tracker.mill_state.stockroom import Stockroom
from tracker.store import UnitOfWork


def read_stockroom(
    uow: UnitOfWork,
    as_of: datetime | None = None,
    this_moment: datetime | None = None,
    known: tuple[Mill, Plan | None] | None = None,
) -> Stockroom:
    """The stockroom as the database knows it, looked at at `as_of` (default: as in `planning_moment`). `known`: the mill and the
    published plan, where they were read already."""
    mill, plan = known or (uow.mill(), uow.published_plan())
    gone = {key: change.stage for key, change in uow.stages().items() if change.stage in NOT_TO_COME}
    if plan:
        plan = replace(plan, bookings=tuple(b for b in plan.bookings if b.key not in gone))
    movements = tuple(uow.movements())
    issued = {movement.key for movement in movements if movement.key}
    past = (mill.looms.keys() | issued) - {booking.key for booking in (plan.bookings if plan else ())}
    at = planning_moment(mill.terms, as_of, this_moment or now())
    return Stockroom(mill, plan, movements, tuple(uow.reservations()), uow.last_bookings(past), gone, at)
