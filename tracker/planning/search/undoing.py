"""What it would take to leave each moved booking where it was: what stands in its way, and the price (MODEL.md, section 7)."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from tracker.domain.plan import Undo
from tracker.errors import Message, message
from tracker.planning.model.grid import Bools, Ints
from tracker.planning.model.options import stays
from tracker.planning.model.programme import LEFT, Control, Programme
from tracker.planning.search.incumbent import Incumbent
from tracker.planning.search.integer import Effort, Task, solve
from tracker.planning.search.neighbourhood import candidates
from tracker.planning.search.relaxation import Relaxation

_EFFORT = Effort(gap=1e-4, nodes=50, stall=50)
MOST_FREED = 32
"""Moved bookings that may go elsewhere to make room."""
_OPTIONS = 300
"""Among which those that must make room find another."""


@dataclass(frozen=True)
class Undone:
    """A choice with one booking back where it was."""

    says: Undo
    looms: Ints
    """Numbers of the programme whose choice differs, or may."""
    chosen: Ints
    """Theirs; nothing where none was found."""


def undo(found: Incumbent, relaxation: Relaxation, control: Control) -> Iterator[Undone]:
    """One for each loom of the programme whose published booking is an option still and is not taken, in order."""
    programme = found.programme
    options, kept = programme.options, stays(programme.instance, programme.options)
    for number in range(programme.looms.size):
        mine = programme.options_of(number)
        back = mine[kept[mine]]
        if back.size and not (found.chosen[number] != LEFT and kept[found.chosen[number]]) and not control.over():
            free = programme.rows.free(found.used_without(np.array([number])))
            fits = programme.lookup.fits(free, back)
            yield _undo(found, relaxation, number, int(back[np.lexsort((options.cost[back], ~fits))[0]]), control)


def _undo(found: Incumbent, relaxation: Relaxation, number: int, back: int, control: Control) -> Undone:
    """The others that take what it needs, and all that moved, may go elsewhere or be left over; the rest stay."""
    programme, kept = found.programme, stays(found.programme.instance, found.programme.options)
    over = programme.rows.over(found.used_without(np.array([number])) + programme.used(np.array([back]))) > 1e-6
    takers = _takers(found, over, number)
    others = np.setdiff1d(np.union1d(takers, _moved(found, kept)[:MOST_FREED]), [number])
    looms = np.append(others, number)
    used = found.used_without(looms) + programme.used(np.array([back]))
    free = programme.rows.free(used)
    among = candidates(programme, relaxation, others, found.chosen[others], free, _OPTIONS)
    theirs = np.flatnonzero(kept & np.isin(programme.number, others))
    among = np.union1d(among, theirs[programme.lookup.fits(free, theirs)])
    none = np.zeros(0, dtype=np.int64)
    chosen = none
    if not (programme.rows.over(used) > 1e-6).any():
        answer = solve(programme, Task(others, among, used), _EFFORT, control).chosen if others.size else none
        chosen = none if answer is None else np.append(answer, back)
    costs = _cost(programme, looms, chosen) - _cost(programme, looms, found.chosen[looms]) if chosen.size else None
    keys = [programme.instance.looms[loom] for loom in programme.looms]
    short = _short(programme, int(np.flatnonzero(over)[0])) if over.any() else None
    by = tuple(keys[i] for i in _moved_first(found, kept, takers))
    return Undone(Undo(keys[number], costs, short, by), looms, chosen)


def _moved(found: Incumbent, kept: Bools) -> Ints:
    booked = found.programme.instance.previous.booked[found.programme.looms]
    return np.flatnonzero(booked & ~(kept[found.chosen] & (found.chosen != LEFT)))


def _takers(found: Incumbent, over: Bools, number: int) -> Ints:
    """The looms that use what there would be too little of."""
    if not over.any():
        return np.zeros(0, dtype=np.int64)
    booked = np.flatnonzero(found.chosen != LEFT)
    booked = booked[booked != number]
    use = found.programme.lookup.matrix(found.chosen[booked])[np.flatnonzero(over), :]
    return booked[np.asarray((use > 0).sum(axis=0)).ravel() > 0]


def _moved_first(found: Incumbent, kept: Bools, takers: Ints) -> Ints:
    """Those that were not there before: they moved, or are new; all of them where all were there."""
    new = ~kept[found.chosen[takers]]
    return takers[new] if new.any() else takers


def _short(programme: Programme, row: int) -> Message:
    rows, instance = programme.rows, programme.instance
    block = int(np.searchsorted(rows.base, row, side="right")) - 1
    at = instance.grid.local(int(rows.blocks[block].slot[row - rows.base[block]]))
    if block >= rows.pools:
        return message("too-little", kind="part", what=rows.blocks[block].name, at=at)
    pool = instance.pools[block]
    return message("too-little", kind=pool.kind.value, what=pool.name, at=at)


def _cost(programme: Programme, looms: Ints, chosen: Ints) -> float:
    taken = chosen != LEFT
    return float(programme.options.cost[chosen[taken]].sum() + programme.left_cost[looms[~taken]].sum())
