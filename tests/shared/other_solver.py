"""The same options given to another solver, for the outside check and for the benchmark."""

from fractions import Fraction

import numpy as np
from ortools.sat.python import cp_model

from sample_data.big import make_mill
from tracker.domain.clock import horizon_end, start_of_day
from tracker.forecast.beam_outs import forecast
from tracker.planning.instance import make_instance
from tracker.planning.options import make_options
from tracker.planning.problem import PlanningProblem
from tracker.planning.programme import Programme, make_programme
from tracker.scope.content import scope_looms

CENT = 100


def problem_of(looms: int, weeks: int, crews: int, seed: int, halls: int = 2) -> PlanningProblem:
    """A generated mill, planned from its start."""
    mill = make_mill(looms, weeks, crews, halls=halls, seed=seed)
    assert mill.terms.start
    as_of = start_of_day(mill.terms.start, mill.terms)
    contents = {key: scope.contents for key, scope in scope_looms(mill).items() if scope.contents}
    windows = forecast(mill, as_of, horizon_end(mill.terms, as_of))
    return PlanningProblem(mill, windows, contents, as_of)


def programme_of(problem: PlanningProblem) -> Programme:
    instance = make_instance(problem)
    return make_programme(instance, make_options(instance))


def cp_sat(programme: Programme, limit_s: float | None = None) -> tuple[float, float]:
    """Cost and bound by CP-SAT: a Boolean per option and per loom left over, costs in cents, rows as they are.

    Both are the least cost unless the limit strikes; without a plan by then the cost is infinite.
    """
    model = cp_model.CpModel()
    take = [model.new_bool_var("") for _ in range(len(programme.options))]
    left = [model.new_bool_var("") for _ in range(programme.looms.size)]
    for number in range(programme.looms.size):
        model.add_exactly_one([left[number], *(take[i] for i in programme.options_of(number))])
    rows = programme.lookup.matrix(np.arange(len(programme.options))).tocsr()
    for row, upper in enumerate(programme.rows.upper):
        span = slice(rows.indptr[row], rows.indptr[row + 1])
        amounts = [Fraction(float(value)).limit_denominator(1000) for value in rows.data[span]]
        times = int(np.lcm.reduce([a.denominator for a in amounts])) if amounts else 1
        if sum(amounts) > upper:
            model.add(sum(int(a * times) * take[i] for a, i in zip(amounts, rows.indices[span], strict=True))
                      <= int(upper * times + 1e-6))  # fmt: skip
    cost = np.round(programme.options.cost * CENT).astype(int)
    spare = np.round(programme.left_cost * CENT).astype(int)
    model.minimize(sum(int(c) * v for c, v in zip([*cost, *spare], [*take, *left], strict=True)))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    if limit_s:
        solver.parameters.max_time_in_seconds = limit_s
    status = solver.solve(model)
    assert limit_s or status == cp_model.OPTIMAL
    cost = solver.objective_value / CENT if status in (cp_model.OPTIMAL, cp_model.FEASIBLE) else np.inf
    return cost, solver.best_objective_bound / CENT
