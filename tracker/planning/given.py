"""What is fixed before anything is decided: looms in work, firm bookings, pilots once they are planned.

What they hold is taken out of the pools and supplies.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np

from tracker.domain.plan import Booking
from tracker.domain.windows import Window
from tracker.planning.contents import Profile, profile
from tracker.planning.grid import Ints
from tracker.planning.instance import Instance, pool_holds
from tracker.planning.problem import InWork


@dataclass(frozen=True)
class Fixed:
    """A conversion on which nothing is left to decide."""

    loom: int
    window: int
    """Row of the window table; -1 = its window is no longer forecast."""
    content: int
    """Entry of the content table."""
    start: int
    """Slot."""
    end: int
    """Slot after the last."""
    pilot: bool = False
    old: Booking | None = None
    """The firm booking that it is."""


def with_work(instance: Instance) -> tuple[Instance, tuple[str, ...]]:
    """The instance less what looms in work hold, and what they overrun, in sentences."""
    used = _nothing(instance)
    for item in instance.problem.in_work:
        hall, first, held = in_work_span(instance, item)
        _occupy(used, instance, hall, first, held)
    over = [
        f"The looms in work need more {pool.name} than there are from {_local(instance, int(slots[0]))}; "
        "they are taken to go on all the same."
        for pool, use in zip(instance.pools, used, strict=True)
        if (slots := np.flatnonzero(pool.over(use))).size
    ]
    return _less(instance, used), tuple(over)


def in_work_span(instance: Instance, item: InWork) -> tuple[int, int, Profile]:
    """Hall, first position and what is held of a loom in work."""
    hall = instance.halls.index(item.key.hall)
    first = int(np.searchsorted(instance.clocks[hall].work, instance.grid.first_slot(instance.problem.as_of)))
    if item.content is None:
        return hall, first, Profile(item.remaining_slots, (), ())
    return hall, first, profile(item.content, instance.mill.terms.lead_trade).tail(item.remaining_slots)


def in_work_end(instance: Instance, item: InWork) -> int:
    """The slot after the last of a loom in work."""
    hall, first, held = in_work_span(instance, item)
    work = instance.clocks[hall].work[: first + held.slots]
    return int(work[-1]) + 1 if held.slots and work.size else instance.grid.first_slot(instance.problem.as_of)


def firm_bookings(instance: Instance) -> dict[int, Booking]:
    """Loom → its booking of the last published plan that must stay: it starts from now on, at most the firm hours of
    running time ahead, and is not released."""
    problem = instance.problem
    if problem.previous is None or not problem.hold_firm:
        return {}
    number = {key: i for i, key in enumerate(instance.looms) if key not in problem.released}
    return {
        number[old.key]: old
        for old in sorted(problem.previous.bookings, key=lambda booking: (booking.start, booking.key.sort_key))
        if old.key in number and old.start >= problem.as_of and is_firm(instance, number[old.key], old.start)
    }


def is_firm(instance: Instance, loom: int, start) -> bool:
    """Whether a start lies within the firm hours, counted on the running calendar."""
    running = instance.clocks[instance.hall_of[loom]].running
    ahead = running.elapsed(np.array([instance.grid.hours(instance.problem.as_of), instance.grid.hours(start)]))
    return bool(ahead[1] - ahead[0] <= instance.mill.terms.firm_h + 1e-9)


def with_firm(instance: Instance) -> tuple[Instance, list[Fixed], dict[int, str]]:
    """The instance less what firm bookings hold, those that stand, and why the others cannot be kept.

    They are gone through in order of their start: what the earlier ones leave must do for the later ones.
    """
    kept: list[Fixed] = []
    broken: dict[int, str] = {}
    for loom, old in firm_bookings(instance).items():
        found = _fixed(instance, loom, old)
        if isinstance(found, Fixed) and not (why := lacks(instance, found)):
            kept.append(found)
            instance = less(instance, found)
        else:
            broken[loom] = found if isinstance(found, str) else why
    return instance, kept, broken


def _fixed(instance: Instance, loom: int, old: Booking) -> Fixed | str:
    """The firm booking on today's data, or why it cannot be kept."""
    grid, clock = instance.grid, instance.clocks[instance.hall_of[loom]]
    content = _content(instance, loom, old)
    if content is None:
        return instance.problem.unplannable.get(old.key) or "the method no longer has a conversion with its choices"
    start = grid.first_slot(old.start)
    position = int(np.searchsorted(clock.work, start))
    slots = int(instance.contents.slots[content])
    if grid.moment(start) != old.start or position == clock.work.size or clock.work[position] != start:
        return f"no crew of the trade '{instance.mill.terms.lead_trade}' works there any more at its start"
    if position + slots > clock.work.size:
        return "it would no longer end before the horizon"
    if start < instance.protected_slot[loom]:
        return f"the loom is protected until {instance.mill.looms[old.key].protected_until}"
    window = _window(instance, loom, old)
    return Fixed(loom, window, content, start, int(clock.work[position + slots - 1]) + 1, old=old)


def _content(instance: Instance, loom: int, old: Booking) -> int | None:
    """The content with the booking's kind of window and choices."""
    menu = instance.menu_of[loom].get(old.kind)
    if menu is None:
        return None
    entries = instance.menus.flat[instance.menus.first[menu] : instance.menus.first[menu + 1]]
    return next((int(c) for c in entries if instance.contents.items[c].choices == old.choices), None)


def _window(instance: Instance, loom: int, old: Booking) -> int:
    """The window of the same kind that has its number, else the one nearest to what the booking had in mind."""
    mine = np.flatnonzero(instance.windows.loom == loom)
    found: list[tuple[int, Window]] = [(int(w), instance.windows.items[w]) for w in mine]
    same = [(w, window) for w, window in found if window.kind == old.kind]
    if not same:
        return -1
    meant = old.beam_out_p50 or old.start
    return min(same, key=lambda pair: (abs(pair[1].p50_at - meant), pair[1].number != old.window))[0]


def less(instance: Instance, fixed: Fixed) -> Instance:
    """The instance less what a fixed conversion holds and takes."""
    used = _nothing(instance)
    _occupy_fixed(used, instance, fixed)
    supplies = [
        replace(supply, total=supply.total - np.where(np.arange(supply.steps.size) >= step, quantity, 0.0))
        for supply, quantity, step in _takes(instance, fixed)
    ]
    return replace(_less(instance, used), supplies=supplies)


def lacks(instance: Instance, fixed: Fixed) -> str:
    """What there is too little of for a fixed conversion beside what is taken out already; nothing if it has all."""
    used = _nothing(instance)
    _occupy_fixed(used, instance, fixed)
    for pool, use in zip(instance.pools, used, strict=True):
        slots = np.flatnonzero(pool.over(use))
        if slots.size:
            return f"too little {pool.name} from {_local(instance, int(slots[0]))} on"
    for supply, quantity, step in _takes(instance, fixed):
        if quantity > supply.total[step:].min() + 1e-9:
            return f"part {supply.part} is short: it needs {quantity:g}, {max(0.0, supply.total[step:].min()):g} are left"
    return ""


def _takes(instance: Instance, fixed: Fixed) -> Iterator[tuple]:
    """(supply, quantity, step from which it is missing) of each scarce part."""
    need = instance.needs[instance.contents.needs[fixed.content]]
    for supply, quantity in zip(instance.supplies, need, strict=True):
        yield supply, float(quantity), int(supply.step_at(np.array([fixed.start]))[0])


def _occupy_fixed(used: list[Ints], instance: Instance, fixed: Fixed) -> None:
    hall = int(instance.hall_of[fixed.loom])
    position = int(np.searchsorted(instance.clocks[hall].work, fixed.start))
    content = instance.contents.items[fixed.content]
    _occupy(used, instance, hall, position, profile(content, instance.mill.terms.lead_trade))


def _occupy(used: list[Ints], instance: Instance, hall: int, first: int, held: Profile) -> None:
    work = instance.clocks[hall].work
    for hold in pool_holds(held, instance.pools):
        used[hold.pool][hall, work[first + hold.first : first + hold.past]] += hold.amount


def _nothing(instance: Instance) -> list[Ints]:
    return [np.zeros_like(pool.own) for pool in instance.pools]


def _less(instance: Instance, used: list[Ints]) -> Instance:
    return replace(instance, pools=[pool.less(use) for pool, use in zip(instance.pools, used, strict=True)])


def _local(instance: Instance, slot: int) -> str:
    return f"{instance.grid.moment(slot).astimezone(instance.grid.zone):%Y-%m-%d %H:%M}"
