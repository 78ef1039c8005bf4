"""Gross to net for one item, period by period: what stock and receipts do not cover, and the lots that would."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import accumulate
from math import ceil

from tracker.domain.stock import TOLERANCE


@dataclass(frozen=True, slots=True)
class NetPeriod:
    """One period of an item, quantities in its unit."""

    gross: float
    receipts: float
    net: float
    """What lacks at the worst moment of the period to stay at or above the safety stock."""
    order_quantity: float
    """The net in lots: the planned receipt of this period."""
    on_hand_end: float
    """Stock at the end of the period, planned receipt included."""
    first_short: int | None
    """Index of the first flow after which the stock would lie below the safety stock; None where nothing lacks."""


def lots(net: float, lot_size: float | None, minimum_order: float | None) -> float:
    """The smallest orderable quantity that covers `net` (> 0): at least the minimum order, in whole lots."""
    wanted = max(net, minimum_order or 0.0)
    if not lot_size:
        return wanted
    return ceil(wanted / lot_size - TOLERANCE) * lot_size


def net_periods(
    on_hand: float,
    periods: Iterable[Sequence[float]],
    safety_stock: float = 0.0,
    lot_size: float | None = None,
    minimum_order: float | None = None,
    can_be_ordered: bool = True,
) -> list[NetPeriod]:
    """Gross to net over consecutive periods.

    A period is its flows in the order of time: receipts positive, needs negative. A planned receipt is there from the
    beginning of its period. Where all receipts come before all needs of a period this is the textbook calculation:
    net = max(0, safety stock + gross − receipts − stock before).
    """
    stock, rows = on_hand, []
    for flows in periods:
        lowest, first_short = _lowest(stock, flows, safety_stock)
        net = safety_stock - lowest if first_short is not None else 0.0
        ordered = lots(net, lot_size, minimum_order) if net and can_be_ordered else 0.0
        gross = -sum(flow for flow in flows if flow < 0)
        receipts = sum(flow for flow in flows if flow > 0)
        stock += ordered + receipts - gross
        rows.append(NetPeriod(gross, receipts, net, ordered, stock, first_short))
    return rows


def _lowest(stock: float, flows: Sequence[float], safety_stock: float) -> tuple[float, int | None]:
    """The lowest stock after a need of the period, and the first flow after which it lies below the safety stock.

    In a period without needs the stock at its end counts, and index 0 stands for its beginning.
    """
    levels = list(accumulate(flows, initial=stock))[1:]
    after_needs = [(i, levels[i]) for i, flow in enumerate(flows) if flow < 0] or [(0, levels[-1] if levels else stock)]
    first_short = next((i for i, level in after_needs if level < safety_stock - TOLERANCE), None)
    return min(level for _, level in after_needs), first_short
