"""Which booked looms rely on which order: who lacks the part where one order is not placed, and all others are."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date

from tracker.domain.mill import LoomKey, Part
from tracker.domain.needs import PartWeek
from tracker.domain.stock import TOLERANCE
from tracker.kits.flows import Flow


def with_falls(rows: list[PartWeek], part: Part, periods: Iterable[Sequence[Flow]], delivery: date) -> list[PartWeek]:
    """A part's weeks with the looms that fall where the week's order is not placed.

    Stock is shared out as it is in the kits: in booking order, a loom that lacks anything leaves its share to the next.
    What is ordered late, or was to be there already, comes on `delivery`.
    """
    flows = [flow for period in periods for flow in period]
    coming = [(delivery if flow.not_come else flow.day, flow.quantity) for flow in flows if not flow.key]
    orders = {i: (delivery if row.late else row.due, row.order_quantity) for i, row in enumerate(rows) if row.due}
    if not orders:
        return rows
    needs = sorted((flow for flow in flows if flow.key), key=lambda flow: flow.day)
    usable = part.on_hand - part.safety_stock
    fall = set(_short(usable, needs, [*coming, *orders.values()]))
    for i in orders:
        others = [order for number, order in orders.items() if number != i]
        more = [key for key in _short(usable, needs, [*coming, *others]) if key not in fall]
        rows[i] = replace(rows[i], falls=tuple(more))
    return rows


def _short(usable: float, needs: Iterable[Flow], coming: Iterable[tuple[date | None, float]]) -> list[LoomKey]:
    """The booked looms that lack the part at their start; needs in the order in which they draw on the stock."""
    short, ahead = [], sorted((day, quantity) for day, quantity in coming if day)
    for need in needs:
        while ahead and ahead[0][0] < need.day:
            usable += ahead.pop(0)[1]
        if -need.quantity <= max(0.0, usable) + TOLERANCE:
            usable += need.quantity
        elif need.key and not need.left_over:
            short.append(need.key)
    return short
