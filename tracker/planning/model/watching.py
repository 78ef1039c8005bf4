"""Who must be at work after a restart: the trades of the steps that follow it, and the crew that watches (MODEL.md, section 4).

They are asked to be there, not held: a person who watches one loom can mend another beside it.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from math import ceil

import numpy as np

from tracker.domain.mill import Mill
from tracker.domain.words import fold
from tracker.domain.work import WorkContent
from tracker.planning.model.contents import HeldSlots, holds_of
from tracker.planning.model.grid import SLOT_H, Bools, Ints
from tracker.planning.model.presence import Presence

BREAK_SLOTS = 2
"""A pause no longer than this is a break within a shift."""


@dataclass(frozen=True)
class Watching:
    """What is asked for after the restart, by content, in half hours of the clock from the end of the conversion."""

    presence: Presence
    asks: list[tuple[HeldSlots, ...]]
    """Distinct sets of what is asked for; of the lead trade a crew."""
    of: Ints
    """By content, its set."""

    def there(self, hall: int, content: Ints, end_slot: Ints) -> Bools:
        """Whether conversions that end before these slots have their people at work after them. Past the horizon nothing is
        known."""
        kept = np.ones(len(content), dtype=bool)
        for number in np.unique(self.of[content]):
            mine = np.flatnonzero(self.of[content] == number)
            for hold in self.asks[number]:
                gone = np.concatenate([[0], np.cumsum(~self._at_work(hall, hold.what, hold.amount))])
                first, past = (
                    np.minimum(end_slot[mine] + i, self.presence.grid.slots) for i in (hold.first, hold.past)
                )
                kept[mine] &= gone[past] == gone[first]
        return kept

    def _at_work(self, hall: int, trade: str, heads: int) -> Bools:
        """The slots in which they are at work or have their break."""
        if (hall, trade, heads) not in self._known:
            self._known[hall, trade, heads] = bridged(self.presence.at_work(hall, trade, heads))
        return self._known[hall, trade, heads]

    @cached_property
    def _known(self) -> dict[tuple[int, str, int], Bools]:
        return {}


def bridged(there: Bools) -> Bools:
    """The flags, and those of breaks between two of them."""
    at = np.flatnonzero(there)
    found = there.copy()
    for i in np.flatnonzero((np.diff(at) > 1) & (np.diff(at) <= BREAK_SLOTS + 1)):
        found[at[i] : at[i + 1]] = True
    return found


def make_watching(presence: Presence, items: Iterable[WorkContent]) -> Watching:
    asks: dict[tuple[HeldSlots, ...], int] = {}
    of = [asks.setdefault(_asks(presence.mill, content), len(asks)) for content in items]
    return Watching(presence, list(asks), np.array(of, dtype=np.int32))


def _asks(mill: Mill, content: WorkContent) -> tuple[HeldSlots, ...]:
    watch = ceil(mill.terms.watch_h / SLOT_H - 1e-9)
    watches = [HeldSlots(fold(mill.terms.lead_trade), 0, watch, 1)] if watch else []
    return (*watches, *holds_of(content.after_steps))
