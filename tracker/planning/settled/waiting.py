"""What a pilot's date does to its type: which published bookings must wait for it, and what waiting costs (MODEL.md, section 6)."""

import numpy as np

from tracker.planning.model.grid import SLOT_H, Bools, Floats, Ints
from tracker.planning.model.instance import Instance
from tracker.planning.model.options import Options, stays, times


def opens_after(instance: Instance, end: Ints) -> Ints:
    """The slot from which the others of a type may start, by the end of its pilot."""
    return end + round(instance.mill.terms.soak_days * 24 / SLOT_H)


def worth_piloting(instance: Instance, options: Options, looms: Ints, named: Bools, could: Bools) -> Bools:
    """Which options a type's pilot may take where a plan is published; shape (options,). `options` are of the type's looms,
    `named` says which are of the pilot that the mill names, `could` which a pilot could take at all.

    Where the published pilot can stay, it does, unless the mill names another: its type was planned behind it. Else those that
    cost the type no more than the cheapest and the price of a move, and first, where few moves are asked for, those with which
    the fewest bookings move. The named pilot's are held against each other.
    """
    calm, published = instance.problem.calm is not None, instance.previous.booked[looms].any()
    if not len(options) or not published:
        return np.ones(len(options), dtype=bool)
    kept, may = stays(instance, options), np.zeros(len(options), dtype=bool)
    stay = kept & could & _was_pilot(instance, options)
    if (stay & named if named.any() else stay).any():
        return stay
    for group in (named, ~named):
        mine = np.flatnonzero(group & could)
        if calm and mine.size:
            moves = _moves(instance, options, looms, kept)[mine]
            may[mine], mine = moves == moves.min(), mine[moves == moves.min()]
        if mine.size:
            cost = cost_of_type(instance, options)[mine]
            may[mine] = cost <= cost.min() + instance.mill.terms.move_cost
    return may


def _was_pilot(instance: Instance, options: Options) -> Bools:
    pilots = {old.key for old in instance.problem.previous_bookings if old.pilot}
    return np.array([key in pilots for key in instance.looms], dtype=bool)[options.loom]


def _moves(instance: Instance, options: Options, looms: Ints, kept: Bools) -> Ints:
    """How many published bookings of the type cannot stay with each option as its pilot, its own among them."""
    previous, opens = instance.previous, opens_after(instance, times(instance, options).end)
    booked, slot = previous.booked[options.loom], previous.slot[options.loom]
    starts = np.sort(previous.slot[looms[previous.booked[looms]]])
    others = np.searchsorted(starts, opens) - (booked & (slot < opens))
    return others + (booked & ~kept)


def cost_of_type(instance: Instance, options: Options) -> Floats:
    """What the type would cost at least with each option as its pilot: its own cost, and what each other loom costs at the
    cheapest date from then on, or left over."""
    start, opens = times(instance, options).start, opens_after(instance, times(instance, options).end)
    at, back = np.unique(opens, return_inverse=True)
    total, own = np.zeros(at.size), np.zeros(len(options))
    for loom in np.unique(options.loom):
        mine = np.flatnonzero(options.loom == loom)
        order = mine[np.argsort(start[mine], kind="stable")]
        cheapest = np.minimum.accumulate(options.cost[order][::-1])[::-1]
        from_then = np.minimum(np.append(cheapest, np.inf), instance.left_cost[loom])
        costs = from_then[np.searchsorted(start[order], at)]
        total += costs
        own[mine] = costs[back[mine]]
    return options.cost + total[back] - own
