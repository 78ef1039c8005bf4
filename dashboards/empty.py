"""What a screen says while there is nothing to show: the next step."""

import streamlit as st

from dashboards import access
from dashboards.parts import literal
from dashboards.speaking import SPEAKER
from tracker.services.screens.next_step import lacking


def no_looms() -> None:
    st.info("There is no loom yet. Load the mill's loom list on the screen **Load**.")


def no_plan(then: str) -> None:
    """No plan is published; `then` says what comes of it here."""
    lacks = [literal(SPEAKER.say(one)) for one in access.ask(lacking)]
    if lacks:
        st.info(
            f"No plan is published yet, and none can be made before there is {_listed(lacks)}: load it on the screen **Load**."
        )
    else:
        st.info(f"No plan is published yet. Publish one at the terminal; {then}.")


def _listed(words: list[str]) -> str:
    return " and ".join(filter(None, [", ".join(words[:-1]), words[-1]]))
