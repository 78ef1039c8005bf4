"""Terms that let a plan survive are found where they must help, and judged in worlds that had no say in it."""

from dataclasses import replace
from itertools import count
from pickle import dumps

import pytest
from made_problems import problem_of
from two_looms import LOOMS, ONE, TWO, at, problem, window

from tracker.domain.plan import Plan
from tracker.planning.planner import plan, sketch
from tracker.planning.verify import verify
from tracker.rehearsal import tuning
from tracker.rehearsal.policies import KEPT
from tracker.rehearsal.rehearsing import InThisProcess, Players
from tracker.rehearsal.results import interval
from tracker.rehearsal.runs import RunBatch, play_batch
from tracker.rehearsal.sources import STILL, Source, Spreads
from tracker.rehearsal.tuning import OTHER_WORLDS, AskTuning, Candidate, Tuned, tune
from tracker.services.plans.players import players

ALONE = Players(InThisProcess())
LATE = Spreads(off=frozenset(Source) - {Source.RECEIPTS}, late_share=1.0, late_days=3.0, short_share=0.0)
"""Nothing varies but deliveries, and none comes on its day."""
WINDOWS = {ONE: (window(ONE, at(1, 8)),), TWO: (window(TWO, at(7, 8)), window(TWO, at(18, 8), 2))}
"""Loom 1 takes the rail in stock. That of loom 2 is due on Friday the 8th: in time for its beam-outs on Monday the 11th and on
Friday the 22nd."""
PROBLEM = problem(WINDOWS, soak_days=0, looms={key: replace(loom, saving_per_day=1.0) for key, loom in LOOMS.items()})
ASK = AskTuning(LATE, tune_on=6, runs=20, variants=1)


def test_what_must_help_is_found_and_judged_in_other_worlds() -> None:
    # the rail is relied on for the 11th. It comes more than two days late in e^(-2/3) = 51 of 100 worlds; then loom 2 stands for a
    # day (120) or more. With five days more the plan waits for the 22nd, which costs 11 days of its saving of 1
    found = tune(PROBLEM, ASK, ALONE)
    assert found.best and found.helps and not found.stopped
    assert found.tried[0].candidate == Candidate()
    assert found.best.candidate.care.receipts_later_days
    without, with_care = (played(one.plan) for one in (found.tried[0], found.best))
    assert found.judged == interval([b - a for a, b in zip(without, with_care, strict=True)])


def played(made: Plan) -> list[float]:
    """Costs in the worlds that judge."""
    worlds = RunBatch(KEPT, LATE, ASK.seed, tuple(range(OTHER_WORLDS, OTHER_WORLDS + ASK.runs)))
    return [outcome.cost for outcome in play_batch(dumps((PROBLEM, made)), worlds)]


def test_where_nothing_varies_nothing_helps() -> None:
    found = tune(PROBLEM, replace(ASK, spreads=STILL, tune_on=2, runs=2), ALONE)
    assert found.best and not found.helps
    assert found.judged and found.judged.low >= 0


def test_a_stop_keeps_what_was_compared() -> None:
    asked = count()
    some = tune(PROBLEM, ASK, ALONE, stop=lambda: next(asked) > 8)
    assert some.stopped and some.judged is None and some.runs == 0 and not some.helps
    assert some.best in some.tried[1:]
    none = tune(PROBLEM, ASK, ALONE, stop=lambda: True)
    assert none.stopped and none.best is None and none.tried == ()


def figures(found: Tuned) -> tuple:
    """All but how long the plans took."""
    tried = [(one.candidate, one.plan.bookings, one.plan.left_over, one.costs) for one in found.tried]
    assert found.best
    return tried, found.best.candidate, found.judged, found.kept, found.runs, found.stopped


@pytest.mark.long
def test_one_process_and_two_find_the_same() -> None:
    ask = replace(ASK, tune_on=7, runs=6)
    with players(2) as two:
        together = tune(PROBLEM, ask, Players(two, 2))
    assert figures(together) == figures(tune(PROBLEM, ask, ALONE))


def test_of_many_looms_a_light_search_tries_and_the_whole_one_is_judged(monkeypatch) -> None:
    monkeypatch.setattr(tuning, "MOST_LOOMS", 1)
    by: list[Plan] = []
    monkeypatch.setattr(tuning, "sketch", lambda asked: by.append(made := sketch(asked)) or made)
    found = tune(PROBLEM, ASK, ALONE)
    assert found.light and found.best and found.without and found.helps
    assert [one.plan for one in found.tried] == by
    assert all(one.candidate.variant == 0 for one in found.tried)
    # sketches tell of no other dates, the two that were judged do
    assert not any(one.plan.other_dates for one in found.tried)
    assert found.without.plan.other_dates and found.best.plan.other_dates
    without, with_care = (played(one.plan) for one in (found.without, found.best))
    assert found.judged == interval([b - a for a, b in zip(without, with_care, strict=True)])


@pytest.mark.long
def test_a_light_plan_obeys_all_that_a_plan_does_and_costs_no_less() -> None:
    given = problem_of(24, 6, 2, seed=4)
    light, whole = sketch(given), plan(given, gap=0.01)
    assert verify(light, given) == ()
    assert whole.bound <= light.objective <= 1.1 * whole.objective
    assert replace(sketch(given), seconds=0) == replace(light, seconds=0)
