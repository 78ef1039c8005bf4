"""What a screen says while there is nothing to show: the next step."""

import streamlit as st

from dashboards import access
from dashboards.parts import literal
from dashboards.speaking import SPEAKER, say
from tracker.services.screens.next_step import lacking


def no_looms() -> None:
    st.info(say("empty-no-looms"))


def no_plan(then: str) -> None:
    """No plan is published; `then` says what comes of it here."""
    lacks = [literal(SPEAKER.say(one)) for one in access.ask(lacking)]
    st.info(say("empty-lacks", what=_all_of(lacks)) if lacks else say("empty-no-plan", then=then))


def _all_of(words: list[str]) -> str:
    first, last = ", ".join(words[:-1]), words[-1]
    return say("all-of-them", first=first, last=last) if first else last
