"""Which database the screens show, and what has already been worked out for it."""

import os
from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import Any, NoReturn, TypeVar

import streamlit as st

from dashboards.speaking import language, say
from tracker.errors import Message, TrackerError
from tracker.services.context import Context
from tracker.services.people.permissions import May
from tracker.services.people.sessions import screen_actor
from tracker.services.screens.state import DatabaseState, database_state, require_there

R = TypeVar("R")


def context() -> Context:
    """For the database of the command line: BEAMSLOT_DB, else `beamslot.db` here, with whoever is signed in as the actor: looked
    up each time, since a page keeps the cookie of its beginning. DataError once the file has vanished, NotAllowed once the
    session is over."""
    return _context(_session())


def later() -> Callable[[], Context]:
    """The context of whoever looks now, for what is made after the run of the page, as a download once it is clicked: by then no
    run tells who looks. NotAllowed once called after the session is over."""
    return partial(_context, _session())


def _session() -> int | None:
    number = str(st.user.get("session") or "")
    return int(number) if number.isdecimal() else None


def _context(session: int | None) -> Context:
    here = Context(os.environ.get("BEAMSLOT_DB", "beamslot.db"))
    require_there(here)
    return replace(here, actor=screen_actor(here, session), language=language())


def may(what: May) -> bool:
    """Whether who looks may do it; the services refuse it anyway."""
    return context().actor.may(what)


def state() -> DatabaseState:
    return database_state(context())


def ask(service: Callable[..., R], *args: Any, **more: Any) -> R:
    """The service's answer for the database as it stands; worked out again only where something was written since."""
    here, name = context(), f"{service.__module__}.{service.__qualname__}"
    asked = (name, here.database, database_state(here).mark, here.language)
    with st.spinner(say("reading-the-database")):
        return _answer(asked, args, more, service, here)


def ask_now(service: Callable[..., R], *args: Any) -> R:
    """Like `ask`, with the moment that the screens look at as the service's `as_of`."""
    return ask(service, *args, as_of=state().as_of)


def look_at(service: Callable[..., R]) -> R:
    """Like `ask_now`, for a large answer of which nothing is ever changed: all who look share the one, while of `ask` everybody has
    a copy at every run, which for 2,000 looms takes a fifth of it."""
    here, name = context(), f"{service.__module__}.{service.__qualname__}"
    seen = database_state(here)
    with st.spinner(say("reading-the-database")):
        return _shared((name, here.database, seen.mark, seen.as_of, here.language), service, here)


def show_again(name: str, message: object) -> NoReturn:
    """Run the screen anew after writing, with a message that it finds once under `name`."""
    st.session_state[name] = message
    st.session_state["seen"] = state()
    st.rerun()


@st.fragment(run_every="5s")
def watch() -> None:
    """Show the screen anew once somebody has written to the database, it has gone or come back, or the clock has
    moved on."""
    seen, now = st.session_state.get("seen"), _state_or_refusal()
    st.session_state["seen"] = now
    if seen not in (None, now):
        st.rerun()


def _state_or_refusal() -> DatabaseState | Message:
    """The state, or why it cannot be read: the screen says so once, and the watch goes on."""
    try:
        return state()
    except TrackerError as error:
        return error.message


@st.cache_data(max_entries=64, show_spinner=False)
def _answer(
    asked: tuple, args: tuple, more: dict[str, Any], _service: Callable[..., Any], _here: Context
) -> Any:  # fmt: skip
    """`asked`: the service's name, the database, its mark and the language."""
    return _service(_here, *args, **more)


@st.cache_resource(max_entries=6, show_spinner=False)
def _shared(asked: tuple, _service: Callable[..., Any], _here: Context) -> Any:
    """`asked`: the service's name, the database, its mark, the moment looked at and the language."""
    return _service(_here, as_of=asked[3])
