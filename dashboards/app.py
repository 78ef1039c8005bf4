"""The screens: `beamslot serve`, or `streamlit run dashboards/app.py`."""

import traceback
from pathlib import Path

import streamlit as st

from dashboards import access
from dashboards.downloads import TITLE
from dashboards.languages import offer_languages
from dashboards.look import STYLE
from dashboards.navigation import pages
from dashboards.parts import literal
from dashboards.signed_in import offer_sign_in, say_who_is_here
from dashboards.speaking import SPEAKER, say
from dashboards.standing import name_the_clock, warn_if_out_of_date
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
    try:
        say_who_is_here(access.context().actor)
        name_the_clock()
        warn_if_out_of_date()
        chosen.run()
    except TrackerError as error:
        st.error(literal(SPEAKER.line(error)))
        if error.message.code == "signed-out":
            offer_sign_in()
    except Exception as error:
        traceback.print_exc()
        st.error(literal(say("screen-failed", kind=type(error).__name__)))
    access.watch()


main()
