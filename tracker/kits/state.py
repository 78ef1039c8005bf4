"""The state of each booked loom's kit, and who gets what is there."""

from collections import defaultdict
from collections.abc import Iterable
from datetime import date

from tracker.domain.mill import LoomKey, Mill, Receipt
from tracker.domain.needs import KitState, Quantities
from tracker.domain.plan import Booking, Plan
from tracker.domain.stock import TOLERANCE, Movement, MovementKind, Reservation
from tracker.kits.days import Days


def issued_to(movements: Iterable[Movement]) -> dict[LoomKey, dict[str, float]]:
    """What each loom's kit holds of what was issued to it: issues less returns; parts at 0 are left out."""
    held: dict[LoomKey, dict[str, float]] = defaultdict(lambda: defaultdict(float))
    for movement in movements:
        if movement.key and movement.kind in (MovementKind.ISSUE, MovementKind.RETURN):
            held[movement.key][movement.part] -= movement.quantity
    return {key: {part: q for part, q in parts.items() if q > TOLERANCE} for key, parts in held.items()}


def in_booking_order(plan: Plan) -> list[Booking]:
    """The bookings as they draw on the stock: by start, then by hall and loom."""
    return sorted(plan.bookings, key=lambda booking: (booking.start, booking.key.sort_key))


def kit_states(
    plan: Plan, mill: Mill, reservations: Iterable[Reservation], movements: Iterable[Movement]
) -> tuple[KitState, ...]:
    """The kit of every booked loom, in booking order."""
    issued, days = issued_to(movements), Days(mill)
    reserved: dict[LoomKey, dict[str, float]] = defaultdict(dict)
    for reservation in reservations:
        reserved[reservation.key][reservation.part] = reservation.quantity
    on_order = OnOrder(mill.receipts)
    return tuple(
        _state(booking, reserved.get(booking.key, {}), issued.get(booking.key, {}), on_order, days)
        for booking in in_booking_order(plan)
    )


def _state(booking: Booking, reserved: Quantities, issued: Quantities, on_order: "OnOrder", days: Days) -> KitState:
    short = missing(booking.parts, reserved, issued)
    latest = days.due_for(days.local(booking.start))
    expected = {part: on_order.claim(part, quantity, latest) for part, quantity in short.items()}
    return KitState(
        booking.key,
        booking.start,
        needed={part: quantity for part, quantity in booking.parts.items() if quantity > TOLERANCE},
        reserved=reserved,
        issued=issued,
        short=short,
        expected={part: due for part, due in expected.items() if due},
    )


def missing(needed: Quantities, reserved: Quantities, issued: Quantities) -> dict[str, float]:
    """What of a kit is neither reserved nor issued; parts that lack nothing are left out."""
    short = {part: q - reserved.get(part, 0.0) - issued.get(part, 0.0) for part, q in needed.items()}
    return {part: quantity for part, quantity in short.items() if quantity > TOLERANCE}


class OnOrder:
    """Open receipts, claimed kit by kit in booking order."""

    def __init__(self, receipts: Iterable[Receipt]):
        self._open: dict[str, list[list]] = defaultdict(list)
        for receipt in sorted(receipts, key=lambda receipt: receipt.due):
            self._open[receipt.part].append([receipt.due, receipt.quantity])

    def claim(self, part: str, quantity: float, latest: date) -> date | None:
        """Take `quantity` from the receipts due by `latest`, the earliest first, and say when the last of them is due.

        Where they do not reach, nothing is taken and the answer is None.
        """
        lines = [line for line in self._open[part] if line[0] <= latest and line[1] > TOLERANCE]
        if sum(left for _, left in lines) < quantity - TOLERANCE:
            return None
        due = latest
        for line in lines:
            taken = min(line[1], quantity)
            line[1] -= taken
            quantity -= taken
            due = line[0]
            if quantity <= TOLERANCE:
                break
        return due
