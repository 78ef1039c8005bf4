"""What is fixed before anything is decided: looms in work and firm bookings."""

from dataclasses import dataclass
from datetime import datetime

from tracker.domain.mill import LoomKey
from tracker.errors import Message, message
from tracker.planning.model.contents import Profile, profile
from tracker.planning.model.grid import Ints
from tracker.planning.model.instance import Instance
from tracker.planning.problem import InWork
from tracker.planning.settled.firm import firm_bookings, is_astray, kept, overrun, reshaped, why_impossible
from tracker.planning.settled.taking import Decided, less, nothing, occupy, shortages, without, worked


@dataclass(frozen=True)
class Given:
    instance: Instance
    """Less what is given."""
    firm: list[Decided]
    let_go: dict[LoomKey, Message]
    """Loom of a firm booking that today's data do not allow → why; it is planned anew."""
    astray: dict[LoomKey, datetime]
    """Loom of a firm booking that stays though its beam-out has left it → when that is expected now."""
    notes: tuple[Message, ...]


def take_given(instance: Instance) -> Given:
    """Take out what looms in work and firm bookings hold, in the order of `firm_bookings`: what the earlier ones leave must
    do for the later ones. What work that has become longer takes beyond a booking comes last: it makes no booking
    impossible."""
    instance, notes = _without_work(instance)
    firm: list[Decided] = []
    let_go: dict[LoomKey, Message] = {}
    astray: dict[LoomKey, datetime] = {}
    for loom, old in firm_bookings(instance).items():
        taken = kept(instance, loom, old)
        if why := why_impossible(instance, taken):
            let_go[old.key] = why
            continue
        if is_astray(instance, taken):
            astray[old.key] = instance.windows.items[taken.window].mean_at
        firm.append(taken)
        instance = less(instance, taken)
    firm.sort(key=lambda taken: (taken.start, instance.looms[taken.loom].sort_key))
    for i, taken in enumerate(firm):
        firm[i], instance, short = overrun(instance, taken)
        notes = (*notes, *reshaped(instance, firm[i], short))
    return Given(instance, firm, let_go, astray, notes)


# ---- looms in work


def _without_work(instance: Instance) -> tuple[Instance, tuple[Message, ...]]:
    used = nothing(instance)
    for item in instance.problem.in_work:
        _, positions, held = _in_work(instance, item)
        occupy(used, instance, item.key, positions, held)
    notes = tuple(message("in-work-overruns", short=short) for short in shortages(instance, used))
    return without(instance, used), notes


def _in_work(instance: Instance, item: InWork) -> tuple[int, Ints, Profile]:
    """Hall, positions and what is held of a loom in work."""
    hall, grid = instance.halls.index(item.key.hall), instance.grid
    pause = (grid.first_slot(item.pause[0]), grid.first_slot(item.pause[1])) if item.pause else None
    positions = worked(instance.clocks[hall].work, grid.first_slot(instance.problem.as_of), pause)
    positions = positions[: item.remaining_slots]
    if item.content is None:
        return hall, positions, Profile(item.remaining_slots, (), ())
    held = profile(item.content, instance.mill.terms.lead_trade, item.pause is not None)
    return hall, positions, held.tail(item.remaining_slots)


def in_work_end(instance: Instance, item: InWork) -> datetime:
    """When a loom in work will be done."""
    hall, positions, _ = _in_work(instance, item)
    work = instance.clocks[hall].work[positions]
    return instance.grid.moment(int(work[-1]) + 1) if work.size else instance.problem.as_of
