"""The linear programme over all options, by priced columns and the rows that bite.

It begins with the cheapest option of each window and no limit at all. What a solution overruns comes in as a row, what
its prices make worth taking as a column; first for sums of rows (`levels`), then for the rows themselves. Any prices
give a bound over every option (`Programme.bound`), so it may stop anywhere and still have proved something.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

import highspy
import numpy as np
from scipy.sparse import csc_array, csr_array, hstack

from tracker.planning.grid import Bools, Floats, Ints
from tracker.planning.highs import INF, STATUS, add_columns, add_rows, quiet
from tracker.planning.levels import Levels, make_levels
from tracker.planning.programme import Control, Programme

TOLERANCES = (1e-4, 1e-4, 1e-4, 1e-6)
"""Gap between master and bound, relative, at which each level is left."""
A_ROUND = 5
"""Options of a loom that come in at a time, at most one a window."""
_EPS = 1e-6
_DUAL, _PRIMAL = 1, 4


@dataclass(frozen=True)
class Relaxation:
    bound: float
    """No choice of options costs less."""
    price: Floats
    """Currency per unit of each row, ≥ 0; the prices that gave the bound."""
    reduced: Floats
    """By option: what the loom costs at these prices if it takes it, less what it costs at best; ≥ 0."""
    reduced_left: Floats
    """By loom of the programme: the same for leaving it over."""
    index: Ints
    """Options that were columns."""
    share: Floats
    """How much of each of them the last solution takes, 0 to 1."""
    solved: bool
    """False where it was stopped before the prices had settled."""


def relax(
    programme: Programme, control: Control, tell: Callable[[float], None] = lambda bound: None
) -> Iterator[Relaxation]:
    """What is known after each level, ever nearer to the relaxation over all rows and options; the last one is solved
    unless the control stopped it."""
    master = _Master(programme, make_levels(programme.instance, programme.rows), control)
    best, price = programme.bound(master.price), master.price
    columns = _start(programme)
    for level, tolerance in enumerate(TOLERANCES):
        while True:
            if not (master.add(columns) and master.add_overrun(level)):
                yield _priced(programme, price, master.index, master.share, solved=False)
                return
            bound = programme.bound(master.price)
            if bound > best:
                best, price = bound, master.price
            tell(best)
            columns = _worth_adding(programme, master)
            if not columns.size or master.objective - best <= tolerance * abs(master.objective):
                break
        yield _priced(programme, price, master.index, master.share, solved=level == len(TOLERANCES) - 1)


def unpriced(programme: Programme) -> Relaxation:
    """What is known before anything is solved: each loom at its cheapest, nothing short."""
    return _priced(programme, np.zeros(programme.rows.upper.size), np.zeros(0, dtype=np.int64), np.zeros(0), False)


def _priced(programme: Programme, price: Floats, index: Ints, share: Floats, solved: bool) -> Relaxation:
    reduced = programme.lookup.reduced(price)
    least = np.minimum(programme.left_cost, programme.least(reduced))
    return Relaxation(
        bound=programme.bound(price),
        price=price,
        reduced=reduced - least[programme.number],
        reduced_left=programme.left_cost - least,
        index=index,
        share=share,
        solved=solved,
    )


def _start(programme: Programme) -> Ints:
    """The cheapest option of each window."""
    return _best_of_windows(programme, programme.options.cost)


def _best_of_windows(programme: Programme, value: Floats) -> Ints:
    """The first option with the least value of each window."""
    begin = np.flatnonzero(np.diff(programme.options.window, prepend=-1))
    if not begin.size:
        return begin
    size = np.diff(np.append(begin, value.size))
    found = np.flatnonzero(value <= np.repeat(np.minimum.reduceat(value, begin), size))
    return found[np.diff(programme.options.window[found], prepend=-1) != 0]


def _worth_adding(programme: Programme, master: "_Master") -> Ints:
    """Options that the prices make worth taking: the best of each window, a few a loom."""
    reduced = programme.lookup.reduced(master.price) - master.worth[programme.number]
    found = _best_of_windows(programme, reduced)
    found = found[(reduced[found] < -_EPS) & ~master.has[found]]
    loom = programme.number[found]
    found = found[np.lexsort((reduced[found], loom))]
    loom = programme.number[found]
    return np.sort(found[np.arange(found.size) - np.searchsorted(loom, loom) < A_ROUND])


class _Master:
    """The linear programme as it grows. Its first rows are the looms (each taken once or left over)."""

    def __init__(self, programme: Programme, levels: Levels, control: Control):
        self.programme, self.levels, self.control = programme, levels, control
        self.looms = programme.looms.size
        self.index = np.zeros(0, dtype=np.int64)
        self.has: Bools = np.zeros(len(programme.options), dtype=bool)
        self.objective = np.inf
        self.price = np.zeros(programme.rows.upper.size)
        self.worth = np.zeros(self.looms)
        self.share = np.zeros(0)
        self._lent, lent = self._lending()
        self._columns = csc_array(lent)
        self._row_of = np.full(levels.upper.size, -1)
        self._rows = np.zeros(0, dtype=np.int64)
        self._solver = self._begin()

    def _lending(self) -> tuple[Floats, csc_array]:
        """Columns that lend from a shared row to a hall's row: their most, and their entries in the levels."""
        rows = self.programme.rows
        borrower = np.flatnonzero(rows.lender >= 0)
        lender = rows.lender[borrower]
        each = np.arange(borrower.size)
        entries = csc_array(
            (
                np.concatenate([-np.ones(each.size), np.ones(each.size)]),
                (np.concatenate([borrower, lender]), np.concatenate([each, each])),
            ),
            shape=(rows.upper.size, each.size),
        )
        return rows.upper[lender], csc_array(self.levels.sums @ entries)

    def _begin(self) -> highspy.Highs:
        solver, n = quiet(self.control), self.looms
        solver.setOptionValue("solver", "simplex")
        solver.setOptionValue("presolve", "off")
        add_rows(solver, np.ones(n), np.ones(n), csr_array((n, 0)))
        add_columns(solver, self.programme.left_cost, np.full(n, INF), _identity(n))
        add_columns(solver, np.zeros(self._lent.size), self._lent, csc_array((n, self._lent.size)))
        return solver

    @property
    def _fixed(self) -> int:
        """Columns that are no options: left over, lending."""
        return self.looms + self._lent.size

    def add(self, index: Ints) -> bool:
        """Add options as columns and solve; False where it was stopped. Nothing to add is done at once."""
        if not index.size and self.objective < np.inf:
            return True
        self.has[index] = True
        added = csc_array(self.levels.sums @ self.programme.lookup.matrix(index))
        self._columns = csc_array(hstack([self._columns, added], format="csc"))
        self.index = np.concatenate([self.index, index])
        entries = added.tocoo()
        row = self._row_of[entries.row]
        known, n = row >= 0, index.size
        where = (
            np.concatenate([self.programme.number[index], row[known]]),
            np.concatenate([np.arange(n), entries.col[known]]),
        )
        block = csc_array((np.concatenate([np.ones(n), entries.data[known]]), where), shape=(self._height, n))
        add_columns(self._solver, self.programme.options.cost[index], np.full(n, INF), block)
        return self._solve(_PRIMAL if self._rows.size else _DUAL)

    @property
    def _height(self) -> int:
        return self.looms + self._rows.size

    def add_overrun(self, level: int) -> bool:
        """Add the rows up to a level that the solution overruns and solve again, until it overruns none."""
        ids = np.arange(self.levels.edges[level + 1])
        while True:
            over = ids[self._used[ids] > self.levels.upper[ids] + _EPS]
            over = over[self._row_of[over] < 0]
            if not over.size:
                return True
            entries = self._columns.tocsr()[over, :]
            self._row_of[over] = self._height + np.arange(over.size)
            self._rows = np.concatenate([self._rows, over])
            shifted = csr_array((entries.data, entries.indices + self.looms, entries.indptr))
            add_rows(self._solver, np.full(over.size, -INF), self.levels.upper[over], shifted)
            if not self._solve(_DUAL):
                return False

    def _solve(self, strategy: int) -> bool:
        solver = self._solver
        solver.setOptionValue("simplex_strategy", strategy)
        solver.setOptionValue("time_limit", solver.getRunTime() + max(0.0, self.control.left_s()))
        solver.run()
        if solver.getModelStatus() != STATUS.kOptimal:
            return False
        solution = solver.getSolution()
        dual, value = np.array(solution.row_dual), np.array(solution.col_value)
        self.objective = solver.getInfo().objective_function_value
        self.share = value[self._fixed :]
        self.worth = dual[: self.looms]
        of_rows = np.zeros(self.levels.upper.size)
        of_rows[self._rows] = np.maximum(0.0, -dual[self.looms :])
        self.price = self.levels.sums.T @ of_rows
        self._used = self._columns @ value[self.looms :]
        return True


def _identity(n: int) -> csc_array:
    each = np.arange(n)
    return csc_array((np.ones(n), (each, each)), shape=(n, n))
