"""The linear programme over some options and some rows, as it grows.

Where thousands of rows came in at once it is solved by an interior point method, without going on to a corner; after that, while
rows and columns come in by the hundred, by the simplex method, which goes on from where it was. In the end it is the interior
point method again: prices from the middle of all that are right tell better than those of a corner which options are promising.
"""

import highspy
import numpy as np
from scipy.sparse import csc_array, csr_array, eye_array, hstack, vstack

from tracker.planning.model.grid import Bools, Floats, Ints
from tracker.planning.model.programme import Control, Price, Programme
from tracker.planning.search.days import WholeRows
from tracker.planning.search.highs import INF, STATUS, add_columns, add_rows, quiet
from tracker.planning.search.levels import Levels

AFRESH = 0.5
"""New rows, as a share of those before, from which on it is solved by the interior point method."""
_EPS = 1e-4
"""Of a row's unit: what an inner point may overrun."""


class Master:
    """Its first rows are the looms (each taken once or left over) and how many are left over at least; then those of the levels
    and the whole rows as they come in. Until it is solved nothing has a price."""

    def __init__(self, programme: Programme, levels: Levels, control: Control):
        self.programme, self.levels, self.control = programme, levels, control
        self.looms = programme.looms.size
        self.index = np.zeros(0, dtype=np.int64)
        """Options that are columns."""
        self.has: Bools = np.zeros(len(programme.options), dtype=bool)
        self.objective = np.inf
        self.price: Price = programme.nothing_asked
        self.worth: Floats = np.zeros(self.looms)
        """What each loom costs at these prices."""
        self.share: Floats = np.zeros(0)
        """How much of each column is taken, or was when there were fewer."""
        self.whole: WholeRows | None = None
        self.fewest_left = 0
        """Looms left over by every choice at least."""
        self._counting = False
        self._upper = levels.upper
        self._used: Floats = np.zeros(levels.upper.size)
        self._lent, lent = self._lending()
        self._columns = csc_array(lent)
        self._row_of = np.full(levels.upper.size, -1)
        self._rows = np.zeros(0, dtype=np.int64)
        self._solved = self._begins
        """Rows when it was solved last."""
        self._solver = self._begin()
        self._corner = self._solver.getBasis()

    def _lending(self) -> tuple[Floats, csc_array]:
        """Columns that lend from a shared row to a hall's row: their most, and their entries in the levels."""
        rows = self.programme.rows
        borrower = np.flatnonzero(rows.lender >= 0)
        lender = rows.lender[borrower]
        each = np.arange(borrower.size)
        values = np.concatenate([-np.ones(each.size), np.ones(each.size)])
        where = np.concatenate([borrower, lender]), np.concatenate([each, each])
        entries = csc_array((values, where), shape=(rows.upper.size, each.size))
        return rows.upper[lender], csc_array(self.levels.sums @ entries)

    def _begin(self) -> highspy.Highs:
        solver, n = quiet(self.control), self.looms
        solver.setOptionValue("run_crossover", "off")
        solver.setOptionValue("ipm_optimality_tolerance", 1e-6)
        add_rows(solver, np.append(np.ones(n), 0.0), np.append(np.ones(n), INF), csr_array((n + 1, 0)))
        left_over = csc_array(vstack([eye_array(n, format="csr"), np.ones((1, n))]))
        add_columns(solver, self.programme.left_cost, np.full(n, INF), left_over)
        add_columns(solver, np.zeros(self._lent.size), self._lent, csc_array((n + 1, self._lent.size)))
        return solver

    @property
    def _begins(self) -> int:
        """Where the rows begin that come in."""
        return self.looms + 1

    @property
    def _height(self) -> int:
        return self._begins + self._rows.size

    def overrun(self, level: int) -> Ints:
        """Rows up to a level that the solution overruns and that are not in yet."""
        ids = np.arange(self.levels.edges[level + 1])
        over = ids[self._used[ids] > self._upper[ids] + _EPS]
        return over[self._row_of[over] < 0]

    def add_rows(self, ids: Ints) -> None:
        """Rows of the levels."""
        new = np.full(self._row_of.size, -1)
        new[ids] = np.arange(ids.size)
        row = new[self._columns.indices]
        at = np.flatnonzero(row >= 0)
        column = np.searchsorted(self._columns.indptr, at, side="right") - 1 + self.looms
        shape = ids.size, self.looms + self._lent.size + self.index.size
        self._row_of[ids] = self._height + np.arange(ids.size)
        self._rows = np.concatenate([self._rows, ids])
        entries = csr_array((self._columns.data[at], (row[at], column)), shape=shape)
        add_rows(self._solver, np.full(ids.size, -INF), self._upper[ids], entries)

    def add_whole_rows(self, rows: WholeRows) -> None:
        """Rows that every choice keeps, beside those of the levels."""
        self.whole = rows if self.whole is None else self.whole.and_also(rows)
        entries = hstack([csc_array((len(rows), self._lent.size)), rows.of(self.index)])
        self._columns = csc_array(vstack([self._columns, entries]))
        ids = self._upper.size + np.arange(len(rows))
        self._upper = np.concatenate([self._upper, rows.upper])
        self._row_of = np.concatenate([self._row_of, np.full(len(rows), -1)])
        self.add_rows(ids)

    def add_columns(self, index: Ints) -> None:
        """Options."""
        self.has[index] = True
        added = csc_array(self.levels.sums @ self.programme.lookup.matrix(index))
        if self.whole is not None:
            added = csc_array(vstack([added, self.whole.of(index)]))
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
        cost = np.zeros(n) if self._counting else self.programme.options.cost[index]
        add_columns(self._solver, cost, np.full(n, INF), block)

    def leave_at_least(self, looms: int) -> None:
        """So many looms are left over by every choice."""
        self.fewest_left = looms
        self._solver.changeRowBounds(self.looms, float(looms), INF)

    def count(self, counting: bool) -> None:
        """Ask for the fewest looms left over, whatever it costs; or for the least cost again, from the corner where it was."""
        self._counting = counting
        costs = self.programme.left_cost, np.zeros(self._lent.size), self.programme.options.cost[self.index]
        cost = np.concatenate(costs)
        if counting:
            cost[:] = 0.0
            cost[: self.looms] = 1.0
        self._solver.changeColsCost(cost.size, np.arange(cost.size, dtype=np.int32), cost.astype(float))
        if counting:
            self._corner = self._solver.getBasis()
        elif self._corner.valid:
            self._solver.setBasis(self._grown(self._corner))

    def _grown(self, corner: highspy.HighsBasis) -> highspy.HighsBasis:
        """A corner with the columns and rows that have come in since."""
        columns, rows = self.looms + self._lent.size + self.index.size, self._height
        status = highspy.HighsBasisStatus
        corner.col_status = [*corner.col_status, *[status.kLower] * (columns - len(corner.col_status))]
        corner.row_status = [*corner.row_status, *[status.kBasic] * (rows - len(corner.row_status))]
        return corner

    def solve(self) -> bool:
        """False where it was stopped; then all stays as it was."""
        afresh = self._height - self._solved > AFRESH * self._solved
        return self._run("ipx" if afresh else "simplex", keeps_share=False)

    def from_inside(self) -> bool:
        """Prices from the middle of all that are right; the shares stay those of the corner, and the simplex method goes on from
        there. False where it was stopped."""
        corner = self._solver.getBasis()
        done = self._run("ipx", keeps_share=True)
        if corner.valid:
            self._solver.setBasis(corner)
        return done

    def _run(self, method: str, keeps_share: bool) -> bool:
        solver = self._solver
        solver.setOptionValue("solver", method)
        solver.setOptionValue("presolve", "choose" if method == "ipx" else "off")
        solver.setOptionValue("time_limit", solver.getRunTime() + max(0.0, self.control.left_s()))
        solver.run()
        if solver.getModelStatus() != STATUS.kOptimal:
            return False
        self._solved = self._height
        solution = solver.getSolution()
        dual, value = np.array(solution.row_dual), np.array(solution.col_value)
        of_rows = np.zeros(self._upper.size)
        of_rows[self._rows] = np.maximum(0.0, -dual[self._begins :])
        self.price = self._price(of_rows, leaving=max(0.0, float(dual[self.looms])))
        self.objective = solver.getInfo().objective_function_value
        self.worth = dual[: self.looms]
        self._used = self._columns @ value[self.looms :]
        if not keeps_share:
            self.share = value[self.looms + self._lent.size :]
        return True

    def _price(self, of_rows: Floats, leaving: float) -> Price:
        levels = self.levels.upper.size
        toll, fetched = np.zeros(len(self.programme.options)), -leaving * self.fewest_left
        if self.whole is not None:
            toll = self.whole.toll(of_rows[levels:])
            fetched += float(of_rows[levels:] @ self.whole.upper)
        return Price(self.levels.sums.T @ of_rows[:levels], toll, leaving, fetched)
