"""Above every screen: whether the published plan still holds by the data of now."""

import streamlit as st

from dashboards import access
from dashboards.parts import literal
from tracker.domain.formats import count
from tracker.services.plans.verify import faults

MOST = 20
"""Findings that are listed."""


def warn_if_out_of_date() -> None:
    """A line where the data have moved on since the plan was published, with what does not hold; nothing where all does."""
    found = access.ask_now(faults)
    if not found:
        return
    st.warning(
        f"The published plan cannot be kept as it is: {count(len(found), 'finding')}. The data changed since, and what the "
        "screens show of the plan, its proof included, holds no more. Plan again: `beamslot plan`.",
    )
    with st.expander("What cannot be kept"):
        for finding in found[:MOST]:
            st.write(literal(finding))
        if len(found) > MOST:
            st.caption(f"and {len(found) - MOST} more; `beamslot verify` lists them all")
