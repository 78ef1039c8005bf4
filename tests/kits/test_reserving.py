"""What becomes of reservations when the stock of a part changes, worked out by hand and by invariants."""

from hypothesis import given
from hypothesis import strategies as st
from kit_samples import key

from tracker.domain.mill import Part
from tracker.kits.reserving import settle

A, B, C = key("A"), key("B"), key("C")


def test_where_stock_is_gone_the_latest_booked_gives_way():
    # 5 reserved, 3 on hand: C is booked last and gives up 2.
    assert settle(Part("RAIL", 3), {A: 1, B: 2, C: 2}, {A: 1, B: 2, C: 2}) == {A: 1, B: 2}


def test_a_loom_without_a_booking_gives_way_first():
    assert settle(Part("RAIL", 1), {A: 1, C: 1}, {C: 1}) == {C: 1}


def test_new_stock_goes_to_the_earliest_booked_that_lacks_it():
    # 4 on hand, 1 safety stock, 1 reserved for B: 2 free. A takes 1, B its second, C gets none.
    assert settle(Part("RAIL", 4, safety_stock=1), {B: 1}, {A: 1, B: 2, C: 1}) == {A: 1, B: 2}


def test_a_reservation_out_of_the_safety_stock_stays():
    assert settle(Part("RAIL", 1, safety_stock=1), {A: 1}, {A: 1, B: 1}) == {A: 1}


quantity = st.integers(0, 9).map(float)


@given(quantity, quantity, st.dictionaries(st.sampled_from([A, B, C]), quantity), st.permutations([A, B, C]), quantity)
def test_never_more_reserved_than_on_hand_and_nobody_earlier_loses_to_a_later(on_hand, safety, reserved, order, each):
    needed = dict.fromkeys(order, each)
    settled = settle(Part("P", on_hand, safety_stock=safety), reserved, needed)
    assert sum(settled.values()) <= on_hand
    assert all(quantity > 0 for quantity in settled.values())
    lost = [key for key in order if settled.get(key, 0) < reserved.get(key, 0)]
    if lost:  # whoever is booked after a loser has nothing left, or nothing was free
        after = order[order.index(lost[0]) + 1 :]
        assert all(settled.get(key, 0) == 0 for key in after)
    if sum(reserved.values()) <= on_hand:
        assert not lost
