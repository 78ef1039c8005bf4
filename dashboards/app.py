"""The screens: `beamslot serve`, or `streamlit run dashboards/app.py`."""

import traceback
from pathlib import Path

import streamlit as st

from dashboards import access
from dashboards.look import STYLE
from dashboards.parts import literal
from dashboards.screens import bookings, load, looms, needs, rehearsal, scenarios, status
from dashboards.signed_in import offer_sign_in, say_who_is_here
from dashboards.speaking import SPEAKER
from dashboards.standing import name_the_clock, warn_if_out_of_date
from dashboards.tables import SORTING
from tracker.errors import TrackerError

ICON = Path(__file__).parent / "icon.png"
PAGES = [
    st.Page(status.page, title="Programme status", url_path="status", default=True),
    st.Page(bookings.page, title="Bookings", url_path="bookings"),
    st.Page(load.page, title="Load", url_path="load"),
    st.Page(looms.page, title="Looms", url_path="looms"),
    st.Page(needs.page, title="Kits and needs", url_path="needs"),
    st.Page(rehearsal.page, title="Rehearsal", url_path="rehearsal"),
    st.Page(scenarios.page, title="Scenarios", url_path="scenarios"),
]


def main() -> None:
    st.set_page_config(page_icon=str(ICON), layout="wide")
    st.html(STYLE)
    st.html(SORTING, unsafe_allow_javascript=True)
    chosen = st.navigation(PAGES, position="top")
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
        st.error(
            f"This screen failed ({type(error).__name__}); nothing was written. The details stand in the terminal that "
            "serves the screens."
        )
    access.watch()


main()
