"""The state of each booked loom's kit, and who gets what is there."""

from bisect import bisect_left, insort
from collections import defaultdict
from collections.abc import Iterable, Mapping
from datetime import date

from tracker.domain.days import Days
from tracker.domain.mill import LoomKey, Mill, Receipt
from tracker.domain.needs import KitState, LoomQuantities, Quantities
from tracker.domain.plan import Booking, Plan
from tracker.domain.stock import TOLERANCE, Movement, MovementKind, Reservation


def issued_to(movements: Iterable[Movement]) -> dict[LoomKey, dict[str, float]]:
    """What each loom's kit got: issues less returns (not less what was recovered after use); parts at 0 are left out."""
    return _by_loom(movements, {MovementKind.ISSUE: -1, MovementKind.RETURN: -1})


def recovered_from(movements: Iterable[Movement]) -> dict[LoomKey, dict[str, float]]:
    """What came back from each loom after use."""
    return _by_loom(movements, {MovementKind.RECOVERED: 1})


def _by_loom(movements: Iterable[Movement], signs: Mapping[MovementKind, int]) -> dict[LoomKey, dict[str, float]]:
    sums: dict[LoomKey, dict[str, float]] = defaultdict(lambda: defaultdict(float))
    for movement in movements:
        if movement.key and movement.kind in signs:
            sums[movement.key][movement.part] += signs[movement.kind] * movement.quantity
    return {key: {part: q for part, q in parts.items() if q > TOLERANCE} for key, parts in sums.items()}


def in_booking_order(plan: Plan) -> list[Booking]:
    """The bookings as they draw on the stock: by start, then by hall and loom."""
    return sorted(plan.bookings, key=lambda booking: (booking.start, booking.key.sort_key))


def kit_states(
    plan: Plan,
    mill: Mill,
    reservations: Iterable[Reservation],
    movements: Iterable[Movement],
    coming_back: LoomQuantities | None = None,
) -> tuple[KitState, ...]:
    """The kit of every booked loom, in booking order.

    `coming_back` are the parts of a booked kit that return to stock when its conversion ends; a later kit may count on
    them as on a receipt due that day.
    """
    issued, days, on_order = issued_to(movements), Days(mill), OnOrder(mill.receipts)
    reserved: dict[LoomKey, dict[str, float]] = defaultdict(dict)
    for reservation in reservations:
        reserved[reservation.key][reservation.part] = reservation.quantity
    states = []
    for booking in in_booking_order(plan):
        state = _state(booking, reserved.get(booking.key, {}), issued.get(booking.key, {}), on_order, days)
        for part, quantity in (coming_back or {}).get(booking.key, {}).items():
            if part not in state.short or part in state.expected:
                on_order.add(part, quantity, days.local(booking.end))
        states.append(state)
    return tuple(states)


def _state(booking: Booking, reserved: Quantities, issued: Quantities, on_order: "OnOrder", days: Days) -> KitState:
    short = missing(booking.parts, reserved, issued)
    start_day = days.local(booking.start)
    expected = {part: on_order.claim(part, quantity, start_day) for part, quantity in short.items()}
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
    short = dict(needed)
    for have in (reserved, issued):
        for part in have.keys() & short.keys():
            short[part] -= have[part]
    return {part: quantity for part, quantity in short.items() if quantity > TOLERANCE}


class OnOrder:
    """Open receipts, claimed kit by kit in booking order."""

    def __init__(self, receipts: Iterable[Receipt]):
        self._open: dict[str, list[tuple[date, float]]] = defaultdict(list)
        for receipt in receipts:
            self.add(receipt.part, receipt.quantity, receipt.due)

    def add(self, part: str, quantity: float, due: date) -> None:
        insort(self._open[part], (due, quantity))

    def claim(self, part: str, quantity: float, before: date) -> date | None:
        """Take `quantity` from what is due before a day, the earliest first, and say when the last of it is due.

        Where that does not reach, nothing is taken and the answer is None.
        """
        lines = self._open[part]
        if not lines:
            return None
        usable = bisect_left(lines, (before, 0.0))
        if sum(left for _, left in lines[:usable]) < quantity - TOLERANCE:
            return None
        for i, (due, left) in enumerate(lines):
            if left >= quantity - TOLERANCE:
                lines[: i + 1] = [(due, left - quantity)] if left - quantity > TOLERANCE else []
                return due
            quantity -= left
        return None
