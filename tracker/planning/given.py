"""What is fixed before anything is decided: looms in work, firm bookings, pilots once they are planned.

What they hold is taken out of the pools and supplies, never below none: a crew that fell ill or a receipt that slipped
leaves them where they are, and the plan says so.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime

import numpy as np

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking
from tracker.planning.contents import Profile, profile
from tracker.planning.grid import SLOT_H, Ints
from tracker.planning.instance import Instance, pool_holds
from tracker.planning.numbered import KINDS
from tracker.planning.options import AFTER_SLOTS, BEFORE_H, Options, times
from tracker.planning.problem import InWork
from tracker.planning.supplies import Supply

_PAST = 1e-6
"""A span ends before its end, hours."""


@dataclass(frozen=True)
class Taken:
    """A conversion that is decided."""

    loom: int
    window: int
    """Row of the window table; -1 = a firm booking whose window is no longer forecast."""
    content: int
    """Entry of the content table; -1 = a firm booking whose work the method no longer has."""
    start: int
    """Slot."""
    end: int
    """Slot after the last."""
    firm: Booking | None = None
    """The booking that it was published as, where it is firm."""


@dataclass(frozen=True)
class Given:
    instance: Instance
    """Less what is given."""
    firm: list[Taken]
    overrun: tuple[str, ...]
    """Firm bookings that today's data do not allow, in sentences that say what to lift."""
    astray: dict[LoomKey, datetime]
    """Loom of a firm booking that stays though its beam-out has left it → when that is expected now."""
    notes: tuple[str, ...]


def take_given(instance: Instance) -> Given:
    """Take out what looms in work and firm bookings hold, the bookings in order of their start: what the earlier ones
    leave must do for the later ones."""
    instance, notes = _without_work(instance)
    firm: list[Taken] = []
    overrun: list[str] = []
    astray: dict[LoomKey, datetime] = {}
    for loom, old in firm_bookings(instance).items():
        taken = _firm(instance, loom, old)
        why = _no_longer(instance, taken) or _lacks(instance, taken)
        if why:
            at = old.start.astimezone(instance.grid.zone)
            overrun.append(
                f"The firm booking of loom {old.key} at {at:%Y-%m-%d %H:%M} cannot be kept: {why}. "
                f"Release it (--release {old.key.loom}), or lift that limit."
            )
        elif _astray(instance, taken):
            astray[old.key] = instance.windows.items[taken.window].mean_at
        firm.append(taken)
        instance = less(instance, taken)
    return Given(instance, firm, tuple(overrun), astray, notes)


def of_options(instance: Instance, options: Options, index: Ints) -> list[Taken]:
    """The options at `index` as decided conversions."""
    span = times(instance, options, index)
    return [
        Taken(int(options.loom[i]), int(options.window[i]), int(options.content[i]), int(start), int(end))
        for i, start, end in zip(index, span.start, span.end, strict=True)
    ]


# ---- looms in work


def _without_work(instance: Instance) -> tuple[Instance, tuple[str, ...]]:
    used = _nothing(instance)
    for item in instance.problem.in_work:
        hall, first, held = _in_work(instance, item)
        _occupy(used, instance, hall, range(first, first + held.slots), held)
    notes = tuple(
        f"The looms in work need more {pool.name} than there is from {_local(instance, int(slots[0]))} on; they are "
        "taken to go on all the same."
        for pool, use in zip(instance.pools, used, strict=True)
        if (slots := np.flatnonzero(pool.over(use))).size
    )
    return _less(instance, used), notes


def _in_work(instance: Instance, item: InWork) -> tuple[int, int, Profile]:
    """Hall, first position and what is held of a loom in work."""
    hall = instance.halls.index(item.key.hall)
    first = int(np.searchsorted(instance.clocks[hall].work, instance.grid.first_slot(instance.problem.as_of)))
    if item.content is None:
        return hall, first, Profile(item.remaining_slots, (), ())
    return hall, first, profile(item.content, instance.mill.terms.lead_trade).tail(item.remaining_slots)


def in_work_end(instance: Instance, item: InWork) -> datetime:
    """When a loom in work will be done."""
    hall, first, held = _in_work(instance, item)
    work = instance.clocks[hall].work[first : first + held.slots]
    return instance.grid.moment(int(work[-1]) + 1) if work.size else instance.problem.as_of


# ---- firm bookings


def firm_bookings(instance: Instance) -> dict[int, Booking]:
    """Loom → its booking of the last published plan that must stay: it starts from now on, at most the firm hours of
    running time ahead, and is not released. In order of their start."""
    problem = instance.problem
    if problem.previous is None or not problem.hold_firm:
        return {}
    number = {key: i for i, key in enumerate(instance.looms) if key not in problem.released}
    old = sorted(problem.previous.bookings, key=lambda booking: (booking.start, booking.key.sort_key))
    return {number[b.key]: b for b in old if b.key in number and is_firm(instance, number[b.key], b.start)}


def is_firm(instance: Instance, loom: int, start: datetime) -> bool:
    """Whether a start lies ahead and within the firm hours, counted on the running calendar."""
    as_of = instance.problem.as_of
    running = instance.clocks[instance.hall_of[loom]].running
    now, then = running.elapsed(np.array([instance.grid.hours(as_of), instance.grid.hours(start)]))
    return start >= as_of and bool(then - now <= instance.mill.terms.firm_h + 1e-9)


def _firm(instance: Instance, loom: int, old: Booking) -> Taken:
    """A firm booking with the window and end that today's data give it; as published where they give none."""
    grid, work = instance.grid, instance.clocks[instance.hall_of[loom]].work
    content = _content(instance, loom, old)
    start, end = grid.first_slot(old.start), grid.first_slot(old.end)
    position = int(np.searchsorted(work, start))
    if content >= 0 and position < work.size and work[position] == start:
        last = position + int(instance.contents.slots[content]) - 1
        end = int(work[last]) + 1 if last < work.size else end
    return Taken(loom, _window(instance, loom, old), content, start, end, old)


def _content(instance: Instance, loom: int, old: Booking) -> int:
    """The content with the booking's kind of window and choices; -1 = none."""
    menu = instance.menu_of[loom].get(old.kind)
    if menu is None:
        return -1
    entries = instance.menus.flat[instance.menus.first[menu] : instance.menus.first[menu + 1]]
    return next((int(c) for c in entries if instance.contents.items[c].choices == old.choices), -1)


def _window(instance: Instance, loom: int, old: Booking) -> int:
    """The window that the booking was made for: of its kind, the one that holds its start or is nearest to the beam-out
    that was expected, since numbers start again with every new warp. -1 = none."""
    table = instance.windows
    mine = np.flatnonzero((table.loom == loom) & (table.kind == KINDS.index(old.kind)))
    if not mine.size:
        return -1
    meant = instance.grid.hours(old.beam_out_p50 or old.start)
    apart = np.maximum(table.starts_h[mine] - meant, meant - table.ends_h[mine] + _PAST)
    return int(mine[np.argmin(np.maximum(apart, 0.0))])


def _no_longer(instance: Instance, taken: Taken) -> str:
    """Why a firm booking by itself is no longer possible; nothing where it is."""
    key, mill = instance.looms[taken.loom], instance.mill
    work = instance.clocks[instance.hall_of[taken.loom]].work
    if taken.content < 0:
        return instance.problem.unplannable.get(key) or "the method no longer has a conversion with its choices"
    if not np.isin(taken.start, work):
        return f"no crew of the trade '{mill.terms.lead_trade}' works in {key.hall} at its start"
    if np.searchsorted(work, taken.end) - np.searchsorted(work, taken.start) < instance.contents.slots[taken.content]:
        return "its crews' time ends before it is done"
    if taken.start < instance.protected_slot[taken.loom]:
        return f"the loom is protected until {mill.looms[key].protected_until} included"
    return ""


def _astray(instance: Instance, taken: Taken) -> bool:
    """Whether a firm booking starts where its beam-out would not let it start."""
    table, clock = instance.windows, instance.clocks[instance.hall_of[taken.loom]]
    if taken.window < 0 or not table.beam_out[taken.window]:
        return False
    start_h, mean_h = taken.start * SLOT_H, float(table.mean_h[taken.window])
    late = clock.position_at(np.array(start_h)) >= clock.position_at(np.array(mean_h)) + AFTER_SLOTS
    return bool(late) or start_h < mean_h - BEFORE_H


def _lacks(instance: Instance, taken: Taken) -> str:
    """What there is too little of for a conversion beside what is taken out already; nothing where there is enough."""
    used = _nothing(instance)
    _occupy_taken(used, instance, taken)
    for pool, use in zip(instance.pools, used, strict=True):
        slots = np.flatnonzero(pool.over(use))
        if slots.size:
            return f"too little {pool.name} from {_local(instance, int(slots[0]))} on"
    for supply, quantity, step in _takes(instance, taken):
        least = supply.total[step:].min()
        if quantity > least + 1e-9:
            return f"it needs {quantity:g} of part {supply.part}, {least:g} can be there"
    return ""


# ---- taking out


def less(instance: Instance, taken: Taken) -> Instance:
    """The instance less what a conversion holds and takes."""
    used = _nothing(instance)
    _occupy_taken(used, instance, taken)
    supplies = [
        replace(s, total=np.maximum(0.0, s.total - np.where(np.arange(s.steps.size) >= step, quantity, 0.0)))
        for s, quantity, step in _takes(instance, taken)
    ]
    return replace(_less(instance, used), supplies=supplies)


def _takes(instance: Instance, taken: Taken) -> Iterator[tuple[Supply, float, int]]:
    """(supply, quantity, step from which it is missing) of each scarce part."""
    key = instance.looms[taken.loom]
    issued = instance.problem.issued.get(key, {})
    parts = taken.firm.parts if taken.content < 0 and taken.firm else instance.contents.items[taken.content].parts
    for supply in instance.supplies:
        quantity = max(0.0, parts.get(supply.part, 0.0) - issued.get(supply.part, 0.0))
        yield supply, quantity, int(supply.step_at(np.array([taken.start]))[0])


def _occupy_taken(used: list[Ints], instance: Instance, taken: Taken) -> None:
    hall = int(instance.hall_of[taken.loom])
    work = instance.clocks[hall].work
    positions = range(int(np.searchsorted(work, taken.start)), int(np.searchsorted(work, taken.end)))
    held = Profile(len(positions), (), ())
    if taken.content >= 0:
        held = replace(
            profile(instance.contents.items[taken.content], instance.mill.terms.lead_trade), slots=len(positions)
        )
    _occupy(used, instance, hall, positions, held)


def _occupy(used: list[Ints], instance: Instance, hall: int, positions: range, held: Profile) -> None:
    slots = instance.clocks[hall].work[positions.start : positions.stop]
    for hold in pool_holds(held, instance.pools):
        used[hold.pool][hall, slots[hold.first : hold.past]] += hold.amount


def _nothing(instance: Instance) -> list[Ints]:
    return [np.zeros_like(pool.own) for pool in instance.pools]


def _less(instance: Instance, used: list[Ints]) -> Instance:
    return replace(instance, pools=[pool.less(use) for pool, use in zip(instance.pools, used, strict=True)])


def _local(instance: Instance, slot: int) -> str:
    return f"{instance.grid.moment(slot).astimezone(instance.grid.zone):%Y-%m-%d %H:%M}"
