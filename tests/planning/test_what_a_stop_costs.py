"""Lost production of a stop, worked out by hand: a conversion of two hours at a contribution of 5 an hour."""

from dataclasses import replace
from datetime import datetime
from typing import Any

import pytest
from two_looms import CONTENTS, ONE, at, problem, still, window

from tracker.domain.mill import Loom, LoomKey
from tracker.domain.plan import Plan
from tracker.domain.windows import Window, WindowKind
from tracker.planning.planner import plan
from tracker.planning.verify import verify


def lost(of: Window, **changes: Any) -> tuple[datetime, float]:
    """Start and lost production of loom 1's booking in this window."""
    asked = problem({ONE: (of,)}, soak_days=0, **changes)
    found: Plan = plan(asked, gap=0.0)
    assert verify(found, asked) == ()
    (booking,) = found.bookings
    return booking.start, booking.cost.lost_production


@pytest.mark.parametrize(
    ("stands_until", "expected"),
    [
        (at(2, 12), 0.0),  # converted from 9 to 11, while it stands
        (at(2, 11), 0.0),
        (at(2, 10), 5.0),  # its second hour lies beyond the span
        (at(2, 9.5), 7.5),
    ],
)
def test_while_a_span_lasts_its_loom_stands_anyway(stands_until: datetime, expected: float) -> None:
    assert lost(still(ONE, WindowKind.STANDING, at(2, 9), stands_until, 1)) == (at(2, 9), pytest.approx(expected))


@pytest.mark.parametrize(
    ("meanwhile_h", "expected"),
    [
        (0.0, 10.0),
        (0.5, 7.5),  # half an hour of the change is done while the loom is converted
        (3.0, 0.0),  # never more than the conversion
    ],
)
def test_what_others_do_meanwhile_costs_no_production(meanwhile_h: float, expected: float) -> None:
    found = lost(replace(window(ONE, at(1, 8)), meanwhile_h=meanwhile_h))
    assert found == (at(1, 8), pytest.approx(expected))


def test_what_the_looms_beside_it_lose_while_they_stand_for_it():
    # three looms in one row; of the conversion's two hours the first stops those beside it. Loom 1 stands in the middle: 4
    # earns 8 an hour, 5 has unsold capacity
    four, five = LoomKey("Hall 1", "4"), LoomKey("Hall 1", "5")
    looms = {
        key: Loom(key.hall, key.loom, "AJ", saving_per_day=24.0, row="3", place=place, capacity_unsold=key == five)
        for key, place in ((ONE, "10"), (four, "9"), (five, "11"))
    }
    stops = {
        kind: tuple(replace(c, steps=(replace(c.steps[0], stops_neighbours=True), c.steps[1])) for c in of)
        for kind, of in CONTENTS.items()
    }

    def earns(key: LoomKey, contribution: float) -> Window:
        weaves = still(key, WindowKind.MID_WARP, at(0, 0), at(20, 0), 0)
        return replace(weaves, contribution_per_h=contribution)

    windows = {ONE: (window(ONE, at(1, 8)),), four: (earns(four, 8.0),), five: (earns(five, 90.0),)}
    asked = problem(windows, soak_days=0, looms=looms, contents={ONE: stops})
    assert asked.beside == {ONE: (four, five), four: (ONE,), five: (ONE,)}
    found = plan(asked, gap=0.0)
    assert verify(found, asked) == ()
    # its own two hours at 5, an hour of loom 4
    assert [(b.key, b.cost.lost_production) for b in found.bookings] == [(ONE, pytest.approx(18.0))]
    apart = problem(windows, soak_days=0, looms=looms | {ONE: replace(looms[ONE], row="4")}, contents={ONE: stops})
    assert [b.cost.lost_production for b in plan(apart, gap=0.0).bookings] == [pytest.approx(10.0)]
