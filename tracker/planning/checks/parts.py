"""Parts: what bookings take is there when they start (MODEL.md, section 6)."""

from collections import defaultdict
from collections.abc import Iterator
from datetime import date
from itertools import groupby

from tracker.domain.plan import Booking
from tracker.planning.checks.case import Case

_TOLERANCE = 1e-6


def parts_are_there(case: Case) -> Iterator[str]:
    """For each part and each start: Σ need of the bookings started ≤ stock on hand without safety stock and what is
    held for others + receipts due on an earlier day.

    A receipt is usable from the first working slot of the next working day; bookings start in working slots, so that
    means on a later local day than the one on which it is due.
    """
    takers = _takers(case)
    for part in sorted(takers):
        stock = case.mill.parts.get(part)
        usable = stock.on_hand - stock.safety_stock - case.problem.taken.get(part, 0.0) if stock else 0.0
        needed = given = 0.0
        by_day = groupby(sorted(takers[part], key=lambda taker: taker[0]), key=lambda taker: taker[0])
        for day, started in by_day:
            for _, quantity, booking in started:
                needed, given = needed + quantity, given + quantity * case.given(booking)
            there = usable + _received(case, part, day)
            if needed > max(there, given) + _TOLERANCE:
                yield f"part {part}: {needed:g} needed by {day}, {max(0.0, there):g} usable"
                break


def _takers(case: Case) -> dict[str, list[tuple[date, float, Booking]]]:
    """Part → (local day of the start, quantity still to be taken from stock, booking)."""
    takers: dict[str, list[tuple[date, float, Booking]]] = defaultdict(list)
    for booking in case.plan.bookings:
        content = case.content(booking)
        issued = case.problem.issued.get(booking.key, {})
        for part, quantity in (content.parts if content else booking.parts).items():
            still = max(0.0, quantity - issued.get(part, 0.0))
            if still:
                takers[part].append((booking.start.astimezone(case.terms.zone).date(), still, booking))
    return takers


def _received(case: Case, part: str, day: date) -> float:
    return sum(receipt.quantity for receipt in case.mill.receipts if receipt.part == part and receipt.due < day)
