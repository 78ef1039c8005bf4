"""Settings over time: the table of the series, alarms with their figures, and the forms for a value that was read and for alarms
that were seen."""

from collections.abc import Iterable, Sequence
from typing import Any
from zoneinfo import ZoneInfo

import pandas as pd
import streamlit as st

from dashboards import access, forms
from dashboards.forms import Form
from dashboards.frames import wall_ms
from dashboards.parts import heads, literal, table
from dashboards.speaking import SPEAKER, moment, number, say, shown
from dashboards.tables import Cell, loom_cell
from tracker.commissioning.settings.alarms import Alarm
from tracker.commissioning.settings.series import Series, Value
from tracker.domain.mill import LoomKey
from tracker.domain.record_tables import WHYS
from tracker.domain.words import fold
from tracker.services.people.permissions import May
from tracker.services.work.entering import enter_records
from tracker.services.work.seen_alarms import mark_seen
from tracker.services.work.settings import SettingsReport, settings
from tracker.services.work.told_settings import alarm_message

WIDE = 6
"""Decimals of a difference of two readings."""


def loom_settings(key: LoomKey) -> None:
    """Of one loom: alarms, series, and what can be told."""
    st.header(say("settings-of-loom"))
    report = access.ask_now(settings, key.loom, key.hall)
    alarms(report)
    if report.series:
        series_table(report, report.series, with_loom=False)
    else:
        st.caption(say("settings-no-series"))
    if forms.allowed(May.RECORD, say_why=True):
        with st.expander(say("settings-record")):
            record_value(key, report.series)


def alarms(report: SettingsReport) -> None:
    """Each alarm in words, then for each loom the form that says its alarms were seen."""
    alarm_lines(report.review.alarms)
    seen_forms(report)
    for line in report.quiet_messages():
        st.caption(literal(SPEAKER.line(line)))


def alarm_lines(found: Iterable[Alarm]) -> None:
    for alarm in found:
        st.warning(literal(SPEAKER.line(alarm_message(alarm))))


def seen_forms(report: SettingsReport) -> None:
    """One a loom: all its alarms are seen together, of whatever kind."""
    if access.may(May.RECORD):
        with st.container(horizontal=True):
            for key in dict.fromkeys(alarm.series.key for alarm in report.review.alarms):
                _seen(key)


def _seen(key: LoomKey) -> None:
    with st.popover(say("settings-seen", loom=key)), Form(f"alarms of {key}") as form:
        why = st.text_input(say("settings-seen-why"), key=form.key("why"))
        form.beside("alarms-seen-without-why")
        form.act(say("settings-seen-it"), lambda: mark_seen(access.context(), key.loom, key.hall, why))


def series_table(report: SettingsReport, series: Sequence[Series], with_loom: bool = True) -> None:
    columns = [*heads("settings-setting", "settings-side", whole=True),
               *heads("settings-found", "settings-set", "settings-now", right=True), *heads("settings-read-at", whole=True),
               *heads("settings-target", "settings-low", "settings-high", "settings-apart", right=True)]  # fmt: skip
    if with_loom:
        columns = [*heads("looms-loom", "looms-hall", whole=True), *columns]
    apart = report.left_less_right()
    table(columns, [_series(one, report, apart, with_loom) for one in series], name="series")


def _series(one: Series, report: SettingsReport, apart: Any, with_loom: bool) -> list[Cell | str]:
    difference = apart.get((one.key, fold(one.setting)))
    named = f"{one.setting} ({one.unit})" if one.unit else one.setting
    limits = (one.limits.target, one.limits.low, one.limits.high)
    cells: list[Cell | str] = [
        named, one.side or "", _value(one.found), _value(report.set_value(one)), _value(one.now),
        Cell(moment(one.now.at, report.zone), one.now.at), *map(shown, limits),
        "" if difference is None else Cell(number(difference, "", WIDE), difference),
    ]  # fmt: skip
    return [loom_cell(one.key), one.key.hall, *cells] if with_loom else cells


def _value(value: Value | None) -> str:
    return "" if value is None else shown(value.value)


def record_value(key: LoomKey, series: Sequence[Series]) -> None:
    """A value that was read: of a setting that the loom has, at a visit unless said otherwise."""
    places = {(one.setting, one.side): one for one in series}
    if not places:
        st.caption(say("settings-none-to-record"))
        return
    with Form(f"value of {key}") as form:
        place = st.selectbox(say("settings-setting"), list(places), format_func=_place, key=form.key("setting"))
        now = places[place].now.value
        if isinstance(now, str):
            value: Any = st.text_input(say("settings-value"), key=form.key("value"))
        else:
            value = st.number_input(say("settings-value"), value=None, step=1.0, key=form.key("value"))
        form.beside("value", "record-lacks")
        whys = ["visit", "adjusted", "read out", "found", "set"]
        assert set(whys) == set(WHYS)
        why = st.selectbox(
            say("settings-why"), whys, format_func=lambda one: say("settings-why-says", why=one), key=form.key("why")
        )
        form.act(say("settings-record-it"), lambda: _enter(key, place, value, why))


def _why_says(why: str) -> str:
    return say("settings-why-says", why=why)


def _enter(key: LoomKey, place: tuple[str, str | None], value: Any, why: str):
    row = {"setting": place[0], "side": place[1], "value": value, "why": why, "who": access.context().actor.name}
    return enter_records(access.context(), key.loom, key.hall, {"set_values": [row]}, {})


def _place(place: tuple[str, str | None]) -> str:
    return say("today-setting", setting=place[0], side=place[1], unit=None)


def series_frame(one: Series, zone: ZoneInfo) -> pd.DataFrame:
    """at_ms (the mill's wall clock), value; a row a reading that is a number."""
    rows = [(wall_ms(value.at, zone), float(value.value)) for value in one.values if not isinstance(value.value, str)]
    return pd.DataFrame(rows, columns=["at_ms", "value"])
