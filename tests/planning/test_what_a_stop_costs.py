"""Lost production of a stop, worked out by hand: a conversion of two hours at a contribution of 5 an hour."""

from dataclasses import replace
from datetime import datetime
from typing import Any

import pytest
from two_looms import ONE, at, problem, still, window

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
