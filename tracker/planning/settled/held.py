"""Bookings that the planner was asked to hold: they keep start and choices, or it is said which limit does not let them
(MODEL.md, section 7)."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking
from tracker.errors import Message, PlanRefused, message
from tracker.planning.model.grid import Ints
from tracker.planning.model.instance import Instance
from tracker.planning.model.options import Dropped, Options, limit_met, times
from tracker.planning.settled.given import Given
from tracker.planning.settled.pilots import Opening
from tracker.planning.settled.taking import Decided, lacks, less, of_options


@dataclass
class Held:
    instance: Instance
    """Less what is held."""
    options: Options
    """Of the looms held only the one that they take."""
    taken: list[Decided] = field(default_factory=list)
    """By start; firm bookings are not among them."""
    refused: dict[LoomKey, Message] = field(default_factory=dict)
    """Loom → the limit that does not let its booking stay."""


def take_held(given: Given, options: Options) -> Held:
    """Take out the bookings to be held, the earlier first: what they leave must do for the later ones. `options` are of all
    looms but the firm ones, those of held looms whatever they cost."""
    instance, problem = given.instance, given.instance.problem
    held, number = Held(instance, options), {key: i for i, key in enumerate(instance.looms)}
    firm = {instance.looms[item.loom]: item for item in given.firm}
    booked, index = problem.held_bookings, np.zeros(0, dtype=np.int64)
    held.refused |= {key: message("hold-not-booked") for key in problem.held - booked.keys()}
    for old in sorted(booked.values(), key=lambda b: (b.start, b.key.sort_key)):
        loom = number.get(old.key)
        if loom is None:
            held.refused[old.key] = message("hold-not-to-plan")
        elif old.key in firm:
            held.refused |= _unlike(instance, firm[old.key], old)
        elif (found := _option(held.instance, options, loom, old)) is None:
            why = given.let_go.get(old.key) or limit_of(held.instance, loom, old)
            held.refused[old.key] = why or message("stay-dearer")
        else:
            (taken,) = of_options(held.instance, options, np.array([found]))
            taken = _attended_still(held.instance, taken, old)
            if short := lacks(held.instance, taken):
                held.refused[old.key] = message("hold-short", short=short)
            else:
                held.instance, index = less(held.instance, taken), np.append(index, found)
                held.taken.append(taken)
    others = ~np.isin(options.loom, [item.loom for item in held.taken])
    held.options = options.only(others | np.isin(np.arange(len(options)), index))
    return held


def _attended_still(instance: Instance, taken: Decided, old: Booking) -> Decided:
    """A pilot's booking with whoever stayed with it throughout, where they can."""
    again = replace(taken, content=int(instance.contents.attended[taken.content]))
    return again if old.attended and lacks(instance, again) is None else taken


def waiting(opening: Opening, held: Held) -> dict[LoomKey, Message]:
    """What is held although its type's pilot will not have run for the soak time by then."""
    instance = opening.instance
    late = [item for item in held.taken if item.start < opening.opens[item.loom] and item.loom not in opening.pilots]

    def why(item: Decided) -> Message:
        opens = int(opening.opens[item.loom])
        at = instance.grid.moment(opens).astimezone(instance.grid.zone) if opens < instance.grid.slots else None
        machine_type = instance.mill.looms[instance.looms[item.loom]].machine_type
        return message("hold-pilot", type=machine_type, days=instance.mill.terms.soak_days, at=at)

    return {instance.looms[item.loom]: why(item) for item in late}


def refuse(instance: Instance, refused: Mapping[LoomKey, Message]) -> None:
    """PlanRefused where a booking cannot be held; every one is named, by its start."""
    if not refused:
        return
    booked, zone = instance.problem.held_bookings, instance.grid.zone

    def line(key: LoomKey) -> Message:
        start = booked[key].start.astimezone(zone) if key in booked else None
        return message("cannot-hold", loom=key, start=start, why=refused[key])

    keys = sorted(refused, key=lambda key: (key in booked and booked[key].start.timestamp(), key.sort_key))
    found = tuple(map(line, keys))
    raise PlanRefused("holds-refused", found, first=found[0], more=len(found) - 1)


def _unlike(instance: Instance, taken: Decided, old: Booking) -> dict[LoomKey, Message]:
    """A firm booking that stays elsewhere than the one to be held."""
    firm = taken.firm
    if firm is None or (firm.start, firm.choices) == (old.start, old.choices):
        return {}
    return {old.key: message("hold-firm", start=firm.start.astimezone(instance.grid.zone), number=old.key.loom)}


def _option(instance: Instance, options: Options, loom: int, old: Booking) -> int | None:
    """The cheapest option with the start and the choices of a booking."""
    first, past = np.searchsorted(options.loom, [loom, loom + 1])
    mine = np.arange(first, past)
    choices = instance.contents.choices[options.content[mine]] == _choices(instance, old)
    mine = mine[choices & (times(instance, options, mine).start == instance.grid.first_slot(old.start))]
    return int(mine[np.argmin(options.cost[mine])]) if mine.size else None


def _choices(instance: Instance, old: Booking) -> int:
    """The number of a booking's choices; -1 where the method has them no more."""
    sets = instance.contents.choice_sets
    return sets.index(old.choices) if old.choices in sets else -1


def limit_of(instance: Instance, loom: int, old: Booking) -> Message | None:
    """Why no option of a loom has the start and the choices of a booking; None where only its cost may be why."""
    if why := next(_before_windows(instance, loom, old), None):
        return why
    met = limit_met(instance, loom, instance.grid.first_slot(old.start), _choices(instance, old))
    if met is None:
        return _no_window(instance, loom, old)
    match met.reason:
        case Dropped.HORIZON:
            return message("hold-hours-end")
        case Dropped.PROTECTED:
            return message("hold-protected", until=instance.mill.looms[old.key].protected_until)
        case Dropped.RULED_OUT:
            return message("hold-ruled-out")
        case Dropped.CLOSED:
            return message("hold-closed")
        case Dropped.UNWATCHED:
            return message("hold-unwatched")
    (way,) = of_options(instance, met.way, np.array([0]))
    short = lacks(instance, way)
    return message("hold-short", short=short) if short else None


def _before_windows(instance: Instance, loom: int, old: Booking) -> Iterator[Message]:
    """What keeps a booking from staying before its windows are looked at."""
    problem, start = instance.problem, instance.grid.first_slot(old.start)
    if old.start < problem.as_of:
        yield message("hold-past")
    if not problem.contents.get(old.key):
        yield message("hold-no-work", why=problem.unplannable.get(old.key))
    if _choices(instance, old) < 0 or old.kind not in instance.menu_of[loom]:
        yield message("hold-no-choice")
    if start not in instance.clocks[instance.hall_of[loom]].work:
        yield message("hold-no-crew", trade=instance.mill.terms.lead_trade, hall=old.key.hall)


def _no_window(instance: Instance, loom: int, old: Booking) -> Message:
    """No window has the start: where the nearest is by now."""
    table, meant = instance.windows, instance.grid.hours(old.start)
    mine: Ints = np.flatnonzero(table.loom == loom)
    if not mine.size:
        return message("hold-no-window", expected=None, beam=False)
    apart = np.maximum(table.starts_h[mine] - meant, meant - np.maximum(table.starts_h[mine], table.ends_h[mine]))
    nearest = mine[np.argmin(apart)]
    beam, window = bool(table.beam_out[nearest]), table.items[nearest]
    at = window.mean_at if beam else window.starts_at
    return message("hold-no-window", expected=at.astimezone(instance.grid.zone), beam=beam)
