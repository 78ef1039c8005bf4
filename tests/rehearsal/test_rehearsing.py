"""All the runs of a rehearsal: the same whoever plays them, and what a stop keeps."""

from datetime import date

import pytest
from made_problems import problem_of

from tracker.planning.planner import plan
from tracker.rehearsal.policies import KEPT, REPLANNED, RULE, RULE_LIMITS_H
from tracker.rehearsal.rehearsing import Ask, InThisProcess, Players, rehearse
from tracker.rehearsal.sources import CREWS, SUPPLIERS, Figure, Source, Spreads
from tracker.services.plans.players import players

PROBLEM = problem_of(8, 3, 1, seed=2)
ALONE = Players(InThisProcess())
OWN = {
    "late_share": {SUPPLIERS: Figure(0.5, 20, date(2026, 1, 5))},
    "late_days": {SUPPLIERS: Figure(4.0, 10, date(2026, 1, 5))},
    "away_share": {CREWS: Figure(0.1, 20, date(2026, 1, 5))},
}
"""What records say travels with what is asked."""
ASK = Ask((KEPT, RULE, REPLANNED), Spreads(own=OWN), runs=8, seed=5, crews=("Fitters 1",))


@pytest.fixture(scope="module")
def made():
    return plan(PROBLEM, gap=0.02)


def test_one_process_and_four_say_the_same(made) -> None:
    alone = rehearse(PROBLEM, made, ASK, ALONE)
    with players(4) as four:
        together = rehearse(PROBLEM, made, ASK, Players(four, 4))
    assert together == alone
    assert not alone.stopped


def test_what_was_asked_for_is_played(made) -> None:
    """8 runs of the plan, half as many of the rule, of the plan made anew, of each of six sources, and of a stand-in."""
    told = []
    runs = rehearse(PROBLEM, made, ASK, ALONE, lambda _, part: told.append(part)).runs
    # told after each five runs at most: 8 are 2 such lots, 4 are one of each of the eight others; of the plan made anew after
    # each of its four; each limit is tried by 5
    assert len(told) == 2 + 8 + 4 + len(RULE_LIMITS_H)
    assert told == sorted(told) and told[-1] == 1
    assert [run.number for run in runs["kept", None, None]] == list(range(8))
    assert [run.number for run in runs["rule-of-thumb", None, None]] == list(range(4))
    assert [run.number for run in runs["replanned", None, None]] == list(range(4))
    assert {(source, crew) for _, source, crew in runs if source} == {
        *((source, None) for source in Source), (Source.PEOPLE, "Fitters 1"),
    }  # fmt: skip
    assert all(len(of) == 4 for (_, source, _), of in runs.items() if source)


def test_more_runs_leave_the_earlier_ones_as_they_were(made) -> None:
    few, more = (rehearse(PROBLEM, made, Ask(runs=n, worries=False), ALONE).runs["kept", None, None]
                 for n in (3, 7))  # fmt: skip
    assert more[:3] == few


def test_a_stop_keeps_what_is_done(made) -> None:
    asked = iter([False] * 3 + [True] * 100)
    kept = rehearse(PROBLEM, made, Ask(runs=100, worries=False), ALONE, stop=lambda: next(asked))
    assert kept.stopped
    assert [run.number for run in kept.runs["kept", None, None]] == list(range(15))


def test_it_ends_once_it_is_sure_enough(made) -> None:
    """Any mean is known within ten million after the first round of 20."""
    runs = rehearse(PROBLEM, made, Ask(runs=200, worries=False, until_sure=1e7), ALONE).runs
    assert len(runs["kept", None, None]) == 20


def test_all_runs_are_played_where_nothing_says_enough(made) -> None:
    """Rounds are of 20 runs: 25 need a second."""
    runs = rehearse(PROBLEM, made, Ask(runs=25, worries=False), ALONE).runs
    assert len(runs["kept", None, None]) == 25


def test_a_plan_made_anew_is_played_less_often_and_no_worry_is_weighed_by_it() -> None:
    """Of 100 runs half are 50, of the plan made anew 20 at most; where it comes first it is as many as asked for."""
    against, first = Ask((KEPT, REPLANNED, RULE), runs=100), Ask((REPLANNED, KEPT), runs=30)
    assert [against.runs_of(place) for place in range(3)] == [100, 20, 50]
    assert [first.runs_of(place) for place in range(2)] == [30, 15]
    assert (against.weighs, first.weighs, Ask((REPLANNED,), worries=True).weighs) == (True, False, True)
