"""Above every screen: whether the published plan still holds by the data of now."""

import streamlit as st

from dashboards import access
from dashboards.parts import literal
from tracker.domain.formats import count
from tracker.services.verify import faults

MOST = 20
"""Findings that are listed."""


def warn_if_out_of_date() -> None:
    """A line where the data have moved on since the plan was published, with what does not hold; nothing where all does."""
    found = access.ask(faults)
    if not found:
        return
    st.warning(
        f"The data changed since this plan was published: {count(len(found), 'finding')}. What the screens show of the plan "
        "may not hold any more, its proof included. Plan again: `beamslot plan --publish`.",
    )
    with st.expander("What does not hold any more"):
        for finding in found[:MOST]:
            st.write(literal(finding))
        if len(found) > MOST:
            st.caption(f"and {len(found) - MOST} more; `beamslot verify` lists them all")
