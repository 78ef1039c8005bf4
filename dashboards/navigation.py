"""Which screens there are, in their order, and what of them somebody may open."""

from collections.abc import Callable
from dataclasses import dataclass

from dashboards.screens import bookings, changes, load, looms, needs, people, rehearsal, scenarios, status
from tracker.services.context import Actor
from tracker.services.people.permissions import May


@dataclass(frozen=True, slots=True)
class Screen:
    page: Callable[[], None]
    title: str
    path: str
    takes: tuple[May, ...] = ()
    """One of these it takes; none = everybody sees it."""


SCREENS = (
    Screen(status.page, "Programme status", "status"),
    Screen(bookings.page, "Bookings", "bookings"),
    Screen(load.page, "Load", "load", (May.LOAD, May.STOCK, May.RECORD)),
    Screen(looms.page, "Looms", "looms"),
    Screen(needs.page, "Kits and needs", "needs"),
    Screen(rehearsal.page, "Rehearsal", "rehearsal"),
    Screen(scenarios.page, "Scenarios", "scenarios"),
    Screen(changes.page, "Changes", "changes"),
    Screen(people.page, "People", "people", (May.PEOPLE,)),
)


def screens_of(actor: Actor) -> list[Screen]:
    """Those that somebody may open, the first one first."""
    return [screen for screen in SCREENS if not screen.takes or any(map(actor.may, screen.takes))]
