"""What happened to one loom: where it stands and how that is told, stops, and who did what with the way to undo it."""

from datetime import datetime, time, timedelta
from urllib.parse import urlencode

import streamlit as st

from dashboards import access
from dashboards.forms import Form
from dashboards.parts import heads, literal, table
from dashboards.remark_parts import told_remarks
from dashboards.speaking import SPEAKER, language, moment, number, say, shown
from dashboards.tables import Cell
from tracker.domain.progress import Stage
from tracker.services.people.audit import Which, deeds
from tracker.services.people.permissions import May
from tracker.services.screens.loom_records import loom_records
from tracker.services.screens.loom_sheet import LoomSheet
from tracker.services.work.entering import enter_records
from tracker.services.work.record import StageTold, needed_for, record_stage
from tracker.services.work.stage_moves import RECORDED
from tracker.services.work.withdrawing import withdraw_stage
from tracker.words import Edge, Speaker

MOST = 20
"""Lines of the account of who did what."""


def history(sheet: LoomSheet) -> None:
    st.header(say("history"))
    _stages(sheet)
    _remarks(sheet)
    _stops(sheet)
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
    on = day_at.date_input(say("history-day"), None, max_value=today, format="YYYY-MM-DD", key=form.key("day"))
    clock = time_at.time_input(say("history-time"), None, step=timedelta(minutes=5), key=form.key("time"))
    return datetime.combine(on, clock or time(12), sheet.zone) if on else None


def _record(form: Form, sheet: LoomSheet, stood: Stage | None, told: StageTold, stage: Stage):
    context = form.having_shown("stage", (sheet.key.loom, sheet.key.hall), stage=stood)
    return record_stage(context, sheet.key.loom, stage.value, sheet.key.hall, told)


def _withdraw(sheet: LoomSheet, stage: Stage, why: str):
    return withdraw_stage(access.context(), sheet.key.loom, why, sheet.key.hall, stage.value)


# ---- what was read and remarked


def _remarks(sheet: LoomSheet) -> None:
    remarks = access.ask(loom_records, sheet.key.loom, sheet.key.hall).remarks
    if remarks:
        st.subheader(say("history-remarks"))
        told_remarks(remarks, "history-remark-line", sheet.zone)


def _stops(sheet: LoomSheet) -> None:
    rows = access.ask(loom_records, sheet.key.loom, sheet.key.hall).stops
    st.subheader(say("history-stops"))
    if rows:
        columns = [*heads("history-from", "history-to", whole=True), *heads("history-cause"),
                   *heads("history-stops-many", "history-picks", right=True)]  # fmt: skip
        table(columns, [[Cell(shown(row["from_at"]), row["from_at"]), Cell(shown(row["to_at"]), row["to_at"]),
                         row["cause"] or say("history-all-causes"), Cell(number(row["stops"]), row["stops"]),
                         Cell(number(row["picks"]), row["picks"])] for row in rows], name="stops")  # fmt: skip
    else:
        st.caption(say("history-no-stops"))
    if not access.may(May.RECORD):
        return
    today = sheet.as_of.astimezone(sheet.zone).date()
    with st.expander(say("history-record-stops")), Form(f"stops of {sheet.key}") as form:
        first = st.date_input(say("history-from"), today - timedelta(days=7), format="YYYY-MM-DD", key=form.key("from"))
        form.beside("from", "period-overlaps")
        last = st.date_input(say("history-to"), today, format="YYYY-MM-DD", key=form.key("to"))
        form.beside("to")
        stops = st.number_input(say("history-stops-many"), value=None, min_value=0, step=1, key=form.key("stops"))
        form.beside("stops")
        picks = st.number_input(say("history-picks"), value=None, min_value=0, step=1000, key=form.key("picks"))
        form.beside("picks", "picks-differ")
        cause = st.text_input(say("history-cause"), key=form.key("cause"), placeholder=say("history-all-causes"))
        told = {name: datetime.combine(on, time(), sheet.zone) for name, on in (("from_at", first), ("to_at", last))}
        row = {"stops": stops, "picks": picks, "cause": cause.strip() or None}
        key = sheet.key
        form.act(
            say("history-record-it"),
            lambda: enter_records(access.context(), key.loom, key.hall, {"stops": [row]}, told),
        )


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
