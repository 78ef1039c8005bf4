"""Rows of what the crews of a day, or of two days on end, can take: every plan keeps them, and halves of conversions break them."""

from dataclasses import replace

import numpy as np
import pytest
from made_problems import problem_of
from other_solver import cp_sat, programme_of
from small_halls import small_problem

from tracker.planning.model.lookup import Lookup
from tracker.planning.model.programme import Control, Programme
from tracker.planning.search.days import CrewDays
from tracker.planning.search.levels import make_levels
from tracker.planning.search.master import Master
from tracker.planning.search.relaxation import relax
from tracker.planning.search.ways import Ways, tightest, ways_of_day

A, B, C = [1, 1, 0], [0, 1, 1], [1, 0, 1]
"""Three conversions in a day of three slots; any two of them meet in one."""
ONE = np.array([1, 1, 1])
"""A crew in each slot."""
DRAWN = (0, 3, 5, 6, 7)
"""Some with a crew that all halls share beside each hall's own (`test_some_of_the_halls_lend`)."""


def test_all_ways_are_listed_and_no_other() -> None:
    """With two crews in each slot any of the three may be there twice if alone, or two or all three of them once (each slot then
    holds two): 1 + 3 + 3 + 3 + 1 ways."""
    found = ways_of_day(np.array([A, B, C]), 2 * ONE)
    assert found is not None
    expected = {(0, 0, 0), (1, 0, 0), (0, 1, 0), (0, 0, 1), (2, 0, 0), (0, 2, 0), (0, 0, 2)}
    expected |= {(1, 1, 0), (1, 0, 1), (0, 1, 1), (1, 1, 1)}
    assert {tuple(way) for way in found.tolist()} == expected
    assert len(found) == len(expected)


def test_too_many_ways_are_not_listed() -> None:
    """Of ten footprints in slots of their own with three crews there are 4 to the power of 10."""
    assert ways_of_day(np.eye(10, dtype=int), np.full(10, 3)) is None


def test_of_three_that_meet_two_by_two_one_can_be_done() -> None:
    """A half of each keeps every slot; the row that says so is A + B + C ≤ 1, which they overrun by a half."""
    ways = ways_of_day(np.array([A, B, C]), ONE)
    assert ways is not None
    row = tightest(Ways([ways], np.ones((3, 1), dtype=bool)), np.array([0.5, 0.5, 0.5]))
    assert row is not None
    assert row[0].tolist() == [1, 1, 1]
    assert row[1] == 1


def test_only_shares_that_no_ways_make_up_break_a_row() -> None:
    """Four crews, two of which stay for the last two slots. A long conversion holds all four slots, an early one the first and the
    third, a late one the first and the fourth. 1.5 long ones and half of each other are the middle of two ways, two long ones and
    one of each. 1.5 long and one early are not: in the third slot no way has more than two of them, so that long + early ≤ 2."""
    slots, limit = np.array([[1, 1, 1, 1], [1, 0, 1, 0], [1, 0, 0, 1]]), np.array([4, 4, 2, 2])
    found = ways_of_day(slots, limit)
    assert found is not None
    ways = Ways([found], np.ones((3, 1), dtype=bool))
    assert tightest(ways, np.array([1.5, 0.5, 0.5])) is None
    row = tightest(ways, np.array([1.5, 1.0, 0.0]))
    assert row is not None
    assert row[0][0] == row[0][1] == row[1] / 2


def test_what_no_day_alone_says_two_days_do() -> None:
    """P holds the evening of the first day and the morning of the second, R the same evening and the noon of the second, Q the
    morning and the noon of the second. One crew: of the first day P + R ≤ 1, of the second P + Q ≤ 1 and Q + R ≤ 1, and halves
    keep all that; of both together P + Q + R ≤ 1, as any two of them meet."""
    first = ways_of_day(np.array([[1], [1]]), np.array([1]))
    second = ways_of_day(np.array([[1, 0], [1, 1], [0, 1]]), np.array([1, 1]))
    assert first is not None
    assert second is not None
    halves, one_day = np.array([0.5, 0.5, 0.5]), np.ones((3, 1), dtype=bool)
    assert tightest(Ways([second], one_day), halves) is None
    evening = np.zeros((len(first), 3), dtype=int)
    evening[:, [0, 2]] = first
    both = Ways([evening, second], np.array([[True, True], [False, True], [True, True]]))
    row = tightest(both, halves)
    assert row is not None
    assert row[0].tolist() == [1, 1, 1]
    assert row[1] == 1


@pytest.mark.parametrize("seed", DRAWN)
@pytest.mark.parametrize("days", (1, 2))
def test_no_choice_breaks_a_row(seed: int, days: int) -> None:
    """Rows are found for drawn shares; choices are drawn loom by loom, each an option that fits beside those before."""
    programme, rng = programme_of(small_problem(seed, looms=6)), np.random.default_rng(seed)
    drawn = np.arange(len(programme.options))
    found = CrewDays(programme).broken(drawn, rng.random(drawn.size) / 4, days)
    assert len(found) or days > 1
    for _ in range(40):
        chosen = _drawn(programme, rng)
        assert (found.of(chosen).sum(axis=1) <= found.upper + 1e-9).all()


def test_no_choice_of_a_made_mill_breaks_a_row() -> None:
    """Conversions in two parts, some with the night between them."""
    programme, rng = programme_of(problem_of(16, 3, 2, halls=2)), np.random.default_rng(1)
    some = rng.choice(len(programme.options), 300, replace=False)
    days = CrewDays(programme)
    found = days.broken(some, rng.random(300) / 4, 1).and_also(days.broken(some, rng.random(300) / 4, 2))
    assert len(found) > 10
    for _ in range(40):
        chosen = _drawn(programme, rng)
        assert (found.of(chosen).sum(axis=1) <= found.upper + 1e-9).all()


def _drawn(programme: Programme, rng: np.random.Generator) -> np.ndarray:
    chosen = np.zeros(0, dtype=np.int64)
    for number in rng.permutation(programme.looms.size):
        mine = programme.options_of(int(number))
        fits = mine[programme.lookup.fits(programme.rows.free(programme.used(chosen)), mine)]
        if fits.size:
            chosen = np.append(chosen, rng.choice(fits))
    return chosen


@pytest.mark.parametrize("seed", DRAWN)
def test_the_bound_is_no_higher_than_what_another_solver_finds(seed: int) -> None:
    programme = programme_of(small_problem(seed, looms=6))
    cost, _ = cp_sat(programme)
    *_, relaxation = relax(programme, Control())
    assert relaxation.bound <= cost + 0.05


@pytest.mark.parametrize("seed", DRAWN)
def test_no_choice_leaves_fewer_over(seed: int) -> None:
    """Another solver counts: nothing costs anything but a loom left over."""
    programme = programme_of(small_problem(seed, looms=6))
    *_, relaxation = relax(programme, Control())
    instance = replace(programme.instance, left_cost=np.ones(len(programme.instance.looms)))
    options = replace(programme.options, cost=np.zeros(len(programme.options)))
    counted = replace(programme, instance=instance, options=options, lookup=Lookup(instance, programme.rows, options))
    assert relaxation.fewest_left <= cp_sat(counted)[0]


def test_some_choices_have_to_leave_some() -> None:
    """So that there is something to hold against the other solver."""
    found = [[*relax(programme_of(small_problem(seed, looms=6)), Control())][-1].fewest_left for seed in DRAWN]
    assert max(found) > 0


def test_options_that_come_in_while_looms_are_counted_cost_nothing_meanwhile() -> None:
    """With no option all looms are left over; with all of them as many as where they were there from the beginning. When the least
    cost is asked for again, they cost what they do."""
    programme = programme_of(small_problem(DRAWN[0], looms=6))
    late, early = (Master(programme, make_levels(programme.instance, programme.rows), Control()) for _ in range(2))
    every = np.arange(len(programme.options))
    late.count(True)
    assert late.solve()
    assert late.objective == pytest.approx(programme.looms.size)
    late.add_columns(every)
    early.add_columns(every)
    early.count(True)
    assert late.solve()
    assert early.solve()
    assert late.objective == pytest.approx(early.objective)
    for master in (late, early):
        master.count(False)
        assert master.solve()
    assert late.objective == pytest.approx(early.objective)


def test_they_raise_the_bound(monkeypatch: pytest.MonkeyPatch) -> None:
    """On a made mill whose crews thin out late in the day; without them the linear programme is what it was."""
    programme = programme_of(problem_of(24, 4, 2, halls=2))
    *_, with_them = relax(programme, Control())
    monkeypatch.setattr("tracker.planning.search.relaxation.DAYS_UP_TO", 0)
    *_, without = relax(programme, Control())
    cost, _ = cp_sat(programme)
    assert without.whole is None
    assert without.bound + 1 < with_them.bound <= cost + 0.05
