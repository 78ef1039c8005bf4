"""Somebody else published meanwhile: who, which plan, and which bookings of it are others."""

from collections.abc import Iterator

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, Plan
from tracker.errors import PlanRefused, message
from tracker.store import UnitOfWork


def overtaken(uow: UnitOfWork, mine: Plan) -> PlanRefused:
    """The refusal to publish `mine`; its findings name each loom that the plan in force books otherwise."""
    number, theirs = uow.published_number(), uow.published_plan()
    entry = next((entry for entry in uow.plan_entries() if entry.number == number), None)
    zone = uow.zone

    def at(booking: Booking | None) -> object:
        return booking.start.astimezone(zone) if booking else None

    found = tuple(
        message("booked-otherwise", loom=key, theirs=at(one), mine=at(other))
        for key, one, other in _differing(theirs, mine)
    )
    return PlanRefused(
        "plan-overtaken", found, number=str(number) if number else None, who=entry.who if entry else None,
        differ=len(found), looms=[str(finding.params["loom"]) for finding in found] or None,
    )  # fmt: skip


def _differing(theirs: Plan | None, mine: Plan) -> Iterator[tuple[LoomKey, Booking | None, Booking | None]]:
    there, here = ({b.key: b for b in (plan.bookings if plan else ())} for plan in (theirs, mine))
    for key in sorted(there.keys() | here.keys(), key=lambda key: key.sort_key):
        one, other = there.get(key), here.get(key)
        if (one and (one.start, one.choices)) != (other and (other.start, other.choices)):
            yield key, one, other
