"""The same options given to another solver (OR-Tools CP-SAT, a test dependency only) cost the same at best."""

import pytest
from made_problems import problem_of
from other_solver import cp_sat, programme_of

from tracker.planning.model.programme import Control
from tracker.planning.search.solver import optimise

CONTROL = Control(gap=0.0)


@pytest.mark.parametrize(("looms", "weeks", "crews", "seed"), [(12, 3, 1, 1), (14, 2, 2, 2), (10, 4, 1, 3)])
def test_cp_sat_finds_the_same_cost(looms: int, weeks: int, crews: int, seed: int) -> None:
    """Computed; a cent of rounding for each loom."""
    programme = programme_of(problem_of(looms, weeks, crews, halls=2, seed=seed))
    found = optimise(programme, CONTROL)
    assert found.cost == pytest.approx(cp_sat(programme)[0], abs=0.01 * looms)
    assert found.bound == pytest.approx(found.cost, rel=1e-6)
