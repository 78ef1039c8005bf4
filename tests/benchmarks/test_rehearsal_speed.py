"""How long a rehearsal takes, in seconds of processor time, beside one plan of the same mill in the same run.

Goals on two cores, so in twice as much processor time: of 96 looms and 12 weeks 1,000 runs kept in 60 s, 20 of the plan made
anew each Monday in 5 minutes, under 1 GiB; of a thousand looms 200 runs kept in 2 minutes. Processes play the very same code,
so one is measured: `extra_info` says the processor seconds of a run and of all runs of the goal, and how many plans' time a run
takes.
"""

import resource
import time
from collections.abc import Callable
from functools import cache
from pickle import dumps

import pytest
from made_problems import problem_of

from tracker.domain.plan import Plan
from tracker.planning.baseline import walk
from tracker.planning.planner import plan
from tracker.planning.problem import PlanningProblem
from tracker.rehearsal.policies import KEPT, REPLANNED, Policy
from tracker.rehearsal.runs import RunBatch, play_batch
from tracker.rehearsal.sources import Spreads

Planned = Callable[[PlanningProblem], Plan]
MILLS: dict[str, tuple[Callable[[], PlanningProblem], Planned]] = {
    "96 looms": (lambda: problem_of(96, 12, 3, halls=2), plan),
    "1000 looms": (lambda: problem_of(1000, 26, 10, halls=4), lambda problem: walk.baseline(problem, [12.0])),
}
"""Of the thousand the plan is that of who takes beam-outs as they come: to plan them takes minutes, to play them is asked here."""


@cache
def planned(name: str) -> tuple[bytes, float]:
    """Problem and plan as processes get them, and the processor seconds that planning took: the baseline."""
    make, planner = MILLS[name]
    problem = make()
    begin = time.process_time()
    made = planner(problem)
    return dumps((problem, made)), time.process_time() - begin


@pytest.mark.parametrize(
    ("name", "policy", "runs", "goal_runs", "goal_cpu_s"),
    [("96 looms", KEPT, 20, 1000, 120), ("96 looms", REPLANNED, 1, 20, 600), ("1000 looms", KEPT, 3, 200, 240)],
    ids=["kept", "replanned", "thousand looms kept"],
)
def test_runs(benchmark, name: str, policy: Policy, runs: int, goal_runs: int, goal_cpu_s: float) -> None:
    setting, plan_s = planned(name)
    play_batch(setting, RunBatch(KEPT, Spreads(), 1, (0,)))  # the hall is made once a process

    def played() -> float:
        begin = time.process_time()
        assert len(play_batch(setting, RunBatch(policy, Spreads(), 1, tuple(range(runs))))) == runs
        return (time.process_time() - begin) / runs

    a_run_s = benchmark.pedantic(played, rounds=1)
    benchmark.extra_info.update(
        cpu_s_a_run=round(a_run_s, 3), cpu_s_of_the_goal=round(a_run_s * goal_runs), goal_cpu_s=goal_cpu_s,
        plans_a_run=round(a_run_s / plan_s, 3),
        peak_MiB=resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024,
    )  # fmt: skip
