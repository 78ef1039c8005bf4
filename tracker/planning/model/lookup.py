"""What options take of the rows, looked up in tables instead of worked out option by option.

What an option takes depends only on its hall and section, its shape and its position (a *slot cell*), and on its needs and its
step of the supplies (a *part cell*). Hundreds of thousands of options share a few ten thousand cells.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from scipy.sparse import csc_array

from tracker.planning.model.grid import Bools, Floats, Ints
from tracker.planning.model.instance import Instance
from tracker.planning.model.numbered import From, PoolHold
from tracker.planning.model.options import Options, ranges, shape_of, stays, times
from tracker.planning.model.pools import PoolKind
from tracker.planning.model.rows import Rows


@dataclass(frozen=True)
class _Starts:
    """The starts of one shape in one hall that end in time. Arrays of shape (n,)."""

    n: int
    second: Ints
    """Where the second part begins."""
    past: Ints

    def summed(self, sums: Floats, hold: PoolHold) -> Floats:
        """What is summed up in `sums` over the positions of a hold, for each start."""
        if hold.begins is From.START:
            return sums[hold.past : hold.past + self.n] - sums[hold.first : hold.first + self.n]
        if hold.begins is From.SECOND_PART:
            return sums[self.second + hold.past] - sums[self.second + hold.first]
        return sums[self.past] - sums[: self.n]


class Lookup:
    """Cells of a set of options. `slot_cell` and `part_cell` have shape (options,)."""

    def __init__(self, instance: Instance, rows: Rows, options: Options):
        self.instance, self.rows, self.options = instance, rows, options
        self._starts_of: dict[tuple[int, int], _Starts] = {}
        self._number_slots()
        self._number_parts()
        self._stays = stays(instance, options) if rows.kept >= 0 else None

    def reduced(self, price: Floats) -> Floats:
        """Cost and, for what each option takes, the price (≥ 0) of each row; shape (options,)."""
        slots, parts = self._slot_prices(price), self._part_prices(price)
        reduced = self.options.cost + slots[self.slot_cell] + parts[self.part_cell]
        return reduced if self._stays is None else reduced - price[self.rows.kept] * self._stays

    def fits(self, free: Floats, index: Ints) -> Bools:
        """Which of the options at `index` take no more of any row than is free; what is to be kept is not asked."""
        return self._slots_free(free, index) & self._parts_free(free, index)

    def matrix(self, index: Ints) -> csc_array:
        """What the options at `index` take of each row; shape (rows, len(index))."""
        column, row, value = self.entries(index)
        return csc_array((value, (row, column)), shape=(self.rows.upper.size, len(index)))

    def entries(self, index: Ints) -> tuple[Ints, Ints, Floats]:
        """The same entry by entry: which of the options, which row, how much. A row may come more than once."""
        column, row, value = self._slot_entries(index)
        column2, row2, value2 = self._part_entries(index)
        column3 = np.zeros(0, dtype=np.int64) if self._stays is None else np.flatnonzero(self._stays[index])
        return (
            np.concatenate([column, column2, column3]),
            np.concatenate([row, row2, np.full(column3.size, self.rows.kept)]),
            np.concatenate([value, value2, -np.ones(column3.size)]),
        )

    def held(self, pool: int, index: Ints) -> tuple[Ints, Ints]:
        """Of one pool: which of the options at `index`, which row, as often as it holds it."""
        option, hold = self._holds_of(index)
        mine = self._hold_pool[hold] == pool
        option, hold = option[mine], hold[mine]
        return np.repeat(option, self._lengths(index, option, hold)), self._row_at[self._rows_of(index, option, hold)]

    def _number_slots(self) -> None:
        instance, options = self.instance, self.options
        halls, section = len(instance.halls), instance.section_of[options.loom].astype(np.int64)
        place = np.where(section < 0, instance.hall_of[options.loom], halls + section)
        shape = shape_of(instance, options.window, options.content).astype(np.int64)
        places = halls + len(instance.sections)
        pairs, number = np.unique(shape * places + place, return_inverse=True)
        self._pairs = [divmod(int(pair), places) for pair in pairs]
        self._hall_of_place = [*range(halls), *(hall for hall, _ in instance.sections)]
        sizes = [instance.clocks[self._hall_of_place[place]].work.size for _, place in self._pairs]
        self._base = np.cumsum([0, *sizes])
        self.slot_cell = (self._base[number] + options.position).astype(np.int32)
        self._pair_of = number.astype(np.int32)
        self._begins_of = self._begins(options, shape)
        self._hold_tables()

    def _hold_tables(self) -> None:
        """Holds of each pair end to end, and for each block and hall where its rows stand in one long list."""
        rows = self.rows
        areas = [(b, area) for b in range(rows.pools) for area in range(len(rows.blocks[b].row_at))]
        at = [rows.blocks[b].row_at[area] + rows.base[b] for b, area in areas]
        self._row_at = np.concatenate(at) if at else np.zeros(0, dtype=np.int32)
        row_base = dict(zip(areas, np.cumsum([0, *map(len, at)])[:-1].tolist(), strict=True))
        of_pair = [list(self._holds(shape, place)) for shape, place in self._pairs]
        holds = [(row_base[hold.pool, area], hold) for found in of_pair for hold, area in found]
        self._hold_first = np.cumsum([0, *map(len, of_pair)])
        self._hold_row = np.array([base + hold.first for base, hold in holds], dtype=np.int64)
        self._hold_length = np.array([hold.past - hold.first for _, hold in holds], dtype=np.int64)
        self._hold_begins = np.array([hold.begins for _, hold in holds], dtype=np.int64)
        self._hold_pool = np.array([hold.pool for _, hold in holds], dtype=np.int64)
        self._hold_amount = np.array([hold.amount for _, hold in holds], dtype=float)
        self._hold_summed = np.array([self.instance.pools[hold.pool].week is not None for _, hold in holds], dtype=bool)

    def _begins(self, options: Options, shape: Ints) -> Ints | None:
        """By `From` and option, the position from which its holds are counted, and in a last row the one after its end;
        None where all are done in one piece."""
        shapes, position = self.instance.shapes, options.position
        if not shapes.parted:
            return None
        hall = self.instance.hall_of[options.loom]
        return np.stack([position, shapes.second(hall, shape, position), position, shapes.past(hall, shape, position)])

    def _holds(self, shape: int, place: int) -> Iterator[tuple[PoolHold, int]]:
        """What a shape holds at a place, and the hall or section that it is held of."""
        section = place - len(self.instance.halls)
        for hold in self.instance.shapes.holds[shape]:
            if self.instance.pools[hold.pool].kind is not PoolKind.SECTION:
                yield hold, self._hall_of_place[place]
            elif section >= 0:
                yield hold, section

    def _number_parts(self) -> None:
        instance, options = self.instance, self.options
        steps = [[*supply.steps, supply.until] for supply in instance.supplies]
        self._epochs = np.unique(np.concatenate([[0], *steps])).astype(np.int32)
        epoch = np.searchsorted(self._epochs, times(instance, options).start, side="right") - 1
        needs = instance.contents.needs[options.content] if len(options) else np.zeros(0, dtype=np.int32)
        self.part_cell = (needs.astype(np.int64) * self._epochs.size + epoch).astype(np.int32)
        self._row_of_epoch = [
            supply.step_at(self._epochs) + self.rows.base[self.rows.pools + i]
            for i, supply in enumerate(instance.supplies)
        ]

    def _slot_prices(self, price: Floats) -> Floats:
        table = np.zeros(self._base[-1])
        sums: dict[tuple[int, int], Floats] = {}
        for i, (shape, place) in enumerate(self._pairs):
            cells = table[self._base[i] : self._base[i + 1]]
            starts = self._starts(shape, place, cells.size)
            for hold, area in self._holds(shape, place) if starts.n > 0 else ():
                key = (hold.pool, area)
                if key not in sums:
                    row = self.rows.blocks[hold.pool].row_at[area] + self.rows.base[hold.pool]
                    sums[key] = np.concatenate([[0.0], np.cumsum(price[row])])
                if sums[key][-1]:  # something of it has a price
                    cells[: starts.n] += hold.amount * starts.summed(sums[key], hold)
        return table

    def _starts(self, shape: int, place: int, positions: int) -> "_Starts":
        """The starts of a shape that end among so many positions."""
        if (shape, place) not in self._starts_of:
            shapes, hall, at = self.instance.shapes, self._hall_of_place[place], np.arange(positions)
            number = np.full(positions, shape)
            past = shapes.past(hall, number, at)
            n = int(np.searchsorted(past, positions, side="right"))
            second = shapes.second(hall, number, at) if shapes.change[shape] >= 0 else at
            self._starts_of[shape, place] = _Starts(n, second[:n], past[:n])
        return self._starts_of[shape, place]

    def _part_prices(self, price: Floats) -> Floats:
        """Price of each need from each epoch on: a unit taken then is missing in every later step too."""
        per_unit = np.zeros((len(self._row_of_epoch), self._epochs.size))
        for i, row in enumerate(self._row_of_epoch):
            last = self.rows.base[self.rows.pools + i + 1]
            onward = np.append(np.cumsum(price[row[0] : last][::-1])[::-1], 0.0)
            per_unit[i] = onward[row - row[0]]
        return (self.instance.needs @ per_unit).ravel()

    def _slots_free(self, free: Floats, index: Ints) -> Bools:
        option, hold = self._holds_of(index)
        length = self._lengths(index, option, hold)
        row, amount = self._row_at[self._rows_of(index, option, hold)], np.repeat(self._hold_amount[hold], length)
        taker = np.repeat(option, length)
        bad = np.zeros(len(index), dtype=bool)
        bad[taker[free[row] < amount - 1e-6]] = True
        if self._hold_summed.any():
            summed = np.repeat(self._hold_summed[hold], length)
            pairs, number = np.unique(taker[summed] * free.size + row[summed], return_inverse=True)
            too_much = np.bincount(number, amount[summed]) > free[pairs % free.size] + 1e-6
            bad[pairs[too_much] // free.size] = True
        return ~bad

    def _parts_free(self, free: Floats, index: Ints) -> Bools:
        if not self._row_of_epoch:
            return np.ones(len(index), dtype=bool)
        least = np.array([self._least(free, i) for i in range(len(self._row_of_epoch))])
        needs, epoch = np.divmod(self.part_cell[index], self._epochs.size)
        return np.all(self.instance.needs[needs] <= least[:, epoch].T + 1e-6, axis=1)

    def _least(self, free: Floats, part: int) -> Floats:
        """The least that is free of a part from each epoch on; no limit once it can be had to order."""
        row = self._row_of_epoch[part]
        last = self.rows.base[self.rows.pools + part + 1]
        return np.append(np.minimum.accumulate(free[row[0] : last][::-1])[::-1], np.inf)[row - row[0]]

    def _holds_of(self, index: Ints) -> tuple[Ints, Ints]:
        pair = self._pair_of[index]
        counts = self._hold_first[pair + 1] - self._hold_first[pair]
        return np.repeat(np.arange(len(index)), counts), ranges(self._hold_first[pair], counts)

    def _rows_of(self, index: Ints, option: Ints, hold: Ints) -> Ints:
        return ranges(self._hold_row[hold] + self._begin(index, option, hold), self._lengths(index, option, hold))

    def _begin(self, index: Ints, option: Ints, hold: Ints) -> Ints:
        """The position from which each hold of an option is counted."""
        if self._begins_of is None:
            return self.options.position[index][option]
        return self._begins_of[self._hold_begins[hold], index[option]]

    def _lengths(self, index: Ints, option: Ints, hold: Ints) -> Ints:
        """For how many positions each hold of an option is held."""
        if self._begins_of is None:
            return self._hold_length[hold]
        start, past = self._begins_of[From.WHOLE, index[option]], self._begins_of[-1, index[option]]
        return np.where(self._hold_begins[hold] == From.WHOLE, past - start, self._hold_length[hold])

    def _slot_entries(self, index: Ints) -> tuple[Ints, Ints, Floats]:
        option, hold = self._holds_of(index)
        length = self._lengths(index, option, hold)
        row = self._row_at[self._rows_of(index, option, hold)]
        return np.repeat(option, length), row, np.repeat(self._hold_amount[hold], length)

    def _part_entries(self, index: Ints) -> tuple[Ints, Ints, Floats]:
        needs, epoch = np.divmod(self.part_cell[index], self._epochs.size)
        none = np.zeros(0, dtype=np.int32)
        found: list[tuple[Ints, Ints, Floats]] = [(none, none, np.zeros(0))]
        for i, row in enumerate(self._row_of_epoch):
            quantity = self.instance.needs[needs, i]
            mine = np.flatnonzero(quantity > 0)
            first = row[epoch[mine]]
            counts = self.rows.base[self.rows.pools + i + 1] - first
            found.append((np.repeat(mine, counts), ranges(first, counts), np.repeat(quantity[mine], counts)))
        column, row, value = (np.concatenate(column) for column in zip(*found, strict=True))
        return column, row, value
