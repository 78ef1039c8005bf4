"""Today: what a crew does now and tomorrow, whether it has all for it, and what it tells at the loom."""

from collections.abc import Sequence

import streamlit as st

from dashboards import access, forms
from dashboards.empty import no_looms, no_plan
from dashboards.open_card import open_card
from dashboards.parts import literal, of_part
from dashboards.speaking import SPEAKER, moment, say, span
from tracker.domain.mill import LoomKey
from tracker.services.screens.today import DueLoom, Today, today


def page() -> None:
    st.title(say("screen-today"))
    forms.say_done()
    asked = st.query_params.get("crew")
    found = access.ask_now(today, asked)
    if not found.planned:
        _nothing_planned(found)
        return
    with st.container(key="touch-today"):
        _crew(found)
        if found.crew is not None:
            _looms(found)


def _nothing_planned(found: Today) -> None:
    if found.any_loom:
        no_plan(say("today-then"))
    else:
        no_looms()


def _crew(found: Today) -> None:
    """The crew, chosen once; the address keeps it."""
    if not found.crews:
        st.info(say("today-no-crew"))
        return
    chosen = st.pills(say("today-crew"), found.crews, default=found.crew)
    if chosen and chosen != found.crew:
        st.query_params.from_dict({"crew": chosen})
        st.rerun()
    if found.crew is None:
        st.info(say("today-choose-crew"))


def _looms(found: Today) -> None:
    if not found.looms:
        st.info(literal(say("today-nothing", crew=found.crew)))
    asked = st.query_params.get("loom"), st.query_params.get("hall")
    crew = (
        found.crew if found.crew and found.converts else ""
    )  # else the conversion stays that of the crew booked for it
    for loom in found.looms:
        is_open = asked == (loom.key.loom, loom.key.hall)
        with st.container(border=True):
            _line(loom, found, is_open)
            if is_open:
                open_card(loom.key.loom, loom.key.hall, crew)
    keys = [(loom.key.loom, loom.key.hall) for loom in found.looms]
    if asked[0] and asked not in keys:  # of another crew, or done
        with st.container(border=True):
            st.subheader(literal(say("loom-named", loom=LoomKey(asked[1], asked[0]) if asked[1] else asked[0])))
            open_card(asked[0], asked[1], crew)


def _line(loom: DueLoom, found: Today, is_open: bool) -> None:
    label = say("today-line", loom=loom.key, due=SPEAKER.word(loom.due))
    if st.button(
        literal(label), key=f"card of {loom.key}", type="primary" if is_open else "secondary", width="stretch"
    ):
        there = {} if is_open else {"loom": loom.key.loom, "hall": loom.key.hall}
        st.query_params.from_dict({"crew": found.crew or "", **there})
        st.rerun()
    booked = say("today-booked", window=loom.booking.kind, start=moment(loom.start, found.zone),
                 end=moment(loom.end, found.zone), type=loom.machine_type)  # fmt: skip
    out = f" · {say('today-beam-out', at=moment(loom.beam_out, found.zone))}" if loom.beam_out else ""
    st.caption(literal(booked + out))
    for need in loom.needs:
        at = span(need.start, need.end, found.zone)
        st.write(literal(say("today-needed", heads=need.amount, trade=need.what, at=at)))
    for line in _lacks(loom, found):
        st.write(literal(line))


def _lacks(loom: DueLoom, found: Today) -> Sequence[str]:
    lines = [say("today-mark", what=what) for what in loom.missing]
    if loom.lacks:
        parts = [of_part(quantity, part, found.units) for part, quantity in loom.lacks.items()]
        return [say("today-lacks", parts=parts), *lines]
    if not loom.kit_issued:
        return [say("today-kit-not-issued"), *lines]
    return lines or [say("today-ready")]
