"""What the planner wants of the next plan: bookings kept, firm ones released, windows ruled out. Kept for the session, until they
are changed, so that they can be gathered booking by booking."""

from collections.abc import Callable, Sequence
from typing import Any

import streamlit as st

from dashboards import access
from dashboards.speaking import say
from tracker.domain.mill import LoomKey
from tracker.domain.plan import RuledOut
from tracker.services.screens.one_booking import ruled_out

HOLD, RELEASE, RULE_OUT = "wish-hold", "wish-release", "wish-rule-out"
_KEPT = "wishes"
"""The library forgets a field that is not drawn, as on another screen; these are kept beside it."""


def wished(name: str) -> list[Any]:
    """What is wished for so far; of windows ruled out, what the plan in force keeps to from the beginning."""
    kept: dict[str, list[Any]] = st.session_state.setdefault(_KEPT, {})
    if name not in kept:
        kept[name] = list(access.ask(ruled_out)) if name == RULE_OUT else []
    return kept[name]


def add(name: str, what: LoomKey | RuledOut) -> None:
    """For the press of a button: before the screen is drawn anew."""
    if what not in wished(name):
        _set(name, [*wished(name), what])
    other = {HOLD: RELEASE, RELEASE: HOLD}.get(name)
    if other and what in wished(other):
        _set(other, [one for one in wished(other) if one != what])


def forget() -> None:
    for name in (HOLD, RELEASE, RULE_OUT):
        st.session_state.get(_KEPT, {}).pop(name, None)
        st.session_state.pop(name, None)


def field(name: str, label: str, choices: Sequence[Any], says: Callable[[Any], str]) -> list[Any]:
    """The field in which they stand, to be changed."""
    before = wished(name)
    if name not in st.session_state:
        st.session_state[name] = before
    options = [*choices, *(one for one in before if one not in choices)]
    now = st.multiselect(label, options, key=name, format_func=says, placeholder=say("wishes-none"))
    st.session_state[_KEPT][name] = now
    return now


def _set(name: str, wishes: list[Any]) -> None:
    st.session_state[_KEPT][name] = wishes
    st.session_state[name] = wishes
