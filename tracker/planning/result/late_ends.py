"""Bookings that a wait, as long as one beam in five lets its crew wait, pushes past a shift."""

from collections.abc import Iterator, Sequence

import numpy as np

from tracker.errors import Message, message
from tracker.planning.model.costs import Batch
from tracker.planning.model.grid import SLOT_H
from tracker.planning.model.instance import Instance
from tracker.planning.model.watching import BREAK_SLOTS
from tracker.planning.settled.taking import Decided

_LATE = 79
"""Of the 99 quantiles, the one that one beam in five comes after."""


def pushed_past_a_shift(instance: Instance, taken: Sequence[Decided]) -> Iterator[Message]:
    """One message with the looms and when they would end."""
    found = [item for hall in range(len(instance.clocks)) for item in _pushed(instance, hall, taken)]
    if found:
        looms = [
            message("loom-and-moment", loom=instance.looms[loom], at=instance.grid.local(end))
            for loom, end in sorted(found)
        ]
        yield message("late-pushes", looms=tuple(looms))


def _pushed(instance: Instance, hall: int, taken: Sequence[Decided]) -> Iterator[tuple[int, int]]:
    """(loom, slot after the last) of those in a hall."""
    mine = [t for t in taken if instance.hall_of[t.loom] == hall and t.window >= 0 and t.content >= 0]
    if not mine:
        return
    columns = np.array([(t.window, t.content, t.start, t.end) for t in mine], dtype=np.int32).T
    batch = Batch(instance, instance.clocks[hall], *columns)
    late_h = batch.spread.at_h[batch.spread.row, _LATE] - batch.start_h
    late_h = np.minimum(late_h, instance.mill.terms.patience_h)
    late = np.maximum(0, np.ceil(late_h / SLOT_H - 1e-6)).astype(np.int64)
    end = instance.delays.ends(hall, batch.shape, instance.delays.begins(hall, batch.start_slot + late))
    for i in np.flatnonzero(batch.spread.counts & (late > 0) & (end > batch.end_slot + late + BREAK_SLOTS)):
        yield int(batch.loom[i]), int(end[i])
