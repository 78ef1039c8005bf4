"""Changes: who did what, in which role, by what, the newest first."""

from datetime import datetime, time

import streamlit as st

from dashboards import access
from dashboards.parts import table
from dashboards.speaking import SPEAKER, count, moment
from dashboards.tables import Cell, Head
from tracker.errors import message
from tracker.services.people.audit import NAME, Deeds, Which, deeds, deeds_file, roles_said
from tracker.services.terms import mill_zone
from tracker.words import Edge, Speaker


def page() -> None:
    st.title("Changes")
    st.caption("Who did what, in which role and by what; nothing here is ever changed or removed.")
    which = _which()
    found = access.ask(deeds, which)
    if not found.deeds:
        st.info(SPEAKER.say(message("deeds-none")))
        return
    _table(found)
    st.download_button("All of it as a workbook", lambda: deeds_file(access.context(), which), file_name=NAME)


def _which() -> Which:
    """What is asked for; it stands in the address."""
    loom_at, hall_at, who_at, since_at = st.columns(4)
    loom, hall, who = (
        at.text_input(label, st.query_params.get(name, ""), key=f"changes {name}").strip()
        for at, label, name in ((loom_at, "Loom", "loom"), (hall_at, "Hall", "hall"), (who_at, "Who", "who"))
    )
    since = since_at.date_input("Since", None, format="YYYY-MM-DD")
    for name, said in (("loom", loom), ("hall", hall), ("who", who)):
        if said:
            st.query_params[name] = said
        else:
            st.query_params.pop(name, None)
    zone = access.ask(mill_zone)
    return Which(loom or None, hall or None, who or None, datetime.combine(since, time(), zone) if since else None)


def _table(found: Deeds) -> None:
    speaker = Speaker(zone=found.zone, edge=Edge.SCREEN)
    columns = [Head("When", whole=True), Head("Who"), Head("Roles"), Head("By"), Head("What")]
    table(columns, [
        [Cell(moment(d.at, found.zone), (d.at, -i)), f"{d.who} (told: {d.told})" if d.told else d.who,
         roles_said(d), d.through, speaker.say(d.what)]
        for i, d in enumerate(found.deeds)
    ])  # fmt: skip
    if found.more:
        st.caption(f"The newest {count(len(found.deeds), 'line')}; the workbook has more.")
