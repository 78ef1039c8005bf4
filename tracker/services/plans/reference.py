"""The plan by which the programme is measured: the first that was published, or the one that the term names."""

from dataclasses import dataclass
from datetime import datetime
from typing import Any

from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking, Plan
from tracker.mill_state.progress import reference_of
from tracker.store import UnitOfWork


@dataclass(frozen=True, slots=True)
class Reference:
    number: int
    made_at: datetime
    chosen: bool
    """Whether the term names it."""
    plan: Plan
    bookings: dict[LoomKey, Booking]
    """What was first planned for each loom."""

    def record(self) -> dict[str, Any]:
        return {"plan": self.number, "made_at": self.made_at.isoformat(timespec="seconds"), "chosen": self.chosen}


def published_numbers(uow: UnitOfWork) -> list[int]:
    """Numbers of the plans that were published, the first first."""
    return sorted(entry.number for entry in uow.plan_entries() if entry.published)


def read_reference(uow: UnitOfWork, mill: Mill, in_force: tuple[int, Plan] | None = None) -> Reference | None:
    """None where nothing was published. `in_force`: the plan in force with its number, where it was read already."""
    entries = {entry.number: entry for entry in uow.plan_entries() if entry.published}
    chosen = mill.terms.reference_plan in entries
    number = mill.terms.reference_plan if chosen else min(entries, default=None)
    plan = in_force[1] if in_force and in_force[0] == number else uow.plan(number) if number is not None else None
    if number is None or plan is None:
        return None
    known = {booking.key for booking in plan.bookings} | {item.key for item in plan.left_over}
    others = mill.looms.keys() - known
    nearest = uow.first_bookings(others, after=number) | uow.last_bookings(others, before=number)
    return Reference(number, entries[number].made_at, chosen, plan, reference_of(plan, nearest))
