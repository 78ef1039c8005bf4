"""When how much of each part can be used: usable stock now, receipts from the next working day on, and as much as is
wanted once it can be had to order."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from datetime import date, datetime

import numpy as np

from tracker.domain.days import ONE_DAY
from tracker.domain.mill import Mill, Part
from tracker.domain.ordering import Ordering, as_expected
from tracker.planning.model.grid import Bools, Floats, Grid, Ints


@dataclass(frozen=True)
class Supply:
    """A part's usable quantity as steps over the slots, up to the one from which it can be had to order."""

    part: str
    steps: Ints
    """Slots from which more can be used; the first is 0."""
    total: Floats
    """Quantity usable from each step on, in the part's unit, received so far taken together."""
    until: int
    """The slot from which it can be had to order; the number of slots, where it never can."""

    def step_at(self, slots: Ints) -> Ints:
        """The step in force in each slot; as many as there are steps from `until` on, where none limits any more."""
        step = np.searchsorted(self.steps, slots, side="right") - 1
        return np.where(slots >= self.until, self.steps.size, step).astype(np.int32)

    def least(self) -> Floats:
        """The least that is usable from each step on, and without limit after the last; shape (steps + 1,)."""
        return np.append(np.minimum.accumulate(self.total[::-1])[::-1], np.inf)


def supplies(
    mill: Mill, as_of: datetime, grid: Grid, working: Bools, parts: Iterable[str], taken: Mapping[str, float]
) -> list[Supply]:
    """The supplies of the parts, in the order given.

    All that is to come is reckoned with so much later as the term `receipts later` says. Usable = on hand less safety stock
    less what is `taken`, and the receipts so far; where that is below 0, nothing is usable. `working` (slots,) says in which
    slots anybody converts in any hall.
    """
    usable_from, ordering = _usable_from(grid, working), Ordering(mill, as_of)
    later = mill.terms.receipts_later_days * ONE_DAY
    due: dict[str, list[tuple[int, float]]] = {}
    for receipt in as_expected(mill, as_of).receipts:
        due.setdefault(receipt.part, []).append((usable_from(receipt.due + later), receipt.quantity))
    found = []
    for part in parts:
        comes = ordering.comes(mill.parts[part])
        until = grid.slots if comes is None else usable_from(comes + later)
        found.append(_supply(mill.parts[part], due.get(part, []), taken.get(part, 0.0), until))
    return found


def _supply(stock: Part, due: list[tuple[int, float]], taken: float, until: int) -> Supply:
    steps = {0: stock.on_hand - stock.safety_stock - taken}
    for slot, quantity in due:
        if slot < until:
            steps[slot] = steps.get(slot, 0.0) + quantity
    order = sorted(steps)
    total = np.maximum(0.0, np.cumsum([steps[slot] for slot in order]))
    return Supply(stock.part, np.array(order, dtype=np.int32), total, until)


def _usable_from(grid: Grid, working: Bools) -> Callable[[date], int]:
    """Day due → the first working slot of the next working day (0 where that is past, beyond the grid = never)."""
    starts = [grid.day_start(day) for day in grid.days()]
    first = grid.days()[0]

    def usable(due: date) -> int:
        day = (due - first).days + 1
        if day <= 0:
            return 0
        if day >= len(starts):
            return grid.slots
        found = np.flatnonzero(working[starts[day] :])
        return starts[day] + int(found[0]) if found.size else grid.slots

    return usable
