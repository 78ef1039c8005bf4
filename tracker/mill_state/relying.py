"""Which bookings of a plan could not have their kits without an order line."""

from tracker.domain.days import Days
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Plan
from tracker.domain.since import EnteredSince
from tracker.domain.stock import TOLERANCE, MovementKind


def relying_on(mill: Mill, since: EnteredSince, before: Plan, order: str, part: str) -> frozenset[LoomKey]:
    """Those for which the stock of when the plan was made, and what other lines were to bring before their day, do not reach in
    the order of their starts."""
    days, kept = Days(mill), mill.parts[part]
    moved = [m for m in since.movements if m.part == part]
    stock = kept.on_hand - sum(m.quantity for m in moved) - kept.safety_stock
    lines = [(r.order, r.due, r.quantity) for r in mill.receipts if r.part == part]
    lines += [(m.order, since.promised[m.order, part], m.quantity) for m in moved
              if m.kind is MovementKind.RECEIPT and m.order and (m.order, part) in since.promised]  # fmt: skip
    others = [(due, quantity) for name, due, quantity in lines if name != order]
    needed, found = 0.0, set[LoomKey]()
    for booking in sorted(before.bookings, key=lambda b: (b.start, b.key.sort_key)):
        needed += booking.parts.get(part, 0.0)
        there = stock + sum(quantity for due, quantity in others if due < days.local(booking.start))
        if booking.parts.get(part) and needed > there + TOLERANCE:
            found.add(booking.key)
    return frozenset(found)
