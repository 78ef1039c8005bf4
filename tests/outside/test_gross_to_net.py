"""Published gross-to-net worked examples, reproduced to the figure."""

from datetime import UTC, date, datetime, timedelta

from tracker.domain.mill import LoomKey, Mill, Part, Receipt
from tracker.domain.plan import Booking, CostTerms, Plan, PlanStatus
from tracker.domain.windows import WindowKind
from tracker.kits.needs import needs
from tracker.kits.netting import net_periods

PERIODS = range(1, 9)


def releases(on_hand: float, gross: dict[int, float], lead_time: int, lot_size=None, receipts=None, **more):
    """Period → planned release: receipts of a period come before its needs, release = receipt − lead time."""
    flows = [[(receipts or {}).get(p, 0), -gross.get(p, 0)] for p in PERIODS]
    rows = net_periods(on_hand, flows, lot_size=lot_size, **more)
    return {p - lead_time: row.order_quantity for p, row in zip(PERIODS, rows, strict=True) if row.order_quantity}


def explode(*uses: tuple[float, dict[int, float]]) -> dict[int, float]:
    """Gross of a component: its parents' releases times the quantity in one."""
    return {p: sum(per_one * parent.get(p, 0) for per_one, parent in uses) for p in PERIODS}


def test_several_levels():
    """M1: a product structure of three levels, edu.com question 1098717 (seen).

    A = 2 B + 3 C; B = 1 F; C = 1 D + 1 E + 2 F.
    """
    a = releases(20, {1: 20, 2: 20, 6: 60, 8: 50}, 1)
    b = releases(50, explode((2, a)), 1, receipts={1: 30})
    c = releases(60, explode((3, a)), 2)
    d = releases(25, explode((1, c)), 1, lot_size=50)
    e = releases(0, explode((1, c)), 2, lot_size=100)
    f = releases(0, explode((1, b), (2, c)), 2, lot_size=100)
    assert a == {1: 20, 5: 60, 7: 50}
    assert b == {4: 80, 6: 100}
    assert c == {3: 180, 5: 150}
    assert d == {2: 200, 4: 150}
    assert e == {1: 200, 3: 200}
    assert f == {1: 400, 2: 100, 3: 300, 4: 100}


M3_GROSS = {1: 150, 4: 120, 6: 150, 7: 120}


def test_one_level_with_lots():
    """M3: lot 230, lead time 2, on hand 37, receipt 230 in week 1; inputs from scribd document 353225171 (seen),
    figures computed by the textbook rule."""
    rows = net_periods(37, [[230 if p == 1 else 0, -M3_GROSS.get(p, 0)] for p in PERIODS], lot_size=230)
    assert [row.on_hand_end for row in rows] == [117, 117, 117, 227, 227, 77, 187, 187]
    assert set(releases(37, M3_GROSS, 2, 230, {1: 230})) == {2, 5}


def test_one_level_with_safety_stock():
    """M3 with a safety stock of 80 (computed by the textbook rule)."""
    flows = [[230 if p == 1 else 0, -M3_GROSS.get(p, 0)] for p in PERIODS]
    rows = net_periods(37, flows, lot_size=230, safety_stock=80)
    assert [row.on_hand_end for row in rows] == [117, 117, 117, 227, 227, 307, 187, 187]
    assert set(releases(37, M3_GROSS, 2, 230, {1: 230}, safety_stock=80)) == {2, 4}


def booked(loom: str, start: datetime, quantity: float) -> Booking:
    end = start + timedelta(hours=4)
    key = LoomKey("Hall 1", loom)
    return Booking(key, 1, WindowKind.REPEAT, (), start, end, None, 8, 8.0, {"P": quantity}, CostTerms())


def test_one_level_through_the_needs_of_bookings():
    """M3 once more by way of bookings, days and ISO weeks: the same stock, and order-by days in the release weeks.

    Week 1 is 2027-W01. Each gross is a booking on the Wednesday of its week, the receipt is due on Monday of week 1
    (usable on Tuesday), the lead time is 14 days. The order must be in on the Tuesday, so it is placed on the Tuesday
    two weeks before: weeks 2 and 5.
    """
    monday, wednesday = datetime(2027, 1, 4, tzinfo=UTC), datetime(2027, 1, 6, 6, tzinfo=UTC)
    bookings = [booked(str(p), wednesday + timedelta(weeks=p - 1), gross) for p, gross in M3_GROSS.items()]
    plan = Plan(PlanStatus.OPTIMAL, 0, 0, 0, "EUR", monday, monday + timedelta(weeks=8), tuple(bookings))
    part = Part("P", on_hand=37, lot_size=230, lead_time_days=14)
    rows = needs(plan, Mill(parts={"P": part}, receipts=(Receipt("1", "P", 230, date(2027, 1, 4)),)), monday)
    assert [row.on_hand_end for row in rows] == [117, 117, 117, 227, 227, 77, 187]
    assert {row.week: row.order_by for row in rows if row.order_quantity} == {
        "2027-W04": date(2027, 1, 12),
        "2027-W07": date(2027, 2, 2),
    }
