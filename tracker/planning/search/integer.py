"""The integer programme over some looms and some of their options, all others staying as they are."""

from dataclasses import dataclass

import highspy
import numpy as np
from scipy.sparse import csc_array, csr_array

from tracker.planning.model.grid import Bools, Floats, Ints
from tracker.planning.model.programme import LEFT, Control, Programme
from tracker.planning.search.days import WholeRows
from tracker.planning.search.highs import INF, add_columns, add_rows, quiet, stop_at_bound

_HEURISTICS = tuple(f"mip_heuristic_run_{name}" for name in ("feasibility_jump", "rins", "rens", "root_reduced_cost"))
"""Searches for answers that do not ask how much work may be spent on them."""


@dataclass(frozen=True)
class Task:
    """Which looms may change, to which options, beside what the others use."""

    looms: Ints
    """Loom numbers of the programme."""
    options: Ints
    """What they may take, in order; leaving over is always possible."""
    used: Floats
    """By row, what all other looms use."""
    whole: WholeRows | None = None
    """Rows that every choice keeps; only where no other looms use anything."""
    fewest_left: int = 0
    """Looms that every choice leaves over."""


@dataclass(frozen=True)
class IntegerAnswer:
    chosen: Ints | None
    """By loom of the task; None where nothing was found."""
    cost: float
    bound: float
    """No choice among the task's options costs less."""


@dataclass(frozen=True)
class Effort:
    """How hard to try. Counts, not seconds, so that the same data give the same plan."""

    gap: float
    nodes: int
    stall: int
    """Nodes that may pass without a better answer."""
    target: float = np.inf
    """Stop once the bound is as high as this."""
    heuristics: float = 0.05
    """Share of the work spent on looking for answers; 0 where only the bound is wanted."""


def solve(programme: Programme, task: Task, effort: Effort, control: Control) -> IntegerAnswer:
    """The best choice found within the effort, and the bound.

    No start is handed over: HiGHS 1.16 with presolve has been seen to call a start optimal that was not, and to give
    a false objective for it.
    """
    solver = quiet(control, control.seed)
    solver.setOptionValue("mip_rel_gap", effort.gap)
    solver.setOptionValue("mip_max_nodes", effort.nodes)
    solver.setOptionValue("mip_max_stall_nodes", effort.stall)
    solver.setOptionValue("mip_heuristic_effort", effort.heuristics)
    for heuristic in _HEURISTICS if not effort.heuristics else ():
        solver.setOptionValue(heuristic, False)
    solver.setOptionValue("time_limit", max(0.0, control.left_s()))
    stop_at_bound(solver, effort.target)
    _build(solver, programme, task)
    solver.run()
    info = solver.getInfo()
    bound = float(info.mip_dual_bound)
    if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
        return IntegerAnswer(None, np.inf, bound)
    value = np.array(solver.getSolution().col_value)[task.looms.size :][: task.options.size]
    chosen = np.full(task.looms.size, LEFT, dtype=np.int64)
    taken = np.flatnonzero(value > 0.5)
    chosen[np.searchsorted(task.looms, programme.number[task.options[taken]])] = task.options[taken]
    cost = _cost(programme, task, chosen)
    return IntegerAnswer(chosen, cost, min(cost, bound))


def _cost(programme: Programme, task: Task, chosen: Ints) -> float:
    taken = chosen >= 0
    left = programme.left_cost[task.looms[~taken]]
    return float(programme.options.cost[chosen[taken]].sum() + left.sum())


def _build(solver: highspy.Highs, programme: Programme, task: Task) -> None:
    """Columns: leaving over by loom, the options, lending. Rows: the looms, then the rows that could be overrun."""
    n, m = task.looms.size, task.options.size
    entries = csr_array(programme.lookup.matrix(task.options))
    number = np.searchsorted(task.looms, programme.number[task.options])
    upper = programme.rows.upper - task.used
    rows = _could_overrun(programme, entries, number, n, upper)
    rows = rows[~_implied(entries[rows, :], upper[rows], rows, programme.rows.lender[rows] >= 0)]
    borrowing = np.flatnonzero(programme.rows.lender[rows] >= 0)
    lender, lent = np.unique(programme.rows.lender[rows[borrowing]], return_inverse=True)
    height = n + rows.size + lender.size

    each = np.arange(n)
    add_rows(solver, np.ones(n), np.ones(n), csr_array((n, 0)))
    add_rows(solver, np.full(rows.size, -INF), upper[rows], csr_array((rows.size, 0)))
    add_rows(solver, np.full(lender.size, -INF), _lendable(programme, task, rows, lender), csr_array((lender.size, 0)))
    add_columns(
        solver, programme.left_cost[task.looms], np.ones(n), csc_array((np.ones(n), (each, each)), shape=(height, n))
    )
    picked = entries[rows, :].tocoo()
    where = np.concatenate([number, n + picked.row]), np.concatenate([np.arange(m), picked.col])
    block = csc_array((np.concatenate([np.ones(m), picked.data]), where), shape=(height, m))
    add_columns(solver, programme.options.cost[task.options], np.ones(m), block)
    each = np.arange(borrowing.size)
    where = np.concatenate([n + borrowing, n + rows.size + lent.reshape(-1)]), np.concatenate([each, each])
    values = np.concatenate([-np.ones(each.size), np.ones(each.size)])
    add_columns(
        solver, np.zeros(each.size), np.full(each.size, INF), csc_array((values, where), shape=(height, each.size))
    )
    _beside(solver, task)
    kinds = np.full(n + m, int(highspy.HighsVarType.kInteger), dtype=np.uint8)
    solver.changeColsIntegrality(n + m, np.arange(n + m, dtype=np.int32), kinds)


def _beside(solver: highspy.Highs, task: Task) -> None:
    """The rows of the task beside those of the programme."""
    n, m = task.looms.size, task.options.size
    if task.whole is not None:
        entries = csr_array(task.whole.of(task.options))
        shifted = csr_array((entries.data, entries.indices + n, entries.indptr), shape=(len(task.whole), n + m))
        add_rows(solver, np.full(len(task.whole), -INF), task.whole.upper, shifted)
    if task.fewest_left:
        all_left = csr_array(np.append(np.ones(n), np.zeros(m))[None, :])
        add_rows(solver, np.array([float(task.fewest_left)]), np.array([INF]), all_left)


def _could_overrun(programme: Programme, entries: csr_array, number: Ints, looms: int, upper: Floats) -> Ints:
    """Rows that would be overrun if each loom took as much of them as it can, rows already borrowing, and the row that asks
    for bookings to be kept."""
    triple = entries.tocoo()
    key = triple.row.astype(np.int64) * looms + number[triple.col]
    order = np.lexsort((triple.data, key))
    last = np.flatnonzero(np.diff(key[order], append=-1))
    taken = np.maximum(0.0, triple.data[order][last])
    most = np.bincount(key[order][last] // looms, taken, minlength=upper.size)
    short = (most > upper + 1e-9) & (most > 0)
    if programme.rows.kept >= 0:
        short[programme.rows.kept] = True
    return np.flatnonzero(short)


def _implied(entries: csr_array, upper: Floats, rows: Ints, borrows: Bools) -> Bools:
    """Rows that the row of the slot before or after implies: it has no less of anything, and no higher limit.

    Where no option begins between two slots, who is at work in the later one was so in the earlier one already. A row that
    may borrow neither implies another nor is implied: what is to be lent in its slot, other halls may have.
    """
    implied = np.zeros(rows.size, dtype=bool)
    if rows.size < 2:
        return implied
    step = (entries[1:, :] - entries[:-1, :]).tocsr()
    rises, falls = _any(step > 0), _any(step < 0)
    neighbours = (np.diff(rows) == 1) & ~borrows[1:] & ~borrows[:-1]
    implied[:-1] |= neighbours & ~falls & (upper[:-1] >= upper[1:])
    implied[1:] |= neighbours & ~rises & (upper[1:] >= upper[:-1]) & (falls | (upper[1:] > upper[:-1]))
    return implied


def _any(flags: csr_array) -> Bools:
    return np.diff(flags.indptr) > 0


def _lendable(programme: Programme, task: Task, rows: Ints, lender: Ints) -> Floats:
    """What each lender still has beside what halls without a row here have borrowed."""
    others = np.setdiff1d(np.flatnonzero(programme.rows.lender >= 0), rows)
    lent = np.maximum(0.0, task.used[others] - programme.rows.upper[others])
    out = np.bincount(programme.rows.lender[others], lent, minlength=programme.rows.upper.size)
    return programme.rows.upper[lender] - out[lender]
