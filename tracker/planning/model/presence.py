"""When so many heads of a trade are at work in a hall, whatever they do there."""

from dataclasses import dataclass, field

import numpy as np

from tracker.domain.mill import Mill
from tracker.domain.shifts import crews_of
from tracker.domain.words import fold
from tracker.planning.model.grid import Bools, Grid
from tracker.planning.model.pools import converting, heads_at_work


@dataclass(frozen=True)
class Presence:
    mill: Mill
    grid: Grid
    halls: list[str]
    _known: dict[tuple[int, str, int], Bools] = field(default_factory=dict, repr=False)

    def at_work(self, hall: int, trade: str, heads: int) -> Bools:
        """The slots in which so many heads of a trade, or a crew of the lead trade, are at work in a hall; shape (slots,)."""
        if (hall, trade, heads) not in self._known:
            lead = fold(trade) == fold(self.mill.terms.lead_trade)
            count, least = (converting, 1) if lead else (heads_at_work, heads)
            crews = [crew for crew in crews_of(self.mill, trade) if crew.hall in (None, self.halls[hall])]
            there = [count(self.mill, self.grid, crew, self.halls[hall]) for crew in crews]
            nobody = np.zeros(self.grid.slots, dtype=bool)
            self._known[hall, trade, heads] = np.sum(there, axis=0) >= least if there else nobody
        return self._known[hall, trade, heads]
