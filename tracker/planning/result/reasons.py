"""Why looms are left over, by a code that names the limit to lift."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import reduce

import numpy as np

from tracker.errors import Message, message
from tracker.planning.model.grid import Floats, Ints
from tracker.planning.model.instance import Instance
from tracker.planning.model.options import Dropped, Options
from tracker.planning.model.pools import Pool, PoolKind
from tracker.planning.model.programme import Programme


@dataclass(frozen=True, slots=True)
class Why:
    """Why a loom is left over."""

    says: Message
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


def why_none(instance: Instance, options: Options, loom: int, opens: int) -> Message:
    """Why a loom has no option."""
    return _why_none(instance, options, loom, opens).says


def _why_none(instance: Instance, options: Options, loom: int, opens: int) -> Why:
    key, problem = instance.looms[loom], instance.problem
    if key in problem.unplannable:
        return Why(problem.unplannable[key])
    if not (instance.windows.loom == loom).any():
        return Why(message("left-no-window"))
    dropped = options.dropped[loom]
    order = (
        Dropped.KIT,
        Dropped.PROTECTED,
        Dropped.RULED_OUT,
        Dropped.CLOSED,
        Dropped.UNWATCHED,
        Dropped.PEOPLE,
        Dropped.PILOT,
        Dropped.DEARER,
        Dropped.HORIZON,
    )
    found = max(order, key=lambda reason: (dropped[reason], -order.index(reason)))
    if not dropped[found]:
        return Why(message("left-no-working-time"))
    if found is Dropped.KIT:
        return _short_part(instance, loom)
    return Why(_dropped(instance, loom, opens, found))


def _dropped(instance: Instance, loom: int, opens: int, reason: Dropped) -> Message:
    if reason is Dropped.PROTECTED:
        return message("left-protected", until=instance.mill.looms[instance.looms[loom]].protected_until)
    if reason is Dropped.PEOPLE:
        return _short_pool(instance, loom)
    if reason is Dropped.PILOT:
        return _behind_its_pilot(instance, loom, opens)
    return message(_BY_ITSELF[reason])


_BY_ITSELF = {
    Dropped.HORIZON: "left-past-horizon",
    Dropped.RULED_OUT: "left-ruled-out",
    Dropped.CLOSED: "left-open-closed",
    Dropped.UNWATCHED: "left-unwatched",
    Dropped.DEARER: "left-dearer",
}


def _behind_its_pilot(instance: Instance, loom: int, opens: int) -> Message:
    machine_type = instance.mill.looms[instance.looms[loom]].machine_type
    if opens == instance.grid.slots:
        return message("left-no-pilot", machine_type=machine_type)
    soak_days = instance.mill.terms.soak_days
    return message("left-behind-pilot", opens=instance.grid.local(opens), machine_type=machine_type, days=soak_days)


def _short_pool(instance: Instance, loom: int) -> Message:
    """What its work needs beside the crew and lacks: at all, or at the hours of its windows."""
    hall = int(instance.hall_of[loom])
    work = instance.clocks[hall].work
    lacks: dict[tuple[int, int], bool] = {}
    for hold in {hold for number in _shapes(instance, loom) for hold in instance.shapes.holds[number]}:
        pool = instance.pools[hold.pool]
        if pool.kind is PoolKind.SECTION:
            continue
        there = pool.reach()[hall][work] >= hold.amount
        if not there.all():
            lacks[hold.pool, hold.amount] = bool(there.any())
    never = [what for what, ever in lacks.items() if not ever]
    if never:
        return message("left-never-there", what=_joined(instance, "never-nor", never))
    return message("left-not-then", what=_joined(instance, "both-and", lacks))


def _joined(instance: Instance, code: str, lacks: Iterable[tuple[int, int]]) -> Message:
    """What is short in one, by name; (pool, how many) each."""
    short = sorted((instance.pools[pool].name, amount, pool) for pool, amount in lacks)
    named = [_amount(instance.pools[pool], amount) for _, amount, pool in short]
    return reduce(lambda one, other: message(code, one=one, other=other), named)


def _shapes(instance: Instance, loom: int) -> set[int]:
    """The shapes that its conversion may have."""
    found: set[int] = set()
    for window in np.flatnonzero(instance.windows.loom == loom):
        menu, change = instance.windows.menu[window], instance.windows.change[window]
        contents = instance.menus.flat[instance.menus.first[menu] : instance.menus.first[menu + 1]]
        found |= set(instance.shapes.number(contents, change).tolist())
    return found


def _amount(pool: Pool, amount: int) -> Message:
    if pool.kind is PoolKind.STOPPED:
        return message("place-among-stopped")
    return message("so-many-of", amount=amount, what=pool.name)


def _short_part(instance: Instance, loom: int) -> Why:
    """The part of which it needs more than it can ever have, where there is such a part."""
    menus = instance.windows.menu[instance.windows.loom == loom]
    rows = {int(c) for m in menus for c in instance.menus.flat[instance.menus.first[m] : instance.menus.first[m + 1]]}
    needs = np.array([instance.needs[instance.contents.needs[c]] for c in sorted(rows)])
    for i, supply in enumerate(instance.supplies):
        if (needs[:, i] > supply.total[-1] + 1e-9).all():
            needed, had = float(needs[:, i].min()), float(supply.total[-1])
            usable = instance.grid.local(supply.until) if supply.until < instance.grid.slots else None
            return Why(message("left-no-kit", part=supply.part, needed=needed, had=had, usable=usable), supply.part)
    return Why(message("left-kit-late"))


def _why_not(programme: Programme, mine: Ints, free: Floats) -> Why:
    """What keeps a loom with options from being booked: the limit that most of them would break."""
    if programme.lookup.fits(free, mine).any():
        return Why(message("left-cheaper"))
    matrix = programme.lookup.matrix(mine).tocoo()
    lacks = matrix.data > free[matrix.row] + 1e-6
    block = np.searchsorted(programme.rows.base, matrix.row[lacks], side="right") - 1
    blocked = {int(b): np.unique(matrix.col[lacks][block == b]).size for b in np.unique(block)}
    worst = max(blocked, key=lambda b: (blocked[b], -b))
    rows = programme.rows
    if worst >= rows.pools:
        part = rows.blocks[worst].name
        return Why(message("left-taken", limit="part", what=part), part)
    pool = programme.instance.pools[worst]
    return Why(message("left-taken", limit=pool.kind.value, what=pool.name))
