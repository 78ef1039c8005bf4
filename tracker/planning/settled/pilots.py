"""Pilots: the first loom of a machine type, decided before the rest of its type (MODEL.md, section 6)."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

import numpy as np

from tracker.domain.mill import LoomKey
from tracker.domain.windows import WindowKind
from tracker.errors import Message, message
from tracker.planning.model.grid import SLOT_H, Bools, Ints
from tracker.planning.model.instance import Instance
from tracker.planning.model.numbered import KINDS
from tracker.planning.model.options import Dropped, Options, attendable, attended, times
from tracker.planning.model.programme import Control, make_programme
from tracker.planning.result.reasons import why_none
from tracker.planning.search.solver import optimise
from tracker.planning.settled.given import in_work_end
from tracker.planning.settled.taking import Decided, less, of_options
from tracker.planning.settled.waiting import cost_of_type, opens_after, worth_piloting

WEEKS = 3
"""A pilot that the mill does not name ends in the first weeks, where it can."""
_NEVER = 1e7
"""Added to the cost of leaving a pilot over: its whole type waits for it."""


@dataclass(frozen=True)
class Opening:
    """What the pilots leave to decide."""

    instance: Instance
    """Less what the pilots hold."""
    options: Options
    """Of the looms that are not fixed, none before its type's pilot has run for the soak time."""
    decided: list[Decided]
    """Firm bookings, those held, and pilots."""
    pilots: frozenset[int]
    """Looms that are the first of their type, fixed or still to be decided (a type of one loom)."""
    notes: tuple[Message, ...]
    opens: Ints
    """By loom, the slot from which it may start after its type's pilot."""
    alone: frozenset[int] = frozenset()
    """Looms that can be pilots only without the electrician throughout."""


@dataclass(frozen=True)
class _Type:
    name: str
    looms: Ints
    """Its looms to plan."""
    opens: int | None
    """Slot from which its looms may start by a conversion that is done or in work; None = it needs a pilot."""


def decide_pilots(
    instance: Instance, options: Options, firm: list[Decided], control: Control, held: Sequence[Decided] = ()
) -> Opening:
    """Choose and plan the pilots, and hold back the rest of their types. What is `held` is taken out already and waits for its
    pilot like any other."""
    settled = [*firm, *held]
    if not instance.mill.terms.soak_days:
        options = options.only(~np.isin(options.loom, [item.loom for item in held]))
        return Opening(instance, options, settled, frozenset(), (), np.zeros(len(instance.looms), dtype=np.int64))
    types, every = _types(instance), options
    able = options.only(_before_held(instance, options, types, held))
    may, alone = _attended(instance, able, types)
    worth = _worth_piloting(instance, able, types, may)
    if instance.mill.terms.pilots_for_type:
        able = _priced_by_type(instance, able, types)
    able = able.only(worth)
    chosen = {kind.name: _pilot(instance, able, kind, firm, held) for kind in types if kind.opens is None}
    pilots = {loom for loom in chosen.values() if loom is not None}
    waited_for = {chosen.get(kind.name) for kind in types if kind.looms.size > 1}
    to_plan = pilots - {item.loom for item in settled}
    planned = _plan(instance, _with_them(instance, able, to_plan - alone), sorted(to_plan & waited_for), control)
    for taken in planned:
        instance = less(instance, taken)
    decided = [*settled, *planned]
    first = _opens(instance, types, chosen, decided)
    options = options.only(~np.isin(options.loom, [item.loom for item in decided]))
    options = _with_them(instance, options, to_plan - waited_for - alone)
    options = options.keep(times(instance, options).start >= first[options.loom], Dropped.PILOT)
    notes = tuple(note for kind in types if (note := _note(instance, every, kind, chosen.get(kind.name))))
    return Opening(instance, options, decided, frozenset(pilots), notes, first, frozenset(alone))


def _before_held(instance: Instance, options: Options, types: list[_Type], held: Sequence[Decided]) -> Bools:
    """Which options the pilot of a type may take so that what is held of it need not wait: those that have run for the soak
    time when the first of them starts, and that first one itself. The pilot that the mill names may take any."""
    may = np.ones(len(options), dtype=bool)
    for kind in types:
        mine = sorted((item for item in held if item.loom in kind.looms), key=lambda item: (item.start, item.loom))
        if mine and kind.opens is None:
            in_time = opens_after(instance, times(instance, options).end) <= mine[0].start
            free = [mine[0].loom, *_named_looms(instance, kind)]
            may &= ~np.isin(options.loom, kind.looms) | in_time | np.isin(options.loom, free)
    return may


def _attended(instance: Instance, options: Options, types: list[_Type]) -> tuple[Bools, set[int]]:
    """Which options the pilots may take so that the electrician can be there throughout, and the looms that can be pilots only
    without: all of a type where that is so of all of them, and the one that the mill names."""
    may, alone = attendable(instance, options), set[int]()
    for kind in types:
        for looms in (kind.looms.tolist(), _named_looms(instance, kind)):
            mine = np.isin(options.loom, looms)
            if kind.opens is None and not may[mine].any():
                may |= mine
                alone |= set(looms)
    return may, alone


def _worth_piloting(instance: Instance, options: Options, types: list[_Type], may: Bools) -> Bools:
    """Which of the options that pilots may take are worth it, once a plan is published."""
    worth = may.copy()
    for kind in types:
        mine = np.isin(options.loom, kind.looms)
        if kind.opens is None:
            of_type = options.only(mine)
            named = np.isin(of_type.loom, _named_looms(instance, kind))
            worth[mine] &= worth_piloting(instance, of_type, kind.looms, named, may[mine])
    return worth


def _priced_by_type(instance: Instance, options: Options, types: list[_Type]) -> Options:
    """With what the whole type would cost at least with each option as its pilot."""
    cost = options.cost.copy()
    for kind in types:
        mine = np.isin(options.loom, kind.looms)
        if kind.opens is None and mine.any():
            cost[mine] = cost_of_type(instance, options.only(mine))
    return replace(options, cost=cost)


def _types(instance: Instance) -> list[_Type]:
    names = [instance.mill.looms[key].machine_type for key in instance.looms]
    return [
        _Type(name, np.flatnonzero([other == name for other in names]), _opened(instance, name))
        for name in sorted(set(names))
    ]


def _opened(instance: Instance, name: str) -> int | None:
    """From when looms of the type may start by what was converted already or is in work."""
    problem = instance.problem

    def of_type(key: LoomKey) -> bool:
        return instance.mill.looms[key].machine_type == name

    if any(of_type(key) for key in problem.signed_off):
        return 0
    ends = [at for key, at in problem.converted.items() if of_type(key)]
    ends += [in_work_end(instance, item) for item in problem.in_work if of_type(item.key)]
    return _after_soak(instance, min(ends)) if ends else None


def _after_soak(instance: Instance, end: datetime) -> int:
    return instance.grid.first_slot(end + timedelta(days=instance.mill.terms.soak_days))


def _pilot(
    instance: Instance, options: Options, kind: _Type, firm: list[Decided], held: Sequence[Decided]
) -> int | None:
    """The loom that the mill names, else one whose booking is firm, else the published pilot where that is held, else the one
    with the best option for a pilot; None where the type has no option at all."""
    mine = np.flatnonzero(np.isin(options.loom, kind.looms))
    able = set(options.loom[mine].tolist()) | {item.loom for item in firm}
    named = _named_looms(instance, kind)
    if able.intersection(named):
        return min(able.intersection(named))
    booked = [item for item in firm if item.loom in kind.looms]
    if booked:
        return min(booked, key=lambda item: (not (item.firm and item.firm.pilot), item.end, item.loom)).loom
    was = {key for key, old in instance.problem.held_bookings.items() if old.pilot}
    if kept := [item.loom for item in held if item.loom in kind.looms and instance.looms[item.loom] in was]:
        return kept[0]
    if not mine.size:
        return None
    late, cost = _lateness(instance, options, mine), options.cost[mine]
    rare = ~np.isin(options.loom[mine], _commonest(instance, kind))
    best = np.lexsort((cost, _mid_warp(instance, options, mine), rare, late))[0]
    return int(options.loom[mine[best]])


def _lateness(instance: Instance, options: Options, index: Ints) -> Ints:
    """0 for what ends in the first weeks, else the slot of the end."""
    end = times(instance, options, index).end
    return np.where(end <= _first_weeks(instance), 0, end)


def _mid_warp(instance: Instance, options: Options, index: Ints) -> Bools:
    return instance.windows.kind[options.window[index]] == KINDS.index(WindowKind.MID_WARP)


def _commonest(instance: Instance, kind: _Type) -> list[int]:
    """The looms of the type to plan whose variant has the most of them (several variants, where they are as many)."""
    variant = {loom: instance.problem.variants.get(instance.looms[loom], 0) for loom in kind.looms.tolist()}
    many = Counter(variant.values())
    return [loom for loom, number in variant.items() if many[number] == max(many.values())]


def _named_looms(instance: Instance, kind: _Type) -> list[int]:
    """The loom of the type that the mill names, where it is to be planned (in several halls: each of that number)."""
    return [loom for loom in kind.looms.tolist() if instance.looms[loom].loom == _named(instance, kind)]


def _named(instance: Instance, kind: _Type) -> str | None:
    return instance.mill.terms.pilots.get(kind.name)


def _first_weeks(instance: Instance) -> int:
    """The slot at which they are over."""
    return int((instance.earliest_h + WEEKS * 7 * 24) / SLOT_H)


def _note(instance: Instance, options: Options, kind: _Type, pilot: int | None) -> Message | None:
    named = _named(instance, kind)
    if kind.opens is not None or not named or (pilot is not None and instance.looms[pilot].loom == named):
        return None
    mine = _named_looms(instance, kind)
    why = why_none(instance, options, mine[0], 0) if mine else message("not-of-its-type", machine_type=kind.name)
    instead = None if pilot is None else instance.looms[pilot]
    return message("pilot-not-named", named=named, machine_type=kind.name, why=why, instead=instead)


def _with_them(instance: Instance, options: Options, pilots: Iterable[int]) -> Options:
    """The options, those of these pilots with whoever stays with them throughout, where that is possible."""
    mine = np.isin(options.loom, list(pilots))
    there = ~mine
    there[mine] = attendable(instance, options.only(mine))
    options, mine = options.only(there), mine[there]
    content, cost = options.content.copy(), options.cost.copy()
    with_them = attended(instance, options.only(mine))
    content[mine], cost[mine] = with_them.content, with_them.cost
    return replace(options, content=content, cost=cost)


def _plan(instance: Instance, options: Options, pilots: Iterable[int], control: Control) -> list[Decided]:
    """Plan the pilots by themselves: in the first weeks where there is such an option, in a beam change or standing window
    where there is one of those; anywhere, where that leaves one over."""
    mine, every = np.isin(options.loom, list(pilots)), np.arange(len(options))
    tier = 2 * (_lateness(instance, options, every) > 0) + _mid_warp(instance, options, every)
    best = np.full(len(instance.looms), tier.max(initial=0))
    np.minimum.at(best, options.loom, tier)
    found = _best(instance, options.only(mine & (tier == best[options.loom])), control)
    missing = mine & ~np.isin(options.loom, [item.loom for item in found])
    if not missing.any():
        return found
    for item in found:
        instance = less(instance, item)
    return [*found, *_best(instance, options.only(missing), control)]


def _best(instance: Instance, options: Options, control: Control) -> list[Decided]:
    """The pilots are few: planned to the end, and booked wherever they can be."""
    dear = replace(instance, left_cost=instance.left_cost + _NEVER)
    chosen = optimise(make_programme(dear, options), replace(control, gap=0.0, tell=lambda *_: None)).chosen
    return of_options(instance, options, chosen[chosen >= 0])


def _opens(instance: Instance, types: list[_Type], chosen: dict[str, int | None], decided: list[Decided]) -> Ints:
    """By loom, the slot from which it may start."""
    opens = np.zeros(len(instance.looms), dtype=np.int64)
    ends = {item.loom: item.end for item in decided}
    for kind in types:
        pilot = chosen.get(kind.name)
        if kind.opens is not None:
            opens[kind.looms] = kind.opens
        elif pilot in ends:
            opens[kind.looms] = _after_soak(instance, instance.grid.moment(ends[pilot]))
        elif kind.looms.size > 1:
            opens[kind.looms] = instance.grid.slots
    return opens
