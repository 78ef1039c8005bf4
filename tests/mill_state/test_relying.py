"""Which bookings could not have their kits without an order line."""

from datetime import UTC, date, datetime, timedelta

import pytest

from tracker.domain.mill import LoomKey, Mill, Part, Receipt
from tracker.domain.plan import Booking, CostTerms, Plan, PlanStatus
from tracker.domain.since import EnteredSince
from tracker.domain.stock import Movement, MovementKind
from tracker.domain.windows import WindowKind
from tracker.mill_state.relying import relying_on

AT = datetime(2027, 1, 4, 6, tzinfo=UTC)


def booking(loom: str, day: int, rails: float = 1.0) -> Booking:
    start = AT + timedelta(days=day)
    return Booking(LoomKey("H", loom), 1, WindowKind.REPEAT, (), start, start, None, 1, 1, {"RAIL": rails}, CostTerms())


BOOKINGS = (booking("1", 1), booking("2", 2), booking("none", 3, 0.0), booking("3", 9), booking("4", 15))
PLAN = Plan(PlanStatus.OPTIMAL, 0, 0, 0, "EUR", AT, AT + timedelta(days=40), BOOKINGS)
FIRST, SECOND = Receipt("PO-1", "RAIL", 1, date(2027, 1, 12)), Receipt("PO-2", "RAIL", 2, date(2027, 1, 18))
PROMISED = {("PO-1", "RAIL"): FIRST.due, ("PO-2", "RAIL"): SECOND.due}


@pytest.mark.parametrize(
    ("on_hand", "movements", "receipts", "order", "looms"),
    [
        # two rails for looms 1 and 2, loom 3 on the 13th needs the line of the 12th; loom 4 on the 19th has that of the 18th
        (2, (), (FIRST, SECOND), "PO-1", {"3"}),
        (2, (), (FIRST, SECOND), "PO-2", {"4"}),
        (3, (), (FIRST, SECOND), "PO-1", set()),
        # the same once looms 1 and 2 have had theirs, and the first line came on the 26th
        (1, ((-1, "ISSUE", None), (-1, "ISSUE", None), (1, "RECEIPT", "PO-1")), (SECOND,), "PO-1", {"3"}),
        # the safety stock is nobody's
        (3, (), (FIRST, SECOND), "safe", {"3"}),
    ],
)
def test_who_relies_on_a_line(on_hand, movements, receipts, order, looms):
    since = EnteredSince(
        movements=tuple(
            Movement("RAIL", MovementKind[kind], quantity, AT, "me", order=of) for quantity, kind, of in movements
        ),
        promised=PROMISED,
    )
    safe = 1.0 if order == "safe" else 0.0
    mill = Mill(parts={"RAIL": Part("RAIL", on_hand, safety_stock=safe)}, receipts=receipts)
    found = relying_on(mill, since, PLAN, "PO-1" if safe else order, "RAIL")
    assert {key.loom for key in found} == looms
