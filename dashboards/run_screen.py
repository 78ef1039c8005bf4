"""A screen with what stands above each: who is here, the clock, a warning; what goes wrong is a line, never a traceback."""

import traceback
from collections.abc import Callable

import streamlit as st

from dashboards import access
from dashboards.parts import literal
from dashboards.signed_in import offer_sign_in, say_who_is_here
from dashboards.speaking import SPEAKER, say
from dashboards.standing import name_the_clock, warn_if_out_of_date
from tracker.errors import TrackerError


def run_screen(draw: Callable[[], None]) -> None:
    try:
        say_who_is_here(access.context().actor)
        name_the_clock()
        warn_if_out_of_date()
        draw()
    except TrackerError as error:
        st.error(literal(SPEAKER.line(error)))
        if error.message.code == "signed-out":
            offer_sign_in()
    except Exception as error:
        traceback.print_exc()
        st.error(literal(say("screen-failed", kind=type(error).__name__)))
