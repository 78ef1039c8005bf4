"""Better plans by freeing some looms at a time and solving for them again, all others staying where they are."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from tracker.planning.model.grid import Bools, Floats, Ints
from tracker.planning.model.options import ranges, times
from tracker.planning.model.programme import LEFT, Control, Programme
from tracker.planning.search.incumbent import Incumbent
from tracker.planning.search.integer import Effort, Task, solve
from tracker.planning.search.relaxation import Relaxation

EFFORT = Effort(gap=1e-4, nodes=200, stall=100, heuristics=0.0)
"""Without looking for answers: some good one is known, and branching finds a better one in half of the time."""
ROUGHLY = Effort(gap=1e-3, nodes=20, stall=20, heuristics=0.0)
"""The same where hundreds of looms are free at a time: many of them once are worth more than few to the cent."""


@dataclass(frozen=True)
class Neighbourhood:
    """How much is freed at a time."""

    looms: int
    """Neighbours in time that are freed together."""
    extra: int
    """Looms freed beside them that would rather be there."""
    options: int
    """The most promising options among which they choose."""
    effort: Effort = EFFORT


def sweep(
    incumbent: Incumbent, relaxation: Relaxation, shift: float, search: Neighbourhood, control: Control
) -> Iterator[float]:
    """Go once through the horizon; yields the cost after each neighbourhood. `shift` (0 to 1) moves their edges."""
    best = _best(incumbent.programme, relaxation)
    for looms in _neighbourhoods(incumbent, relaxation, best, shift, search):
        if control.over():
            return
        improve(incumbent, relaxation, looms, search, control)
        yield incumbent.cost


def improve(incumbent: Incumbent, relaxation: Relaxation, looms: Ints, search: Neighbourhood, control: Control) -> bool:
    """Solve again for these looms; True where that was cheaper."""
    programme = incumbent.programme
    used = incumbent.used_without(looms)
    now = incumbent.chosen[looms]
    options = candidates(programme, relaxation, looms, now, programme.rows.free(used), search.options)
    answer = solve(programme, Task(looms, options, used), search.effort, control)
    if answer.chosen is None or answer.cost > _cost(programme, looms, now) - 1e-6:
        return False
    incumbent.move(looms, answer.chosen)
    return True


def _cost(programme: Programme, looms: Ints, chosen: Ints) -> float:
    taken = chosen >= 0
    return float(programme.options.cost[chosen[taken]].sum() + programme.left_cost[looms[~taken]].sum())


def candidates(programme: Programme, relaxation: Relaxation, looms: Ints, now: Ints, free: Floats, most: int) -> Ints:
    """Options of the looms that fit, the most promising by reduced cost, and those taken now."""
    first = programme.first[looms]
    options = ranges(first, programme.first[looms + 1] - first)
    reduced = relaxation.reduced[options]
    options = options[reduced <= relaxation.reduced_left[programme.number[options]]]
    options = options[np.argsort(relaxation.reduced[options], kind="stable")]
    fits = programme.lookup.fits(free, options[: 8 * most])
    return np.union1d(options[: 8 * most][fits][:most], now[now >= 0])


def _best(programme: Programme, relaxation: Relaxation) -> Ints:
    """The option with the least reduced cost of each loom."""
    order = np.lexsort((relaxation.reduced, programme.number))
    return order[programme.first[:-1]]


def _excess(incumbent: Incumbent, relaxation: Relaxation) -> Floats:
    """By loom: the reduced cost of what it has now."""
    chosen = incumbent.chosen
    return np.where(chosen >= 0, relaxation.reduced[np.maximum(chosen, 0)], relaxation.reduced_left)


def _neighbourhoods(
    incumbent: Incumbent, relaxation: Relaxation, best: Ints, shift: float, search: Neighbourhood
) -> Iterator[Ints]:
    """Looms booked next to each other in time (one left over stands where it would like to be), and looms from
    elsewhere that could save most by coming there. Halls that share no crew are gone through one after the other."""
    programme = incumbent.programme
    starts = times(programme.instance, programme.options).start
    at = starts[best]
    booked = np.flatnonzero(incumbent.chosen != LEFT)
    at[booked] = starts[incumbent.chosen[booked]]
    groups = _crew_groups(programme)
    for group in np.unique(groups):
        mine = np.flatnonzero(groups == group)
        order = mine[np.argsort(at[mine], kind="stable")]
        options = groups[programme.number] == group
        for begin in range(-int(shift * search.looms), order.size, search.looms):
            looms = order[max(0, begin) : begin + search.looms]
            if looms.size:
                there = options & (starts >= at[looms].min()) & (starts <= at[looms].max())
                yield np.union1d(looms, _drawn(incumbent, relaxation, there)[: search.extra])


def _crew_groups(programme: Programme) -> Ints:
    """By loom: its hall where every crew keeps to one hall, else the same for all."""
    instance = programme.instance
    if instance.pools[0].shared.any():
        return np.zeros(programme.looms.size, dtype=np.int64)
    return instance.hall_of[programme.looms]


def _drawn(incumbent: Incumbent, relaxation: Relaxation, there: Bools) -> Ints:
    """Looms that one of the options `there` could save something, those that it could save most first."""
    options = np.flatnonzero(there)
    number = incumbent.programme.number[options]
    saves = np.zeros(incumbent.programme.looms.size)
    np.maximum.at(saves, number, _excess(incumbent, relaxation)[number] - relaxation.reduced[options])
    order = np.argsort(-saves, kind="stable")
    return order[saves[order] > 1]
