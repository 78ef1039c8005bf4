"""Conversions that are decided, and what is left once they are taken out.

What they hold is taken out of the pools and supplies, never below none: a crew that fell ill or a receipt that slipped
leaves them where they are, and the plan says so.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking
from tracker.errors import Message, message
from tracker.planning.model.contents import Profile, profile
from tracker.planning.model.grid import Ints
from tracker.planning.model.instance import Instance
from tracker.planning.model.options import Options, shape_of, times
from tracker.planning.model.pools import PoolKind
from tracker.planning.model.room import room_slots
from tracker.planning.model.shapes import STANDS, pool_holds
from tracker.planning.model.supplies import Supply


@dataclass(frozen=True)
class Decided:
    """A conversion that is decided."""

    loom: int
    window: int
    """Row of the window table; -1 = a firm booking whose window is no longer forecast."""
    content: int
    """Entry of the content table; -1 = a firm booking whose work the method no longer has."""
    start: int
    """Slot."""
    end: int
    """Slot after the last."""
    slots: int
    """Working slots from start to end, less those of the pause."""
    firm: Booking | None = None
    """The booking that it was published as, where it is firm."""
    held: Profile | None = None
    """What it holds, where that is not what the content asks for today."""
    pause: tuple[int, int] | None = None
    """The slot after the first part, and the first one of the second; None = in one piece."""


def of_options(instance: Instance, options: Options, index: Ints) -> list[Decided]:
    """The options at `index` as decided conversions."""
    span = times(instance, options, index)
    shapes = shape_of(instance, options.window[index], options.content[index])
    return [
        Decided(
            int(options.loom[i]), int(options.window[i]), int(options.content[i]), int(start), int(end),
            int(instance.shapes.slots[shape]),
            pause=_pause(instance, int(options.loom[i]), int(shape), int(options.position[i])),
        )
        for i, shape, start, end in zip(index, shapes, span.start, span.end, strict=True)
    ]  # fmt: skip


def _pause(instance: Instance, loom: int, shape: int, position: int) -> tuple[int, int] | None:
    shapes, hall = instance.shapes, int(instance.hall_of[loom])
    if shapes.change[shape] < 0:
        return None
    work, last = instance.clocks[hall].work, position + int(shapes.first[shape]) - 1
    second = int(shapes.second(hall, np.array([shape]), np.array([position]))[0])
    return int(work[last]) + 1, int(work[second])


def worked(work: Ints, start: int, pause: tuple[int, int] | None) -> Ints:
    """The positions of the hall's working slots from a slot on, those of the pause left out."""
    positions = np.arange(int(np.searchsorted(work, start)), work.size)
    if pause is None:
        return positions
    slots = work[positions]
    return positions[(slots < pause[0]) | (slots >= pause[1])]


def lacks(instance: Instance, taken: Decided) -> Message | None:
    """What there is too little of for a conversion beside what is taken out already; None where there is enough."""
    used = nothing(instance)
    _occupy_taken(used, instance, taken)
    if short := next(shortages(instance, used), None):
        return short
    for supply, quantity, step in _takes(instance, taken):
        least = supply.least()[step]
        if quantity > least + 1e-9:
            return message("firm-part", part=supply.part, needed=quantity, there=float(least))
    return None


def shortages(instance: Instance, used: list[Ints]) -> Iterator[Message]:
    """Of what that is more than there is, and from when on, pool by pool."""
    for pool, use in zip(instance.pools, used, strict=True):
        slots = np.flatnonzero(pool.over(use))
        if slots.size:
            yield message("too-little", kind=pool.kind.value, what=pool.name, at=instance.grid.local(int(slots[0])))


def less(instance: Instance, taken: Decided) -> Instance:
    """The instance less what a conversion holds and takes."""
    used = nothing(instance)
    _occupy_taken(used, instance, taken)
    supplies = [
        replace(s, total=np.maximum(0.0, s.total - np.where(np.arange(s.steps.size) >= step, quantity, 0.0)))
        for s, quantity, step in _takes(instance, taken)
    ]
    return replace(without(instance, used), supplies=supplies)


def _takes(instance: Instance, taken: Decided) -> Iterator[tuple[Supply, float, int]]:
    """(supply, quantity, step from which it is missing) of each scarce part."""
    key = instance.looms[taken.loom]
    issued = instance.problem.issued.get(key, {})
    parts = taken.firm.parts if taken.content < 0 and taken.firm else instance.contents.items[taken.content].parts
    for supply in instance.supplies:
        quantity = max(0.0, parts.get(supply.part, 0.0) - issued.get(supply.part, 0.0))
        yield supply, quantity, int(supply.step_at(np.array([taken.start]))[0])


def _occupy_taken(used: list[Ints], instance: Instance, taken: Decided) -> None:
    hall = int(instance.hall_of[taken.loom])
    work = instance.clocks[hall].work
    positions = worked(work, taken.start, taken.pause)
    positions = positions[work[positions] < taken.end]
    held = taken.held or Profile(len(positions), (), ())
    if taken.content >= 0 and not taken.held:
        content, terms = instance.contents.items[taken.content], instance.mill.terms
        asks_room = taken.firm is None and instance.looms[taken.loom] not in instance.problem.held
        room = room_slots(content, terms) if asks_room else 0
        held = profile(content, terms.lead_trade, parted=taken.pause is not None, room=room)
    held = replace(held, slots=len(positions))
    occupy(used, instance, instance.looms[taken.loom], positions, held)


def occupy(used: list[Ints], instance: Instance, key: LoomKey, positions: Ints, held: Profile) -> None:
    """Add what a loom holds in these positions of its hall; between them it stands, too."""
    if not positions.size:
        return
    hall, section = instance.halls.index(key.hall), instance.section(key)
    work = instance.clocks[hall].work
    slots, stands = work[positions], work[positions[0] : positions[-1] + 1]
    for hold in pool_holds(held, instance.pools):
        kind = instance.pools[hold.pool].kind
        area = section if kind is PoolKind.SECTION else hall
        if area >= 0:
            used[hold.pool][area, stands if kind in STANDS else slots[hold.first : hold.past]] += hold.amount
        if kind is PoolKind.CREWS:
            used[hold.pool][area, work[positions[-1] + 1 :][: held.room]] += hold.amount


def nothing(instance: Instance) -> list[Ints]:
    return [np.zeros_like(pool.own) for pool in instance.pools]


def without(instance: Instance, used: list[Ints]) -> Instance:
    return replace(instance, pools=[pool.less(use) for pool, use in zip(instance.pools, used, strict=True)])
