"""Looms: the list, and everything about one loom, which a link with `?loom=007&hall=Hall+1` leads to."""

from collections.abc import Sequence
from dataclasses import replace

import streamlit as st

from dashboards import access, filters
from dashboards.empty import no_looms
from dashboards.frames import booking_marks
from dashboards.loom_sheet import loom_sheet_page
from dashboards.parts import heads, literal, table
from dashboards.speaking import SPEAKER, moment, say
from dashboards.tables import Cell, loom_cell, stage_cell, stage_word
from tracker.domain.words import fold
from tracker.errors import DataError
from tracker.services.screens.loom_sheet import LoomLine, LoomList, loom_list, loom_sheet
from tracker.services.screens.status import STAGE_ORDER


def page() -> None:
    asked = st.query_params.get("loom")
    if not asked:
        _list(access.ask(loom_list))
        return
    st.html(f'<a class="back" href="looms" target="_self">← {say("looms-back")}</a>')
    hall = st.query_params.get("hall")
    meant = [] if hall else [line for line in access.ask(loom_list).looms if line.key.loom == asked]
    if len(meant) > 1:
        _ask_hall(asked, meant)
        return
    try:
        sheet = access.ask_now(loom_sheet, asked, hall)
    except DataError as error:
        st.title(literal(say("sheet-title", loom=asked, hall=None)))
        what = SPEAKER.say(error)
        st.info(literal(say("looms-unknown", what=f"{what[0].upper()}{what[1:]}")))
        return
    loom_sheet_page(sheet)


def _ask_hall(asked: str, meant: Sequence[LoomLine]) -> None:
    """The looms of that number, each leading to its sheet."""
    st.title(literal(say("sheet-title", loom=asked, hall=None)))
    st.write(say("looms-which", looms=len(meant)))
    columns = heads("looms-hall", "looms-loom", "looms-type", "looms-stage", whole=True)
    table(columns, [[replace(loom_cell(line.key), text=line.key.hall or say("looms-no-hall")), line.key.loom,
                     line.machine_type, stage_cell(line.stage)] for line in meant])  # fmt: skip


def _list(found: LoomList) -> None:
    st.title(say("screen-looms"))
    if not found.looms:
        no_looms()
        return
    rows = _filtered(found.looms)
    st.caption(say("looms-shown", shown=len(rows), all=len(found.looms)))
    if not rows:
        st.info(say("looms-none-fits"))
        return
    columns = heads("looms-loom", "looms-hall", "looms-row", "looms-place", "looms-type", "looms-stage", whole=True)
    columns += [*heads("looms-window"), *heads("looms-start", "looms-end", whole=True)]
    table(columns, [_line(line, found) for line in rows])


def _filtered(lines: Sequence[LoomLine]) -> list[LoomLine]:
    """What the filters leave; they stand in the address."""
    halls_at, types_at, stages_at, loom_at = st.columns(4)
    known = sorted({line.stage for line in lines}, key=STAGE_ORDER.index)
    every_hall = list(dict.fromkeys(line.key.hall for line in lines))
    halls = filters.several(halls_at, "hall", say("looms-hall"), every_hall, say("looms-all-halls"))
    every_type = sorted({line.machine_type for line in lines})
    types = filters.several(types_at, "type", say("looms-type"), every_type, say("looms-all-types"))
    stages = filters.several(stages_at, "stage", say("looms-stage"), known, say("looms-all-stages"), stage_word)
    text = filters.text(loom_at, "number", say("looms-loom"), say("looms-all"))
    return [
        line
        for line in lines
        if (not halls or line.key.hall in halls)
        and (not types or line.machine_type in types)
        and (not stages or line.stage in stages)
        and fold(text) in fold(line.key.loom)
    ]


def _line(line: LoomLine, found: LoomList) -> list[Cell | str]:
    booking = line.booking
    return [
        loom_cell(line.key),
        line.key.hall,
        line.row or "",
        line.place or "",
        line.machine_type,
        stage_cell(line.stage),
        ", ".join([SPEAKER.word(booking.kind), *booking_marks(booking)]) if booking else "",
        Cell(moment(booking.start, found.zone), booking.start) if booking else "",
        Cell(moment(booking.end, found.zone), booking.end) if booking else "",
    ]
