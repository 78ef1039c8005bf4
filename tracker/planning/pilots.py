"""Which loom of a machine type goes first, and from when the others may follow (planning.md, section 6)."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

import numpy as np

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking
from tracker.planning.grid import Ints
from tracker.planning.instance import Instance
from tracker.planning.options import Dropped, Options, times

EARLY_DAYS = 21
"""A pilot that the mill does not name is the loom with the cheapest option that ends within these days."""


@dataclass(frozen=True)
class Pilots:
    """Pilots still to be planned, and when types whose pilot is known are open."""

    looms: Ints
    """Loom numbers of the instance."""
    opens: Mapping[str, datetime]
    """Machine type → from when its looms may start."""
    firm: frozenset[LoomKey]
    """Firm bookings that are the pilots of their types."""


def find_pilots(instance: Instance, options: Options, firm: Mapping[LoomKey, Booking]) -> Pilots:
    """One pilot for every machine type that has none behind it."""
    terms = instance.mill.terms
    if not terms.soak_days:
        return Pilots(np.zeros(0, dtype=np.int32), {}, frozenset())
    soak = timedelta(days=terms.soak_days)
    opens: dict[str, datetime] = {}
    looms: list[int] = []
    leaders: set[LoomKey] = set()
    for machine_type, members in _by_type(instance).items():
        ended = _ended(instance, machine_type)
        leader = _firm_leader(instance, firm, members)
        if ended is not None:
            opens[machine_type] = ended + soak
        elif leader is not None:
            leaders.add(leader)
            opens[machine_type] = firm[leader].end + soak
        elif (loom := _choose(instance, options, machine_type, members)) is not None:
            looms.append(loom)
    return Pilots(np.array(sorted(looms), dtype=np.int32), opens, frozenset(leaders))


def _by_type(instance: Instance) -> dict[str, list[int]]:
    found: dict[str, list[int]] = {}
    for number, key in enumerate(instance.looms):
        found.setdefault(instance.mill.looms[key].machine_type, []).append(number)
    return found


def _ended(instance: Instance, machine_type: str) -> datetime | None:
    """The earliest end of a conversion of the type that is done or in work; long ago where one is signed off."""
    problem, mill = instance.problem, instance.mill
    of_type = {key for key, loom in mill.looms.items() if loom.machine_type == machine_type}
    if of_type & problem.signed_off:
        return problem.as_of - timedelta(days=mill.terms.soak_days)
    ends = [at for key, at in problem.converted.items() if key in of_type]
    ends += [_in_work_end(instance, item.key, item.remaining_slots) for item in problem.in_work if item.key in of_type]
    return min(ends, default=None)


def _in_work_end(instance: Instance, key: LoomKey, slots: int) -> datetime:
    work = instance.clocks[instance.halls.index(key.hall)].work
    first = int(np.searchsorted(work, instance.grid.first_slot(instance.problem.as_of)))
    held = work[first : first + slots]
    return instance.grid.moment(int(held[-1]) + 1) if held.size else instance.problem.as_of


def _firm_leader(instance: Instance, firm: Mapping[LoomKey, Booking], members: list[int]) -> LoomKey | None:
    """The firm booking of a type that goes first: the one published as its pilot, else the earliest."""
    bookings = [firm[instance.looms[i]] for i in members if instance.looms[i] in firm]
    if not bookings:
        return None
    return min(bookings, key=lambda booking: (not booking.pilot, booking.start, booking.key.sort_key)).key


def _choose(instance: Instance, options: Options, machine_type: str, members: list[int]) -> int | None:
    """The loom that the mill names, else the one with the cheapest option ending early, else the cheapest at all."""
    mine = np.flatnonzero(np.isin(options.loom, members))
    if not mine.size:
        return None
    named = instance.mill.terms.pilots.get(machine_type)
    for number in np.unique(options.loom[mine]):
        if instance.looms[number].loom == named:
            return int(number)
    limit = max(instance.earliest_h, instance.start_h) + EARLY_DAYS * 24
    early = mine[times(instance, options, mine).end * 0.5 <= limit]
    pool = early if early.size else mine
    return int(options.loom[pool[np.argmin(options.cost[pool])]])


def only(options: Options, looms: Ints) -> Options:
    """The options of these looms."""
    mask = np.isin(options.loom, looms)
    return replace(options.keep(mask, Dropped.PILOT), dropped=options.dropped)


def followers(instance: Instance, options: Options, pilots: Ints, opens: Mapping[str, datetime]) -> Options:
    """The options of all other looms that start once their type is open; a type without pilot stays shut."""
    types = [instance.mill.looms[key].machine_type for key in instance.looms]
    never = np.iinfo(np.int32).max
    if not instance.mill.terms.soak_days:
        return options
    first = np.array([instance.grid.first_slot(opens[t]) if t in opens else never for t in types], dtype=np.int64)
    others = options
    if pilots.size:
        mask = ~np.isin(options.loom, pilots)
        others = replace(options.keep(mask, Dropped.PILOT), dropped=options.dropped)
    return others.keep(times(instance, others).start >= first[others.loom], Dropped.PILOT)
