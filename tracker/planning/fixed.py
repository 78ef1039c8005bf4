"""What the planner has no say in: conversions in work, firm bookings, pilots once they are planned."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, CostTerms
from tracker.domain.windows import Window
from tracker.domain.words import fold
from tracker.domain.work import WorkContent
from tracker.planning.contents import Profile, profile
from tracker.planning.costs import COST_TERMS, Batch
from tracker.planning.grid import Floats
from tracker.planning.instance import BEAM_OUTS, KINDS, Instance
from tracker.planning.pools import PoolKind
from tracker.planning.rows import Rows


@dataclass(frozen=True)
class Fixed:
    """Fixed conversions and what they use; `used` has shape (rows,)."""

    bookings: Mapping[LoomKey, Booking]
    used: Floats


def firm_bookings(instance: Instance) -> dict[LoomKey, Booking]:
    """Bookings of the last published plan that start from now on, at most the firm hours of running time ahead, on
    looms still to be planned and not released (planning.md, section 7)."""
    problem = instance.problem
    if problem.previous is None or not problem.hold_firm:
        return {}
    open_ = set(instance.looms) - problem.released
    return {b.key: b for b in problem.previous.bookings if b.key in open_ and is_firm(instance, b)}


def is_firm(instance: Instance, booking: Booking) -> bool:
    """Whether a booking starts within the firm period."""
    as_of = instance.problem.as_of
    running = instance.clocks[instance.halls.index(booking.key.hall)].running
    hours = np.array([instance.grid.hours(as_of), instance.grid.hours(booking.start)])
    now, start = running.elapsed(hours)
    return booking.start >= as_of and start - now <= instance.mill.terms.firm_h + 1e-9


def fixed_conversions(instance: Instance, rows: Rows) -> Fixed:
    """Conversions in work and firm bookings, these at what they cost by the data of today."""
    used = np.zeros(rows.upper.size)
    as_of = instance.grid.first_slot(instance.problem.as_of)
    for item in instance.problem.in_work:
        held = _profile(instance, item.content, item.remaining_slots)
        _take(instance, rows, used, item.key.hall, as_of, held)
    bookings = {key: _today(instance, booking) for key, booking in firm_bookings(instance).items()}
    for key, booking in bookings.items():
        content = content_of(instance, booking)
        start = instance.grid.first_slot(booking.start)
        _take(instance, rows, used, key.hall, start, _profile(instance, content, booking.slots))
        needs = content.parts if content else booking.parts
        _take_parts(instance, rows, used, start, needs, instance.problem.issued.get(key, {}))
    return Fixed(bookings, used)


def content_of(instance: Instance, booking: Booking) -> WorkContent | None:
    """The work of a booking by today's scope; None where its window kind or choices are no longer there."""
    contents = instance.problem.contents.get(booking.key, {}).get(booking.kind, ())
    return next((content for content in contents if content.choices == booking.choices), None)


def _profile(instance: Instance, content: WorkContent | None, slots: int) -> Profile:
    """The last slots of a content; its crew only where there is none."""
    if content is None:
        return Profile(slots, (), ())
    return profile(content, instance.mill.terms.lead_trade).tail(slots)


def _take(instance: Instance, rows: Rows, used: Floats, hall: str, start_slot: int, held: Profile) -> None:
    """Book what a conversion holds from the first working slot at or after `start_slot`."""
    h = instance.halls.index(hall)
    position = int(np.searchsorted(instance.clocks[h].work, start_slot))
    holds = [(PoolKind.CREWS, "", 0, held.slots, 1), (PoolKind.STOPPED, "", 0, held.slots, 1)]
    holds += [(PoolKind.HEADS, hold.what, hold.first, hold.past, hold.amount) for hold in held.trades]
    holds += [(PoolKind.TOOL, hold.what, hold.first, hold.past, hold.amount) for hold in held.tools]
    for kind, what, first, past, amount in holds:
        for b, pool in enumerate(instance.pools):
            if pool.kind is kind and (not what or fold(pool.name) == fold(what)):
                at = rows.blocks[b].row_at[h][position + first : position + past] + rows.base[b]
                used[at] += amount


def _take_parts(
    instance: Instance, rows: Rows, used: Floats, start: int, needs: Mapping[str, float], issued: Mapping[str, float]
) -> None:
    for i, supply in enumerate(instance.supplies):
        still = max(0.0, needs.get(supply.part, 0.0) - issued.get(supply.part, 0.0))
        first = int(supply.step_at(np.array([start]))[0])
        base, past = rows.base[rows.pools + i], rows.base[rows.pools + i + 1]
        used[base + first : past] += still


def _today(instance: Instance, booking: Booking) -> Booking:
    """A firm booking with the window, end and cost that the data of today give it; as published where they give none."""
    loom, content = instance.looms.index(booking.key), content_of(instance, booking)
    window = _window(instance, loom, booking)
    if content is None or window is None:
        return replace(booking, firm=True)
    h = instance.halls.index(booking.key.hall)
    clock, start = instance.clocks[h], instance.grid.first_slot(booking.start)
    number = next(i for i in _menu(instance, window) if instance.contents.items[i].choices == booking.choices)
    position = int(np.searchsorted(clock.work, start))
    last = position + int(instance.contents.slots[number]) - 1
    if last >= clock.work.size or clock.work[position] != start:
        return replace(booking, firm=True)
    end = int(clock.work[last]) + 1
    batch = Batch(instance, clock, *(np.array([value], dtype=np.int32) for value in (window, number, start, end)))
    item = instance.windows.items[window]
    return replace(
        booking, window=item.number, end=instance.grid.moment(end), slots=int(instance.contents.slots[number]),
        labour_h=content.labour_h, parts=content.parts, beam_out_p50=expected(item), firm=True,
        cost=CostTerms(*(float(term(batch)[0]) for term in COST_TERMS)),
    )  # fmt: skip


def _menu(instance: Instance, window: int):
    menu = instance.windows.menu[window]
    return instance.menus.flat[instance.menus.first[menu] : instance.menus.first[menu + 1]]


def _window(instance: Instance, loom: int, booking: Booking) -> int | None:
    """The window of today that a booking was made for: of its kind, the one nearest to where it was expected (window
    numbers start again with every new warp)."""
    table = instance.windows
    mine = np.flatnonzero((table.loom == loom) & (table.kind == KINDS.index(booking.kind)))
    if not mine.size:
        return None
    meant = instance.grid.hours(booking.beam_out_p50 or booking.start)
    return int(mine[np.argmin(np.abs(table.mean_h[mine] - meant))])


def expected(window: Window):
    """The P50 of a beam-out; None for windows without one."""
    return window.p50_at if window.kind in BEAM_OUTS else None
