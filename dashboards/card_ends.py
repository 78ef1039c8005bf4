"""The end of an open card: remarks, who goes on, run-in, sign-off, or that the conversion failed."""

from functools import partial

import streamlit as st

from dashboards import forms
from dashboards.forms import Form
from dashboards.hand import Hand
from dashboards.parts import literal
from dashboards.remark_parts import own_remarks, remark_form, told_remarks
from dashboards.speaking import SPEAKER, say
from tracker.domain.progress import Stage
from tracker.services.screens.work_card import WorkCard
from tracker.services.work import at_the_loom
from tracker.services.work.record import StageTold, record_stage


def remarks_and_end(hand: Hand) -> None:
    work = hand.work
    if work.stage is Stage.SIGNED_OFF:
        st.success(literal(say("today-is-signed-off", loom=work.card.key)))
    remark_form(hand)
    own_remarks(work)
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


def _earlier(work: WorkCard) -> None:
    st.subheader(say("today-earlier"))
    if not work.earlier:
        st.caption(say("today-earlier-none"))
    told_remarks(work.earlier, "today-earlier-line", work.zone)


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
