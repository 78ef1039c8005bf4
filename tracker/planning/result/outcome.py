"""The plan as the trade sees it: bookings with their cost terms, looms left over and why, other dates, prices."""

from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace

import numpy as np

from tracker.domain.calendars import iso_week
from tracker.domain.plan import Booking, CostTerms, OtherDate, ScarcityPrice
from tracker.errors import Message, message
from tracker.planning.model.costs import COST_TERMS, Batch
from tracker.planning.model.grid import Bools, Floats, Ints
from tracker.planning.model.instance import Instance
from tracker.planning.model.numbered import BEAM_OUTS
from tracker.planning.model.options import Options, times
from tracker.planning.model.pools import PoolKind
from tracker.planning.model.programme import LEFT, Programme, make_programme
from tracker.planning.settled.firm import is_firm
from tracker.planning.settled.taking import Decided

OTHER_DATES = 3
"""Alternatives that are told for each booking, each on another day."""
_TRIED = 400
"""Options of a loom, the cheapest first, among which they are looked for."""


def bookings_of(instance: Instance, taken: Sequence[Decided], pilots: frozenset[int]) -> list[Booking]:
    """Taken conversions as bookings, at what they cost by the data of today."""
    found: list[Booking] = []
    for hall, clock in enumerate(instance.clocks):
        mine = [item for item in taken if instance.hall_of[item.loom] == hall]
        priced = [item for item in mine if item.window >= 0 and item.content >= 0]
        columns = [(item.window, item.content, item.start, item.end) for item in priced]
        batch = Batch(instance, clock, *np.array(columns, dtype=np.int32).reshape(-1, 4).T)
        terms = np.stack([term(batch) for term in COST_TERMS], axis=1)
        found += [_booking(instance, item, terms[i], item.loom in pilots) for i, item in enumerate(priced)]
        outlived = [item for item in mine if item.firm and item not in priced]
        found += [_outlived(instance, item, item.firm, item.loom in pilots) for item in outlived if item.firm]
    return sorted(found, key=lambda booking: (booking.start, booking.key.sort_key))


def _outlived(instance: Instance, taken: Decided, old: Booking, pilot: bool) -> Booking:
    """A firm booking that has no window any more, at what it was published to cost."""
    return replace(old, firm=True, pilot=pilot, end=instance.grid.moment(taken.end), slots=taken.slots)


def _booking(instance: Instance, taken: Decided, terms: Floats, pilot: bool) -> Booking:
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
        slots=taken.slots,
        labour_h=taken.firm.labour_h if taken.firm else content.labour_h,
        parts=content.parts,
        cost=CostTerms(*(float(value) for value in terms)),
        firm=is_firm(instance, taken.loom, start),
        pilot=pilot,
        attended=pilot and content.holds_throughout(instance.mill.terms.pilot_trade),
        pause=(instance.grid.moment(taken.pause[0]), instance.grid.moment(taken.pause[1])) if taken.pause else None,
    )


def dates_of_held(
    instance: Instance, every: Options, decided: Sequence[Decided], opens: Ints, held: Collection[int]
) -> Iterator[OtherDate]:
    """The other dates of looms that were held: that they were asked to stay does not keep them from going elsewhere later.
    `every`: the options of all looms before any was held, `instance` likewise; `opens` as of the opening."""
    taken = [item for item in decided if not item.firm]
    if not any(item.loom in held for item in taken):
        return
    start = times(instance, every).start
    now = np.zeros(len(every), dtype=bool)
    for item in taken:
        first, past = np.searchsorted(every.loom, [item.loom, item.loom + 1])
        mine = slice(int(first), int(past))
        same = (every.window[mine] == item.window) & (every.content[mine] == item.content) & (start[mine] == item.start)
        now[mine] = same
    kept = (now | (start >= opens[every.loom])) & np.isin(every.loom, [item.loom for item in taken])
    programme = make_programme(instance, every.only(kept))
    chosen = np.full(programme.looms.size, LEFT)
    for option in np.flatnonzero(now[kept]):
        chosen[programme.number[option]] = option
    yield from other_dates(programme, chosen, held)


def other_dates(programme: Programme, chosen: Ints, of: Collection[int] | None = None) -> Iterator[OtherDate]:
    """For each booked loom (`of`: only these) the cheapest other starts if it alone moved, one a day."""
    options, instance = programme.options, programme.instance
    used = programme.used(chosen[chosen != LEFT])
    free = programme.rows.free(used)
    for number in np.flatnonzero(chosen != LEFT):
        if of is not None and programme.looms[number] not in of:
            continue
        mine = programme.options_of(int(number))
        mine = mine[np.argsort(options.cost[mine], kind="stable")[:_TRIED]]
        now = int(chosen[number])
        fits = mine[_fits_without(programme, used, free, now, mine)]
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


def _fits_without(programme: Programme, used: Floats, free: Floats, now: int, options: Ints) -> Bools:
    """Which options fit once the one taken now is given back; `used` and `free` are as before afterwards."""
    _, row, amount = programme.lookup.entries(np.array([now]))
    before = used[row]
    np.subtract.at(used, row, amount)
    used[row] = np.maximum(0.0, used[row])
    programme.rows.follow(free, used, row)
    fits = programme.lookup.fits(free, options)
    used[row] = before
    programme.rows.follow(free, used, row)
    return fits


def scarcity(programme: Programme, price: Floats) -> list[ScarcityPrice]:
    """What one more of something in an ISO week would save: an hour of a crew, a trade or a tool, averaged over the
    week's working time; a part that could be used from that week on. Prices of the relaxation, so indications."""
    found, grid = [], programme.instance.grid
    midnights = np.array([grid.day_start(day) for day in grid.days()])
    week_of = np.array([str(iso_week(day)) for day in grid.days()])
    pools_and_parts = programme.rows.pools + len(programme.instance.supplies)
    for b, block in enumerate(programme.rows.blocks[:pools_and_parts]):
        of_block = price[programme.rows.base[b] : programme.rows.base[b + 1]]
        if not of_block.size or of_block.max() < 1e-6:
            continue
        weeks = week_of[np.searchsorted(midnights, block.slot, side="right") - 1]
        if b >= programme.rows.pools:
            onward = np.cumsum(of_block[::-1])[::-1]
            found += [
                ScarcityPrice(message("scarce-part", part=block.name), week, float(onward[weeks == week].max()))
                for week in np.unique(weeks).tolist()
            ]
        else:
            name = _price_name(programme.instance, b)
            found += [
                ScarcityPrice(name, week, float(of_block[weeks == week].mean() * 2))
                for week in np.unique(weeks).tolist()
            ]
    return [item for item in found if item.price > 0.005]


def _price_name(instance: Instance, block: int) -> Message:
    pool = instance.pools[block]
    if pool.kind is PoolKind.CREWS:
        return message("scarce-crew-hour", trade=pool.name)
    if pool.kind is PoolKind.WEEK:
        return message("scarce-week", trade=pool.name)
    if pool.kind is PoolKind.SECTION:
        return message("scarce-section")
    return message("scarce-stopped") if pool.kind is PoolKind.STOPPED else message("scarce-hour", what=pool.name)
