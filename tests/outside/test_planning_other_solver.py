"""The same options given to another solver (OR-Tools CP-SAT, a test dependency only) cost the same at best."""

from fractions import Fraction

import numpy as np
import pytest
from ortools.sat.python import cp_model

from sample_data.big import make_mill
from tracker.domain.clock import horizon_end, start_of_day
from tracker.forecast.beam_outs import forecast
from tracker.planning.instance import make_instance
from tracker.planning.options import make_options
from tracker.planning.problem import PlanningProblem
from tracker.planning.programme import Control, Programme, make_programme
from tracker.planning.solver import optimise
from tracker.scope.content import scope_looms

CONTROL = Control(gap=0.0)
CENT = 100


def programme_of(looms: int, weeks: int, crews: int, seed: int) -> Programme:
    mill = make_mill(looms, weeks, crews, halls=2, seed=seed)
    assert mill.terms.start
    as_of = start_of_day(mill.terms.start, mill.terms)
    contents = {key: scope.contents for key, scope in scope_looms(mill).items() if scope.contents}
    windows = forecast(mill, as_of, horizon_end(mill.terms, as_of))
    instance = make_instance(PlanningProblem(mill, windows, contents, as_of))
    return make_programme(instance, make_options(instance))


def cp_sat(programme: Programme) -> float:
    """The least cost by CP-SAT: a Boolean per option and per loom left over, costs in cents, rows as they are."""
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
    assert solver.solve(model) == cp_model.OPTIMAL
    return solver.objective_value / CENT


@pytest.mark.parametrize(("looms", "weeks", "crews", "seed"), [(12, 3, 1, 1), (14, 2, 2, 2), (10, 4, 1, 3)])
def test_cp_sat_finds_the_same_cost(looms: int, weeks: int, crews: int, seed: int) -> None:
    """Computed; a cent of rounding for each loom."""
    programme = programme_of(looms, weeks, crews, seed)
    found = optimise(programme, CONTROL)
    assert found.cost == pytest.approx(cp_sat(programme), abs=0.01 * looms)
    assert found.bound == pytest.approx(found.cost, rel=1e-6)
