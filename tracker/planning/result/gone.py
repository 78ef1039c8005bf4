"""Published bookings that cannot be left where they were: by which limit, whatever is booked beside them (MODEL.md, section 7)."""

from collections.abc import Iterable, Iterator

from tracker.domain.plan import Booking, Undo
from tracker.errors import message
from tracker.planning.model.leaving import moved
from tracker.planning.model.options import Options, stays
from tracker.planning.settled.given import Given
from tracker.planning.settled.held import limit_of
from tracker.planning.settled.pilots import Opening


def cannot_stay(given: Given, opening: Opening, options: Options, bookings: Iterable[Booking]) -> Iterator[Undo]:
    """One for each moved booking that lay ahead, whose place is none of the `options` any more, and that does not merely wait
    for its pilot."""
    instance = opening.instance
    problem, number = instance.problem, {key: i for i, key in enumerate(instance.looms)}
    could = set(options.loom[stays(instance, options)].tolist())
    decided = {item.loom for item in opening.decided}
    for old in moved(problem, bookings):
        loom = number.get(old.key)
        if loom is None or loom in could or old.start < problem.as_of:
            continue
        limit = given.let_go.get(old.key)
        if limit is None and instance.grid.first_slot(old.start) >= opening.opens[loom]:
            limit = limit_of(instance, loom, old) or (None if loom in decided else message("stay-dearer"))
        if limit:
            yield Undo(old.key, None, limit=limit)
