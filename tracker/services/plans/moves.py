"""What a plan does to the bookings of the one before it, and why."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking, Plan
from tracker.domain.progress import StageChange
from tracker.errors import Message, message


@dataclass(frozen=True, slots=True)
class Move:
    """What replanning did to one loom's booking; None = none."""

    key: LoomKey
    before: Booking | None
    after: Booking | None
    because: Message | None = None
    """Why a dropped loom is not booked any more, or why the booking before cannot stay."""

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
            return message("moved-new")
        if self.after is None:
            return self.because or message("moved-away")
        return self.because or message("moved-cheaper", window=_window(self.before, self.after))

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
    gone = {key: message("moved-stage", stage=change.stage) for key, change in (stages or {}).items()}
    gone |= {item.key: item.why for item in after.left_over}
    why = dict(_pilots(before, after, mill)) | {key: of[0] for key, of in (broken or {}).items() if key and of}
    why |= {key: reason for key, reason in gone.items() if key not in new}
    moves = [Move(key, old.get(key), new.get(key), why.get(key)) for key in old.keys() | new.keys()]
    moved = [move for move in moves if move.what != "same"]
    return tuple(sorted(moved, key=lambda move: (move.after is None, move.start, move.key.sort_key)))


def _pilots(before: Plan, after: Plan, mill: Mill) -> Iterator[tuple[LoomKey, Message]]:
    """Looms that became the pilot of their type, and those whose booking lay before the pilot has run for the soak time:
    pilots are decided first."""
    terms, soak = mill.terms, timedelta(days=mill.terms.soak_days)
    pilots = {mill.looms[b.key].machine_type: b for b in after.bookings if b.pilot and b.key in mill.looms and soak}
    for old in before.bookings:
        machine_type = mill.looms[old.key].machine_type if old.key in mill.looms else ""
        pilot = pilots.get(machine_type)
        if pilot and pilot.key == old.key and not old.pilot:
            yield old.key, message("became-pilot", machine_type=machine_type)
        elif pilot and pilot.key != old.key and old.start < pilot.end + soak:
            at = (pilot.end + soak).astimezone(terms.zone)
            yield (
                old.key,
                message("waits-for-pilot", at=at, machine_type=machine_type, pilot=pilot.key, days=terms.soak_days),
            )
