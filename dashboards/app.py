"""The screens: `beamslot serve`, or `streamlit run dashboards/app.py`."""

from pathlib import Path

import streamlit as st

from dashboards import access
from dashboards.downloads import TITLE
from dashboards.languages import offer_languages
from dashboards.look import STYLE
from dashboards.navigation import pages
from dashboards.run_screen import run_screen
from dashboards.tables import SORTING
from tracker.errors import TrackerError
from tracker.services.context import Actor

ICON = Path(__file__).parent / "icon.png"
NOBODY = Actor("", frozenset())


def main() -> None:
    st.set_page_config(page_icon=str(ICON), layout="wide")
    st.html(STYLE)
    st.html(SORTING, unsafe_allow_javascript=True)
    try:
        actor = access.context().actor
    except TrackerError:  # said below
        actor = NOBODY
    chosen = st.navigation(pages(actor), position="top")
    st.session_state[TITLE] = chosen.title
    offer_languages()
    run_screen(chosen.run)
    access.watch()


main()
