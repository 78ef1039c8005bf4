"""Filters that stand in the address, so that a page can be sent to a colleague as it is looked at."""

from collections.abc import Callable, Sequence

import streamlit as st
from streamlit.delta_generator import DeltaGenerator


def several(
    at: DeltaGenerator, name: str, label: str, options: Sequence[str], none: str, says: Callable[[str], str] = str
) -> list[str]:  # fmt: skip
    """Some of the options; `name` is that of the address, `none` what stands there while nothing is chosen."""
    asked = [one for one in st.query_params.get_all(name) if one in options]
    chosen = at.multiselect(label, options, asked, placeholder=none, format_func=says)
    if chosen:
        st.query_params[name] = chosen
    else:
        st.query_params.pop(name, None)
    return chosen


def text(at: DeltaGenerator, name: str, label: str, none: str) -> str:
    """A part of a name."""
    said = at.text_input(label, st.query_params.get(name, ""), placeholder=none).strip()
    if said:
        st.query_params[name] = said
    else:
        st.query_params.pop(name, None)
    return said


def yes(at: DeltaGenerator, name: str, label: str) -> bool:
    """A box to tick."""
    ticked = at.checkbox(label, name in st.query_params)
    if ticked:
        st.query_params[name] = "yes"
    else:
        st.query_params.pop(name, None)
    return ticked
