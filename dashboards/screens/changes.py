"""Changes: who did what, in which role, by what, the newest first; beside what can be undone, the way to undo it."""

from datetime import datetime, time
from urllib.parse import urlencode

import streamlit as st

from dashboards import access, forms
from dashboards.downloads import download
from dashboards.forms import Form
from dashboards.parts import literal, table
from dashboards.speaking import SPEAKER, language, moment, number, say, typed_day
from dashboards.tables import Cell, Head
from tracker.domain.people import Deed, Role
from tracker.errors import TrackerError
from tracker.services.people.audit import NAME, Deeds, Which, deeds, deeds_file
from tracker.services.people.permissions import May
from tracker.services.terms import mill_zone
from tracker.services.undoing.undo import TakenBack, undo, would_undo
from tracker.words import Edge, Speaker

UNDO = "undo"
"""In the address: the number of what is to be undone."""


def page() -> None:
    st.title(say("screen-changes"))
    st.caption(say("changes-about"))
    forms.say_done()
    if (asked := st.query_params.get(UNDO, "")).isdecimal():
        _ask(int(asked))
    which = _which()
    found = access.ask(deeds, which)
    if not found.deeds:
        st.info(say("deeds-none"))
        return
    _table(found)
    download(say("changes-workbook"), lambda context: deeds_file(context, which), NAME)


def _which() -> Which:
    """What is asked for; it stands in the address."""
    loom_at, hall_at, who_at, since_at = st.columns(4)
    fields = ((loom_at, "changes-loom", "loom"), (hall_at, "changes-hall", "hall"), (who_at, "changes-who", "who"))
    loom, hall, who = (
        at.text_input(say(code), st.query_params.get(name, ""), key=f"changes {name}").strip()
        for at, code, name in fields
    )
    since = since_at.date_input(say("changes-since"), None, format=typed_day())
    for name, said in (("loom", loom), ("hall", hall), ("who", who)):
        if said:
            st.query_params[name] = said
        else:
            st.query_params.pop(name, None)
    zone = access.ask(mill_zone)
    return Which(loom or None, hall or None, who or None, datetime.combine(since, time(), zone) if since else None)


def _table(found: Deeds) -> None:
    speaker = Speaker(language(), found.zone, Edge.SCREEN)
    mine = access.may(May.UNDO)
    codes = ("changes-number", "changes-when", "changes-who", "changes-roles", "changes-by", "changes-what")
    columns = [Head(say(code), right=not i, whole=i == 1) for i, code in enumerate(codes)]
    rows, seen = [], set()
    for i, d in enumerate(found.deeds):
        first = mine and d.act in found.undoable and d.act not in seen
        seen.add(d.act)
        rows.append([
            str(d.act or ""), Cell(moment(d.at, found.zone), (d.at, -i)), _who(d), _roles(d),
            say("changes-through", by=d.through) if d.through else "", speaker.say(d.what),
            Cell(say("changes-undo"), href=_address(d.act)) if first else "",
        ])  # fmt: skip
    table([*columns, Head("")], rows)
    if found.more:
        st.caption(say("changes-more", lines=number(len(found.deeds))))


def _who(deed: Deed) -> str:
    return say("changes-told", who=deed.who, told=deed.told) if deed.told else deed.who


def _roles(deed: Deed) -> str:
    every = len(deed.roles) == len(Role)
    return say("every-role") if every else ", ".join(SPEAKER.word(Role(role)) for role in deed.roles)


def _address(act: int | None) -> str:
    """Of this screen as it is asked for, with the question whether that is to be undone."""
    return "changes?" + urlencode({**st.query_params.to_dict(), UNDO: act})


def _ask(asked: int) -> None:
    """What an undo would do, in a sentence, and the button for it."""
    try:
        would = would_undo(access.context(), asked)
    except TrackerError as error:
        st.error(literal(SPEAKER.line(error)))
        return
    speaker = Speaker(language(), would.zone, Edge.SCREEN)
    if would.back:
        st.warning(literal(speaker.say(would.question)))
    if would.left:
        st.error(
            literal("\n".join([say("changes-undo-left"), *(speaker.say(one.says(would.zone)) for one in would.left)]))
        )
    for said in would.stays:
        st.info(literal(speaker.line(said)))
    with Form(f"undo {asked}", framed=False) as form:
        if would.back and forms.allowed(May.UNDO, say_why=True):
            rest = bool(would.left)
            form.act(say("changes-undo-rest" if rest else "changes-undo"), lambda: _undo(asked, rest))
        if st.button(say("changes-undo-not"), key=form.key("not")):
            st.query_params.pop(UNDO)
            st.rerun()


def _undo(asked: int, rest: bool) -> TakenBack:
    done = undo(access.context(), asked, rest)
    st.query_params.pop(UNDO)
    return done
