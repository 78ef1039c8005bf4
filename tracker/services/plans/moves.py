"""What a plan does to the bookings of the one before it, and why."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from types import MappingProxyType

from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking, Plan, Undo
from tracker.domain.progress import StageChange
from tracker.errors import Message
from tracker.mill_state.happened import Happened
from tracker.services.plans.causes import Broken, Causes, differs

HOLDS: Broken = MappingProxyType({})
"""Nothing of the plan before is broken."""


@dataclass(frozen=True, slots=True)
class Move:
    """What replanning did to one loom's booking; None = none."""

    key: LoomKey
    before: Booking | None
    after: Booking | None
    why: Message
    """What happened, what the data do not allow any more, or to which loom it gives way."""
    undo: Undo | None = None
    """What it would take to leave it where it was."""

    @property
    def start(self) -> datetime:
        """The new start; of a dropped booking the old one."""
        booking = self.after or self.before
        assert booking
        return booking.start

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
        return "other choice"


def differences(
    before: Plan,
    after: Plan,
    mill: Mill,
    stages: Mapping[LoomKey, StageChange] | None = None,
    broken: Broken = HOLDS,
    happened: Sequence[Happened] = (),
) -> tuple[Move, ...]:
    """Looms whose booking moved, came, went or takes another choice; by the new start, dropped ones last. `stages`: what
    was recorded of the looms, since it says why one is not booked any more; `broken`: what of the plan before does not
    hold any more, by loom; `happened`: what has happened since it was made."""
    causes = Causes(before, after, mill, stages or {}, broken, happened)
    old, new, undoing = causes.old, causes.new, {undo.key: undo for undo in after.undoing}
    other = [key for key in old.keys() | new.keys() if differs(old.get(key), new.get(key))]
    moves = [Move(key, old.get(key), new.get(key), causes.of(key), undoing.get(key)) for key in other]
    return tuple(sorted(moves, key=lambda move: (move.after is None, move.start, move.key.sort_key)))
