"""Settings: does it hold? Alarms by kind, visits due, the series, and what signed-off looms taught."""

from collections.abc import Sequence
from dataclasses import replace
from functools import partial
from zoneinfo import ZoneInfo

import streamlit as st

from dashboards import access, filters, forms
from dashboards.charts import series_chart
from dashboards.parts import Figure, figures, heads, literal, table
from dashboards.setting_parts import alarm_lines, record_value, seen_forms, series_frame, series_table
from dashboards.speaking import SPEAKER, day, moment, number, say, shown
from dashboards.tables import Cell, loom_cell
from tracker.commissioning.settings.alarms import AlarmKind
from tracker.commissioning.settings.series import Series
from tracker.commissioning.settings.taught import Taught
from tracker.commissioning.settings.visits import Visit
from tracker.domain.mill import LoomKey
from tracker.domain.words import fold, natural_key
from tracker.errors import message
from tracker.services.people.permissions import May
from tracker.services.work.proposed_setpoint import take_over_setpoint
from tracker.services.work.settings import SettingsReport, proposal_message, settings


def page() -> None:
    st.title(say("screen-settings"))
    forms.say_done()
    report = access.ask_now(settings)
    st.caption(say("sheet-as-of", at=moment(report.as_of, report.zone)))
    if not report.series:
        st.info(literal(SPEAKER.line(message("settings-none"))))
        return
    figures(_figures(report))
    shown_report, series = _chosen(report)
    _alarms(shown_report)
    _visits(shown_report)
    _one_series(series, report.zone)
    st.header(say("settings-all"))
    series_table(report, series)
    _taught(report)


def _figures(report: SettingsReport) -> list[Figure]:
    loud = report.review.alarms
    due = [visit for visit in report.visits if visit.is_due(report.today)]
    looms = len({alarm.series.key for alarm in loud})
    return [
        (say("settings-alarms"), number(len(loud)), say("settings-on-looms", looms=looms) if loud else ""),
        (say("settings-visits-due"), number(len(due)), say("settings-overdue", many=len(report.overdue))),
        (say("settings-known"), number(len(report.series)), say("settings-method", version=report.method_version)),
    ]  # fmt: skip


def _chosen(report: SettingsReport) -> tuple[SettingsReport, Sequence[Series]]:
    """What the filters leave; they stand in the address."""
    halls_at, kinds_at, loom_at = st.columns(3)
    every = sorted({one.key.hall for one in report.series}, key=natural_key)
    halls = filters.several(halls_at, "hall", say("looms-hall"), every, say("looms-all-halls"))
    names = [kind.value for kind in AlarmKind]
    kinds = filters.several(kinds_at, "kind", say("settings-kind"), names, say("settings-all-kinds"), _kind_says)
    loom = filters.text(loom_at, "number", say("looms-loom"), say("looms-all"))

    def fits(key: LoomKey) -> bool:
        return (not halls or key.hall in halls) and fold(loom) in fold(key.loom)

    loud = tuple(a for a in report.review.alarms if fits(a.series.key) and (not kinds or a.kind.value in kinds))
    left = replace(report, review=replace(report.review, alarms=loud), quiet=tuple(q for q in report.quiet if fits(q.seen.key)),
                   visits=tuple(visit for visit in report.visits if fits(visit.key)))  # fmt: skip
    return left, [one for one in report.series if fits(one.key)]


def _kind_says(kind: str) -> str:
    return SPEAKER.word(AlarmKind(kind))


def _alarms(report: SettingsReport) -> None:
    """Grouped by kind; each with its figures in words."""
    st.header(say("settings-alarms"))
    st.caption(literal(SPEAKER.line(message("settings-rate"))))
    if not report.review.alarms:
        st.write(say("settings-no-alarm"))
    for kind in AlarmKind:
        of_kind = tuple(alarm for alarm in report.review.alarms if alarm.kind is kind)
        if of_kind:
            st.subheader(say("settings-of-kind", kind=kind, many=len(of_kind)))
            alarm_lines(of_kind)
    seen_forms(report)
    for line in report.quiet_messages():
        st.caption(literal(SPEAKER.line(line)))


def _visits(report: SettingsReport) -> None:
    st.header(say("settings-visits"))
    open_ones = [visit for visit in report.visits if visit.done_on is None]
    if not open_ones:
        st.caption(say("settings-no-visit"))
        return
    columns = [*heads("looms-loom", "looms-hall", whole=True), *heads("settings-after", right=True),
               *heads("settings-due-on", "settings-state", whole=True)]  # fmt: skip
    table(columns, [_visit(visit, report) for visit in open_ones], name="visits")
    if forms.allowed(May.RECORD, say_why=True):
        with st.expander(say("settings-record")):
            keys = list(dict.fromkeys(visit.key for visit in open_ones))
            key = keys[st.selectbox(say("looms-loom"), range(len(keys)), format_func=lambda i: str(keys[i]))]
            record_value(key, [one for one in report.series if one.key == key])


def _visit(visit: Visit, report: SettingsReport) -> list[Cell | str]:
    state = say("settings-visit-state", state=report.state_of(visit))
    return [loom_cell(visit.key), visit.key.hall, Cell(number(visit.after_days), visit.after_days),
            Cell(day(visit.due_on), visit.due_on), state]  # fmt: skip


def _one_series(series: Sequence[Series], zone: ZoneInfo) -> None:
    """One setting of one loom over time, as a picture and as its table."""
    st.header(say("settings-over-time"))
    if not series:
        st.caption(say("looms-none-fits"))
        return
    one = series[st.selectbox(say("settings-which"), range(len(series)), format_func=lambda i: _named(series[i]))]
    frame = series_frame(one, zone)
    if len(frame):
        limits = [limit for limit in (one.limits.low, one.limits.high) if isinstance(limit, int | float)]
        st.altair_chart(
            series_chart(frame, limits, one.unit or ""), theme=None, alt=say("settings-chart", setting=one.setting)
        )
    columns = [*heads("settings-read-at", whole=True), *heads("settings-value", right=True)]
    columns += heads("settings-why", "settings-article")
    rows = [[Cell(moment(value.at, zone), value.at), shown(value.value), say("settings-why-says", why=value.why.value),
             value.article or ""] for value in one.values]  # fmt: skip
    table(columns, rows, name="values")


def _named(one: Series) -> str:
    return f"{one.key} · {say('today-setting', setting=one.setting, side=one.side, unit=one.unit)}"


def _taught(report: SettingsReport) -> None:
    """The middle of what was set on signed-off looms beside the setpoint, and the way to make it the method's."""
    st.header(say("settings-taught"))
    if not report.taught:
        st.caption(say("settings-nothing-taught"))
        return
    columns = heads("settings-setting", "settings-side", "looms-type", "settings-family", whole=True)
    columns += heads(
        "settings-looms", "settings-median", "settings-spread", "settings-target", "settings-proposed", right=True
    )
    table(columns, [_lesson(one) for one in report.taught], name="taught")
    for one in (one for one in report.taught if one.proposed is not None):
        st.write(literal(SPEAKER.line(proposal_message(one))))
        if forms.allowed(May.LOAD, say_why=True):
            asks = say("settings-take-over-asks", setting=one.setting, side=one.side, target=shown(one.target),
                       proposed=shown(one.proposed), type=one.machine_type)  # fmt: skip
            take = partial(take_over_setpoint, access.context(), report, one)
            forms.button(
                f"setpoint {one.setting} {one.side} {one.machine_type} {one.family}",
                say("settings-take-over"),
                take,
                asks,
            )


def _lesson(one: Taught) -> list[Cell | str]:
    return [
        one.setting, one.side or "", one.machine_type, one.family or "", Cell(number(one.looms), one.looms),
        *(Cell(number(value, one.unit or "", 3), value) for value in (one.median, one.spread)),
        *(shown(value) for value in (one.target, one.proposed)),
    ]  # fmt: skip
