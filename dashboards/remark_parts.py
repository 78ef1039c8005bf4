"""Remarks at a loom: noting one, with a photo where there is one to take, and those that were noted, their photos beside them."""

from collections.abc import Iterable
from zoneinfo import ZoneInfo

import streamlit as st

from dashboards import access
from dashboards.forms import Form
from dashboards.hand import Hand
from dashboards.parts import literal
from dashboards.speaking import moment, say, shown
from tracker.errors import DataError
from tracker.office.photos import ENDINGS, LARGEST_FILE_BYTES
from tracker.services.screens.remarks import Remark, picture
from tracker.services.screens.work_card import WorkCard
from tracker.services.work import at_the_loom
from tracker.services.work.at_the_loom import ToldRemark

SMALL_PX = 160
"""Beside its remark; the button on it shows it large."""


def remark_form(hand: Hand) -> None:
    with Form(f"remark {hand.work.card.key}") as form:
        names = ["", *(line.operation.row.operation for line in hand.work.operations)]
        about = st.selectbox(say("today-remark-about"), names, key=form.key("about"),
                             format_func=lambda name: name or say("today-remark-whole"))  # fmt: skip
        text = st.text_area(say("today-remark"), key=form.key("text"))
        form.beside("remark", "photo-without-remark")
        sent = st.file_uploader(
            say("today-photo"),
            type=list(ENDINGS),
            max_upload_size=LARGEST_FILE_BYTES // 1_000_000,
            key=form.key("photo"),
        )
        st.caption(say("today-photo-help"))
        form.beside("photo-no-picture", "photo-broken", "photo-too-large", "photo-too-fine")
        before = hand.work.remarked(about or None)
        told = ToldRemark(text, about or None, before, sent.getvalue() if sent else None)
        again = say("today-noted-anew") if before else ""
        form.act(
            say("today-remark-note"), lambda: at_the_loom.remark(hand.context, hand.here, told, again), primary=False
        )


def own_remarks(work: WorkCard) -> None:
    """Of the conversion that is open."""
    for one in work.remarks:
        st.write(literal(say("today-remark-line", about=one.about or None, text=one.text)))
        _photos(one, work.zone)


def told_remarks(remarks: Iterable[Remark], code: str, zone: ZoneInfo) -> None:
    """Of conversions before, or of all. `code`: how a line says loom, day, what it is about and the text."""
    for one in remarks:
        at = shown(one.at.date()) if one.at else None
        st.write(literal(say(code, loom=one.key, at=at, about=one.about or None, text=one.text)))
        _photos(one, zone)


def _photos(remark: Remark, zone: ZoneInfo) -> None:
    if not remark.photos:
        return
    with st.container(horizontal=True):
        for photo in remark.photos:
            try:
                content = access.ask(picture, photo.number)
            except DataError:
                continue  # taken back meanwhile
            said = say("today-photo-by", who=photo.who, at=moment(photo.at, zone), remark=photo.remark)
            st.image(content, literal(said), width=SMALL_PX, alt=photo.remark)
