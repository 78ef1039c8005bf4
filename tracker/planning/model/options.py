"""Every way to convert every loom, as arrays: loom × window × choices × start (MODEL.md, section 4)."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from enum import IntEnum
from functools import cached_property

import numpy as np

from tracker.domain.windows import WindowKind
from tracker.planning.model.costs import Batch, total
from tracker.planning.model.grid import Bools, Floats, HallClock, Ints
from tracker.planning.model.instance import Instance
from tracker.planning.model.numbered import KINDS, From
from tracker.planning.model.pools import PoolKind

BEFORE_H = 4
"""Clock hours before the mean beam-out at which the starts of a window begin."""
AFTER_SLOTS = 32
"""Working slots after the mean beam-out among which they end."""
FAR_H = 14 * 24
"""Windows further off than this have starts on full hours only."""
_BATCH = 200_000


class Dropped(IntEnum):
    """Why a start is no option, in the order in which it is asked."""

    HORIZON = 0
    PROTECTED = 1
    RULED_OUT = 2
    CLOSED = 3
    UNWATCHED = 4
    PEOPLE = 5
    KIT = 6
    DEARER = 7
    PILOT = 8


@dataclass(frozen=True)
class Options:
    """All options, sorted by loom, window, content and start. Arrays of shape (options,)."""

    loom: Ints
    window: Ints
    content: Ints
    position: Ints
    """Start, counted in working slots of the loom's hall."""
    cost: Floats
    """Currency, all terms together."""
    dropped: Ints = field(repr=False)
    """How many starts of each loom were dropped for each reason; shape (looms, reasons)."""

    def __len__(self) -> int:
        return len(self.loom)

    def first(self, looms: int) -> Ints:
        """Where each loom's options begin; shape (looms + 1,)."""
        return np.searchsorted(self.loom, np.arange(looms + 1))

    def keep(self, mask: Bools, reason: Dropped) -> "Options":
        """Those of the mask; the others are counted as dropped for the reason."""
        kept = self.only(mask)
        kept.dropped[:, reason] += np.bincount(self.loom[~mask], minlength=len(self.dropped))
        return kept

    def only(self, mask: Bools) -> "Options":
        """Those of the mask."""
        return Options(
            self.loom[mask], self.window[mask], self.content[mask], self.position[mask], self.cost[mask],
            self.dropped.copy(),
        )  # fmt: skip


@dataclass(frozen=True)
class OptionTimes:
    """When options start and end, arrays by option."""

    start: Ints
    """First slot."""
    end: Ints
    """Slot after the last."""


def times(instance: Instance, options: Options, index: Ints | slice = slice(None)) -> OptionTimes:
    """Start and end of the options at `index`."""
    work = np.concatenate([clock.work for clock in instance.clocks])
    base = np.cumsum([0, *(clock.work.size for clock in instance.clocks)])[:-1]
    hall, position = instance.hall_of[options.loom[index]], options.position[index]
    past = instance.shapes.past(hall, shape_of(instance, options.window[index], options.content[index]), position)
    return OptionTimes(work[base[hall] + position], work[base[hall] + past - 1] + 1)


def stays(instance: Instance, options: Options) -> Bools:
    """Which options have the start and the choices of their loom's published booking; shape (options,)."""
    previous = instance.previous
    return (previous.slot[options.loom] == times(instance, options).start) & (
        previous.choices[options.loom] == instance.contents.choices[options.content]
    )


def shape_of(instance: Instance, window: Ints, content: Ints) -> Ints:
    """The shapes of conversions in these windows."""
    return instance.shapes.number(content, instance.windows.change[window])


def make_options(instance: Instance, skip: Bools | None = None, dear: Bools | None = None) -> Options:
    """The options of all looms but those to `skip` (shape (looms,)), dropped what cannot be or costs more than leaving; those
    of the looms that may be `dear` cost what they cost.

    Built in batches of windows, so that memory follows what is kept.
    """
    table = instance.windows
    hall = instance.hall_of[table.loom] if len(table.items) else np.zeros(0, dtype=np.int32)
    dropped = np.zeros((len(instance.looms), len(Dropped)), dtype=np.int32)
    found: list[tuple] = []
    for h, clock in enumerate(instance.clocks):
        mine = hall == h if skip is None else (hall == h) & ~skip[table.loom]
        for batch in _batches(instance, clock, np.flatnonzero(mine).astype(np.int32)):
            found.append(_kept(instance, batch, dropped, dear))
    return _joined(found, dropped)


def _joined(found: list[tuple], dropped: Ints) -> Options:
    empty = (np.zeros(0, dtype=np.int32),) * 4 + (np.zeros(0),)
    columns = [np.concatenate(column) for column in zip(*(found or [empty]), strict=True)]
    order = np.lexsort(columns[3::-1])
    loom, window, content, position, cost = (column[order] for column in columns)
    return Options(loom, window, content, position, cost, dropped)


@dataclass(frozen=True)
class _Starts:
    """Starts of one hall before it is known which of them are options. Arrays of shape (starts,)."""

    instance: Instance
    clock: HallClock
    window: Ints
    content: Ints
    position: Ints

    @property
    def loom(self) -> Ints:
        return self.instance.windows.loom[self.window]

    @property
    def start_slot(self) -> Ints:
        return self.clock.work[self.position]

    @property
    def hall(self) -> int:
        return self.instance.halls.index(self.clock.hall)

    @cached_property
    def shape(self) -> Ints:
        return shape_of(self.instance, self.window, self.content)

    @cached_property
    def past(self) -> Ints:
        """The position after the last slot."""
        return self.instance.shapes.past(self.hall, self.shape, self.position)

    def batch(self) -> Batch:
        """Their costs can be asked for once they are known to end before the horizon."""
        end_slot = self.clock.work[self.past - 1] + 1
        return Batch(self.instance, self.clock, self.window, self.content, self.start_slot, end_slot)

    def only(self, kept: Bools) -> "_Starts":
        if kept.all():
            return self
        return replace(self, window=self.window[kept], content=self.content[kept], position=self.position[kept])


def _batches(instance: Instance, clock: HallClock, windows: Ints) -> Iterator[_Starts]:
    """All starts of the windows of a hall, some 200,000 at a time."""
    pairs, contents = _pairs(instance, windows)
    first, past = _spans(instance, clock, pairs)
    counts = np.maximum(past - first, 0)
    edges = np.searchsorted(np.cumsum(counts), np.arange(_BATCH, counts.sum() + _BATCH, _BATCH), side="left") + 1
    start = 0
    for edge in np.unique(np.minimum(edges, len(counts))):
        part = slice(start, int(edge))
        start = int(edge)
        yield _batch(instance, clock, pairs[part], contents[part], first[part], counts[part])


def _pairs(instance: Instance, windows: Ints) -> tuple[Ints, Ints]:
    """Every window with every content of its menu."""
    menu = instance.windows.menu[windows]
    begin, end = instance.menus.first[menu], instance.menus.first[menu + 1]
    return np.repeat(windows, end - begin), instance.menus.flat[ranges(begin, end - begin)]


def _spans(instance: Instance, clock: HallClock, windows: Ints) -> tuple[Ints, Ints]:
    """First and past-the-last start of each window: positions, or days for a mid-warp window."""
    table, starts = instance.windows, clock.starts_h
    mid, standing = (table.kind[windows] == KINDS.index(kind) for kind in (WindowKind.MID_WARP, WindowKind.STANDING))
    mean = table.mean_h[windows]
    opens = np.where(mid | standing, table.starts_h[windows], mean - BEFORE_H)
    opens = np.maximum(opens, instance.earliest_h)
    days = starts[clock.first_of_day]
    first = np.where(mid, np.searchsorted(days, opens), np.searchsorted(starts, opens))
    closes = table.ends_h[windows]
    after = np.clip(clock.position_at(mean) + AFTER_SLOTS, 0, starts.size)
    past = np.where(mid, np.searchsorted(days, closes), np.where(standing, np.searchsorted(starts, closes), after))
    return first, past


def _batch(instance: Instance, clock: HallClock, windows: Ints, contents: Ints, first: Ints, counts: Ints) -> _Starts:
    """The starts of these pairs; far windows on full hours only."""
    window, content = np.repeat(windows, counts), np.repeat(contents, counts)
    position = ranges(first, counts)
    kind = instance.windows.kind[window]
    mid = kind == KINDS.index(WindowKind.MID_WARP)
    if mid.any():
        position = np.where(mid, clock.first_of_day[np.where(mid, position, 0)], position)
    opens = np.where(
        instance.windows.beam_out[window], instance.windows.mean_h[window], instance.windows.starts_h[window]
    )
    near = opens <= instance.grid.hours(instance.problem.as_of) + FAR_H
    kept = mid | near | clock.full_hour[position]
    return _Starts(instance, clock, window[kept], content[kept], position[kept].astype(np.int32))


Check = Callable[[_Starts], Bools]


def _in_horizon(starts: _Starts) -> Bools:
    return starts.past <= starts.clock.work.size


def _unprotected(starts: _Starts) -> Bools:
    return starts.start_slot >= starts.instance.protected_slot[starts.loom]


def _not_ruled_out(starts: _Starts) -> Bools:
    """Outside the spans in which somebody does not want the loom converted."""
    kept = np.ones(len(starts.position), dtype=bool)
    for loom, first, past in starts.instance.ruled_out:
        kept &= (starts.loom != loom) | (starts.start_slot < first) | (starts.start_slot >= past)
    return kept


def _closed_over_closed_days(starts: _Starts) -> Bools:
    """The loom does not stand open over a day on which nobody converts, unless it stands anyway or the mill lets it."""
    instance, closed = starts.instance, starts.clock.closed_before
    if instance.mill.terms.open_over_closed_days or not starts.position.size:
        return np.ones(len(starts.position), dtype=bool)
    standing = instance.windows.kind[starts.window] == KINDS.index(WindowKind.STANDING)
    return standing | (closed[starts.position] == closed[starts.past - 1])


def _watched(starts: _Starts) -> Bools:
    """The people whom the restart needs after it are at work."""
    end_slot = starts.clock.work[starts.past - 1] + 1
    return starts.instance.watching.there(starts.hall, starts.content, end_slot)


def _people_there(starts: _Starts) -> Bools:
    """Every slot has the other trades and the tools that the conversion needs in it."""
    instance, hall = starts.instance, starts.hall
    kept = np.ones(len(starts.position), dtype=bool)
    second = instance.shapes.second(hall, starts.shape, starts.position)
    for number in np.unique(starts.shape):
        mine = np.flatnonzero(starts.shape == number)
        for hold in instance.shapes.holds[number]:
            if instance.pools[hold.pool].kind is PoolKind.SECTION or hold.begins is From.WHOLE:
                continue
            lacks = instance.pools[hold.pool].reach()[hall][starts.clock.work] < hold.amount
            begins = (starts.position if hold.begins is From.START else second)[mine]
            kept[mine] &= ~any_within(lacks, begins + hold.first, begins + hold.past)
    return kept


def _kit_there(starts: _Starts) -> Bools:
    """Stock and receipts suffice for this loom, were it the only one, or what lacks can be had to order by then."""
    instance = starts.instance
    needs = instance.needs[instance.contents.needs[starts.content]]
    kept = np.ones(len(starts.position), dtype=bool)
    for i, supply in enumerate(instance.supplies):
        kept &= needs[:, i] <= supply.least()[supply.step_at(starts.start_slot)] + 1e-9
    return kept


CHECKS: tuple[tuple[Dropped, Check], ...] = (
    (Dropped.HORIZON, _in_horizon),
    (Dropped.PROTECTED, _unprotected),
    (Dropped.RULED_OUT, _not_ruled_out),
    (Dropped.CLOSED, _closed_over_closed_days),
    (Dropped.UNWATCHED, _watched),
    (Dropped.PEOPLE, _people_there),
    (Dropped.KIT, _kit_there),
)
"""What a start is asked, whatever it costs."""


def attendable(instance: Instance, options: Options) -> Bools:
    """At which options whoever stays with a pilot throughout is there to do so, beside what is taken out; shape (options,)."""
    there = np.ones(len(options), dtype=bool)
    for index, starts in _as_pilots(instance, options):
        there[index] = _people_there(starts)
    return there


def attended(instance: Instance, options: Options) -> Options:
    """The same options with whoever stays with a pilot throughout, at what they cost then beyond what they cost."""
    cost = options.cost.copy()
    for index, starts in _as_pilots(instance, options):
        plain = replace(starts, content=options.content[index])
        cost[index] += total(starts.batch()) - total(plain.batch())
    return replace(options, content=instance.contents.attended[options.content], cost=cost)


def _as_pilots(instance: Instance, options: Options) -> Iterator[tuple[Ints, _Starts]]:
    """Hall by hall the options, by number and as starts of pilots."""
    hall, content = instance.hall_of[options.loom], instance.contents.attended[options.content]
    for h, clock in enumerate(instance.clocks):
        index = np.flatnonzero(hall == h)
        yield index, _Starts(instance, clock, options.window[index], content[index], options.position[index])


@dataclass(frozen=True)
class LimitMet:
    """What keeps a start from being an option."""

    reason: Dropped
    way: Options
    """The window and content that came furthest."""


def limit_met(instance: Instance, loom: int, start: int, choices: int) -> LimitMet | None:
    """The check at which a loom's way to start in a slot with these choices fails, of several ways that which comes furthest;
    None where no window of it has that start."""
    windows = np.flatnonzero(instance.windows.loom == loom).astype(np.int32)
    met: LimitMet | None = None
    for starts in _batches(instance, instance.clocks[instance.hall_of[loom]], windows):
        chosen = instance.contents.choices[starts.content] == choices
        starts = starts.only((starts.start_slot == start) & chosen)
        for reason, check in CHECKS:
            if not len(starts.position):
                break
            if met is None or reason > met.reason:
                met = LimitMet(reason, _as_options(starts))
            starts = starts.only(check(starts))
    return met


def _as_options(starts: _Starts) -> Options:
    """The starts as they are, without costs."""
    none = np.zeros(len(starts.position))
    return Options(starts.loom, starts.window, starts.content, starts.position, none, np.zeros((0, 0), dtype=np.int32))


def _kept(instance: Instance, starts: _Starts, dropped: Ints, dear: Bools | None) -> tuple:
    """What of a batch is an option, as columns; what is not is counted."""
    for reason, check in CHECKS:
        starts = _take(starts, check(starts), reason, dropped)
    cost = total(starts.batch())
    worth = cost <= instance.left_cost[starts.loom]
    if dear is not None:
        worth |= dear[starts.loom]
    starts = _take(starts, worth, Dropped.DEARER, dropped)
    return starts.loom, starts.window, starts.content, starts.position, cost[worth]


def _take(starts: _Starts, kept: Bools, reason: Dropped, dropped: Ints) -> _Starts:
    dropped[:, reason] += np.bincount(starts.loom[~kept], minlength=len(dropped)).astype(np.int32)
    return starts.only(kept)


def ranges(first: Ints, counts: Ints) -> Ints:
    """first[0], first[0] + 1 … (counts[0] of them), then those of first[1] …, end to end."""
    ends = np.cumsum(counts)
    return (np.arange(ends[-1] if ends.size else 0) - np.repeat(ends - counts - first, counts)).astype(np.int32)


def any_within(flags: Bools, first: Ints, past: Ints) -> Bools:
    """Whether a flag stands in first ≤ i < past, for each pair; past the last flag there is none."""
    sums = np.concatenate([[0], np.cumsum(flags)])
    return sums[np.minimum(past, flags.size)] > sums[np.minimum(first, flags.size)]
