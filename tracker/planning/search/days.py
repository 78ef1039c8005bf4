"""What the crews of a day, or of days on end, can take: rows that whole conversions keep and halves of them break.

The rows of the slots say that no slot is short of a crew. Halves of conversions keep to that where whole ones cannot: late in the
day half of the crews are gone, and two halves of a crew at long first parts leave one for the last half hour of an early
loom. What options hold of the crews of a day is a handful of *footprints*; all ways to take some of them together are listed,
and of the rows that every way keeps the one is taken that the shares of a linear programme overrun most (`ways`). Nothing but
the crews is asked, so that such a row holds for every plan.
"""

from dataclasses import dataclass

import numpy as np
from scipy.sparse import csc_array, csr_array, vstack

from tracker.planning.model.grid import Floats, Ints
from tracker.planning.model.pools import PoolKind
from tracker.planning.model.programme import Programme
from tracker.planning.search.ways import Ways, tightest, ways_of_day

MOST_SLOTS = 50
"""Of a local day, the one in autumn included."""
_TAKEN = 1e-4
_EPS = 1e-6


@dataclass(frozen=True)
class WholeRows:
    """Rows beside the programme's that every choice keeps: Σ amount × option taken ≤ upper."""

    cell: Ints
    """By option: its cell. Options of a cell take the same amount."""
    amounts: csr_array
    """Whole numbers ≥ 0; shape (rows, cells)."""
    upper: Floats

    def __len__(self) -> int:
        return self.upper.size

    def and_also(self, other: "WholeRows") -> "WholeRows":
        """These, then the others of the same programme."""
        amounts = csr_array(vstack([self.amounts, other.amounts]))
        return WholeRows(self.cell, amounts, np.concatenate([self.upper, other.upper]))

    def of(self, index: Ints) -> csc_array:
        """What the options at `index` take; shape (rows, len(index))."""
        return csc_array(self.amounts)[:, self.cell[index]]

    def toll(self, price: Floats) -> Floats:
        """What each option pays at these prices of the rows; shape (options,)."""
        return (self.amounts.T @ price)[self.cell]


@dataclass(frozen=True)
class _Span:
    """What the options hold on days on end."""

    prints: Ints
    """The footprint of each day, -1 = none; shape (different ones, days)."""
    cells: Ints
    """Cells that hold anything there."""
    which: Ints
    """Row of `prints` of each of them."""


class CrewDays:
    """The footprints that the options of a programme leave on the days of its crews: days of a hall, or of all halls where they
    share their crews."""

    def __init__(self, programme: Programme):
        rows, instance = programme.rows, programme.instance
        crews = next(i for i, pool in enumerate(instance.pools) if pool.kind is PoolKind.CREWS)
        block, mine = rows.blocks[crews], slice(rows.base[crews], rows.base[crews + 1])
        midnights = np.array([instance.grid.day_start(day) for day in instance.grid.days()])
        date = np.searchsorted(midnights, block.slot, side="right") - 1
        days, day = np.unique(np.stack([block.hall, date]), axis=1, return_inverse=True)
        self._same_hall = np.diff(days[0]) == 0
        """Whether each day and the next of the list are of one hall; days without work between them are none."""
        lender = rows.lender[mine]
        limit = rows.upper[mine] + np.where(lender >= 0, rows.upper[lender], 0)
        limits = limit < programme.looms.size
        slot = block.slot - midnights[date]
        self._limit = np.zeros((days.shape[1], MOST_SLOTS), dtype=np.int16)
        self._limit[day[limits], slot[limits]] = np.floor(limit[limits] + _EPS)
        _, first, self._cell = np.unique(programme.lookup.slot_cell, return_index=True, return_inverse=True)
        self._cells = first.size
        cell, row = programme.lookup.held(crews, first)
        row = row - rows.base[crews]
        cell, row = cell[limits[row]], row[limits[row]]
        pairs, number = np.unique(cell * days.shape[1] + day[row], return_inverse=True)
        held = np.zeros((pairs.size, MOST_SLOTS), dtype=bool)
        held[number, slot[row]] = True
        of_cell, of_day = np.divmod(pairs, days.shape[1])
        print_, number = _different(of_day, held)
        order = np.argsort(of_day, kind="stable")
        self._cell_of, self._print_of = of_cell[order], number[order]
        """Day after day: cells that hold anything there, and the footprint."""
        self._first = np.searchsorted(of_day[order], np.arange(days.shape[1] + 1))
        self._slots = np.append(held[print_], np.zeros((1, MOST_SLOTS), dtype=bool), axis=0).astype(np.int16)
        """What each footprint holds; the last is none."""
        self._spans: dict[tuple[int, int], _Span] = {}

    @property
    def none(self) -> WholeRows:
        """No row."""
        return WholeRows(self._cell, csr_array((0, self._cells)), np.zeros(0))

    def broken(self, index: Ints, share: Floats, days: int) -> WholeRows:
        """Rows, each of so many days on end, that hold for every choice and that these shares of the options at `index`
        overrun."""
        taken = np.bincount(self._cell[index], share, minlength=self._cells).astype(float)
        found = self.none
        for begin in range(len(self._limit) - days + 1):
            if self._same_hall[begin : begin + days - 1].all():
                found = self._broken_from(begin, days, taken, found)
        return found

    def _broken_from(self, begin: int, days: int, taken: Floats, found: WholeRows) -> WholeRows:
        """With the row of the days from `begin` on, where one is broken."""
        span = self._span(begin, days)
        share = np.bincount(span.which, taken[span.cells], minlength=len(span.prints)).astype(float)
        some = np.flatnonzero(share > _TAKEN)
        halves = np.abs(share[some] - np.round(share[some])) > _TAKEN
        over = (span.prints[some, 1:] >= 0) & (span.prints[some, :-1] >= 0) & halves[:, None]
        if not halves.any() or not over.any(axis=0).all():
            return found
        while (ways := self._ways(begin, span.prints[some])) is None:
            some = np.sort(some[np.argsort(-share[some], kind="stable")][: some.size * 3 // 4])
        row = tightest(ways, share[some])
        if row is None:
            return found
        amount = self._lifted(span.prints, some, row[0])[span.which]
        at = np.flatnonzero(amount)
        amounts = csr_array((amount[at], (np.zeros(at.size, dtype=np.int64), span.cells[at])), shape=(1, self._cells))
        return found.and_also(WholeRows(self._cell, amounts, np.array([row[1]])))

    def _span(self, begin: int, days: int) -> _Span:
        if (begin, days) not in self._spans:
            touched = np.full((self._cells, days), -1)
            for i in range(days):
                mine = slice(self._first[begin + i], self._first[begin + i + 1])
                touched[self._cell_of[mine], i] = self._print_of[mine]
            cells = np.flatnonzero((touched >= 0).any(axis=1))
            prints, which = np.unique(touched[cells], axis=0, return_inverse=True)
            self._spans[begin, days] = _Span(prints, cells, which)
        return self._spans[begin, days]

    def _ways(self, begin: int, prints: Ints) -> Ways | None:
        counts: list[Ints] = []
        for i, column in enumerate(prints.T):
            here = np.flatnonzero(column >= 0)
            found = ways_of_day(self._slots[column[here]], self._limit[begin + i])
            if found is None:
                return None
            counts.append(np.zeros((len(found), len(prints)), dtype=np.int16))
            counts[-1][:, here] = found
        return Ways(counts, prints >= 0)

    def _lifted(self, prints: Ints, some: Ints, amount: Floats) -> Floats:
        """What each footprint takes of a row over some of them: who holds all that another one holds could be that one in every
        way, and takes as much."""
        lifted = np.zeros(len(prints))
        slots = self._slots[prints].reshape(len(prints), -1)
        for i, much in zip(some[amount > 0], amount[amount > 0], strict=True):
            holds_all = (slots >= slots[i]).all(axis=1)
            lifted[holds_all] = np.maximum(lifted[holds_all], much)
        return lifted


def _different(day: Ints, held: np.ndarray) -> tuple[Ints, Ints]:
    """Footprints that differ in their day or their slots: where each is first, and the number of each."""
    key = np.concatenate([day.astype(">u4").view(np.uint8).reshape(-1, 4), np.packbits(held, axis=1)], axis=1)
    found = np.ascontiguousarray(key).view(np.dtype((np.void, key.shape[1]))).ravel()
    _, first, number = np.unique(found, return_index=True, return_inverse=True)
    return first, number
