"""The programme's own clock: where it stands, and setting it forward."""

from dataclasses import dataclass, replace
from datetime import datetime
from typing import Any

from tracker.errors import DataError, Message, UsageError, message
from tracker.services.context import Context
from tracker.services.people.permissions import May
from tracker.store.own_clock import own_clock, set_own_clock


@dataclass(frozen=True, slots=True)
class ClockSays:
    now: datetime
    """UTC."""
    own: bool
    """Whether the programme has its own clock, which stands."""
    message: Message

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        return {"now": self.now.isoformat(timespec="seconds"), "own": self.own}


def clock_says(context: Context, was_set: bool = False) -> ClockSays:
    """By which clock the programme goes, and what it says."""
    with context.reading() as uow:
        stands, zone = own_clock(uow.session), uow.zone
    if stands is None:
        at = context.now()
        return ClockSays(at, False, message("computers-clock", now=at.astimezone(zone)))
    code = "own-clock-set" if was_set else "own-clock"
    return ClockSays(stands, True, message(code, stands=stands.astimezone(zone)))


def set_clock(context: Context, at: datetime) -> None:
    """Set the programme's own clock forward. DataError where the computer's clock counts, as in every real mill;
    UsageError for a moment before the one at which it stands: what was recorded until then would lie ahead."""
    with context.unit_of_work(May.PLAN) as uow:
        stands = own_clock(uow.session)
        if stands is None:
            raise DataError("clock-is-the-computers", database=context.database)
        if at < stands:
            raise UsageError("clock-only-forward", asked=at.astimezone(uow.zone), stands=stands.astimezone(uow.zone))
        set_own_clock(uow.session, at)
        uow.commit()


def give_own_clock(context: Context, at: datetime) -> Context:
    """The same, with a database (made where there is none) whose programme has its own clock; one that is there goes on."""
    with context.making().unit_of_work(May.PLAN) as uow:
        if own_clock(uow.session) is None:
            set_own_clock(uow.session, at)
            uow.commit()
    return replace(context)  # what was known of its clock before is forgotten
