"""Whether what is said to be done by P80 is: forty made-up programmes against their one true course."""

import pytest
from made_problems import problem_of

from tracker.planning.planner import plan
from tracker.rehearsal.hall import Hall
from tracker.rehearsal.policies import KEPT
from tracker.rehearsal.rehearsing import Ask, InThisProcess, Players, rehearse
from tracker.rehearsal.results import of_policy, when_done
from tracker.rehearsal.sources import Spreads
from tracker.rehearsal.world import play

PROGRAMMES, RUNS = 40, 100
TRUE = 7_000
"""Seeds from here on draw the true courses; 1 draws those by which is promised."""


def holds(seed: int) -> bool:
    """Whether half of the booked looms were done by the day that was promised for 80 of 100 runs; where the horizon comes first
    in more than 20 of 100, no day is, and as many looms are taken as are done in 80."""
    given = problem_of(20, 6, 2, seed=seed)
    made = plan(given, gap=0.05)
    runs = rehearse(given, made, Ask(runs=RUNS, worries=False), Players(InThisProcess())).runs["kept", None, None]
    looms = min(-(-len(made.bookings) // 2), of_policy("kept", runs, len(made.bookings)).most_done)
    hall = Hall(given, made)
    true = play(hall, hall.drawing(Spreads()).world(TRUE + seed, 0), KEPT, Spreads())
    ends = sorted(done.end for done in true.done)
    return (ends[looms - 1] if len(ends) >= looms else float("inf")) <= when_done(runs, looms).p80


@pytest.mark.long
def test_p80_holds_in_about_eighty_of_a_hundred_programmes() -> None:
    """Of 40, 65 to 92 %: with a true 80 % fewer than 26 or more than 36 come in 3.6 % of all draws (binomial). It was 32. Of
    8 looms each it was 37: there many runs end at the same moment, and what holds at it holds for all of them."""
    held = sum(holds(seed) for seed in range(1, PROGRAMMES + 1))
    assert 0.65 <= held / PROGRAMMES <= 0.92, held
