"""Which screens there are, grouped by who opens them, what of them somebody may open, and on which each role lands."""

from dataclasses import dataclass
from importlib import import_module
from typing import Any

import streamlit as st

from dashboards import access
from dashboards.speaking import say
from tracker.domain.people import EVERY_ROLE, Role
from tracker.services.context import Actor
from tracker.services.people.permissions import May


@dataclass(frozen=True, slots=True)
class Screen:
    path: str
    """In the address, and of its module."""
    code: str
    """Of its title in the catalogue."""
    takes: tuple[May, ...] = ()
    """One of these it takes; none = everybody sees it."""
    first_for: frozenset[Role] = frozenset()
    """Roles that land on it; of several in the navigation the first."""

    def page(self) -> None:
        """Draw it; its module is brought in once somebody opens it, since all of them take seconds."""
        import_module(f"dashboards.screens.{self.path.replace('-', '_')}").page()

    @property
    def title(self) -> str:
        return say(self.code)

    def is_for(self, actor: Actor) -> bool:
        return not self.takes or any(map(actor.may, self.takes))

    def refuse(self) -> None:
        """Say whose the screen is, where an address led to it all the same."""
        for what in self.takes[:1]:
            access.context().require(what)


def first_for(*roles: Role) -> frozenset[Role]:
    return frozenset(roles)


GROUPS: dict[str, tuple[Screen, ...]] = {
    "group-work": (
        Screen("today", "screen-today", first_for=first_for(Role.FITTER, Role.ELECTRICIAN)),
        Screen("looms", "screen-looms"),
        Screen("hall", "screen-hall"),
        Screen("settings", "screen-settings"),
    ),
    "group-plan": (
        Screen("bookings", "screen-bookings", first_for=first_for(Role.PLANNER)),
        Screen("beam-outs", "screen-beam-outs"),
        Screen("scenarios", "screen-scenarios"),
        Screen("method", "screen-method"),
        Screen("terms", "screen-terms"),
        Screen("rehearsal", "screen-rehearsal"),
    ),
    "group-parts": (
        Screen("needs", "screen-needs", first_for=first_for(Role.PURCHASING)),
    ),
    "group-worth": (
        Screen("status", "screen-status", first_for=first_for(Role.VIEWER)),
        Screen("worth", "screen-worth"),
    ),
    "group-mill": (
        Screen("load", "screen-load", (May.LOAD, May.STOCK, May.RECORD)),
        Screen("changes", "screen-changes"),
        Screen("people", "screen-people", (May.PEOPLE,), first_for(Role.ADMINISTRATOR)),
    ),
}  # fmt: skip
"""Code of the group → its screens. A new screen is a line here, and its title in `on_navigation.ftl`."""
OWN_PASSWORD = Screen("own-password", "own-password")
"""Not in the navigation; the line that says who is signed in leads to it."""
SCREENS = tuple(screen for group in GROUPS.values() for screen in group)
LANDING = (Role.PLANNER, Role.PURCHASING, Role.FITTER, Role.ELECTRICIAN, Role.ADMINISTRATOR, Role.VIEWER)
"""By which of several roles somebody lands."""


def lands_on(actor: Actor) -> Screen:
    """The first screen of who has these roles; of who has every one, as where nobody signs in, and of who has none, the programme's
    status."""
    role = next((one for one in LANDING if one in actor.roles and actor.roles != EVERY_ROLE), Role.VIEWER)
    return next(screen for screen in SCREENS if role in screen.first_for)


def pages(actor: Actor) -> dict[str, list[Any]]:
    """What the navigation lists by group. A screen that is not for somebody is not listed, and says so. The address without a path
    leads on to where the actor lands, so that every screen has an address of its own for everybody."""
    made = {screen: _page(screen, actor) for screen in SCREENS}
    landing = made[lands_on(actor)]
    start = st.Page(
        lambda: st.switch_page(landing), title=landing.title, url_path="start", default=True, visibility="hidden"
    )
    own = st.Page(OWN_PASSWORD.page, title=OWN_PASSWORD.title, url_path=OWN_PASSWORD.path, visibility="hidden")
    groups = {say(code): [made[screen] for screen in group] for code, group in GROUPS.items()}
    return {"": [start, own], **groups}


def _page(screen: Screen, actor: Actor) -> Any:
    mine = screen.is_for(actor)
    return st.Page(screen.page if mine else screen.refuse, title=screen.title, url_path=screen.path,
                   visibility="visible" if mine else "hidden")  # fmt: skip
