"""What of a kit comes back to stock after use, as the method says."""

from collections import defaultdict
from collections.abc import Mapping

from tracker.domain.needs import Quantities
from tracker.domain.plan import Booking
from tracker.domain.windows import WindowKind
from tracker.domain.work import WorkContent


def coming_back(content: WorkContent) -> dict[str, float]:
    """What returns to stock when a conversion of this content ends."""
    back: dict[str, float] = defaultdict(float)
    for line in content.kit_lines:
        if line.comes_back:
            back[line.part] += line.quantity
    return dict(back)


def back_of(
    kit: Quantities, contents: Mapping[WindowKind, tuple[WorkContent, ...]], booking: Booking | None
) -> dict[str, float]:
    """What of a loom's kit comes back: by the content that was booked.

    Where the loom was never booked, or the method has that content no more, the most that any of its contents gives
    back.
    """
    offered = contents.get(booking.kind, ()) if booking else ()
    booked = [content for content in offered if booking and content.choices == booking.choices]
    most: dict[str, float] = {}
    for content in booked or (content for kind in contents.values() for content in kind):
        for part, quantity in coming_back(content).items():
            most[part] = max(most.get(part, 0.0), quantity)
    return {part: min(quantity, kit[part]) for part, quantity in most.items() if part in kit}
