"""What staying and the prices of moves add to a replan, and how long holding and few moves take.

The mill is planned, then a crew is away for two days and it is planned again. Goals on two cores: reasons and prices add at most a
third to a replan of 96 looms; `hold` and `calm` at 400 looms under 2 minutes.
"""

from dataclasses import replace
from datetime import timedelta
from functools import cache

import pytest
from made_problems import problem_of

from tracker.domain.mill import Absence
from tracker.planning import planner
from tracker.planning.problem import PlanningProblem
from tracker.planning.verify import verify

SIZES = {"96 looms, 12 weeks": (96, 12, 2, 2, 0.001), "400 looms, 20 weeks": (400, 20, 4, 2, 0.01)}


@cache
def again(name: str) -> PlanningProblem:
    """The problem once its plan is published and a crew is away in the fifth week."""
    looms, weeks, crews, halls, gap = SIZES[name]
    asked = problem_of(looms, weeks, crews, halls=halls)
    published = planner.plan(asked, gap=gap)
    crew = next(c for c in asked.mill.crews if c.trade == asked.mill.terms.lead_trade).crew
    first = (asked.as_of + timedelta(days=28)).date()
    away = (Absence(crew, first, first + timedelta(days=1)),)
    return replace(asked, previous=published, mill=replace(asked.mill, absences=away))


def replan(benchmark, name: str, problem: PlanningProblem) -> None:
    made = benchmark.pedantic(planner.plan, (problem,), {"gap": SIZES[name][4]}, rounds=1)
    assert verify(made, problem) == ()
    benchmark.extra_info.update(
        cost=made.objective,
        bound=made.bound,
        moves=len(planner.moved(problem, made.bookings)),
        priced=len(made.undoing),
    )


@pytest.mark.benchmark(group="a replan of 96 looms")
def test_replan_with_prices(benchmark) -> None:
    replan(benchmark, "96 looms, 12 weeks", again("96 looms, 12 weeks"))


@pytest.mark.benchmark(group="a replan of 96 looms")
def test_replan_baseline_without(benchmark, monkeypatch) -> None:
    monkeypatch.setattr(planner, "settle", lambda programme, solution, fixed, control: (solution, ()))
    replan(benchmark, "96 looms, 12 weeks", again("96 looms, 12 weeks"))


@pytest.mark.parametrize("calm", [0, 5])
def test_few_moves_of_400(benchmark, calm: int) -> None:
    name = "400 looms, 20 weeks"
    replan(benchmark, name, replace(again(name), calm=calm))


def test_ten_held_of_400(benchmark) -> None:
    name = "400 looms, 20 weeks"
    asked = again(name)
    assert asked.previous
    quiet = [b.key for b in asked.previous.bookings if b.start > asked.as_of + timedelta(days=42)][:10]
    replan(benchmark, name, replace(asked, held=frozenset(quiet)))
