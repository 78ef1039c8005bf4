"""From loaded data to a proven plan, with CP-SAT on the same options beside it in the same run.

Every row's extra_info says cost, bound and gap, so that times are read for what they proved. The large halls take minutes:
`python -m pytest tests/benchmarks/test_plan_speed.py -k "not large"` leaves them out.
"""

import pytest
from other_solver import cp_sat, problem_of, programme_of

from tracker.planning.instance import make_instance
from tracker.planning.options import make_options
from tracker.planning.planner import plan
from tracker.planning.verify import verify

CP_SAT_LIMIT_S = 60


@pytest.fixture(scope="module")
def hall():
    """96 looms, 12 weeks, two crews."""
    return problem_of(96, 12, 2, seed=1, halls=1)


def say(benchmark, cost, bound):
    benchmark.extra_info.update(cost=round(cost), bound=round(bound), gap_percent=round(100 * (cost - bound) / cost, 3))


@pytest.mark.benchmark(group="96 looms, 12 weeks")
def test_plan(benchmark, hall):
    found = benchmark.pedantic(plan, (hall,), rounds=1)
    say(benchmark, found.objective, found.bound)
    assert verify(found, hall) == ()


@pytest.mark.benchmark(group="96 looms, 12 weeks")
def test_baseline_cp_sat_on_the_same_options(benchmark, hall):
    """Without pilots, which only restrict; stopped after a minute."""
    cost, bound = benchmark.pedantic(cp_sat, (programme_of(hall), CP_SAT_LIMIT_S), rounds=1)
    benchmark.extra_info.update(cost=cost, bound=round(bound))


@pytest.mark.benchmark(group="building the options of 1,000 looms, 26 weeks")
def test_options(benchmark):
    problem = problem_of(1000, 26, 10, seed=1, halls=4)
    found = benchmark.pedantic(lambda: make_options(make_instance(problem)), rounds=1)
    benchmark.extra_info["options"] = len(found)


@pytest.mark.benchmark(group="large halls")
@pytest.mark.parametrize(
    ("looms", "weeks", "crews", "halls", "gap", "limit_s"),
    [
        (400, 20, 4, 1, 0.005, 180), (1000, 26, 10, 1, 0.01, 600), (1000, 26, 5, 1, 0.02, 600),
        (3000, 26, 30, 10, 0.01, 900),
    ],
)  # fmt: skip
def test_large(benchmark, looms, weeks, crews, halls, gap, limit_s):
    problem = problem_of(looms, weeks, crews, seed=1, halls=halls)
    found = benchmark.pedantic(plan, (problem,), {"gap": gap, "time_limit_s": limit_s}, rounds=1)
    say(benchmark, found.objective, found.bound)
    assert verify(found, problem) == ()
