"""Read what a plan rests on."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime

from tracker.domain.since import RowChanged
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


def read_happened(
    context: Context, data: PlanningData, as_of: datetime, assumed: Iterable[RowChanged] = ()
) -> tuple[Happened, ...]:
    """What has happened since the plan in force was made, and what is `assumed` beside it; nothing where there is no such plan.
    To be asked before another is saved."""
    with context.reading() as uow:
        number = uow.published_number()
        since = uow.since_plan(number) if number is not None else None
    if since is None or data.previous is None:
        return ()
    return happened(data.mill, replace(since, rows=(*since.rows, *assumed)), data.previous, as_of)
