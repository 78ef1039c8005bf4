"""Firm bookings: which they are, how they stay, and why one cannot (MODEL.md, section 7).

A firm booking stays as it was published: its start, its choices, its working slots, and when it needs whom. Where its
work has become longer since, it overruns, and where the hours of its crews have changed its end follows them. One that
cannot stay is planned anew.
"""

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime

import numpy as np

from tracker.domain.plan import Booking
from tracker.domain.shifts import can_convert, crews_of
from tracker.errors import Message, message
from tracker.planning.model.contents import Profile, profile
from tracker.planning.model.grid import SLOT_H
from tracker.planning.model.instance import Instance
from tracker.planning.model.numbered import KINDS
from tracker.planning.model.options import AFTER_SLOTS, BEFORE_H
from tracker.planning.settled.needed import by_needs, pause_slots, same_hours
from tracker.planning.settled.taking import Decided, lacks, nothing, occupy, shortages, without, worked

_PAST = 1e-6
"""A span ends before its end, hours."""


def firm_bookings(instance: Instance) -> dict[int, Booking]:
    """Loom → its booking of the last published plan that must stay: it starts from now on, at most the firm hours of
    running time ahead, and is not released. Those whose crews are there come first, then in order of their start: where a
    crew falls ill, its own bookings give way to those of the others."""
    problem = instance.problem
    if problem.previous is None or not problem.hold_firm:
        return {}
    number = {key: i for i, key in enumerate(instance.looms) if key not in problem.released}
    old = sorted(problem.previous.bookings, key=lambda b: (not _crews_there(instance, b), b.start, b.key.sort_key))
    return {number[b.key]: b for b in old if b.key in number and is_firm(instance, number[b.key], b.start)}


def _crews_there(instance: Instance, old: Booking) -> bool:
    """Whether every crew that a booking names comes to work on its days."""
    mill, zone = instance.mill, instance.grid.zone
    rows = crews_of(mill, mill.terms.lead_trade)
    return all(
        any(can_convert(mill, row, turn.start.astimezone(zone).date()) for row in rows if row.crew == turn.crew)
        for turn in old.crews
    )


def is_firm(instance: Instance, loom: int, start: datetime) -> bool:
    """Whether a start lies ahead and within the firm hours, counted on the running calendar."""
    as_of = instance.problem.as_of
    running = instance.clocks[instance.hall_of[loom]].running
    now, then = running.elapsed(np.array([instance.grid.hours(as_of), instance.grid.hours(start)]))
    return start >= as_of and bool(then - now <= instance.mill.terms.firm_h + 1e-9)


def kept(instance: Instance, loom: int, old: Booking) -> Decided:
    """A firm booking as it was first booked, with the window that today's data give it: as many working slots, and in
    them whom and what it needed then. What it has overrun by since comes with `overrun`."""
    grid, work = instance.grid, instance.clocks[instance.hall_of[loom]].work
    content, start = _content(instance, loom, old), grid.first_slot(old.start)
    then = None
    if content >= 0:
        then = profile(
            old.as_booked(instance.contents.items[content]), instance.mill.terms.lead_trade, old.pause is not None
        )
    slots = min(old.slots, then.slots) if then else old.slots
    pause, end = pause_slots(grid, old), grid.first_slot(old.end)
    positions = worked(work, start, pause)
    if slots <= positions.size and work[positions[0]] == start:
        end = int(work[positions[slots - 1]]) + 1
    held = then if then and not same_hours(work, instance.grid, old) else by_needs(work, instance.grid, old)
    return Decided(loom, _window(instance, loom, old), content, start, end, slots, old, held, pause)


def overrun(instance: Instance, taken: Decided) -> tuple[Decided, Instance, Message | None]:
    """A firm booking as long as its work is by now, at least as long as it was published; the instance less the crew that
    it holds beyond what was first booked, and what there is too little of for that."""
    hall = int(instance.hall_of[taken.loom])
    work = instance.clocks[hall].work
    past = int(np.searchsorted(work, taken.end))
    more = max(taken.firm.slots if taken.firm else 0, _slots_now(instance, taken)) - taken.slots
    beyond = np.arange(past, min(past + more, work.size))
    if not beyond.size:
        return taken, instance, None
    used = nothing(instance)
    occupy(used, instance, instance.looms[taken.loom], beyond, Profile(len(beyond), (), ()))
    longer = replace(taken, end=int(work[beyond[-1]]) + 1, slots=taken.slots + len(beyond))
    return longer, without(instance, used), next(shortages(instance, used), None)


def reshaped(instance: Instance, taken: Decided, short: Message | None) -> Iterator[Message]:
    """What is other than was published. `short`: what there is too little of for an overrun."""
    old, zone = taken.firm, instance.grid.zone
    if old is None:
        return
    if taken.content < 0:
        why = instance.problem.unplannable.get(old.key) or message("no-such-work")
        yield message("firm-as-published", loom=old.key, number=old.key.loom, why=why)
        return
    end, now = instance.grid.moment(taken.end), _slots_now(instance, taken)
    takes_h, booked_h = now * SLOT_H, old.slots * SLOT_H
    if end != old.end:
        yield message("firm-other-end", loom=old.key, end=end.astimezone(zone), booked=old.end.astimezone(zone),
                      why="longer" if now > old.slots else "hours", takes_h=takes_h, booked_h=booked_h)  # fmt: skip
    elif now < old.slots:
        yield message("firm-shorter", loom=old.key, booked_h=booked_h, takes_h=takes_h)
    if short:
        yield message("firm-overruns", loom=old.key, short=short)


def _slots_now(instance: Instance, taken: Decided) -> int:
    """The working slots of its work by today's data."""
    if taken.content < 0:
        return taken.slots
    content, parted = instance.contents.items[taken.content], taken.pause is not None
    return profile(content, instance.mill.terms.lead_trade, parted).slots


def _content(instance: Instance, loom: int, old: Booking) -> int:
    """The content with the booking's kind of window and choices; -1 = none."""
    menu = instance.menu_of[loom].get(old.kind)
    if menu is None:
        return -1
    entries = instance.menus.flat[instance.menus.first[menu] : instance.menus.first[menu + 1]]
    found = next((int(c) for c in entries if instance.contents.items[c].choices == old.choices), -1)
    return int(instance.contents.attended[found]) if found >= 0 and old.attended else found


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


def why_impossible(instance: Instance, taken: Decided) -> Message | None:
    """Why a firm booking is no longer possible, by itself or beside what is taken already; None where it is."""
    key, mill = instance.looms[taken.loom], instance.mill
    work = instance.clocks[instance.hall_of[taken.loom]].work
    if not np.isin(taken.start, work):
        return message("firm-no-crew", trade=mill.terms.lead_trade, hall=key.hall)
    if (work[worked(work, taken.start, taken.pause)] < taken.end).sum() < taken.slots:
        return message("firm-hours-end")
    if taken.start < instance.protected_slot[taken.loom]:
        return message("firm-protected", until=mill.looms[key].protected_until)
    if any(loom == taken.loom and first <= taken.start < past for loom, first, past in instance.ruled_out):
        return message("firm-ruled-out")
    return lacks(instance, taken)


def is_astray(instance: Instance, taken: Decided) -> bool:
    """Whether a firm booking starts where its beam-out would not let it start."""
    table, clock = instance.windows, instance.clocks[instance.hall_of[taken.loom]]
    if taken.window < 0 or not table.beam_out[taken.window]:
        return False
    start_h, mean_h = taken.start * SLOT_H, float(table.mean_h[taken.window])
    late = clock.position_at(np.array(start_h)) >= clock.position_at(np.array(mean_h)) + AFTER_SLOTS
    return bool(late) or start_h < mean_h - BEFORE_H
