"""The end of an open card: remarks, who goes on, run-in, sign-off, or that the conversion failed."""

from functools import partial

import streamlit as st

from dashboards import forms
from dashboards.forms import Form
from dashboards.hand import Hand
from dashboards.parts import literal
from dashboards.speaking import SPEAKER, say, shown
from tracker.domain.progress import Stage
from tracker.services.screens.work_card import WorkCard
from tracker.services.work import at_the_loom
from tracker.services.work.record import StageTold, record_stage


def remarks_and_end(hand: Hand) -> None:
    work = hand.work
    if work.stage is Stage.SIGNED_OFF:
        st.success(literal(say("today-is-signed-off", loom=work.card.key)))
    _remark(hand)
    _earlier(work)
    if work.stage is Stage.IN_WORK:
        _hand_over(hand)
        forms.button(
            f"finish {work.card.key}",
            say("today-finish"),
            partial(at_the_loom.finish, hand.context, hand.here),
            primary=True,
        )
    if work.stage is Stage.RUN_IN:
        _sign_off(hand)
    if work.stage is not Stage.SIGNED_OFF:
        _break_off(hand)


def _remark(hand: Hand) -> None:
    work = hand.work
    with Form(f"remark {work.card.key}") as form:
        names = ["", *(line.operation.row.operation for line in work.operations)]
        about = st.selectbox(
            say("today-remark-about"), names, format_func=lambda name: name or say("today-remark-whole")
        )
        text = st.text_area(say("today-remark"))
        form.beside("remark")
        form.act(say("today-remark-note"), lambda: _note(hand, about, text), primary=False)
    for line in filter(None, [work.whole.get("remark"), *(one.row.get("remark") for one in work.operations)]):
        st.write(literal(line))


def _note(hand: Hand, about: str, text: str):
    """What was said before stays in front of it."""
    work = hand.work
    row = next((one.row for one in work.operations if one.operation.row.operation == about), work.whole)
    before = row.get("remark")
    whole = f"{before} · {text.strip()}" if before and text.strip() else text
    return at_the_loom.remark(hand.context, hand.here, whole, about or None, say("today-noted-anew") if before else "")


def _earlier(work: WorkCard) -> None:
    st.subheader(say("today-earlier"))
    if not work.earlier:
        st.caption(say("today-earlier-none"))
    for one in work.earlier:
        at = shown(one.at.date())
        st.write(literal(say("today-earlier-line", loom=one.key, at=at, about=one.about or None, text=one.text)))


def _hand_over(hand: Hand) -> None:
    work = hand.work
    before = work.whole.get("hand_over")
    if before:
        st.write(literal(say("today-handed-over", who=before)))
    with Form(f"hand over {work.card.key}") as form:
        to = st.text_input(say("today-hand-over-to"))
        again = say("today-noted-anew") if before else ""
        form.act(
            say("today-hand-over"), lambda: at_the_loom.hand_over(hand.context, hand.here, to, again), primary=False
        )


def _sign_off(hand: Hand) -> None:
    work = hand.work
    st.subheader(say("today-open-points"))
    for point in work.open_points:
        st.write(literal(say("today-open-point", what=SPEAKER.say(point))))
    if not work.open_points:
        st.write(say("today-nothing-open"))
    key = work.card.key
    asks = say("today-sign-off-asks", loom=key, who=hand.here.who)

    def sign_off():
        told = StageTold(hand.context.now())
        return record_stage(hand.context.telling(hand.here.who), key.loom, Stage.SIGNED_OFF.value, key.hall, told)

    forms.button(f"sign off {key}", say("today-sign-off"), sign_off, asks, primary=True)


def _break_off(hand: Hand) -> None:
    work = hand.work
    with st.expander(say("today-break-off")), Form(f"break off {work.card.key}") as form:
        why = st.text_input(say("today-reason"))
        form.beside("remark", "stopped-without-reason")
        asks = say("today-break-off-asks", loom=work.card.key)
        form.act(say("today-break-off"), lambda: at_the_loom.break_off(hand.context, hand.here, why), asks)
