"""How a conversion goes whose beam comes late: it begins with the beam and ends its working slots later, past a shift, or with
the next day of the electrician, if need be (MODEL.md, section 5).

One table of ends by start for each hall and shape, so that options stay arrays.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from tracker.planning.model.contents import Profile
from tracker.planning.model.grid import SLOT_H, Bools, Floats, HallClock, Ints
from tracker.planning.model.presence import Presence
from tracker.planning.model.shapes import Shapes, begins_again


@dataclass(frozen=True)
class Delays:
    presence: Presence
    clocks: list[HallClock]
    shapes: Shapes

    def begins(self, hall: int, slot: Ints) -> Ints:
        """The positions of the first working slots from these slots on; the number of positions where there is none."""
        return np.searchsorted(self.clocks[hall].work, slot)

    def ends(self, hall: int, shape: Ints, position: Ints) -> Ints:
        """The slots after the last of conversions that begin at these positions and wait for whoever is not at work; the
        horizon where they would not end before it."""
        return self._ends[hall][shape, position]

    def run_h(self, hall: int, slot: Ints) -> Floats:
        """Running hours of the hall up to the beginning of each slot."""
        return self._run_h[hall][slot]

    @cached_property
    def _run_h(self) -> list[Floats]:
        slots = np.arange(self.presence.grid.slots + 1) * SLOT_H
        return [clock.running.elapsed(slots) for clock in self.clocks]

    @cached_property
    def _ends(self) -> list[Ints]:
        """By hall: shape (shapes, positions + 1)."""
        return [
            np.stack([self._walked(hall, i) for i in range(len(self.shapes.profiles))])
            for hall in range(len(self.clocks))
        ]

    def _walked(self, hall: int, shape: int) -> Ints:
        """The end of a shape from each position on, slot after slot."""
        clock, item, change = self.clocks[hall], self.shapes.profiles[shape], int(self.shapes.change[shape])
        size = clock.work.size
        free, used = np.arange(size + 1), np.arange(size + 1)
        for i in range(item.slots):
            if change >= 0 and i == item.first:
                free[:size] = begins_again(clock, self.shapes.changes[change], used[:size])
            used = self._next(hall, _needs(item, i))[free]
            free = np.minimum(used + 1, size)
        horizon = self.presence.grid.slots
        return np.where(used < size, np.append(clock.work, 0)[used] + 1, horizon).astype(np.int32)

    def _next(self, hall: int, needs: frozenset[tuple[str, int]]) -> Ints:
        """From each position on, the first at which these trades are at work; shape (positions + 1,)."""
        if (hall, needs) not in self._known:
            work = self.clocks[hall].work
            there: Bools = np.ones(work.size, dtype=bool)
            for trade, heads in needs:
                there &= self.presence.at_work(hall, trade, heads)[work]
            found = np.where(there, np.arange(work.size), work.size)
            self._known[hall, needs] = np.append(np.minimum.accumulate(found[::-1])[::-1], work.size)
        return self._known[hall, needs]

    @cached_property
    def _known(self) -> dict[tuple[int, frozenset[tuple[str, int]]], Ints]:
        return {}


def _needs(item: Profile, slot: int) -> frozenset[tuple[str, int]]:
    """(trade, heads) that a profile asks for in one of its slots, the lead trade left out."""
    return frozenset((hold.what, hold.amount) for hold in item.trades if hold.first <= slot < hold.past)
