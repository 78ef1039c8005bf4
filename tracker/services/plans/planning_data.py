"""Read what a plan rests on."""

from datetime import datetime

from tracker.mill_state.happened import Happened, happened
from tracker.mill_state.planning import PlanningData
from tracker.services.context import Context
from tracker.services.work.scope import methods


def read_planning_data(context: Context) -> PlanningData:
    """One consistent view of everything that a plan rests on."""
    with context.reading() as uow:
        conversions, stages = tuple(uow.conversions()), uow.stages()
        return PlanningData(
            uow.mill(), uow.published_plan(), stages, conversions, tuple(uow.movements()), tuple(uow.reservations()),
            methods(uow, (c.method_version for c in conversions)), uow.last_bookings(stages.keys()),
        )  # fmt: skip


def read_happened(context: Context, data: PlanningData, as_of: datetime) -> tuple[Happened, ...]:
    """What has happened since the plan in force was made; nothing where there is none. To be asked before another is saved."""
    with context.reading() as uow:
        number = uow.published_number()
        since = uow.since_plan(number) if number is not None else None
    return happened(data.mill, since, data.previous, as_of) if since and data.previous else ()
