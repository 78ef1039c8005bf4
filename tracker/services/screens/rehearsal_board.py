"""What the screen of rehearsals shows: the newest one of the plan in force."""

from dataclasses import dataclass
from zoneinfo import ZoneInfo

from tracker.domain.rehearsal import KeptRehearsal
from tracker.services.context import Context


@dataclass(frozen=True, slots=True)
class RehearsalBoard:
    zone: ZoneInfo
    plan: int | None
    """Number of the plan in force; None = none is published."""
    kept: KeptRehearsal | None
    """None where that plan was never rehearsed."""
    tuning: KeptRehearsal | None = None
    """Its newest tuning, likewise."""


def rehearsal_board(context: Context) -> RehearsalBoard:
    """The plan in force and its newest rehearsal, in one view."""
    with context.reading() as uow:
        number = uow.published_number()
        kept = uow.last_rehearsal(number) if number is not None else None
        tuning = uow.last_tuning(number) if number is not None else None
        return RehearsalBoard(uow.mill().terms.zone, number, kept, tuning)
