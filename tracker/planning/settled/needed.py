"""Whom and what a firm booking holds: what it was published to need, from when to when (MODEL.md, section 7)."""

import numpy as np

from tracker.domain.plan import Booking, Need
from tracker.domain.words import fold
from tracker.planning.model.contents import HeldSlots, Profile
from tracker.planning.model.grid import Grid, Ints
from tracker.planning.settled.taking import worked


def pause_slots(grid: Grid, old: Booking) -> tuple[int, int] | None:
    """The pause of a booking as slots."""
    return (grid.first_slot(old.pause[0]), grid.first_slot(old.pause[1])) if old.pause else None


def _worked(work: Ints, grid: Grid, old: Booking) -> Ints:
    """The working slots from its start on, those of its pause left out."""
    return work[worked(work, grid.first_slot(old.start), pause_slots(grid, old))]


def same_hours(work: Ints, grid: Grid, old: Booking) -> bool:
    """Whether a booking that names its crews lies in as many of the hall's working slots as when it was published; if not,
    its needs fall into other hours."""
    return bool(old.crews) and int((_worked(work, grid, old) < grid.first_slot(old.end)).sum()) == old.slots


def by_needs(work: Ints, grid: Grid, old: Booking) -> Profile:
    """Its crew in all its slots, other trades and tools as it lists them."""
    mine = _worked(work, grid, old)

    def hold(need: Need) -> HeldSlots:
        begin, past = (int(np.searchsorted(mine, grid.first_slot(at))) for at in (need.start, need.end))
        return HeldSlots(fold(need.what), begin, past, need.amount)

    trades, tools = (tuple(hold(n) for n in old.needs if n.kind == kind) for kind in ("trade", "tool"))
    return Profile(old.slots, trades, tools)
