"""Parts that can still be ordered. Monday 4 January 2027 is today; by the terms an order is placed the day after."""

from dataclasses import replace
from datetime import date, datetime
from typing import Any

import pytest
from said import texts
from two_looms import LOOMS, ONE, TWO, at, problem, window
from worded import verify

from tracker.domain.mill import Closure, Part, Receipt
from tracker.domain.plan import Plan
from tracker.planning.baseline.walk import baseline
from tracker.planning.planner import plan
from tracker.words import ENGLISH

EMPTY: dict[str, Any] = {"receipts": (), "soak_days": 0, "left_over_penalty": 500.0}


def made(**changes: Any) -> Plan:
    asked = problem(**(EMPTY | changes))
    found = plan(asked, gap=0.0)
    assert verify(found, asked) == ()
    return found


def rail(lead_time_days: float | None = None, on_hand: float = 0.0) -> dict[str, Part]:
    return {"RAIL": Part("RAIL", on_hand, price=100.0, lead_time_days=lead_time_days)}


def starts(found: Plan) -> list[datetime]:
    return [booking.start for booking in found.bookings]


def windows(day: int) -> dict:
    """Loom 1's beam is out at 8 on that day, loom 2's never."""
    return {ONE: (window(ONE, at(day, 8)),), TWO: ()}


def test_a_part_can_be_used_the_working_day_after_an_order_of_tomorrow_comes() -> None:
    """Placed on Tue 5 Jan, 7 days: it comes on Tue 12 Jan and can be used on Wed 13 Jan, day 9."""
    assert starts(made(windows=windows(9), parts=rail(7))) == [at(9, 8)]
    # A beam that is out on Monday waits until then at the latest 32 working slots (16 h = 2 days): too soon.
    left = made(windows=windows(4), parts=rail(7))
    assert starts(left) == []
    assert next(ENGLISH.line(item.why) for item in left.left_over if item.key == ONE) == (
        "no kit before the horizon: part RAIL, 1 needed and 0 to be had before Wed 13 Jan 2027 06:00, when an order "
        "placed now could be used"
    )


@pytest.mark.parametrize(
    ("changes", "day"),
    [
        ({"days_to_order": 0}, 8),  # placed on Mon 4, comes Mon 11, used on Tue 12 Jan
        ({"days_to_order": 4}, 14),  # placed on Fri 8, comes Fri 15, used on Mon 18 Jan
        ({"days_to_order": 5}, 15),  # Sat 9 is no working day: placed on Mon 11, comes Mon 18, used on Tue 19 Jan
        ({"closures": (Closure(date(2027, 1, 12)),)}, 10),  # comes on Wed 13, since Tue 12 is closed
    ],
)
def test_orders_are_placed_come_and_are_used_on_working_days(changes: dict[str, Any], day: int) -> None:
    standing = [window(ONE, at(d, 8), number=d) for d in range(1, 18) if d % 7 < 5]
    found = made(windows={ONE: tuple(standing), TWO: ()}, parts=rail(7), **changes)
    assert [start.date() for start in starts(found)] == [at(day, 8).date()]


def test_a_part_without_a_lead_time_takes_that_of_the_term() -> None:
    """28 days by default: past the horizon of two weeks. With 3 days: placed Tue 5, comes Fri 8, used Mon 11 Jan."""
    assert starts(made(windows=windows(7), parts=rail(), horizon_days=14)) == []
    found = made(windows=windows(7), parts=rail(), lead_time_none_given_days=3)
    assert starts(found) == [at(7, 8)]
    assert "No lead time is given for part RAIL: 3 days are taken (term 'lead time where none is given')." in texts(
        found.reasons
    )


def test_what_cannot_be_ordered_is_said() -> None:
    found = made(windows=windows(20), parts=rail(), lead_time_none_given_days=0)
    assert starts(found) == []
    assert any("they cannot be ordered" in reason for reason in texts(found.reasons))


def test_a_mill_may_plan_with_stock_and_open_orders_alone() -> None:
    assert starts(made(windows=windows(20), parts=rail(7), plan_with_orders=False)) == []


def test_a_firm_booking_needs_its_kit_on_hand_or_on_order() -> None:
    """Without a lead time it would come on Tue 5 and be used on Wed 6 Jan; but 72 running hours reach up to the midnight
    before Thursday 7, so that a beam-out of Thursday 8:00 is the first that may rely on it."""
    assert starts(made(windows=windows(2), parts=rail(0), days_to_order=0)) == [at(4, 6)]
    assert starts(made(windows=windows(4), parts=rail(0), days_to_order=0)) == [at(4, 8)]


def test_stock_goes_to_who_saves_most_until_orders_come() -> None:
    """One rail: loom 1 on Tue 5 takes it, loom 2 of Thu 14 waits for an order that can be used on Wed 13 Jan."""
    found = made(parts=rail(7, on_hand=1.0))
    assert starts(found) == [at(1, 8), at(10, 10)]
    assert starts(made(parts=rail(9, on_hand=1.0))) == [at(1, 8), at(11, 6)]  # comes Thu 14, used on Fri 15 Jan


def test_a_receipt_past_its_date_counts_like_an_order_placed_now() -> None:
    """Due on Sat 2 Jan: as if ordered today it comes on Mon 11 and is used on Tue 12 Jan, not on Mon 11."""
    late = (Receipt("4500-10", "RAIL", 1.0, date(2027, 1, 2)),)
    stock_only = {"receipts": late, "parts": rail(7), "plan_with_orders": False}
    assert starts(made(windows=windows(1), **stock_only)) == []
    found = made(windows=windows(8), **stock_only)
    assert starts(found) == [at(8, 8)]
    assert texts(found.reasons) == (
        "Order 4500-10: 1 of RAIL were due on Sat 2 Jan 2027 and have not come; they count like an order placed today, due on "
        "Mon 11 Jan 2027. Receive them, or give the receipt its new date.",
    )


def test_the_walk_without_a_plan_may_order_too() -> None:
    asked = problem(windows=windows(9), **(EMPTY | {"parts": rail(7)}))
    walked = baseline(asked, [8.0])
    assert [b.start for b in walked.bookings] == [at(9, 8)]
    assert verify(walked, asked) == ()
    stock_only = problem(windows=windows(9), **(EMPTY | {"parts": rail(7), "plan_with_orders": False}))
    assert baseline(stock_only, [8.0]).bookings == ()


def test_the_check_finds_a_booking_that_no_order_can_reach() -> None:
    asked = problem(windows=windows(9), **(EMPTY | {"parts": rail(7)}))
    slower = replace(asked, mill=replace(asked.mill, parts=rail(8)))
    assert "part RAIL: 1 needed by Wed 13 Jan 2027, 0 usable" in verify(plan(asked), slower)
    assert LOOMS  # both looms are planned
