"""What it costs that parts that come back after use are planned as used up (MODEL.md, section 6)."""

from collections.abc import Iterable, Iterator, Sequence

from tracker.domain.plan import Booking
from tracker.domain.words import natural_key
from tracker.errors import Message, message
from tracker.planning.model.instance import Instance


def taken_as_used_up(instance: Instance, bookings: Sequence[Booking], wanting: Iterable[str]) -> Iterator[Message]:
    """One message for each part that comes back and of which the looms booked need more than there is, or of which others
    would need one. `wanting`: for each loom left over for want of a part, that part."""
    left, mill, stock = list(wanting), instance.mill, {}
    for receipt in mill.receipts:
        stock[receipt.part] = stock.get(receipt.part, 0.0) + receipt.quantity
    for part in sorted(_coming_back(instance), key=natural_key):
        needed = sum(booking.parts.get(part, 0.0) for booking in bookings)
        there = mill.parts[part].on_hand - mill.parts[part].safety_stock + stock.get(part, 0.0)
        if needed > there or part in left:
            yield message("planned-as-used-up", part=part, needed=needed, there=max(0.0, there), left=left.count(part))


def _coming_back(instance: Instance) -> set[str]:
    return {line.part for content in instance.contents.items for line in content.kit_lines if line.comes_back}
