"""The limits of the programme as rows, family by family (MODEL.md, section 6).

Every row says: Σ amount × option taken ≤ upper. Where halls have people of their own beside people whom all halls
share, a hall's row may borrow from the shared row of the slot.
"""

from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np

from tracker.planning.model.grid import Floats, Ints
from tracker.planning.model.instance import Instance
from tracker.planning.model.pools import Pool, PoolKind


@dataclass(frozen=True)
class Block:
    """The rows of one family member: one pool or one part, numbered within the block."""

    name: str
    upper: Floats
    row_at: list[Ints]
    """Pool: by hall (or section), the row of each position. Part: none."""
    slot: Ints
    """First slot that each row speaks of."""
    hall: Ints
    """Hall (or section) that each row speaks of, -1 = all."""
    lender: Ints
    """For a row that may borrow, the row that lends to it; -1 = none."""


@dataclass(frozen=True)
class Rows:
    """All rows, block after block: crews, looms stopped, heads of other trades, tools, then scarce parts."""

    blocks: list[Block]
    base: Ints
    """First row of each block; shape (blocks + 1,)."""
    pools: int
    """How many of the blocks are pools."""
    upper: Floats
    lender: Ints
    """By row, the row that lends to it; -1 = none."""
    kept: int = -1
    """The row, the last, that asks for published bookings to be kept: each that is takes -1 of it. -1 = none is asked for."""

    def free(self, used: Floats) -> Floats:
        """What one more option could take of each row beside what is used; both of shape (rows,)."""
        free = self.upper - used
        self._borrow(free)
        return free

    def follow(self, free: Floats, used: Floats, at: Ints) -> None:
        """Bring `free`, in place, to what it is once `used` has changed in the rows `at`: there are millions of rows, and a
        conversion touches some hundred."""
        free[at] = self.upper[at] - used[at]
        free[self._borrowers] = self.upper[self._borrowers] - used[self._borrowers]
        self._borrow(free)

    @cached_property
    def _borrowers(self) -> Ints:
        return np.flatnonzero(self.lender >= 0)

    def _borrow(self, free: Floats) -> None:
        """To what is free of a row comes what others have left of its lender's."""
        borrowers = self._borrowers
        if borrowers.size:
            lent = np.maximum(0.0, -free[borrowers])
            lender = self.lender[borrowers]
            out = np.bincount(lender, lent, minlength=free.size)
            free[borrowers] += np.maximum(0.0, self.upper[lender] - (out[lender] - lent))

    def over(self, used: Floats) -> Floats:
        """By how much each row is used beyond its limit, after borrowing; 0 where it is not."""
        over = np.maximum(0.0, used - self.upper)
        borrowers = np.flatnonzero(self.lender >= 0)
        if borrowers.size:
            lent = np.bincount(self.lender[borrowers], over[borrowers], minlength=used.size)
            over[borrowers] = 0.0
            over = np.maximum(over, np.where(lent > 0, lent - self.upper, 0.0))
        return over


def pool_block(pool: Pool, instance: Instance) -> Block:
    """A row per slot where everything is shared, a row per hall (or section) and slot where nothing is; both where some
    is."""
    works = [clock.work for clock in instance.clocks]
    if pool.week is not None:
        return _week_block(pool, pool.week, works)
    block = _pool_block(pool, instance, works)
    room = max((item.room for item in instance.shapes.profiles), default=0)
    return _past_the_horizon(block, room) if pool.kind is PoolKind.CREWS and room else block


def _pool_block(pool: Pool, instance: Instance, works: list[Ints]) -> Block:
    if pool.kind is PoolKind.SECTION:
        works = [works[hall] for hall, _ in instance.sections]
    if not pool.own.any() and pool.kind not in (PoolKind.STOPPED, PoolKind.SECTION):
        return _shared_block(pool, works)
    base = np.cumsum([0, *map(len, works)])
    slot = np.concatenate(works)
    hall = np.repeat(np.arange(len(works)), [work.size for work in works]).astype(np.int32)
    upper = pool.own[hall, slot].astype(float)
    lenders = np.unique(slot[pool.shared[slot] > 0])
    lender = np.where(pool.shared[slot] > 0, slot.size + np.searchsorted(lenders, slot), -1)
    return Block(
        name=pool.name,
        upper=np.concatenate([upper, pool.shared[lenders].astype(float)]),
        row_at=[np.arange(a, b, dtype=np.int32) for a, b in pairwise(base)],
        slot=np.concatenate([slot, lenders]).astype(np.int32),
        hall=np.concatenate([hall, np.full(lenders.size, -1)]).astype(np.int32),
        lender=np.concatenate([lender, np.full(lenders.size, -1)]).astype(np.int32),
    )


def _shared_block(pool: Pool, works: list[Ints]) -> Block:
    slots = np.unique(np.concatenate(works))
    none = np.full(slots.size, -1, dtype=np.int32)
    row_at: list[Ints] = [np.searchsorted(slots, work).astype(np.int32) for work in works]
    return Block(pool.name, pool.shared[slots].astype(float), row_at, slots, none, none)


def _week_block(pool: Pool, week: Ints, works: list[Ints]) -> Block:
    """A row per week for the crew-slots of all halls together: each slot of a conversion takes one of it."""
    number, first = np.unique(week, return_index=True)
    none = np.full(number.size, -1, dtype=np.int32)
    row_at: list[Ints] = [week[work].astype(np.int32) for work in works]
    return Block(pool.name, pool.shared[first].astype(float), row_at, first.astype(np.int32), none, none)


_PLENTY = 1e6


def _past_the_horizon(block: Block, room: int) -> Block:
    """With a row that limits nothing, in which lies what of the room after the last conversions is past the horizon."""
    none, beyond = np.full(1, -1, dtype=np.int32), np.full(room, block.upper.size, dtype=np.int32)
    return Block(
        block.name,
        np.append(block.upper, _PLENTY),
        [np.append(row_at, beyond) for row_at in block.row_at],
        np.append(block.slot, block.slot[-1:]).astype(np.int32),
        np.append(block.hall, none),
        np.append(block.lender, none),
    )


def part_block(part: int, instance: Instance) -> Block:
    """A row per step of the supply: what starts before the next step uses no more than there is until then. From when
    it can be had to order on there is none."""
    supply = instance.supplies[part]
    none = np.full(supply.steps.size, -1, dtype=np.int32)
    return Block(supply.part, supply.total, [], supply.steps, none, none)


def _kept_block(kept: int) -> list[Block]:
    """One row where any published booking is to be kept: −Σ kept ≤ −(how many)."""
    none, one = np.full(1, -1, dtype=np.int32), np.zeros(1, dtype=np.int32)
    return [Block("kept", np.array([-float(kept)]), [], one, none, none)] if kept else []


def make_rows(instance: Instance, kept: int = 0) -> Rows:
    """The rows of every family, in their order; `kept` published bookings at least are to be kept."""
    blocks = [
        *(pool_block(pool, instance) for pool in instance.pools),
        *(part_block(part, instance) for part in range(len(instance.supplies))),
        *_kept_block(kept),
    ]
    base = np.cumsum([0, *(block.upper.size for block in blocks)]).astype(np.int32)
    lenders = [np.where(block.lender >= 0, block.lender + base[b], -1) for b, block in enumerate(blocks)]
    return Rows(
        blocks,
        base,
        len(instance.pools),
        np.concatenate([b.upper for b in blocks]),
        np.concatenate(lenders).astype(np.int32),
        int(base[-1]) - 1 if kept else -1,
    )
