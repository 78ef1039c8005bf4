"""The planner against every plan there is, on halls of three looms, with the solver-free check as the only judge."""

import pytest
from small_halls import TriedOut, small_problem

from tracker.domain.plan import PlanStatus
from tracker.planning.planner import plan
from tracker.planning.verify import verify


@pytest.mark.parametrize("seed", [0, 1, 2, 4, 8, 10, 13, 15, 17, 24])
def test_no_plan_that_passes_the_check_is_cheaper(seed: int) -> None:
    problem = small_problem(seed)
    found = plan(problem, gap=0.0)
    assert verify(found, problem) == ()
    assert found.objective == pytest.approx(TriedOut(problem).best(), abs=0.01)
    assert found.bound == pytest.approx(found.objective, abs=0.02)
    assert found.status is PlanStatus.OPTIMAL
