"""When how much of each part can be used: usable stock now, and receipts from the next working day on."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date

import numpy as np

from tracker.domain.mill import Mill
from tracker.planning.model.grid import Bools, Floats, Grid, Ints


@dataclass(frozen=True)
class Supply:
    """A part's usable quantity as steps over the slots."""

    part: str
    steps: Ints
    """Slots from which more can be used; the first is 0."""
    total: Floats
    """Quantity usable from each step on, in the part's unit, received so far taken together."""

    def step_at(self, slots: Ints) -> Ints:
        """The step in force in each slot."""
        return (np.searchsorted(self.steps, slots, side="right") - 1).astype(np.int32)


def supplies(mill: Mill, grid: Grid, working: Bools, parts: Iterable[str], taken: Mapping[str, float]) -> list[Supply]:
    """The supplies of the parts, in the order given.

    Usable = on hand less safety stock less what is `taken`, and the receipts so far; where that is below 0, nothing is
    usable. `working` (slots,) says in which slots anybody converts in any hall.
    """
    usable_from = _usable_from(grid, working)
    due: dict[str, list[tuple[int, float]]] = {}
    for receipt in mill.receipts:
        due.setdefault(receipt.part, []).append((usable_from(receipt.due), receipt.quantity))
    return [_supply(mill, grid, part, due.get(part, []), taken.get(part, 0.0)) for part in parts]


def _supply(mill: Mill, grid: Grid, part: str, due: list[tuple[int, float]], taken: float) -> Supply:
    stock = mill.parts[part]
    steps = {0: stock.on_hand - stock.safety_stock - taken}
    for slot, quantity in due:
        if slot < grid.slots:
            steps[slot] = steps.get(slot, 0.0) + quantity
    order = sorted(steps)
    total = np.maximum(0.0, np.cumsum([steps[slot] for slot in order]))
    return Supply(part, np.array(order, dtype=np.int32), total)


def _usable_from(grid: Grid, working: Bools):
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
