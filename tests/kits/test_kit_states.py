"""Kit states and reservations, worked out by hand."""

from datetime import UTC, date, datetime

from kit_samples import booking, key, mill, plan

from tracker.domain.mill import Part, Receipt
from tracker.domain.stock import Movement, MovementKind, Reservation
from tracker.kits.reserving import reserve
from tracker.kits.state import issued_to, kit_states

AT = datetime(2027, 1, 4, 8, tzinfo=UTC)


def issue(loom, part, quantity):
    return Movement(part, MovementKind.ISSUE, -quantity, AT, "store", key=key(loom))


def give_back(loom, part, quantity):
    return Movement(part, MovementKind.RETURN, quantity, AT, "store", key=key(loom))


def test_reservations_go_by_booking_date_and_leave_the_safety_stock():
    # 4 on hand, 1 of it safety stock: 3 usable. Loom 2 starts first and takes its 2; loom 10 gets the 1 that is left.
    made = plan(booking("10", date(2027, 1, 12), RAIL=2), booking("2", date(2027, 1, 11), RAIL=2))
    reserved = reserve(made, mill(Part("RAIL", 4, safety_stock=1)), [])
    assert reserved == (Reservation(key("2"), "RAIL", 2), Reservation(key("10"), "RAIL", 1))


def test_what_was_issued_is_not_reserved_again():
    # 5 were there, 2 issued to loom 1: 3 on hand; loom 1 needs 1 more, loom 2 gets its 2.
    made = plan(booking("1", date(2027, 1, 11), RAIL=3), booking("2", date(2027, 1, 12), RAIL=2))
    reserved = reserve(made, mill(Part("RAIL", 3)), [issue("1", "RAIL", 2)])
    assert reserved == (Reservation(key("1"), "RAIL", 1), Reservation(key("2"), "RAIL", 2))


def test_issues_less_returns():
    movements = [issue("1", "RAIL", 2), issue("1", "NUT", 4), give_back("1", "RAIL", 1), give_back("1", "NUT", 4)]
    assert issued_to(movements) == {key("1"): {"RAIL": 1}}


def test_the_states_of_kits():
    """Loom 1 all issued; loom 2 all reserved or issued; loom 3 lacks a rail that comes on Fri 15 Jan, a working day
    before its Monday; loom 4 lacks one too, but the receipt is gone to loom 3."""
    made = plan(
        booking("1", date(2027, 1, 11), RAIL=1),
        booking("2", date(2027, 1, 12), RAIL=1, NUT=4),
        booking("3", date(2027, 1, 18), RAIL=1),
        booking("4", date(2027, 1, 18), RAIL=1),
    )
    hall = mill(Part("RAIL", 1), Part("NUT", 0), receipts=(Receipt("1", "RAIL", 1, date(2027, 1, 15)),))
    movements = [issue("1", "RAIL", 1), issue("2", "NUT", 4)]
    states = kit_states(made, hall, [Reservation(key("2"), "RAIL", 1)], movements)
    assert [(s.key.loom, s.state, s.complete) for s in states] == [
        ("1", "issued", True),
        ("2", "complete", True),
        ("3", "reserved", False),
        ("4", "short", False),
    ]
    assert (states[2].short, states[2].expected) == ({"RAIL": 1}, {"RAIL": date(2027, 1, 15)})
    assert (states[3].short, states[3].expected) == ({"RAIL": 1}, {})


def test_a_receipt_due_on_the_day_of_the_start_is_not_in_time():
    hall = mill(Part("RAIL", 0), receipts=(Receipt("1", "RAIL", 1, date(2027, 1, 18)),))
    (state,) = kit_states(plan(booking("3", date(2027, 1, 18), RAIL=1)), hall, [], [])
    assert state.state == "short"


def test_two_receipts_may_cover_one_kit_and_the_later_is_the_date_expected():
    receipts = tuple(Receipt(str(d), "RAIL", 1, date(2027, 1, d)) for d in (14, 12))
    (state,) = kit_states(
        plan(booking("3", date(2027, 1, 18), RAIL=2)), mill(Part("RAIL", 0), receipts=receipts), [], []
    )
    assert state.expected == {"RAIL": date(2027, 1, 14)}
