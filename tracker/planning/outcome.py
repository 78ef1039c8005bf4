"""The plan in the words of the trade: bookings with their cost terms, looms left over and why, other dates, prices."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np

from tracker.domain.calendars import iso_week
from tracker.domain.formats import day
from tracker.domain.plan import Booking, CostTerms, OtherDate, ScarcityPrice
from tracker.planning.costs import COST_TERMS, Batch
from tracker.planning.given import Taken, is_firm
from tracker.planning.grid import Floats, Ints
from tracker.planning.instance import Instance
from tracker.planning.numbered import BEAM_OUTS
from tracker.planning.options import Dropped, Options, times
from tracker.planning.pools import PoolKind
from tracker.planning.programme import LEFT, Programme
from tracker.planning.rows import Rows

OTHER_DATES = 3
"""Alternatives that are told for each booking, each on another day."""
_TRIED = 400
"""Options of a loom, the cheapest first, among which they are looked for."""


def bookings_of(instance: Instance, taken: Sequence[Taken], pilots: frozenset[int]) -> list[Booking]:
    """Decided conversions as bookings, at what they cost by the data of today."""
    found: list[Booking] = []
    for hall, clock in enumerate(instance.clocks):
        mine = [item for item in taken if instance.hall_of[item.loom] == hall]
        priced = [item for item in mine if item.window >= 0 and item.content >= 0]
        columns = [(item.window, item.content, item.start, item.end) for item in priced]
        batch = Batch(instance, clock, *np.array(columns, dtype=np.int32).reshape(-1, 4).T)
        terms = np.stack([term(batch) for term in COST_TERMS], axis=1)
        found += [_booking(instance, item, terms[i], item.loom in pilots) for i, item in enumerate(priced)]
        outlived = [item for item in mine if item.firm and item not in priced]
        found += [replace(item.firm, firm=True, pilot=item.loom in pilots) for item in outlived if item.firm]
    return sorted(found, key=lambda booking: (booking.start, booking.key.sort_key))


def _booking(instance: Instance, taken: Taken, terms: Floats, pilot: bool) -> Booking:
    window, content = instance.windows.items[taken.window], instance.contents.items[taken.content]
    start = instance.grid.moment(taken.start)
    return Booking(
        key=window.key,
        window=window.number,
        kind=window.kind,
        choices=content.choices,
        start=start,
        end=instance.grid.moment(taken.end),
        beam_out_p50=window.p50_at if window.kind in BEAM_OUTS else None,
        slots=int(instance.contents.slots[taken.content]),
        labour_h=content.labour_h,
        parts=content.parts,
        cost=CostTerms(*(float(value) for value in terms)),
        firm=is_firm(instance, taken.loom, start),
        pilot=pilot,
    )


def reasons_left(programme: Programme, numbers: Ints, free: Floats) -> dict[int, str]:
    """Loom number → why it is left over, in a few words. `free`: what is left of each row, shape (rows,)."""
    first = programme.options.first(len(programme.instance.looms))
    return {
        int(i): _why_none(programme.instance, programme.options, int(i))
        if first[i] == first[i + 1]
        else _why_not(programme, np.arange(int(first[i]), int(first[i + 1])), free)
        for i in numbers
    }


def _why_none(instance: Instance, options: Options, loom: int) -> str:
    key, problem = instance.looms[loom], instance.problem
    if key in problem.unplannable:
        return problem.unplannable[key]
    if not (instance.windows.loom == loom).any():
        return "no beam-out, no standing span and no warp to stop before the horizon"
    dropped = options.dropped[loom]
    words = {
        Dropped.PROTECTED: f"protected until {day(problem.mill.looms[key].protected_until)}",
        Dropped.KIT: f"no kit before the horizon: {_short_part(instance, loom)}",
        Dropped.PILOT: "the pilot of its machine type ends too late, or there is none",
        Dropped.PEOPLE: "nobody of another trade, or no tool, is there when its work needs it",
        Dropped.HORIZON: "no window in which it would end before the horizon",
        Dropped.DEARER: "every date costs more than leaving it over",
    }
    order = (Dropped.KIT, Dropped.PROTECTED, Dropped.PEOPLE, Dropped.PILOT, Dropped.DEARER, Dropped.HORIZON)
    found = max(order, key=lambda reason: (dropped[reason], -order.index(reason)))
    return words[found] if dropped[found] else "no working time of a crew in its windows"


def _short_part(instance: Instance, loom: int) -> str:
    menus = instance.windows.menu[instance.windows.loom == loom]
    rows = {int(c) for m in menus for c in instance.menus.flat[instance.menus.first[m] : instance.menus.first[m + 1]]}
    needs = np.array([instance.needs[instance.contents.needs[c]] for c in sorted(rows)])
    for i, supply in enumerate(instance.supplies):
        if (needs[:, i] > supply.total[-1] + 1e-9).all():
            return f"part {supply.part}, {needs[:, i].min():g} needed and {supply.total[-1]:g} to be had"
    return "its parts come too late for its windows"


def _why_not(programme: Programme, mine: Ints, free: Floats) -> str:
    """What keeps a loom with options from being booked: the limit that most of them would break."""
    if programme.lookup.fits(free, mine).any():
        return "leaving it over costs the mill less than any date that is free"
    matrix = programme.lookup.matrix(mine).tocoo()
    lacks = matrix.data > free[matrix.row] + 1e-6
    block = np.searchsorted(programme.rows.base, matrix.row[lacks], side="right") - 1
    blocked = {int(b): np.unique(matrix.col[lacks][block == b]).size for b in np.unique(block)}
    worst = max(blocked, key=lambda b: (blocked[b], -b))
    return f"{_limit_words(programme.instance, programme.rows, worst)} taken in its windows by looms for which that saves more"


def _limit_words(instance: Instance, rows: Rows, block: int) -> str:
    if block >= rows.pools:
        return f"no kit: part {rows.blocks[block].name} is"
    pool = instance.pools[block]
    return {
        PoolKind.CREWS: f"no crew: every {pool.name} crew is", PoolKind.HEADS: f"no {pool.name}: all are",
        PoolKind.STOPPED: "the looms that may be stopped at once are", PoolKind.TOOL: f"no {pool.name}: all are",
    }[pool.kind]  # fmt: skip


def other_dates(programme: Programme, chosen: Ints) -> Iterator[OtherDate]:
    """For each booked loom the cheapest other starts if it alone moved, one a day."""
    options, instance = programme.options, programme.instance
    used = programme.used(chosen[chosen != LEFT])
    for number in np.flatnonzero(chosen != LEFT):
        mine = programme.options_of(int(number))
        mine = mine[np.argsort(options.cost[mine], kind="stable")[:_TRIED]]
        now = int(chosen[number])
        without = np.maximum(0.0, used - programme.used(np.array([now])))
        fits = mine[programme.lookup.fits(programme.rows.free(without), mine)]
        span = times(instance, options, fits)
        seen = {int(times(instance, options, np.array([now])).start[0]) // 48}
        told = 0
        for n, i in enumerate(fits):
            on = int(span.start[n]) // 48
            if on in seen or told == OTHER_DATES:
                continue
            seen.add(on)
            told += 1
            window = instance.windows.items[options.window[i]]
            yield OtherDate(
                window.key, window.number, window.kind, instance.contents.items[options.content[i]].choices,
                instance.grid.moment(int(span.start[n])), instance.grid.moment(int(span.end[n])),
                float(options.cost[i] - options.cost[now]),
            )  # fmt: skip


def scarcity(programme: Programme, price: Floats) -> list[ScarcityPrice]:
    """What one more of something in an ISO week would save: an hour of a crew, a trade or a tool, averaged over the
    week's working time; a part that could be used from that week on. Prices of the relaxation, so indications."""
    found = []
    for b, block in enumerate(programme.rows.blocks):
        of_block = price[programme.rows.base[b] : programme.rows.base[b + 1]]
        if not of_block.size or of_block.max() < 1e-6:
            continue
        weeks = np.array([iso_week(_local_day(programme.instance, int(slot))) for slot in block.slot])
        if b >= programme.rows.pools:
            onward = np.cumsum(of_block[::-1])[::-1]
            found += [
                ScarcityPrice(block.name, str(week), float(onward[weeks == week].max())) for week in np.unique(weeks)
            ]
        else:
            name = _price_name(programme.instance, b)
            found += [
                ScarcityPrice(name, str(week), float(of_block[weeks == week].mean() * 2)) for week in np.unique(weeks)
            ]
    return [item for item in found if item.price > 0.005]


def _local_day(instance: Instance, slot: int):
    return instance.grid.moment(slot).astimezone(instance.grid.zone).date()


def _price_name(instance: Instance, block: int) -> str:
    pool = instance.pools[block]
    if pool.kind is PoolKind.CREWS:
        return f"{pool.name} crew-hour"
    return "hour of one loom more stopped" if pool.kind is PoolKind.STOPPED else f"{pool.name} hour"
