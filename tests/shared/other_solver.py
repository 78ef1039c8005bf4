"""The same options given to another solver, for the outside check and for the benchmark."""

from fractions import Fraction

import numpy as np
from ortools.sat.python import cp_model

from tracker.planning.model.grid import Ints
from tracker.planning.model.instance import make_instance
from tracker.planning.model.options import make_options
from tracker.planning.model.programme import Programme, make_programme
from tracker.planning.problem import PlanningProblem

CENT = 100


def programme_of(problem: PlanningProblem) -> Programme:
    """Without pilots, which only restrict."""
    instance = make_instance(problem)
    return make_programme(instance, make_options(instance))


def cp_sat(
    programme: Programme, options: Ints | None = None, limit_s: float | None = None, gap: float = 0.0
) -> tuple[float, float]:
    """Cost and bound by CP-SAT over some options (all, if not said): a Boolean per option and per loom left over, costs
    in cents, rows as they are.

    One worker that relaxes everything: of 1, 2 and 8 workers and both levels of relaxing that was the fastest by far.

    Both are the least cost unless the limit strikes; without a plan by then the cost is infinite.
    """
    index = np.arange(len(programme.options)) if options is None else options
    model = cp_model.CpModel()
    take = [model.new_bool_var("") for _ in index]
    left = [model.new_bool_var("") for _ in range(programme.looms.size)]
    of_loom = [[variable] for variable in left]
    for variable, number in zip(take, programme.number[index], strict=True):
        of_loom[number].append(variable)
    for variables in of_loom:
        model.add_exactly_one(variables)
    rows = programme.lookup.matrix(index).tocsr()
    for row, upper in enumerate(programme.rows.upper):
        span = slice(rows.indptr[row], rows.indptr[row + 1])
        if rows.data[span].sum() > upper:
            amounts = [Fraction(float(value)).limit_denominator(1000) for value in rows.data[span]]
            times = int(np.lcm.reduce([a.denominator for a in amounts]))
            used = sum(int(a * times) * take[i] for a, i in zip(amounts, rows.indices[span], strict=True))
            model.add(used <= int(upper * times + 1e-6))
    cost = np.round(programme.options.cost[index] * CENT).astype(int)
    spare = np.round(programme.left_cost * CENT).astype(int)
    model.minimize(sum(int(c) * v for c, v in zip([*cost, *spare], [*take, *left], strict=True)))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.linearization_level = 2
    solver.parameters.random_seed = 1
    solver.parameters.relative_gap_limit = gap
    if limit_s:
        solver.parameters.max_time_in_seconds = limit_s
    status = solver.solve(model)
    assert limit_s or status == cp_model.OPTIMAL
    found = status in (cp_model.OPTIMAL, cp_model.FEASIBLE)
    return (solver.objective_value / CENT if found else np.inf), solver.best_objective_bound / CENT
