"""Which booked looms rely on which order: who lacks the part where one order is not placed, and all others are."""

from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from datetime import date
from math import inf

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
    walk = _Walk(part.on_hand - part.safety_stock, needs, [*coming, *orders.values()])
    for i, (day, quantity) in orders.items():
        rows[i] = replace(rows[i], falls=tuple(walk.falls_without(day, quantity)))
    return rows


class _Walk:
    """The needs in the order in which they draw on the stock, with all that comes: who is met, who lacks the part."""

    def __init__(self, usable: float, needs: Sequence[Flow], coming: Iterable[tuple[date | None, float]]):
        self.needs, self.days = needs, [need.day for need in needs]
        self.there: list[float] = []
        """What was usable or has come before each need, what was taken not taken off."""
        self.taken: list[float] = []
        """By each need and all before it."""
        self.fall: set[LoomKey | None] = set()
        ahead, taken, i = sorted((day, quantity) for day, quantity in coming if day), 0.0, 0
        for need in needs:
            while i < len(ahead) and ahead[i][0] < need.day:
                usable, i = usable + ahead[i][1], i + 1
            taken += -need.quantity if _is_met(need, usable - taken) else self._lacks(need)
            self.there.append(usable)
            self.taken.append(taken)
        self.spare = self._spare()

    def _spare(self) -> list[float]:
        """From each need on: what may lack of all that is there without one more falling."""
        spare = [inf] * (len(self.needs) + 1)
        for k in range(len(self.needs) - 1, -1, -1):
            is_met = self.taken[k] > (self.taken[k - 1] if k else 0.0)
            spare[k] = min(spare[k + 1], self.there[k] - self.taken[k]) if is_met else spare[k + 1]
        return spare

    def _lacks(self, need: Flow) -> float:
        if need.key and not need.left_over:
            self.fall.add(need.key)
        return 0.0

    def falls_without(self, day: date, quantity: float) -> Iterator[LoomKey]:
        """Who lacks the part at the start where so much does not come on a day; only as far as that makes a difference."""
        first = bisect_right(self.days, day)
        taken = self.taken[first - 1] if first else 0.0
        for k in range(first, len(self.needs)):
            need = self.needs[k]
            if _is_met(need, self.there[k] - quantity - taken):
                taken -= need.quantity
            elif need.key and not need.left_over and need.key not in self.fall:
                yield need.key
            lacks = quantity - (self.taken[k] - taken)
            if -TOLERANCE <= lacks <= self.spare[k + 1] + TOLERANCE:  # below 0 others may be met now, and others fall
                return


def _is_met(need: Flow, usable: float) -> bool:
    return -need.quantity <= max(0.0, usable) + TOLERANCE
