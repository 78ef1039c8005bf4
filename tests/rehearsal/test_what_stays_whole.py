"""In every world, by every policy: each loom once, no crew at two looms, no kit out of nothing; the same seed, the same world."""

import pickle

import pytest
from made_problems import problem_of

from tracker.planning.planner import plan
from tracker.rehearsal.hall import CREW, Hall
from tracker.rehearsal.policies import KEPT, NEVER_CUT, rule_of_thumb
from tracker.rehearsal.sources import Source, Spreads
from tracker.rehearsal.world import Play, play

LIVELY = Spreads(away_share=0.15, fail_share=0.1, late_share=0.5, short_share=0.3, protected_per_week=3)


@pytest.fixture(scope="module")
def hall() -> Hall:
    given = problem_of(24, 6, 3, halls=2, seed=4)
    return Hall(given, plan(given, gap=0.02))


@pytest.mark.parametrize("policy", [KEPT, NEVER_CUT, rule_of_thumb(24)], ids=lambda policy: policy.name)
@pytest.mark.parametrize("number", range(6))
def test_nothing_is_done_twice_and_nobody_is_in_two_places(hall: Hall, policy, number: int) -> None:
    run = Play(hall, hall.drawing(LIVELY).world(7, number), policy, LIVELY)
    own, shared = run.people.own, run.people.shared
    for t in hall.active:
        run.step(t)
        for pool, used in enumerate(run.people.used):
            there = sum(mine[t] for mine in own[pool]) + shared[pool][t]
            assert sum(used) <= there, (pool, t)
        assert sum(run.people.used[CREW]) == run.busy[t]
        assert all(left >= -1e-6 for left in run.stock.values())
        keys = [work.key for work in run.going] + [loom.key for loom in run.waiting] + [d.key for d in run.done]
        assert len(keys) == len(set(keys))
    course = run.course()
    everyone = [done.key for done in course.done] + [lost.key for lost in course.lost]
    assert len(everyone) == len(set(everyone))
    assert set(everyone) <= set(hall.problem.planned)


def test_a_run_is_the_same_whatever_was_drawn_before_it(hall: Hall) -> None:
    fresh, used = hall.drawing(LIVELY), hall.drawing(LIVELY)
    for number in range(3):
        used.world(7, number)
    assert used.world(7, 3) == fresh.world(7, 3)
    assert fresh.world(7, 3) != fresh.world(8, 3) != fresh.world(7, 4)


def test_a_hall_sent_to_another_process_plays_the_same(hall: Hall) -> None:
    again = Hall(*pickle.loads(pickle.dumps((hall.problem, hall.plan))))
    worlds = [each.drawing(LIVELY).world(7, 0) for each in (hall, again)]
    first, second = (play(each, w, KEPT, LIVELY) for each, w in zip((hall, again), worlds, strict=True))
    assert first == second


@pytest.mark.parametrize("off", list(Source))
def test_a_source_switched_off_leaves_the_others_as_they_are(hall: Hall, off: Source) -> None:
    fields = {
        Source.BEAM_OUTS: ("warps",), Source.WORK: ("work",), Source.PEOPLE: ("away",), Source.RECEIPTS: ("late", "short"),
        Source.FAILURES: ("fails",), Source.ORDERS: ("protected",),
    }  # fmt: skip
    with_all, without = hall.drawing(LIVELY).world(7, 0), hall.drawing(LIVELY.without(off)).world(7, 0)
    for source, names in fields.items():
        for name in names:
            same = getattr(with_all, name) == getattr(without, name)
            assert same is (source != off), name
    assert not any(without.warps.values()) or off is not Source.BEAM_OUTS
