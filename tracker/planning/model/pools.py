"""What conversions share slot by slot: crews of the lead trade, heads of the other trades, tools, the hall limit."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import timedelta
from enum import StrEnum
from itertools import pairwise

import numpy as np

from tracker.domain.mill import Crew, Mill
from tracker.domain.shifts import converting_calendar, crew_heads, crews_of
from tracker.domain.words import fold
from tracker.planning.model.grid import Grid, Ints

Count = Callable[[Mill, Grid, Crew, str], Ints]
"""What a crew row has to give in a hall in each slot, shape (slots,)."""
STOPPED = "stopped"
SECTION = "section"


class PoolKind(StrEnum):
    CREWS = "crews"
    HEADS = "heads"
    STOPPED = "stopped"
    SECTION = "section"
    """Its first axis is the weavers' sections, that of the others the halls."""
    TOOL = "tool"
    WEEK = "week"
    """Crew-slots of a week, all halls together."""


@dataclass(frozen=True)
class Pool:
    """How many of one thing there are in each slot.

    What a hall uses in a slot is taken from its `own` first and then from `shared`, which all halls draw on.
    """

    name: str
    """The trade (folded), the tool, or one of STOPPED and SECTION."""
    kind: PoolKind
    own: Ints
    """Shape (halls, slots)."""
    shared: Ints
    """Shape (slots,)."""
    week: Ints | None = None
    """Shape (slots,), rising: the week of each slot, where what is used in a week is summed up and `shared` holds the limit of
    that sum; None = each slot by itself."""

    def reach(self) -> Ints:
        """The most that a hall could have in each slot; shape (halls, slots)."""
        return self.own + self.shared

    def over(self, used: Ints) -> Ints:
        """By how much each slot is used beyond what there is; shape (slots,), 0 where it is not. What is settled already is never
        too much for a week."""
        if self.week is not None:
            return np.zeros_like(self.shared)
        return np.maximum(0, np.maximum(used - self.own, 0).sum(axis=0) - self.shared)

    def less(self, used: Ints) -> "Pool":
        """The pool with that use taken out for good, never below none."""
        if self.week is not None:
            of_week = np.bincount(self.week, used.sum(axis=0)).astype(self.shared.dtype)
            return replace(self, shared=np.maximum(self.shared - of_week[self.week], 0))
        lent = np.maximum(used - self.own, 0).sum(axis=0)
        return replace(self, own=np.maximum(self.own - used, 0), shared=np.maximum(self.shared - lent, 0))


def lead_pool(mill: Mill, grid: Grid, halls: list[str], crews: Iterable[Crew]) -> Pool:
    """Crews of the lead trade that can take a conversion, counted as crews."""
    return Pool(fold(mill.terms.lead_trade), PoolKind.CREWS, *_people(mill, grid, halls, crews, converting))


def week_pool(mill: Mill, grid: Grid, halls: list[str], crews: Iterable[Crew]) -> Pool:
    """Crew-slots of each ISO week that may be planned: what the crews of all halls have together, less the usual absence,
    rounded down."""
    lead = lead_pool(mill, grid, halls, crews)
    mondays = [day - timedelta(days=day.weekday()) for day in grid.days()]
    starts = np.array([grid.day_start(day) for day in grid.days()])
    of_day = np.cumsum([0, *(one != other for one, other in pairwise(mondays))])
    week = of_day[np.searchsorted(starts, np.arange(grid.slots), side="right") - 1]
    there = np.bincount(week, lead.own.sum(axis=0) + lead.shared)
    limit = np.floor(there * (1 - mill.terms.usual_absence) + 1e-6).astype(np.int32)
    return Pool(lead.name, PoolKind.WEEK, np.zeros_like(lead.own), limit[week], week)


def trade_pool(mill: Mill, grid: Grid, halls: list[str], trade: str) -> Pool:
    """Heads of another trade at work."""
    return Pool(trade, PoolKind.HEADS, *_people(mill, grid, halls, crews_of(mill, trade), heads_at_work))


def tool_pool(mill: Mill, grid: Grid, halls: list[str], tool: str) -> Pool:
    """How many there are of a tool (none where it is not listed)."""
    counts = {fold(name): found.how_many for name, found in mill.tools.items()}
    own = np.zeros((len(halls), grid.slots), dtype=np.int32)
    return Pool(tool, PoolKind.TOOL, own, np.full(grid.slots, counts.get(fold(tool), 0), dtype=np.int32))


def section_pool(limit: int, grid: Grid, sections: int) -> Pool:
    """The limit of looms of one weaver's section stopped for conversion; see `stopped_pool`."""
    own = np.full((sections, grid.slots), limit, dtype=np.int32)
    return Pool(SECTION, PoolKind.SECTION, own, np.zeros(grid.slots, dtype=np.int32))


def stopped_pool(limit: int, grid: Grid, halls: list[str]) -> Pool:
    """The hall's limit of looms stopped for conversion.

    A loom stays stopped from start to end, nights included. Who is stopped in a night was already being converted in
    the last working slot before it, so the working slots say all.
    """
    own = np.full((len(halls), grid.slots), limit, dtype=np.int32)
    return Pool(STOPPED, PoolKind.STOPPED, own, np.zeros(grid.slots, dtype=np.int32))


def converting(mill: Mill, grid: Grid, crew: Crew, hall: str) -> Ints:
    """1 in each slot through which the crew row can work at a conversion in the hall, shape (slots,)."""
    days = grid.days()
    return grid.whole(converting_calendar(mill, crew, hall, days[0], days[-1])).astype(np.int32)


def heads_at_work(mill: Mill, grid: Grid, crew: Crew, hall: str) -> Ints:
    """Heads of the crew row that work through each slot in the hall, shape (slots,)."""
    days = grid.days()
    there = crew_heads(mill, crew, hall, days[0], days[-1])
    return sum((heads * grid.whole(calendar) for heads, calendar in there), np.zeros(grid.slots, dtype=np.int32))


def _people(mill: Mill, grid: Grid, halls: list[str], crews: Iterable[Crew], count: Count) -> tuple[Ints, Ints]:
    """Each hall's own, shape (halls, slots), and those of any hall, shape (slots,)."""
    own = np.zeros((len(halls), grid.slots), dtype=np.int32)
    shared = np.zeros(grid.slots, dtype=np.int32)
    for crew in crews:
        if crew.hall is None:
            there = [count(mill, grid, crew, hall) for hall in halls]
            shared += np.max(there, axis=0) if there else 0
        elif crew.hall in halls:
            own[halls.index(crew.hall)] += count(mill, grid, crew, crew.hall)
    return own, shared


def trade_rates(mill: Mill) -> Mapping[str, float]:
    """Folded trade → currency per head and hour: the mean over its crews, each counted by its heads.

    A crew that stands in several rows (an absence) counts once for each rate it has.
    """
    crews = {(fold(c.trade), c.crew, c.heads, c.rate_per_head_h) for c in mill.crews if c.heads > 0}
    heads: dict[str, float] = {}
    money: dict[str, float] = {}
    for trade, _, count, rate in sorted(crews):
        heads[trade] = heads.get(trade, 0.0) + count
        money[trade] = money.get(trade, 0.0) + count * rate
    return {trade: money[trade] / heads[trade] for trade in heads}
