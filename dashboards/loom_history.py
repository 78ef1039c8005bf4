"""What happened to one loom: where it stands and how that is told, what was read, and who did what with the way to undo it."""

from datetime import datetime, time, timedelta
from urllib.parse import urlencode

import streamlit as st

from dashboards import access
from dashboards.forms import Form
from dashboards.loom_reads import reads
from dashboards.parts import heads, literal, table
from dashboards.speaking import SPEAKER, language, moment, say, typed_day
from dashboards.tables import Cell
from tracker.domain.progress import Stage
from tracker.services.people.audit import Which, deeds
from tracker.services.people.permissions import May
from tracker.services.screens.loom_sheet import LoomSheet
from tracker.services.work.record import StageTold, needed_for, record_stage
from tracker.services.work.stage_moves import RECORDED
from tracker.services.work.withdrawing import withdraw_stage
from tracker.words import Edge, Speaker

MOST = 20
"""Lines of the account of who did what."""


def history(sheet: LoomSheet) -> None:
    st.header(say("history"))
    _stages(sheet)
    reads(sheet)
    _deeds(sheet)


def _stages(sheet: LoomSheet) -> None:
    if sheet.history:
        columns = [*heads("history-stage", "history-since", whole=True), *heads("history-who", "history-reason")]
        table(columns, [[SPEAKER.word(one.stage), Cell(moment(one.at, sheet.zone), one.at), one.who, one.reason or ""]
                        for one in sheet.history])  # fmt: skip
    if sheet.booking and sheet.booking.crews:
        there = {"crew": sheet.booking.crews[0].crew, "loom": sheet.key.loom, "hall": sheet.key.hall}
        st.html(f'<a class="back" href="today?{urlencode(there)}" target="_self">{say("history-card")}</a>')
    actor = access.context().actor
    mine = [stage for stage in RECORDED if actor.may(needed_for(stage))]
    if not mine:
        return
    with st.expander(say("history-record")), Form(f"stage of {sheet.key}") as form:
        stood = form.as_shown(sheet.history[-1].stage if sheet.history else None)
        stage = st.selectbox(say("history-stage"), mine, format_func=SPEAKER.word, key=form.key("stage"))
        why = st.text_input(say("history-why"), key=form.key("why"))
        form.beside("stage-needs-reason", "stage-without-reason")
        at = _moment(form, sheet)
        asks = say("history-stopped-asks", loom=sheet.key) if stage is Stage.STOPPED else ""
        form.act(say("history-record-it"), lambda: _record(form, sheet, stood, StageTold(at, why), stage), asks)
    if sheet.history:
        last = sheet.history[-1].stage
        with st.expander(say("history-withdraw")), Form(f"withdraw stage of {sheet.key}") as form:
            why = st.text_input(say("history-withdraw-why"), key=form.key("why"))
            form.beside("withdraw-without-reason")
            asks = say("history-withdraw-asks", loom=sheet.key, stage=last)
            form.act(say("history-withdraw-it"), lambda: _withdraw(sheet, last, why), asks, primary=False)


def _moment(form: Form, sheet: LoomSheet) -> datetime | None:
    """None = now."""
    day_at, time_at = st.columns(2)
    today = sheet.as_of.astimezone(sheet.zone).date()
    on = day_at.date_input(say("history-day"), None, max_value=today, format=typed_day(), key=form.key("day"))
    clock = time_at.time_input(say("history-time"), None, step=timedelta(minutes=5), key=form.key("time"))
    return datetime.combine(on, clock or time(12), sheet.zone) if on else None


def _record(form: Form, sheet: LoomSheet, stood: Stage | None, told: StageTold, stage: Stage):
    context = form.having_shown("stage", (sheet.key.loom, sheet.key.hall), stage=stood)
    return record_stage(context, sheet.key.loom, stage.value, sheet.key.hall, told)


def _withdraw(sheet: LoomSheet, stage: Stage, why: str):
    return withdraw_stage(access.context(), sheet.key.loom, why, sheet.key.hall, stage.value)


# ---- who did what


def _deeds(sheet: LoomSheet) -> None:
    st.subheader(say("history-deeds"))
    found = access.ask(deeds, Which(sheet.key.loom, sheet.key.hall), MOST)
    speaker, mine = Speaker(language(), found.zone, Edge.SCREEN), access.may(May.UNDO)
    rows, told = [], set()
    for one in found.deeds:
        undo = mine and one.act in found.undoable and one.act not in told
        told.add(one.act)
        rows.append([Cell(moment(one.at, found.zone), one.at), one.who, speaker.say(one.what),
                     Cell(say("changes-undo"), href=f"changes?undo={one.act}") if undo else ""])  # fmt: skip
    columns = [*heads("history-when", whole=True), *heads("history-who", "history-what", "history-undo")]
    table(columns, rows, name="deeds")
    if found.more:
        there = urlencode({"loom": sheet.key.loom, "hall": sheet.key.hall})
        st.html(f'<a class="back" href="changes?{there}" target="_self">{say("history-more")}</a>')
    if not found.deeds:
        st.caption(literal(say("deeds-none")))
