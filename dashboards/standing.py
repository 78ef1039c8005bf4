"""Above every screen: by whose clock, where the programme has its own, and whether the published plan still holds."""

import streamlit as st

from dashboards import access
from dashboards.parts import literal
from dashboards.speaking import SPEAKER, count
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
    if not found:
        return
    st.warning(
        f"The published plan cannot be kept as it is: {count(len(found), 'so-many-findings')}. The data changed since, and "
        "what the screens show of the plan, its proof included, holds no more. Plan again at the terminal.",
    )
    with st.expander("What cannot be kept"):
        for finding in found[:MOST]:
            st.write(literal(SPEAKER.line(finding)))
        if len(found) > MOST:
            st.caption(f"and {len(found) - MOST} more; a check of the plan at the terminal lists them all")
