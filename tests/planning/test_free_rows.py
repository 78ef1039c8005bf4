"""What is free of each row is followed from booking to booking instead of being worked out anew."""

import numpy as np
import pytest
from other_solver import programme_of
from small_halls import small_problem

from tracker.planning.search.incumbent import greedy
from tracker.planning.search.relaxation import unpriced


@pytest.mark.parametrize("seed", range(8))
def test_followed_it_is_what_it_would_be_worked_out_anew(seed: int) -> None:
    """Some of these halls have crews of their own beside one that may be lent to them."""
    programme = programme_of(small_problem(seed))
    used = np.zeros(programme.rows.upper.size)
    free = programme.rows.free(used)
    for option in np.random.default_rng(seed).permutation(len(programme.options))[:40]:
        _, row, amount = programme.lookup.entries(np.array([option]))
        np.add.at(used, row, amount)
        programme.rows.follow(free, used, row)
        assert free == pytest.approx(programme.rows.free(used))


def test_some_of_the_halls_lend() -> None:
    assert any((programme_of(small_problem(seed)).rows.lender >= 0).any() for seed in range(8))


@pytest.mark.parametrize("seed", range(8))
def test_the_first_plan_knows_what_it_uses_and_overruns_nothing(seed: int) -> None:
    programme = programme_of(small_problem(seed))
    found = greedy(programme, unpriced(programme))
    assert found.used == pytest.approx(programme.used(found.taken(np.arange(programme.looms.size))))
    assert not programme.rows.over(found.used).any()
