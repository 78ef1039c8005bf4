"""Read what a plan rests on."""

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
