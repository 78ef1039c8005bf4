"""Orders placed and expected. The sample's stock and kits are in `stock_room_samples`: 2 rails on hand, held for looms 1 and 2;
loom 10 of 26 January lacks one and 4 of its 8 nuts; 4 rails (PO-1) are due on 21 January. It is Mon 5 Jan 2026, 06:00."""

from datetime import date

import pytest
from opened import here
from refusals import refused
from said import lines
from stock_room_samples import AT, fill

from tracker.errors import DataError, UsageError
from tracker.services.parts.ledger import ledger
from tracker.services.parts.needs import net_needs
from tracker.services.parts.ordering import Ordered, expect, line_field, place
from tracker.services.parts.stock import receive


@pytest.fixture
def db(tmp_path):
    return here(fill(str(tmp_path / "mill.db")), clock=lambda: AT)


def proposed(db):
    return [(line.part, line.quantity) for line in net_needs(db, AT, left_over=False).orders]


def test_an_order_is_placed_put_off_comes_in_part_and_ends(db):
    # 24 nuts are needed, 20 there; 10 m of cable less 4 m safety stock cover 5 m; 3 rails are needed, 2 there and 4 on order
    assert proposed(db) == [("NUT", 4)]
    done = place(db, [Ordered("70-10", "NUT", 4, date(2026, 1, 20))])
    assert lines(done) == [
        "Order 70-10: 4 pc of NUT expected on Tue 20 Jan 2026.",
        "The kit of loom 10 (Hall 1) is reserved now.",
    ]
    assert proposed(db) == []
    put_off = expect(db, "70-10", due=date(2026, 1, 28), why="the supplier wrote")
    assert lines(put_off) == [
        "Order 70-10: 4 pc of NUT expected on Wed 28 Jan 2026.",
        "The kit of loom 10 (Hall 1) is short now.",
    ]
    receive(db, quantity=3, order="70-10")
    ended = expect(db, "70-10", quantity=0)
    assert lines(ended) == ["Order 70-10: no more of NUT is expected."]
    assert ended.record()["closed"][0]["quantity"] == 1
    assert [(one.movement.order, one.movement.quantity) for one in ledger(db, "NUT").lines[1:]] == [("70-10", 3)]
    with db.reading() as uow:
        assert [line.order for line in uow.mill().receipts] == ["PO-1"]


def test_several_lines_are_entered_all_or_none(db):
    day = date(2026, 1, 20)
    with refused(DataError, "unknown part BOLT"):
        place(db, [Ordered("70-10", "NUT", 4, day), Ordered("70-20", "BOLT", 1, day)])
    with refused(
        DataError, "there is an order line 70-10 already; give each line a number of its own, such as 70-10-2"
    ) as second:
        place(db, [Ordered("70-10", "NUT", 4, day), Ordered("70-10", "RAIL", 1, day)])
    assert second.value.message.params["field"] == line_field(1)
    with db.reading() as uow:
        assert [line.order for line in uow.mill().receipts] == ["PO-1"]
    place(db, [Ordered("70-10", "NUT", 4, day), Ordered("70-20", "RAIL", 1, day, "C Works")])
    with db.reading() as uow:
        # the supplier of a part where none is told
        assert {line.order: line.supplier for line in uow.mill().receipts} == {
            "PO-1": None, "70-10": "B Works", "70-20": "C Works"}  # fmt: skip


@pytest.mark.parametrize(("order", "part", "quantity", "day", "says"), [
    (" ", "NUT", 4, "2026-01-20", "the order line of part NUT has no number"),
    ("PO-1", "NUT", 4, "2026-01-20", "there is an order line PO-1 already"),
    ("70", "NUT", 0, "2026-01-20", "part NUT: 0 cannot be on order; give a quantity above 0"),
    ("70", "NUT", 2.5, "2026-01-20", "part NUT: 2.5 is no whole number of pc"),
    ("70", "NUT", 4, "2026-01-04", "order line 70: Sun 4 Jan 2026 is past, today is Mon 5 Jan 2026"),
    ("70", "NUT", 4, "2101-01-04", "2101-01-04"),
])  # fmt: skip
def test_what_cannot_be_on_order_is_refused(db, order, part, quantity, day, says):
    with refused((DataError, UsageError), says):
        place(db, [Ordered(order, part, quantity, date.fromisoformat(day))])


def test_a_number_whose_line_has_come_is_not_given_again(db):
    receive(db, order="PO-1")
    with refused(DataError, "there is an order line PO-1 already"):
        place(db, [Ordered("PO-1", "RAIL", 4, date(2026, 1, 20))])


def test_what_is_expected_anew_needs_an_open_line_and_something_new(db):
    with refused(UsageError, "say what changed"):
        expect(db, "PO-1")
    with refused(DataError, "no open order line PO-9; open are PO-1"):
        expect(db, "PO-9", quantity=2)
    with refused(UsageError, "part RAIL: -1 cannot be on order"):
        expect(db, "PO-1", quantity=-1)
