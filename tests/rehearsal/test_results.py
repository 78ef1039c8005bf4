"""What is read out of many runs, worked out by hand on a few."""

from math import inf, sqrt

import pytest
from test_played_by_hand import booked
from two_looms import ONE, TWO

from tracker.rehearsal.results import difference, interval, of_policy, risks, when_done, worries
from tracker.rehearsal.runs import TERMS, Outcome, PlayedBooking, quantile
from tracker.rehearsal.sources import Source


def run(number: int, cost: float = 0.0, ends: tuple[int, ...] = (), looms: tuple[PlayedBooking, ...] = ()) -> Outcome:
    return Outcome(number, (cost, *[0.0] * (len(TERMS) - 1)), 0.0, 0.0, ends, looms, 0.0, 0.0)


def test_quantiles_are_values_that_were_met() -> None:
    """Of ten runs, P10 is the first, P50 the fifth, P80 the eighth: in eight of ten it was no more."""
    values = [float(i) for i in range(10, 0, -1)]
    assert [quantile(values, share) for share in (0.1, 0.5, 0.8, 0.9)] == [1, 5, 8, 9]
    assert quantile([3.0], 0.1) == quantile([3.0], 0.9) == 3.0


def test_the_interval_of_a_mean_is_students() -> None:
    """1, 2, 3: mean 2, standard deviation 1; t for 2 degrees of freedom is 4.3027 (any table), over √3."""
    found = interval([1.0, 2.0, 3.0])
    assert (found.mean, found.high - found.mean) == (2.0, pytest.approx(4.3027 / sqrt(3), abs=1e-4))


def test_a_difference_pairs_runs_of_one_number() -> None:
    """Runs 1 and 2 are in both: 110 − 100 and 230 − 200, mean 20; run 3 has no partner."""
    found = difference([run(1, 110), run(2, 230), run(3, 999)], [run(2, 200), run(1, 100)])
    assert found
    assert (found.cost.mean, found.runs) == (20.0, 2)
    assert not found.cost.is_sure
    # standard deviation √200 = 14.14: (1.96 × 14.14 / 20)² = 1.92, so 2 runs would do where their spread were known
    assert found.more_runs == 1
    assert difference([run(1)], [run(2)]) is None


def test_a_finish_that_never_comes_is_told_as_such() -> None:
    """Two looms to do; both done in slots 10, 12, 14 of three runs, only one in the fourth: P50 12, P80 never."""
    runs = [run(1, ends=(4, 10)), run(2, ends=(5, 12)), run(3, ends=(6, 14)), run(4, ends=(7,))]
    found = of_policy("kept", runs, 2)
    assert (found.all_done.p50, found.all_done.p80) == (12, inf)
    assert (found.finish.p50, found.finish.p80) == (10, 14)
    assert found.most_done == 1
    assert when_done(runs, 1).p80 == 7


def test_a_booking_says_what_breaks_it() -> None:
    """Loom 1: on time, 48 slots late (still within a day), 49 late for its parts, lost for its parts, 60 late for its crew: 2 of
    5 on time, 1 of 5 lost, parts in 2 of the 3 that broke. Loom 2 is always on time."""
    went = [
        PlayedBooking(0, ""),
        PlayedBooking(48, "crew-busy"),
        PlayedBooking(49, "parts"),
        PlayedBooking(None, "parts"),
        PlayedBooking(60, "crew-busy"),
    ]
    runs = [run(i, looms=(each, PlayedBooking(0, ""))) for i, each in enumerate(went)]
    one, two = risks([booked(ONE, 1, 8), booked(TWO, 1, 10)], runs)
    assert (one.on_time, one.lost, one.cause, one.of_cause) == (0.4, 0.2, "parts", pytest.approx(2 / 3))
    assert (two.on_time, two.lost, two.cause) == (1.0, 0.0, "")


def test_the_dearest_worry_comes_first() -> None:
    runs = [run(1, 100), run(2, 120)]
    found = worries(
        runs, {(Source.WORK, None): [run(1, 95), run(2, 112)], (Source.PEOPLE, "A"): [run(1, 70), run(2, 80)]}
    )
    told = [(worry.source, worry.crew, worry.worth.cost.mean) for worry in found]
    assert told == [(Source.PEOPLE, "A", 35.0), (Source.WORK, None, 6.5)]
