"""Why looms are left over, in a few words that name the limit to lift."""

from dataclasses import dataclass

import numpy as np

from tracker.domain.formats import day, moment
from tracker.planning.model.grid import Floats, Ints
from tracker.planning.model.instance import Instance
from tracker.planning.model.options import Dropped, Options
from tracker.planning.model.pools import Pool, PoolKind
from tracker.planning.model.programme import Programme
from tracker.planning.model.rows import Rows


@dataclass(frozen=True, slots=True)
class Why:
    """Why a loom is left over."""

    says: str
    part: str = ""
    """The part that it is left over for want of, where that is why."""


def reasons_left(programme: Programme, numbers: Ints, free: Floats, opens: Ints) -> dict[int, Why]:
    """Loom number → why it is left over. `free`: what is left of each row, shape (rows,); `opens`: the slot from which
    each loom may start after its type's pilot, shape (looms,)."""
    first = programme.options.first(len(programme.instance.looms))
    return {
        int(i): _why_none(programme.instance, programme.options, int(i), int(opens[i]))
        if first[i] == first[i + 1]
        else _why_not(programme, np.arange(int(first[i]), int(first[i + 1])), free)
        for i in numbers
    }


def why_none(instance: Instance, options: Options, loom: int, opens: int) -> str:
    """Why a loom has no option, in words."""
    return _why_none(instance, options, loom, opens).says


def _why_none(instance: Instance, options: Options, loom: int, opens: int) -> Why:
    key, problem = instance.looms[loom], instance.problem
    if key in problem.unplannable:
        return Why(problem.unplannable[key])
    if not (instance.windows.loom == loom).any():
        return Why("no beam-out, no standing span and no warp to stop before the horizon")
    dropped = options.dropped[loom]
    order = (
        Dropped.KIT,
        Dropped.PROTECTED,
        Dropped.CLOSED,
        Dropped.UNWATCHED,
        Dropped.PEOPLE,
        Dropped.PILOT,
        Dropped.DEARER,
        Dropped.HORIZON,
    )
    found = max(order, key=lambda reason: (dropped[reason], -order.index(reason)))
    if not dropped[found]:
        return Why("no working time of a crew in its windows")
    if found is Dropped.KIT:
        part, lacks = _short_part(instance, loom)
        return Why(f"no kit before the horizon: {lacks}", part)
    return Why(_dropped(instance, loom, opens, found))


def _dropped(instance: Instance, loom: int, opens: int, reason: Dropped) -> str:
    if reason is Dropped.PROTECTED:
        return f"protected until {day(instance.mill.looms[instance.looms[loom]].protected_until)}"
    if reason is Dropped.PEOPLE:
        return _short_pool(instance, loom)
    if reason is Dropped.PILOT:
        return _behind_its_pilot(instance, loom, opens)
    return {
        Dropped.HORIZON: "no window in which it would end before the horizon",
        Dropped.CLOSED: "it would stand open over a day on which nobody converts (term 'open over closed days')",
        Dropped.UNWATCHED: "the people whom its restart needs after it would not be at work (steps after restart, term 'watch')",
        Dropped.DEARER: "every date costs more than leaving it over",
    }[reason]


def _behind_its_pilot(instance: Instance, loom: int, opens: int) -> str:
    machine_type = instance.mill.looms[instance.looms[loom]].machine_type
    if opens == instance.grid.slots:
        return f"{machine_type} has no pilot that can be booked before the horizon, and the others of its type wait for one"
    soak = f"{instance.mill.terms.soak_days:g} days"
    at = moment(instance.grid.moment(opens), instance.grid.zone)
    return f"no window after {at}, when the pilot of {machine_type} will have run {soak} (soak)"


def _short_pool(instance: Instance, loom: int) -> str:
    """What its work needs beside the crew and lacks: at all, or at the hours of its windows."""
    hall = int(instance.hall_of[loom])
    work = instance.clocks[hall].work
    lacks: dict[str, bool] = {}
    for hold in {hold for number in _shapes(instance, loom) for hold in instance.shapes.holds[number]}:
        pool = instance.pools[hold.pool]
        if pool.kind is PoolKind.SECTION:
            continue
        there = pool.reach()[hall][work] >= hold.amount
        if not there.all():
            lacks[_pool_words(pool, hold.amount)] = bool(there.any())
    never = [what for what, ever in lacks.items() if not ever]
    if never:
        return f"there is never {' nor '.join(sorted(never))} before the horizon"
    return f"{' and '.join(sorted(lacks))} not there at the hours in which its work needs it"


def _shapes(instance: Instance, loom: int) -> set[int]:
    """The shapes that its conversion may have."""
    found: set[int] = set()
    for window in np.flatnonzero(instance.windows.loom == loom):
        menu, change = instance.windows.menu[window], instance.windows.change[window]
        contents = instance.menus.flat[instance.menus.first[menu] : instance.menus.first[menu + 1]]
        found |= set(instance.shapes.number(contents, change).tolist())
    return found


def _pool_words(pool: Pool, amount: int) -> str:
    if pool.kind is PoolKind.STOPPED:
        return "a place among the looms stopped at once (a term)"
    return f"{amount} × {pool.name}"


def _short_part(instance: Instance, loom: int) -> tuple[str, str]:
    """The part of which it needs more than it can ever have (empty where there is no such part), and in words."""
    menus = instance.windows.menu[instance.windows.loom == loom]
    rows = {int(c) for m in menus for c in instance.menus.flat[instance.menus.first[m] : instance.menus.first[m + 1]]}
    needs = np.array([instance.needs[instance.contents.needs[c]] for c in sorted(rows)])
    for i, supply in enumerate(instance.supplies):
        if (needs[:, i] > supply.total[-1] + 1e-9).all():
            needed = f"part {supply.part}, {needs[:, i].min():g} needed and {supply.total[-1]:g} to be had"
            if supply.until < instance.grid.slots:
                usable = moment(instance.grid.moment(supply.until), instance.grid.zone)
                return supply.part, f"{needed} before {usable}, when an order placed now could be used"
            return supply.part, needed
    return "", "its parts come too late for its windows"


def _why_not(programme: Programme, mine: Ints, free: Floats) -> Why:
    """What keeps a loom with options from being booked: the limit that most of them would break."""
    if programme.lookup.fits(free, mine).any():
        return Why("leaving it over costs the mill less than any date that is free")
    matrix = programme.lookup.matrix(mine).tocoo()
    lacks = matrix.data > free[matrix.row] + 1e-6
    block = np.searchsorted(programme.rows.base, matrix.row[lacks], side="right") - 1
    blocked = {int(b): np.unique(matrix.col[lacks][block == b]).size for b in np.unique(block)}
    worst = max(blocked, key=lambda b: (blocked[b], -b))
    limit, rows = _limit_words(programme.instance, programme.rows, worst), programme.rows
    part = rows.blocks[worst].name if worst >= rows.pools else ""
    return Why(f"{limit} taken in its windows by looms for which that saves more", part)


def _limit_words(instance: Instance, rows: Rows, block: int) -> str:
    if block >= rows.pools:
        return f"no kit: part {rows.blocks[block].name} is"
    pool = instance.pools[block]
    return {
        PoolKind.CREWS: f"no crew: every {pool.name} crew is", PoolKind.HEADS: f"no {pool.name}: all are",
        PoolKind.STOPPED: "the looms that may be stopped at once are",
        PoolKind.SECTION: "the looms of its section that may be stopped at once are", PoolKind.TOOL: f"no {pool.name}: all are",
    }[pool.kind]  # fmt: skip
