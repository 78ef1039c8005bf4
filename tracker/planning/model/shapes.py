"""How conversions lie in the working slots of a hall: in one piece, or in two with the ordinary change between them
(MODEL.md, section 3).

When the second part begins depends on the start, on the slots of the first part and on the change alone: one table for each
of the few such pairs and each hall, so that options stay arrays.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cache, cached_property
from math import inf

import numpy as np

from tracker.domain.terms import Terms
from tracker.domain.windows import Window
from tracker.domain.work import WorkContent
from tracker.planning.model.contents import Profile, profile
from tracker.planning.model.grid import SLOT_H, Floats, Grid, HallClock, Ints
from tracker.planning.model.numbered import From, PoolHold
from tracker.planning.model.pools import Pool, PoolKind
from tracker.planning.model.room import room_slots

WHOLE = (PoolKind.CREWS, PoolKind.WEEK, PoolKind.STOPPED, PoolKind.SECTION)
"""Pools of which a conversion holds one from start to end: the crew only while it works."""
STANDS = (PoolKind.STOPPED, PoolKind.SECTION)
_DUST_H = 1e-6
"""Hours: a slot that begins by so little before the warp is in begins with it."""


@dataclass(frozen=True)
class ChangeBetween:
    """An ordinary change between the parts of a conversion. Hours."""

    takes_h: float
    """On the running calendar."""
    meanwhile_h: float
    """Of these, what others do while the first part goes on, never more than that."""
    not_before_h: float = -inf
    """The warp is not in before this hour of the grid."""


@dataclass(frozen=True)
class Shapes:
    """All shapes that conversions have."""

    profiles: list[Profile]
    """By shape; shapes of one profile differ in their change."""
    change: Ints
    """By shape: its change; -1 = in one piece."""
    changes: list[ChangeBetween]
    of: Ints
    """Shape of each content in one piece (column 0) and with each of the changes; shape (contents, changes + 1)."""
    pools: list[Pool] = field(repr=False)
    clocks: list[HallClock] = field(repr=False)

    @cached_property
    def slots(self) -> Ints:
        """Working slots of each shape."""
        return np.array([profile.slots for profile in self.profiles], dtype=np.int32)

    @cached_property
    def first(self) -> Ints:
        """Working slots of the first part of each shape; all of them in one piece."""
        return np.array([profile.first or profile.slots for profile in self.profiles], dtype=np.int32)

    @property
    def parted(self) -> bool:
        """Whether any conversion is done in two parts."""
        return bool((self.change >= 0).any())

    def number(self, content: Ints, change: Ints) -> Ints:
        """Shapes of contents in windows with these changes."""
        return self.of[content, change + 1]

    def past(self, hall: Ints | int, shape: Ints, position: Ints) -> Ints:
        """The position after the last slot of conversions that start at a position; beyond the hall's working slots where
        there are too few of them."""
        if not self.parted:
            return position + self.slots[shape]
        return self.second(hall, shape, position) + self.slots[shape] - self.first[shape]

    def second(self, hall: Ints | int, shape: Ints, position: Ints) -> Ints:
        """The position at which the second part begins; that after the last slot where there is but one."""
        second = position + self.first[shape]
        if not self.parted:
            return second
        table = self._table_of[shape]
        mine = np.flatnonzero(table >= 0)
        at = np.broadcast_to(hall, position.shape)[mine]
        second[mine] = self._tables[at, table[mine], position[mine]]
        return second

    @cached_property
    def holds(self) -> list[tuple[PoolHold, ...]]:
        """What each shape holds of the pools."""
        return [tuple(_in_parts(item, pool_holds(item, self.pools), self.pools)) for item in self.profiles]

    @cached_property
    def _keys(self) -> list[tuple[int, int]]:
        """(change, slots of the first part), one for each table."""
        parted = np.flatnonzero(self.change >= 0)
        return sorted({(int(self.change[shape]), int(self.first[shape])) for shape in parted})

    @cached_property
    def _table_of(self) -> Ints:
        number = {key: i for i, key in enumerate(self._keys)}
        pairs = zip(self.change.tolist(), self.first.tolist(), strict=True)
        return np.array([number.get(pair, -1) for pair in pairs], dtype=np.int32)

    @cached_property
    def _tables(self) -> Ints:
        """Where the second part begins, by hall, table and start."""
        size = max(clock.work.size for clock in self.clocks)
        tables = np.zeros((len(self.clocks), len(self._keys), size + 1), dtype=np.int32)
        for hall, clock in enumerate(self.clocks):
            for i, (change, slots) in enumerate(self._keys):
                last = np.minimum(np.arange(clock.work.size) + slots - 1, clock.work.size)
                tables[hall, i, : clock.work.size] = begins_again(clock, self.changes[change], last)
                tables[hall, i, clock.work.size :] = clock.work.size
        return tables


def begins_again(clock: HallClock, change: ChangeBetween, last: Ints) -> Ints:
    """For each position as a start, the first working slot at or after the end of the change that follows a first part up to
    the position `last`; the number of positions where there is none, or that is no position any more."""
    ends = np.minimum(last, clock.work.size - 1)
    end_h = (clock.work[ends] + 1) * SLOT_H
    worked_h = clock.running.elapsed(end_h) - clock.running.elapsed(clock.starts_h)
    left_h = change.takes_h - np.minimum(change.meanwhile_h, worked_h)
    in_h: Floats = clock.running.after(end_h, np.where(left_h < _DUST_H, 0.0, left_h))
    in_h = np.maximum(in_h, change.not_before_h)
    again = np.maximum(np.searchsorted(clock.starts_h, in_h - _DUST_H), ends + 1)
    return np.where(last < clock.work.size, again, clock.work.size).astype(np.int32)


def change_of(window: Window, grid: Grid) -> ChangeBetween | None:
    """The change that parts a conversion in a window, if there is one."""
    if not window.brings_warp:
        return None
    not_before = grid.hours(window.warp_in_at) if window.warp_in_at else -inf
    return ChangeBetween(window.ordinary_change_h, window.meanwhile_h, not_before)


def make_shapes(
    items: Sequence[WorkContent],
    terms: Terms,
    asked: Iterable[tuple[int, int]],
    changes: list[ChangeBetween],
    pools: list[Pool],
    clocks: list[HallClock],
) -> Shapes:
    """`asked`: (content, change) of every window and every content of its menu that is parted there."""
    numbers: dict[tuple[Profile, int], int] = {}
    of = np.zeros((len(items), len(changes) + 1), dtype=np.int32)

    @cache
    def profile_of(i: int, parted: bool) -> Profile:
        return profile(items[i], terms.lead_trade, parted, room_slots(items[i], terms))

    for i, change in [*((i, -1) for i in range(len(items))), *sorted(asked)]:
        of[i, change + 1] = numbers.setdefault((profile_of(i, change >= 0), change), len(numbers))
    profiles, change = [found for found, _ in numbers], [number for _, number in numbers]
    return Shapes(profiles, np.array(change, dtype=np.int32), changes, of, pools, clocks)


def pool_holds(item: Profile, pools: list[Pool]) -> tuple[PoolHold, ...]:
    """What the profile holds of each pool, the crew and the place among the stopped looms in all its slots, the crew also in
    the room after it. A trade or tool that no content of the looms to plan asks for has no pool and is passed over."""
    number = {(pool.kind, pool.name): i for i, pool in enumerate(pools)}
    whole = [
        PoolHold(i, 0, item.slots + (item.room if pool.kind is PoolKind.CREWS else 0), 1)
        for i, pool in enumerate(pools)
        if pool.kind in WHOLE
    ]
    named = [(PoolKind.HEADS, hold) for hold in item.trades] + [(PoolKind.TOOL, hold) for hold in item.tools]
    part = [
        PoolHold(number[kind, hold.what], hold.first, hold.past, hold.amount)
        for kind, hold in named
        if (kind, hold.what) in number
    ]
    return (*whole, *part)


def _in_parts(item: Profile, holds: Iterable[PoolHold], pools: list[Pool]) -> Iterator[PoolHold]:
    """The holds of each part from where that part begins; the loom is stopped in the pause too."""
    for hold in holds:
        if not item.first:
            yield hold
        elif pools[hold.pool].kind in STANDS:
            yield PoolHold(hold.pool, 0, 0, hold.amount, From.WHOLE)
        else:
            yield from _cut(hold, item.first)


def _cut(hold: PoolHold, at: int) -> Iterator[PoolHold]:
    if hold.first < at:
        yield PoolHold(hold.pool, hold.first, min(hold.past, at), hold.amount)
    if hold.past > at:
        yield PoolHold(hold.pool, max(hold.first, at) - at, hold.past - at, hold.amount, From.SECOND_PART)
