"""The proof in plain words: the statuses stay apart, and a gap is never rounded away."""

from dataclasses import replace

from screen_mill import small_mill, small_plan

from dashboards.sentences import cost_parts, proof, share
from tracker.domain.plan import PlanStatus
from tracker.errors import as_it_stands

PLAN = small_plan(small_mill())


def test_a_proven_plan_says_what_a_better_one_would_save():
    # 7,500 - 7,450 = 50; 50 / 7,500 = 0.67 %
    assert proof(PLAN) == (
        "This plan costs 7,500 EUR. It is proven: no plan for the same data can cost less than 7,450 EUR, "
        "so a better one would save at most 50 EUR (0.67 %)."
    )


def test_no_gap_at_all():
    assert proof(replace(PLAN, bound=7500)).endswith("it is proven that none for the same data costs less.")


def test_a_plan_that_is_not_proven_does_not_claim_it():
    assert "not yet proven" in proof(replace(PLAN, status=PlanStatus.FEASIBLE, bound=6000))
    assert "stopped by its time limit" in proof(replace(PLAN, status=PlanStatus.TIMED_OUT, bound=6000))


def test_an_infeasible_plan_says_why():
    plan = replace(PLAN, status=PlanStatus.INFEASIBLE, reasons=(as_it_stands("No crew works in Hall 1."),))
    assert proof(plan) == "No plan keeps all limits. No crew works in Hall 1."


def test_a_small_gap_is_not_nothing():
    assert share(0.00001) == "less than 0.01 %"
    assert share(0.0) == "0.00 %"
    assert share(0.0067) == "0.67 %"


def test_what_the_cost_consists_of():
    assert cost_parts(PLAN, 1500) == "1,500 EUR for 2 bookings and 6,000 EUR for 1 loom left over."
