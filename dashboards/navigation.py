"""Which screens there are, in their order, and what of them somebody may open."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import streamlit as st

from dashboards import access
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

    def is_for(self, actor: Actor) -> bool:
        return not self.takes or any(map(actor.may, self.takes))

    def refuse(self) -> None:
        """Say whose the screen is, where an address led to it all the same."""
        for what in self.takes[:1]:
            access.context().require(what)


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


def pages(actor: Actor) -> list[Any]:
    """What the navigation lists, the first screen first; a screen that is not for somebody is not listed, and says so."""
    return [
        st.Page(one.page if (mine := one.is_for(actor)) else one.refuse, title=one.title, url_path=one.path, default=not i,
                visibility="visible" if mine else "hidden")
        for i, one in enumerate(SCREENS)
    ]  # fmt: skip
