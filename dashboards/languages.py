"""The other languages that the screens speak, and what the browser must know of the one they speak."""

import streamlit as st

from dashboards.speaking import language, languages
from tracker.words.choosing import ASKED, KEPT, KEPT_S


def offer_languages() -> None:
    """A small button for each other language; what was typed stays."""
    spoken = language()
    st.query_params.pop(ASKED, None)  # so that the address, sent to a colleague, does not choose for them
    with st.container(key="languages", horizontal=True, horizontal_alignment="right"):
        for code, name in languages():
            if code != spoken:
                st.button(name, key=f"speak {code}", type="tertiary", on_click=_choose, args=(code,))
    st.html(_told(spoken), unsafe_allow_javascript=True)


def _choose(code: str) -> None:
    st.session_state[ASKED] = code


def _told(spoken: str) -> str:
    """The language of the page for readers of screens; once it was chosen, a cookie keeps it for the next visit."""
    keep = f'document.cookie = "{KEPT}={spoken}; path=/; max-age={KEPT_S}; samesite=lax";'
    return f'<script>document.documentElement.lang = "{spoken}"; {keep if ASKED in st.session_state else ""}</script>'
