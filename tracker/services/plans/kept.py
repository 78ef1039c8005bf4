"""What a plan says that was to keep bookings: how many it moves, and what that costs beside the plan that is free to."""

from collections.abc import Iterator

from tracker.domain.plan import Plan
from tracker.errors import Message, message


def keeping_told(plan: Plan) -> Iterator[Message]:
    """Nothing where bookings were kept by the terms alone."""
    keeping = plan.keeping
    if keeping is None:
        return
    if keeping.fewest is None:
        yield message("moves-made", moves=keeping.moves)
    else:
        yield message("moves-fewest", moves=keeping.moves, fewest=keeping.fewest)
    free = keeping.free
    if free is None:
        yield message("keeping-unknown")
    elif (costs := keeping.dearer(plan.objective)) >= 0.5:
        open_ = max(plan.objective - plan.bound, free.objective - free.bound)
        yield message("keeping-costs", moves=free.moves, costs=costs, open=open_, currency=plan.currency)
    else:
        yield message("keeping-free", moves=free.moves)
    if free and free.books:
        yield message("keeping-leaves", looms=free.books)
