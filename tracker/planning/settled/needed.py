"""Whom and what a firm booking holds: what it was published to need, from when to when (MODEL.md, section 7)."""

import numpy as np

from tracker.domain.plan import Booking, Need
from tracker.domain.words import fold
from tracker.planning.model.contents import Hold, Profile
from tracker.planning.model.grid import Grid, Ints


def same_hours(work: Ints, grid: Grid, old: Booking) -> bool:
    """Whether a booking that names its crews lies in as many of the hall's working slots as when it was published; if not,
    its needs fall into other hours."""
    first, past = (int(np.searchsorted(work, grid.first_slot(at))) for at in (old.start, old.end))
    return bool(old.crews) and past - first == old.slots


def by_needs(work: Ints, grid: Grid, old: Booking) -> Profile:
    """Its crew in all its slots, other trades and tools as it lists them."""
    first = int(np.searchsorted(work, grid.first_slot(old.start)))

    def hold(need: Need) -> Hold:
        begin, past = (int(np.searchsorted(work, grid.first_slot(at))) - first for at in (need.start, need.end))
        return Hold(fold(need.what), begin, past, need.amount)

    trades, tools = (tuple(hold(n) for n in old.needs if n.kind == kind) for kind in ("trade", "tool"))
    return Profile(old.slots, trades, tools)
