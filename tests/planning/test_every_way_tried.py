"""The planner against every plan there is, on halls of three looms, with the solver-free check as the only judge."""

from dataclasses import replace
from datetime import timedelta

import pytest
from other_solver import cp_sat, programme_of
from small_halls import TriedOut, seeds, small_problem

from tracker.domain.plan import PlanStatus
from tracker.domain.windows import Window, WindowKind
from tracker.domain.work import WorkContent
from tracker.planning.baseline.walk import baseline
from tracker.planning.planner import plan
from tracker.planning.problem import PlanningProblem
from tracker.planning.verify import verify

SHARED = [0, 3, 5, 10, 11]
"""Seeds in which no crew keeps to a hall: the other solver does not know of lending."""


def with_orders(problem: PlanningProblem) -> PlanningProblem:
    """A rail ordered on Monday comes the same day and is used on Tuesday; half a day is firm."""
    mill, rail = problem.mill, replace(problem.mill.parts["RAIL"], lead_time_days=0.0, on_hand=1.0, safety_stock=0.0)
    terms = replace(mill.terms, days_to_order=0, firm_h=12)
    return replace(problem, mill=replace(mill, parts={"RAIL": rail}, receipts=(), terms=terms))


def with_sections(problem: PlanningProblem) -> PlanningProblem:
    """Looms 1 and 3 of hall 1 are one weaver's, and only one of them may be stopped."""
    mill = problem.mill
    looms = {key: replace(loom, section="A") for key, loom in mill.looms.items()}
    return replace(problem, mill=replace(mill, looms=looms, terms=replace(mill.terms, stopped_per_section=1)))


def with_warp(problem: PlanningProblem) -> PlanningProblem:
    """The first step needs the warp out and the second needs it in. A loom that stands has no warp for another hour after
    its span; a change takes 90 minutes."""

    def place(content: WorkContent) -> WorkContent:
        out, into = content.steps
        return replace(content, steps=(replace(out, warp="out"), replace(into, warp="in")))

    def window(w: Window) -> Window:
        if w.kind is WindowKind.MID_WARP:
            return w
        standing = w.ends_at + timedelta(hours=1) if w.ends_at else None
        return replace(w, ordinary_change_h=1.5, warp_in_at=standing)

    contents = {kind: tuple(map(place, of)) for kind, of in next(iter(problem.contents.values())).items()}
    windows = {key: tuple(map(window, of)) for key, of in problem.windows.items()}
    return replace(problem, contents=dict.fromkeys(problem.contents, contents), windows=windows)


def with_warp_and_sections(problem: PlanningProblem) -> PlanningProblem:
    return with_sections(with_warp(problem))


@pytest.mark.parametrize("seed", seeds([0, 4, 5], [1, 2, 3, *range(6, 14)]))
def test_nor_where_the_warp_comes_in_between(seed: int) -> None:
    problem = with_warp(small_problem(seed))
    found = plan(problem, gap=0.0)
    assert verify(found, problem) == ()
    assert found.objective == pytest.approx(TriedOut(problem).best(), abs=0.01)
    assert verify(baseline(problem, [8.0]), problem) == ()


@pytest.mark.parametrize("variant", [with_orders, with_sections, with_warp_and_sections])
@pytest.mark.parametrize("seed", seeds([4, 13], [1, 8, 17]))
def test_nor_where_parts_can_be_ordered_or_sections_have_a_limit(seed: int, variant) -> None:
    problem = variant(small_problem(seed))
    found = plan(problem, gap=0.0)
    assert verify(found, problem) == ()
    assert found.objective == pytest.approx(TriedOut(problem).best(), abs=0.01)
    assert verify(baseline(problem, [8.0]), problem) == ()


@pytest.mark.parametrize("variant", [with_orders, with_sections, with_warp_and_sections])
@pytest.mark.parametrize("seed", SHARED)
def test_another_solver_finds_the_same(seed: int, variant) -> None:
    problem = variant(small_problem(seed))
    found, programme = plan(problem, gap=0.0), programme_of(problem)
    without_options = programme.instance.left_cost.sum() - programme.left_cost.sum()
    assert cp_sat(programme)[0] + without_options == pytest.approx(found.objective, abs=0.05)


@pytest.mark.parametrize("seed", seeds([0, 4, 13], [1, 2, 8, 10, 15, 17, 24]))
def test_no_plan_that_passes_the_check_is_cheaper(seed: int) -> None:
    problem = small_problem(seed)
    found = plan(problem, gap=0.0)
    assert verify(found, problem) == ()
    assert found.objective == pytest.approx(TriedOut(problem).best(), abs=0.01)
    assert found.bound == pytest.approx(found.objective, abs=0.02)
    assert found.status is PlanStatus.OPTIMAL
