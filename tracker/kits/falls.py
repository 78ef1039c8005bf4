"""What if a receipt slips, a delivery is short, a part is scrapped: the mill as it would be, and what falls."""

from bisect import insort
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import replace
from datetime import date, timedelta

from tracker.domain.days import Days
from tracker.domain.mill import Mill, Receipt
from tracker.domain.needs import Fallen, LoomQuantities, Quantities, Scrap, ShortDelivery, Slip, StockChange
from tracker.domain.plan import Booking, Plan
from tracker.domain.stock import TOLERANCE
from tracker.domain.words import natural_key
from tracker.errors import DataError
from tracker.kits.state import in_booking_order, missing


def changed_mill(mill: Mill, changes: Iterable[StockChange]) -> Mill:
    """The mill after the changes, in order. Raises `DataError` for an unknown order line or part, a quantity below 0 or
    beyond what is there."""
    for change in changes:
        mill = _scrapped(mill, change) if isinstance(change, Scrap) else _with_receipts(mill, change)
    return mill


def _scrapped(mill: Mill, change: Scrap) -> Mill:
    part = mill.parts.get(change.part)
    if part is None:
        raise DataError("part-unknown", part=change.part)
    if not 0 <= change.quantity <= part.on_hand + TOLERANCE:
        raise DataError("scrap-above-stock", part=part.part, quantity=change.quantity, on_hand=part.on_hand)
    return replace(mill, parts={**mill.parts, part.part: replace(part, on_hand=part.on_hand - change.quantity)})


def _with_receipts(mill: Mill, change: Slip | ShortDelivery) -> Mill:
    orders = sorted({receipt.order for receipt in mill.receipts}, key=natural_key)
    if change.order not in orders:
        raise DataError("order-unknown", order=change.order, part=None, open=orders or None)
    return replace(mill, receipts=tuple(_altered(r, change) if r.order == change.order else r for r in mill.receipts))


def _altered(receipt: Receipt, change: Slip | ShortDelivery) -> Receipt:
    if isinstance(change, Slip):
        return replace(receipt, due=receipt.due + timedelta(days=change.days))
    if not 0 <= change.quantity <= receipt.quantity + TOLERANCE:
        raise DataError(
            "short-delivery-impossible", order=receipt.order, quantity=change.quantity, ordered=receipt.quantity
        )
    return replace(receipt, quantity=change.quantity)


def fallen(
    plan: Plan,
    mill: Mill,
    issued: LoomQuantities | None = None,
    coming_back: LoomQuantities | None = None,
    held: LoomQuantities | None = None,
) -> tuple[Fallen, ...]:
    """The bookings whose whole kit cannot be there at their start, in booking order.

    Stock on hand less safety stock and the receipts due before the day of the start are shared out by booking date; a
    booking that lacks anything falls and leaves its parts to the next. Lines past their date must have the day on which
    they are reckoned with (`as_expected`). What was issued to a loom needs no stock. `coming_back` are the parts of a
    booked kit that return to stock when its conversion ends; they count like a receipt due that day. Parts `held` for
    looms that the plan does not book are not to be had.
    """
    days = Days(mill)
    stock = _Stock(mill)
    for kit in (held or {}).values():
        stock.take(kit)
    found = []
    for booking in in_booking_order(plan):
        kit = missing(booking.parts, {}, (issued or {}).get(booking.key, {}))
        fall = _fall(booking, kit, stock, days)
        if fall:
            found.append(fall)
        else:
            stock.take(kit)
            stock.add((coming_back or {}).get(booking.key, {}), days.local(booking.end))
    return tuple(found)


def _fall(booking: Booking, kit: Quantities, stock: "_Stock", days: Days) -> Fallen | None:
    day = days.local(booking.start)
    lacks = {part: lack for part, quantity in kit.items() if (lack := quantity - stock.at(part, day)) > TOLERANCE}
    if not lacks:
        return None
    dues = [stock.covered_by(part, kit[part]) for part in lacks]
    usable_on = None if None in dues else max(days.usable_on(due) for due in dues if due)
    return Fallen(booking.key, booking.start, lacks, usable_on)


class _Stock:
    """Usable stock by day: what is on hand less safety stock, and receipts from the day after they are due."""

    def __init__(self, mill: Mill):
        self._free = defaultdict(float, {name: p.on_hand - p.safety_stock for name, p in mill.parts.items()})
        self._receipts: dict[str, list[tuple[date, float]]] = defaultdict(list)
        for receipt in mill.receipts:
            self.add({receipt.part: receipt.quantity}, receipt.due)

    def at(self, part: str, day: date) -> float:
        return max(0.0, self._free[part] + sum(quantity for due, quantity in self._receipts[part] if due < day))

    def covered_by(self, part: str, quantity: float) -> date | None:
        """The day on which the receipt is due that makes `quantity` whole; None where none does."""
        free = self._free[part]
        for due, more in self._receipts[part]:
            free += more
            if free >= quantity - TOLERANCE:
                return due
        return None

    def add(self, quantities: Quantities, due: date) -> None:
        for part, quantity in quantities.items():
            insort(self._receipts[part], (due, quantity))

    def take(self, kit: Quantities) -> None:
        for part, quantity in kit.items():
            self._free[part] -= quantity
