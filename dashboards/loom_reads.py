"""What was read of one loom in passing: stops and waste of a period, bobbins, each with its table and its form."""

from collections.abc import Mapping
from datetime import datetime, time, timedelta
from typing import Any

import streamlit as st

from dashboards import access
from dashboards.forms import Form
from dashboards.parts import heads, table
from dashboards.remark_parts import told_remarks
from dashboards.speaking import number, say, shown, typed_day
from dashboards.tables import Cell, Head
from tracker.domain.record_tables import SIDES
from tracker.services.people.permissions import May
from tracker.services.screens.loom_records import LoomRecords, loom_records
from tracker.services.screens.loom_sheet import LoomSheet
from tracker.services.work.entering import enter_records

Row = Mapping[str, Any]


def reads(sheet: LoomSheet) -> None:
    found: LoomRecords = access.ask(loom_records, sheet.key.loom, sheet.key.hall)
    if found.remarks:
        st.subheader(say("history-remarks"))
        told_remarks(found.remarks, "history-remark-line", sheet.zone)
    _stops(found, sheet)
    _waste(found, sheet)
    _bobbins(found, sheet)


def _stops(found: LoomRecords, sheet: LoomSheet) -> None:
    st.subheader(say("history-stops"))
    columns = [*heads("history-cause"), *heads("history-stops-many", "history-picks", right=True)]
    lines = [[*_period(row), row["cause"] or say("history-all-causes"), Cell(number(row["stops"]), row["stops"]),
              Cell(number(row["picks"]), row["picks"])] for row in found.stops]  # fmt: skip
    _shown([*heads("history-from", "history-to", whole=True), *columns], lines, "stops", "history-no-stops")
    if not access.may(May.RECORD):
        return
    with st.expander(say("history-record-stops")), Form(f"stops of {sheet.key}") as form:
        told = _told_period(form, sheet)
        stops = st.number_input(say("history-stops-many"), value=None, min_value=0, step=1, key=form.key("stops"))
        form.beside("stops")
        picks = st.number_input(say("history-picks"), value=None, min_value=0, step=1000, key=form.key("picks"))
        form.beside("picks", "picks-differ")
        cause = st.text_input(say("history-cause"), key=form.key("cause"), placeholder=say("history-all-causes"))
        row = {"stops": stops, "picks": picks, "cause": cause.strip() or None}
        form.act(say("history-record-it"), lambda: _enter(sheet, "stops", row, told))


def _waste(found: LoomRecords, sheet: LoomSheet) -> None:
    st.subheader(say("history-waste"))
    columns = [*heads("history-from", "history-to", "history-side", whole=True), *heads("history-width", right=True)]
    lines = [[*_period(row), _side(row["side"]), Cell(number(row["waste_width_mm"]), row["waste_width_mm"])]
             for row in found.waste]  # fmt: skip
    _shown(columns, lines, "waste", "history-no-waste")
    if not access.may(May.RECORD):
        return
    with st.expander(say("history-record-waste")), Form(f"waste of {sheet.key}") as form:
        told = _told_period(form, sheet)
        side = st.selectbox(say("history-side"), (None, *SIDES), format_func=_side, key=form.key("side"))
        width = st.number_input(say("history-width"), value=None, min_value=0.0, step=1.0, key=form.key("width"))
        form.beside("waste width")
        form.act(
            say("history-record-it"), lambda: _enter(sheet, "waste", {"side": side, "waste_width_mm": width}, told)
        )


def _bobbins(found: LoomRecords, sheet: LoomSheet) -> None:
    st.subheader(say("bobbins"))
    columns = [*heads("history-at", "history-side", whole=True), *heads("history-grams", right=True)]
    lines = [[Cell(shown(row["at"]), row["at"]), _side(row["side"]), Cell(number(row["grams_left"]), row["grams_left"])]
             for row in found.bobbins]  # fmt: skip
    _shown(columns, lines, "bobbins", "history-no-bobbins")
    if not access.may(May.RECORD):
        return
    with st.expander(say("history-record-bobbins")), Form(f"bobbins of {sheet.key}") as form:
        side = st.selectbox(say("history-side"), SIDES, format_func=_side, key=form.key("side"))
        grams = st.number_input(say("history-grams"), value=None, min_value=0.0, step=10.0, key=form.key("grams"))
        form.beside("grams left")
        form.act(say("history-record-it"), lambda: _enter(sheet, "bobbins", {"side": side, "grams_left": grams}, {}))


def _shown(columns: list[Head], lines: list[list[Cell | str]], name: str, none: str) -> None:
    if lines:
        table(columns, lines, name=name)
    else:
        st.caption(say(none))


def _period(row: Row) -> list[Cell]:
    return [Cell(shown(row[name]), row[name]) for name in ("from_at", "to_at")]


def _told_period(form: Form, sheet: LoomSheet) -> dict[str, datetime]:
    """The week up to today, unless another is told."""
    today = sheet.as_of.astimezone(sheet.zone).date()
    first = st.date_input(say("history-from"), today - timedelta(days=7), format=typed_day(), key=form.key("from"))
    form.beside("from", "period-overlaps")
    last = st.date_input(say("history-to"), today, format=typed_day(), key=form.key("to"))
    form.beside("to")
    return {name: datetime.combine(on, time(), sheet.zone) for name, on in (("from_at", first), ("to_at", last))}


def _side(side: str | None) -> str:
    return say("history-side-says", side=side)


def _enter(sheet: LoomSheet, name: str, row: Row, told: Mapping[str, datetime]):
    return enter_records(access.context(), sheet.key.loom, sheet.key.hall, {name: [row]}, told)
