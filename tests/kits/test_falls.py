"""Which bookings fall, worked out by hand."""

from datetime import date

import pytest
from kit_samples import booking, key, mill, plan
from refusals import refused

from tracker.domain.mill import Part, Receipt
from tracker.domain.needs import Scrap, ShortDelivery, Slip
from tracker.errors import DataError
from tracker.kits.falls import changed_mill, fallen

MADE = plan(
    booking("1", date(2027, 1, 11), RAIL=1, NUT=4),
    booking("2", date(2027, 1, 18), RAIL=1, NUT=4),
    booking("3", date(2027, 1, 19), NUT=4),
)
HALL = mill(Part("RAIL", 1), Part("NUT", 12), receipts=(Receipt("PO-1", "RAIL", 1, date(2027, 1, 15)),))


def falls(*changes, **more):
    return fallen(MADE, changed_mill(HALL, changes), **more)


def test_nothing_falls_while_all_comes_as_it_should():
    assert falls() == ()


def test_a_receipt_that_slips_two_weeks():
    # Due Fri 29 Jan, usable on Mon 1 Feb: loom 2 of 18 Jan falls; loom 3 needs no rail and stays.
    (fall,) = falls(Slip("PO-1", 14))
    assert (fall.key, fall.lacks, fall.usable_on) == (key("2"), {"RAIL": 1}, date(2027, 2, 1))


def test_a_receipt_on_the_day_of_the_start_is_too_late():
    assert [fall.key for fall in falls(Slip("PO-1", 3))] == [key("2")]  # Mon 18 Jan


def test_a_short_delivery_never_makes_the_kit_whole():
    (fall,) = falls(ShortDelivery("PO-1", 0))
    assert (fall.key, fall.usable_on) == (key("2"), None)


def test_a_scrapped_part_hits_the_earliest_booking_and_leaves_its_parts_to_the_next():
    # The rail of loom 1 is gone. Loom 1 falls and takes no nuts; on 18 Jan the receipt is there for loom 2. Of 12 nuts
    # 5 more are scrapped: 7 left, 4 for loom 2, 3 for loom 3, which lacks 1.
    first, second = falls(Scrap("RAIL", 1), Scrap("NUT", 5))
    assert (first.key, first.lacks, first.usable_on) == (key("1"), {"RAIL": 1}, date(2027, 1, 18))
    assert (second.key, second.lacks, second.usable_on) == (key("3"), {"NUT": 1}, None)


def test_what_is_issued_needs_no_stock():
    assert falls(Scrap("RAIL", 1), issued={key("1"): {"RAIL": 1}}) == ()


def test_what_is_held_for_a_loom_in_work_is_not_to_be_had():
    assert [fall.key for fall in falls(held={key("9"): {"RAIL": 1}})] == [key("1")]


def test_safety_stock_is_not_usable():
    hall = mill(Part("RAIL", 1, safety_stock=1))
    assert [f.lacks for f in fallen(plan(booking("1", date(2027, 1, 11), RAIL=1)), hall)] == [{"RAIL": 1}]


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (Slip("PO-9", 14), "no open order line PO-9; open are PO-1"),
        (ShortDelivery("PO-1", 2), "order line PO-1: 2 is no short delivery of 1"),
        (ShortDelivery("PO-1", -1), "order line PO-1: -1 is no short delivery of 1"),
        (Scrap("BOLT", 1), "unknown part BOLT"),
        (Scrap("RAIL", 2), "part RAIL: 2 cannot be scrapped, 1 on hand"),
    ],
)
def test_changes_that_cannot_be(change, says):
    with refused(DataError, says):
        falls(change)
