"""Files to download, made only once they are clicked: in the language of the page, and for nobody whose session is over by then."""

from collections.abc import Callable, Sequence
from itertools import count
from typing import Any

import streamlit as st
from streamlit.runtime.scriptrunner import get_script_run_ctx

from dashboards import access
from dashboards.speaking import language, say, speaking_in
from dashboards.table_values import headed, values_of
from dashboards.tables import Head, Row
from tracker.services.context import Context
from tracker.services.terms import mill_zone

FEWEST_ROWS = 5
"""Of a table that is offered as a file; a shorter one is read at a glance."""
TITLE = "page-title"
"""Where the session keeps it, for the names of the files."""


def download(label: str, make: Callable[[Context], bytes], file_name: str, **looks: Any) -> None:
    """A button that makes a file. `make`: run after the page, so that it may only use its context and what it was given. `looks`:
    as the screen library has them."""
    here, spoken = access.later(), language()

    def made() -> bytes:
        with speaking_in(spoken):
            return make(here())

    st.download_button(label, made, file_name=file_name, on_click="ignore", **looks)


def offer_table(columns: Sequence[Head], rows: Sequence[Row], name: str) -> None:
    """All rows of a table as files, in the order in which they stand."""
    if len(rows) < FEWEST_ROWS:
        return
    title, unit = str(st.session_state.get(TITLE) or say("table-file")), say("head-unit")
    with st.container(horizontal=True, horizontal_alignment="right", gap="small"):
        for ending, label in ((".csv", say("table-as-csv")), (".xlsx", say("table-as-workbook"))):

            def make(context: Context, ending: str = ending) -> bytes:
                from tracker.export.shown_table import table_file  # brings in a library that few clicks need

                found = headed(columns, values_of(rows, mill_zone(context)), unit)
                return table_file(title, *found, ending)

            key = _free_key(f"{name}: {ending}")
            download(label, make, f"{title}{ending}", key=key, icon=":material/download:", type="tertiary")


def _free_key(name: str) -> str:
    """That no other table of the page has: several may have the same headings."""
    run = get_script_run_ctx(suppress_warning=True)
    used = run.shared.widget_user_keys_this_run if run else ()
    return next(key for i in count(1) if (key := f"{name} {i}") not in used)
