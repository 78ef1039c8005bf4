"""The price of choices: what the alternatives that the plan did not take would have cost."""

from collections.abc import Callable, Iterable, Mapping

from tracker.domain.mill import LoomKey
from tracker.domain.needs import ChoicePrice
from tracker.domain.plan import Booking, OtherDate, Plan
from tracker.domain.windows import WindowKind
from tracker.domain.work import Choices, WorkContent
from tracker.kits.state import in_booking_order

Cost = Callable[[WorkContent], float]
Contents = Mapping[LoomKey, Mapping[WindowKind, tuple[WorkContent, ...]]]


def choice_prices(plan: Plan, contents: Contents, parts_cost: Cost, labour_cost: Cost) -> tuple[ChoicePrice, ...]:
    """Every other combination of choices of each booking's window, beside the one taken, in booking order.

    `contents` is the work of each loom by kind of window; the costs are in the plan's currency. Bookings whose choices
    the method no longer gives are left out.
    """
    prices = []
    for booking in in_booking_order(plan):
        offered = contents.get(booking.key, {}).get(booking.kind, ())
        taken = next((content for content in offered if content.choices == booking.choices), None)
        if taken:
            others = (content for content in offered if content is not taken)
            prices += [_price(booking, taken, other, plan.other_dates, parts_cost, labour_cost) for other in others]
    return tuple(prices)


def _price(
    booking: Booking,
    taken: WorkContent,
    other: WorkContent,
    dates: Iterable[OtherDate],
    parts_cost: Cost,
    labour_cost: Cost,
) -> ChoicePrice:
    return ChoicePrice(
        booking.key,
        taken.choices,
        other.choices,
        parts=parts_cost(other) - parts_cost(taken),
        labour=labour_cost(other) - labour_cost(taken),
        on_loom_min=other.on_loom_min - taken.on_loom_min,
        extra_cost=_whole(booking, other.choices, dates),
    )


def _whole(booking: Booking, choices: Choices, dates: Iterable[OtherDate]) -> float | None:
    """What the planner's cheapest option of the loom with these choices costs beyond the booking."""
    same = [date.extra_cost for date in dates if date.key == booking.key and date.choices == choices]
    return min(same, default=None)
