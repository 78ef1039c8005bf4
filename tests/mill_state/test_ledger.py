"""The stockroom's book in memory: sums worked out by hand. That it gives what the kept book gives is held by
`tests/services/test_stock_invariants.py`."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest
from refusals import refused

from tracker.domain.mill import LoomKey, Mill, Part, Receipt
from tracker.domain.plan import Booking, CostTerms, Plan, PlanStatus
from tracker.domain.stock import Movement, MovementKind, Reservation
from tracker.domain.windows import WindowKind
from tracker.errors import DataError
from tracker.mill_state.ledger import InMemory
from tracker.mill_state.stockroom import Stockroom

AT = datetime(2026, 1, 5, 5, tzinfo=UTC)
FIRST, SECOND = LoomKey("Hall 1", "1"), LoomKey("Hall 1", "2")
LINE = Receipt("PO-1", "RAIL", 2.0, date(2026, 1, 8))


def booked(key: LoomKey, week: int) -> Booking:
    start = AT + timedelta(weeks=week)
    return Booking(key, 1, start=start, end=start + timedelta(hours=4), beam_out_p50=None, slots=8, labour_h=8,
                   parts={"RAIL": 1.0, "CABLE": 2.5}, kind=WindowKind.REPEAT, choices=(), cost=CostTerms())  # fmt: skip


def stockroom() -> Stockroom:
    """One rail and 10 m of cable, 4 of them safety stock; two kits that need a rail and 2.5 m each."""
    parts = {"RAIL": Part("RAIL", 1.0, unit="pc"), "CABLE": Part("CABLE", 10.0, unit="m", safety_stock=4.0)}
    plan = Plan(
        PlanStatus.OPTIMAL, 0, 0, 0, "EUR", AT, AT + timedelta(weeks=8), (booked(FIRST, 1), booked(SECOND, 2)), ()
    )
    return Stockroom(replace(Mill(), parts=parts, receipts=(LINE,)), plan, (), (), at=AT)


def moved(part: str, kind: MovementKind, quantity: float, key: LoomKey | None = None) -> Movement:
    return Movement(part, kind, quantity, AT, "store", key=key)


def held(book: InMemory) -> dict[tuple[str, str], float]:
    return {(r.key.loom, r.part): r.quantity for r in book.room.reservations}


def test_stock_goes_to_the_earlier_kit_and_safety_stock_to_none():
    book = InMemory(stockroom())
    book.settle(["RAIL", "CABLE"])
    # one rail: loom 1; usable cable 10 - 4 = 6: 2.5 + 2.5, 1 m stays free
    assert held(book) == {("1", "RAIL"): 1.0, ("1", "CABLE"): 2.5, ("2", "CABLE"): 2.5}


def test_a_receipt_is_shared_out_and_its_line_stays_open_for_the_rest():
    book = InMemory(stockroom())
    book.add([moved("RAIL", MovementKind.RECEIPT, 1.0)])
    book.leave_open(LINE, 1.0)
    assert book.settle(["RAIL"]) == {(FIRST, "RAIL"): 1.0, (SECOND, "RAIL"): 1.0}
    assert book.room.mill.parts["RAIL"].on_hand == 2.0
    assert [(r.order, r.quantity) for r in book.room.mill.receipts] == [("PO-1", 1.0)]
    book.leave_open(book.room.mill.receipts[0], 0.0)
    assert book.room.mill.receipts == ()


def test_what_was_issued_is_needed_no_more():
    book = InMemory(stockroom())
    book.settle(["RAIL", "CABLE"])
    book.hold({(FIRST, "RAIL"): 0.0})
    book.add([moved("RAIL", MovementKind.ISSUE, -1.0, FIRST)])
    assert book.room.mill.parts["RAIL"].on_hand == 0.0
    assert book.room.short(FIRST) == {} and book.room.short(SECOND) == {"RAIL": 1.0}


def test_the_room_that_it_was_made_from_stays():
    room = stockroom()
    book = InMemory(room)
    book.add([moved("CABLE", MovementKind.ISSUE, -0.1, FIRST), moved("CABLE", MovementKind.ISSUE, -0.2, FIRST)])
    assert room.mill.parts["CABLE"].on_hand == 10.0 and room.movements == ()
    assert book.room.mill.parts["CABLE"].on_hand == 9.7  # exactly: no dust of binary fractions


@pytest.mark.parametrize("movement", [
    moved("RAIL", MovementKind.ISSUE, -2.0, FIRST),  # one on hand
    moved("RAIL", MovementKind.RETURN, 1.0, FIRST),  # loom 1 holds none
    moved("NUT", MovementKind.RECEIPT, 1.0),  # no such part
])  # fmt: skip
def test_what_no_stockroom_can_do_is_refused(movement):
    book = InMemory(stockroom())
    with refused(DataError, movement.part):
        book.add([movement])
    assert book.room.movements == ()


def test_more_is_not_held_than_changes():
    book = InMemory(replace(stockroom(), reservations=(Reservation(FIRST, "RAIL", 1.0),)))
    assert book.hold({(FIRST, "RAIL"): 1.0, (SECOND, "RAIL"): 0.0}) == {}
