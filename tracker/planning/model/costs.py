"""What an option costs, term by term (MODEL.md, section 5). Currency; each term maps a batch to one array."""

from collections.abc import Callable
from copy import copy
from dataclasses import dataclass
from functools import cached_property
from math import ceil

import numpy as np

from tracker.domain.windows import WindowKind
from tracker.planning.model.firming import SHARES, firmed
from tracker.planning.model.grid import SLOT_H, Bools, Floats, HallClock, Ints
from tracker.planning.model.instance import Instance
from tracker.planning.model.numbered import KINDS

_DUST_H = 1e-6
"""Hours: a beam that comes so little after a slot begins is taken to be out then."""
_APART = 1e5
"""Hours between the windows on the one axis on which all quantiles are searched at once."""


@dataclass(frozen=True)
class Batch:
    """Conversions of one hall whose costs are asked for. Arrays of shape (conversions,)."""

    instance: Instance
    clock: HallClock
    window: Ints
    content: Ints
    start_slot: Ints
    end_slot: Ints
    """The slot after the last."""

    def only(self, index: Ints) -> "Batch":
        """Those at `index`."""
        columns = (self.window, self.content, self.start_slot, self.end_slot)
        some = Batch(self.instance, self.clock, *(column[index] for column in columns))
        some.__dict__["spread"] = self.spread.only(index)
        return some

    @cached_property
    def start_h(self) -> Floats:
        return self.start_slot * SLOT_H

    @cached_property
    def end_h(self) -> Floats:
        return self.end_slot * SLOT_H

    @cached_property
    def loom(self) -> Ints:
        return self.instance.windows.loom[self.window]

    @cached_property
    def hall(self) -> int:
        return self.instance.halls.index(self.clock.hall)

    @cached_property
    def shape(self) -> Ints:
        return self.instance.shapes.number(self.content, self.instance.windows.change[self.window])

    @cached_property
    def parted(self) -> Bools:
        """Whether the ordinary change stands between the parts of the conversion."""
        return self.instance.shapes.change[self.shape] >= 0

    @cached_property
    def ending(self) -> "Ending":
        return expected_ending(self)

    @cached_property
    def spread(self) -> "BeamOutSpread":
        return BeamOutSpread(self.instance, self.clock, self.window)


class BeamOutSpread:
    """The 99 quantiles of when the warp of each option's window runs out, as running sums.

    Only beam-outs vary; for the other windows `counts` is 0 and the costs that depend on it vanish.
    """

    def __init__(self, instance: Instance, clock: HallClock, window: Ints):
        table = instance.windows
        used, row = np.unique(window, return_inverse=True)
        self.row = row.reshape(-1)
        self.counts = table.beam_out[window]
        mean = np.minimum(table.mean_running_h[used], instance.mill.terms.firm_h)
        late = firmed(mean, table.spread_h[used]) - mean[:, None]
        self.at_h = clock.running.after(table.mean_h[used][:, None], late)
        self.run_h = clock.running.elapsed(self.at_h)
        self.sum_at = _sums(self.at_h)
        self.sum_run = _sums(self.run_h)

    def only(self, index: Ints) -> "BeamOutSpread":
        """That of the options at `index`."""
        some = copy(self)
        some.row, some.counts = self.row[index], self.counts[index]
        return some

    def before(self, at_h: Floats) -> Ints:
        """How many quantiles of each option's window lie before a moment; 0 … 99."""
        apart = np.arange(len(self.at_h))[:, None] * _APART
        return np.searchsorted((self.at_h + apart).ravel(), at_h + self.row * _APART) - self.row * SHARES.size


@dataclass(frozen=True)
class Ending:
    """How conversions end, the mean over the quantiles of their beam-outs. Arrays of shape (conversions,)."""

    end_h: Floats
    run_h: Floats
    """Running hours of the hall up to the end."""
    meanwhile_h: Floats
    """What others do of the ordinary change while the conversion goes on."""


def expected_ending(batch: Batch) -> Ending:
    """A conversion whose beam comes late begins with it, in the first working slot from then on; at the latest, when the crew
    has waited as long as it does and the rest of the warp is cut. It never ends sooner than booked."""
    instance, hall, spread = batch.instance, batch.hall, batch.spread
    delays, meanwhile_h = instance.delays, instance.windows.meanwhile_h[batch.window]
    most = ceil(instance.mill.terms.patience_h / SLOT_H - _DUST_H)
    out = _come_by(batch, 0) if most else np.full(batch.start_slot.shape, SHARES.size)
    out = np.where(spread.counts, out, SHARES.size)
    run_h = delays.run_h(hall, batch.end_slot)
    meanwhile_h = np.minimum(meanwhile_h, np.maximum(0.0, run_h - delays.run_h(hall, batch.start_slot)))
    sums = np.stack([batch.end_h, run_h, meanwhile_h]) * out
    for late in range(1, most + 1):
        waits = np.flatnonzero(out < SHARES.size)
        if not waits.size:
            break
        some = batch.only(waits)
        come = np.full(waits.size, SHARES.size) if late == most else _come_by(some, late)
        position = delays.begins(hall, some.start_slot + late)
        begins = np.append(batch.clock.work, instance.grid.slots)[position]
        end = np.maximum(some.end_slot, delays.ends(hall, some.shape, position))
        run_h = delays.run_h(hall, end)
        done_h = np.minimum(
            instance.windows.meanwhile_h[some.window], np.maximum(0.0, run_h - delays.run_h(hall, begins))
        )
        sums[:, waits] += np.stack([end * SLOT_H, run_h, done_h]) * (come - out[waits])
        out[waits] = come
    return Ending(*(sums / SHARES.size))


def _come_by(batch: Batch, late: int) -> Ints:
    """How many of the quantiles have come so many slots after the start."""
    return batch.spread.before(batch.start_h + late * SLOT_H + _DUST_H)


def lost_production(batch: Batch) -> Floats:
    """Contribution × expected running hours stopped beyond the ordinary change: from the beam-out (from when the rest of the
    warp is cut, where the crew gives up waiting) to the end of the conversion, less what others do of that change
    meanwhile. The ordinary change comes besides and is paid in any case: where it stands between the parts of the conversion
    its hours are taken off. A standing or mid-warp window has no waiting, and a loom that stands is stopped by its
    conversion only from the end of the span on (without a warp: from when that would be in). Beside it, what the neighbours
    lose that stand during some of its steps.
    """
    spread, running, table = batch.spread, batch.clock.running, batch.instance.windows
    start, end = running.elapsed(batch.start_h), running.elapsed(batch.end_h)
    given_up_h = batch.start_h + batch.instance.mill.terms.patience_h
    out = spread.before(given_up_h)
    stops = (spread.sum_run[spread.row, out] + (SHARES.size - out) * running.elapsed(given_up_h)) / SHARES.size
    standing = table.kind[batch.window] == KINDS.index(WindowKind.STANDING)
    woven_from = np.where(batch.parted, table.warp_in_h[batch.window], table.ends_h[batch.window])
    stands_until = np.where(standing, running.elapsed(woven_from), start)
    converting_h = np.maximum(0.0, end - np.maximum(start, stands_until))
    stopped_h = np.where(spread.counts, batch.ending.run_h - stops, converting_h)
    change_h = np.where(standing, 0.0, table.change_h[batch.window])
    stopped_h = stopped_h - np.where(batch.parted, change_h, batch.ending.meanwhile_h)
    beside = batch.instance.beside[batch.loom] * batch.instance.contents.neighbours_stand_h[batch.content]
    return table.contribution[batch.window] * stopped_h + beside


def late_beam_out(batch: Batch) -> Floats:
    """A warp that runs out after the start: the crew waits up to the patience, then the rest of the warp is cut."""
    table, spread = batch.instance.windows, batch.spread
    given_up_h = batch.start_h + batch.instance.mill.terms.patience_h
    first, past = spread.before(batch.start_h), spread.before(given_up_h)
    cut = SHARES.size - past
    waited_h = _between(spread.sum_at, spread.row, first, past) - batch.start_h * (past - first)
    waited_h = waited_h + batch.instance.mill.terms.patience_h * cut
    left_h = _between(spread.sum_run, spread.row, past, past + cut) - batch.clock.running.elapsed(given_up_h) * cut
    metres = left_h * table.warp_rate[batch.window]
    money = waited_h * batch.clock.wait_rate[batch.start_slot] + metres * table.warp_value[batch.window]
    return np.where(spread.counts, money / SHARES.size, 0.0)


def labour(batch: Batch) -> Floats:
    """Person-hours of all trades and places × their rates."""
    return batch.instance.contents.labour[batch.content]


def parts(batch: Batch) -> Floats:
    """Quantities × prices."""
    return batch.instance.contents.parts[batch.content]


def saving_foregone(batch: Batch) -> Floats:
    """Saving a day × days from the programme's start to the expected end of the conversion."""
    return batch.instance.saving[batch.loom] * (batch.ending.end_h - batch.instance.start_h) / 24


def moves(batch: Batch) -> Floats:
    """The move cost, where the last published plan has the loom at another start or with other choices; a quarter of it
    where that start is still far off."""
    previous = batch.instance.previous
    same = (previous.slot[batch.loom] == batch.start_slot) & (
        previous.choices[batch.loom] == batch.instance.contents.choices[batch.content]
    )
    return np.where(previous.booked[batch.loom] & ~same, previous.move_cost[batch.loom], 0.0)


def surviving(batch: Batch) -> Floats:
    """What the loom would cost left over × the chance that this and all later chances are missed, as often as the term
    `no second chance` says."""
    instance = batch.instance
    return instance.mill.terms.no_second_chance * instance.left_cost[batch.loom] * instance.chance_lost[batch.window]


COST_TERMS: tuple[Callable[[Batch], Floats], ...] = (
    lost_production, late_beam_out, labour, parts, saving_foregone, moves, surviving,
)  # fmt: skip
"""In the order of `CostTerms`, whose field names they have."""


def total(batch: Batch) -> Floats:
    """All terms together."""
    return np.sum([term(batch) for term in COST_TERMS], axis=0)


def _sums(values: Floats) -> Floats:
    """Sums of the first 0, 1 … n values of each row; shape (rows, n + 1)."""
    return np.concatenate([np.zeros((len(values), 1)), np.cumsum(values, axis=1)], axis=1)


def _between(sums: Floats, row: Ints, first: Ints, past: Ints) -> Floats:
    return sums[row, past] - sums[row, first]
