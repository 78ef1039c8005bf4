"""Above every screen: by whose clock, where the programme has its own, and whether the published plan still holds."""

import streamlit as st

from dashboards import access
from dashboards.parts import literal
from dashboards.speaking import SPEAKER, say
from tracker.services.own_clock import clock_says
from tracker.services.plans.verify import faults

MOST = 20
"""Findings that are listed."""


def name_the_clock() -> None:
    """A line where the programme goes by its own clock and not by the computer's."""
    said = clock_says(access.context())
    if said.own:
        st.caption(f":material/schedule: {literal(SPEAKER.line(said.message))}")


def warn_if_out_of_date() -> None:
    """A line where the data have moved on since the plan was published, with what does not hold; nothing where all does."""
    found = access.ask_now(faults)
    with st.container():  # in one place, also while it is empty: what stands below keeps what is being typed
        if not found:
            return
        st.warning(say("standing-broken", findings=len(found)))
        with st.expander(say("standing-what")):
            for finding in found[:MOST]:
                st.write(literal(SPEAKER.line(finding)))
            if len(found) > MOST:
                st.caption(say("standing-more", more=len(found) - MOST))
