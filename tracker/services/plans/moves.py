"""What a plan does to the bookings of the one before it, and why."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking, Plan, Undo
from tracker.domain.progress import BEFORE_BOOKING, StageChange
from tracker.errors import Message, message


@dataclass(frozen=True, slots=True)
class Move:
    """What replanning did to one loom's booking; None = none."""

    key: LoomKey
    before: Booking | None
    after: Booking | None
    because: Message | None = None
    """Why a dropped loom is not booked any more, why the booking before cannot stay, or to which it gives way."""
    undo: Undo | None = None
    """What it would take to leave it where it was."""

    @property
    def start(self) -> datetime:
        """The new start; of a dropped booking the old one."""
        booking = self.after or self.before
        assert booking
        return booking.start

    @property
    def why(self) -> Message:
        """What is known of the reason."""
        if self.before is None:
            return self.because or message("moved-new")
        if self.after is None:
            return self.because or message("moved-away")
        return self.because or message("moved-cheaper", window=_window(self.before, self.after))

    @property
    def price(self) -> float | None:
        """What leaving the booking where it was would cost more; None where that cannot be or is not known."""
        return self.undo.costs if self.undo else None

    @property
    def dearer(self) -> float | None:
        """What the booking now costs more than the one before, move cost included; None where there is only one."""
        return self.after.cost.total - self.before.cost.total if self.before and self.after else None

    @property
    def what(self) -> str:
        if self.before is None:
            return "new"
        if self.after is None:
            return "dropped"
        if self.before.start != self.after.start:
            return "later" if self.after.start > self.before.start else "earlier"
        return "other choice" if self.before.choices != self.after.choices else "same"


SAME_BEAM_OUT_H = 72
"""A forecast moves by less than this; beyond it the booking waits for another beam-out. The numbers of the windows do not
tell, since they start again with every new warp."""


def _window(before: Booking, after: Booking) -> Message | None:
    if before.beam_out_p50 is None or after.beam_out_p50 is None:
        same = before.kind is after.kind
        return None if same else message("moved-window", before=before.kind, after=after.kind)
    later_h = (after.beam_out_p50 - before.beam_out_p50).total_seconds() / 3600
    when = "later" if later_h > 0 else "earlier"
    if abs(later_h) >= SAME_BEAM_OUT_H:
        return message("moved-beam-out", when=when)
    return message("moved-forecast", hours=abs(later_h), when=when) if abs(later_h) >= 1 else None


def differences(
    before: Plan,
    after: Plan,
    mill: Mill,
    stages: Mapping[LoomKey, StageChange] | None = None,
    broken: Mapping[LoomKey | None, Sequence[Message]] | None = None,
) -> tuple[Move, ...]:
    """Looms whose booking moved, came, went or takes another choice; by the new start, dropped ones last. `stages`: what
    was recorded of the looms, since it says why one is not booked any more; `broken`: what of the plan before does not
    hold any more, by loom."""
    old: Mapping[LoomKey, Booking] = {b.key: b for b in before.bookings}
    new: Mapping[LoomKey, Booking] = {b.key: b for b in after.bookings}
    why = _causes(before, after, mill, stages or {}, broken or {})
    undoing = {undo.key: undo for undo in after.undoing}
    stayable = old.keys() & new.keys() & undoing.keys() - why.keys()
    why |= {key: _given_way(key, undoing, why, _window(old[key], new[key]), after.currency) for key in stayable}
    moves = [Move(key, old.get(key), new.get(key), why.get(key), undoing.get(key)) for key in old.keys() | new.keys()]
    moved = [move for move in moves if move.what != "same"]
    return tuple(sorted(moved, key=lambda move: (move.after is None, move.start, move.key.sort_key)))


def _causes(
    before: Plan,
    after: Plan,
    mill: Mill,
    stages: Mapping[LoomKey, StageChange],
    broken: Mapping[LoomKey | None, Sequence[Message]],
) -> dict[LoomKey, Message]:
    """What is by itself the cause that a loom's booking is another: the data, what was recorded, the pilot of its type."""
    new = {b.key for b in after.bookings}
    could_stay = {undo.key for undo in after.undoing}
    why = dict(_pilots(before, after, mill))
    why |= {key: of[0] for key, of in broken.items() if key and of and key not in could_stay}
    why |= {old.key: message("moved-missed", start=old.start.astimezone(mill.terms.zone))
            for old in before.bookings if old.start < after.as_of and old.key in new}  # fmt: skip
    why |= {key: message("moved-broken-off", why=change.reason) for key, change in stages.items()
            if key in new and change.stage in BEFORE_BOOKING and change.reason and change.at >= before.as_of}  # fmt: skip
    gone = {key: message("moved-stage", stage=change.stage) for key, change in stages.items()}
    gone |= {item.key: item.why for item in after.left_over}
    return why | {key: reason for key, reason in gone.items() if key not in new}


def _given_way(
    key: LoomKey, undoing: Mapping[LoomKey, Undo], why: Mapping[LoomKey, Message], window: Message | None, currency: str
) -> Message:
    """Why a booking moved that could have stayed: to whom it gives way, what began it, and the price."""
    undo = undoing[key]
    if undo.short is None:
        return message("moved-saves", window=window, costs=undo.costs, currency=currency)
    root = _root(key, undoing, why)
    first = why[root] if root else None
    if first and first.params.get("loom") != root:
        first = message("moved-root", loom=root, why=first)
    looms = undo.taken_by[:MOST_NAMED]
    return message("moved-gives-way", window=window, looms=looms, more=len(undo.taken_by) - len(looms), short=undo.short,
                   root=first, costs=undo.costs, currency=currency)  # fmt: skip


def _root(key: LoomKey, undoing: Mapping[LoomKey, Undo], why: Mapping[LoomKey, Message]) -> LoomKey | None:
    """The nearest loom with a cause of its own along those to which one gives way."""
    seen, ahead = {key}, [key]
    for now in ahead:
        for other in undoing[now].taken_by if now in undoing else ():
            if other in why:
                return other
            if other not in seen:
                seen.add(other)
                ahead.append(other)
    return None


MOST_NAMED = 3
"""Looms to which a booking gives way that are named; the others are counted."""


def _pilots(before: Plan, after: Plan, mill: Mill) -> Iterator[tuple[LoomKey, Message]]:
    """Looms that became the pilot of their type, and those whose booking lay before the pilot has run for the soak time:
    pilots are decided first."""
    terms, soak = mill.terms, timedelta(days=mill.terms.soak_days)
    pilots = {mill.looms[b.key].machine_type: b for b in after.bookings if b.pilot and b.key in mill.looms and soak}
    was = {mill.looms[b.key].machine_type: b.key for b in before.bookings if b.pilot and b.key in mill.looms}
    for old in before.bookings:
        machine_type = mill.looms[old.key].machine_type if old.key in mill.looms else ""
        pilot = pilots.get(machine_type)
        if pilot and pilot.key == old.key and not old.pilot:
            yield old.key, message("became-pilot", machine_type=machine_type, was=was.get(machine_type))
        elif pilot and pilot.key != old.key and old.start < pilot.end + soak:
            at = (pilot.end + soak).astimezone(terms.zone)
            yield (
                old.key,
                message("waits-for-pilot", at=at, machine_type=machine_type, pilot=pilot.key, days=terms.soak_days),
            )
