"""Gross to net, one item. Expected figures are worked out by hand in the comments."""

import pytest

from tracker.kits.netting import lots, net_periods


@pytest.mark.parametrize(
    ("net", "lot_size", "minimum_order", "ordered"),
    [
        (3, None, None, 3),
        (3, 4, None, 4),
        (8, 4, None, 8),
        (9, 4, None, 12),
        (3, None, 10, 10),
        (3, 4, 10, 12),  # at least 10, in fours: 12
        (0.3, 0.1, None, 0.3),  # 0.3 / 0.1 is 2.9999999999999996 in binary: three lots, not four
    ],
)
def test_lots_are_whole_and_reach_the_minimum_order(net, lot_size, minimum_order, ordered):
    assert lots(net, lot_size, minimum_order) == pytest.approx(ordered)


def test_a_receipt_after_the_need_of_the_same_period_does_not_cover_it():
    # 2 on hand, need 3, then a receipt of 5: one lacks at the need; at the end 2 + 1 − 3 + 5 = 5.
    (row,) = net_periods(2, [[-3, 5]])
    assert (row.gross, row.receipts, row.net, row.order_quantity, row.on_hand_end, row.first_short) == (
        3,
        5,
        1,
        1,
        5,
        0,
    )


def test_a_receipt_before_the_need_covers_it():
    (row,) = net_periods(2, [[5, -3]])
    assert (row.net, row.on_hand_end, row.first_short) == (0, 4, None)


def test_the_first_flow_that_lacks_is_named():
    # 5 − 2 = 3, − 2 = 1, − 2 = −1: the third need is the first that lacks.
    (row,) = net_periods(5, [[-2, -2, -2]])
    assert (row.first_short, row.net) == (2, 1)


def test_safety_stock_that_is_not_there_is_a_net_need_without_any_gross():
    first, second = net_periods(1, [[], []], safety_stock=3, lot_size=4)
    assert (first.net, first.order_quantity, first.on_hand_end, first.first_short) == (2, 4, 5, 0)
    assert (second.net, second.order_quantity, second.on_hand_end) == (0, 0, 5)


def test_tenths_of_a_metre_do_not_add_up_to_a_shortage():
    # 3 × 0.1 is 0.30000000000000004: nothing lacks.
    (row,) = net_periods(0.3, [[-0.1, -0.1, -0.1]])
    assert row.net == 0
