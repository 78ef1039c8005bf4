"""What a planner does about beam-outs: readings, a loom early or late, standing spans, protection, put off and left out."""

from collections.abc import Mapping, Sequence
from datetime import date, datetime
from typing import Any

import pandas as pd
import streamlit as st

from dashboards import access, forms
from dashboards.forms import Form
from dashboards.parts import heads, table
from dashboards.speaking import SPEAKER, day, moment, say, typed_day
from dashboards.tables import Cell, loom_cell
from tracker.domain.mill import LoomKey
from tracker.domain.progress import BESIDE, Stage
from tracker.domain.windows import WindowKind
from tracker.errors import DataError, Message, message
from tracker.services.context import Context
from tracker.services.loading.by_hand import or_refused, take_out, type_in
from tracker.services.loading.load_report import LoadReport
from tracker.services.screens.beam_outs import BeamOutBoard, BeamOutLine
from tracker.services.work.record import StageTold, record_stage
from tracker.services.work.told_beam_out import tell_beam_out

STEP_S = 900
"""Of a moment that is chosen."""


def acts(board: BeamOutBoard, lines: Sequence[BeamOutLine]) -> None:
    """The forms, one a tab; `lines`: what the filters of the screen leave."""
    st.header(say("beam-outs-acts"))
    drawn = {
        "tab-readings": _readings, "tab-told": _told, "tab-standing": _standing, "tab-protect": _protect, "tab-aside": _aside,
    }  # fmt: skip
    for tab, draw in zip(st.tabs([say(code) for code in drawn]), drawn.values(), strict=True):
        with tab:
            draw(board, lines)


# ---- readings


def _readings(board: BeamOutBoard, lines: Sequence[BeamOutLine]) -> None:
    st.write(say("readings-about"))
    with Form("readings") as form:
        frame = readings_to_fill(board, lines)
        config = st.column_config
        given = st.data_editor(
            frame, hide_index=True, key=form.key("table"), disabled=["loom", "hall", "expected"], num_rows="fixed",
            alt=say("readings-about"),
            column_config={
                "loom": config.TextColumn(say("beam-outs-loom")),
                "hall": config.TextColumn(say("beam-outs-hall")),
                "expected": config.NumberColumn(say("readings-expected"), format="%.0f"),
                "warp_left_m": config.NumberColumn(say("readings-left"), min_value=0.0, step=1.0),
                "read_at": config.DatetimeColumn(say("beam-outs-read-at"), format=f"{typed_day()} HH:mm", step=60),
            },
        )  # fmt: skip
        form.act(say("readings-enter"), lambda: enter_readings(given))


def readings_to_fill(board: BeamOutBoard, lines: Sequence[BeamOutLine]) -> pd.DataFrame:
    """A row a loom: those whose reading cannot be trusted first, then the other beam-outs, then looms that were never read;
    `warp_left_m` is empty and `read_at` this moment, local."""
    now = board.as_of.astimezone(board.zone).replace(tzinfo=None, second=0, microsecond=0)
    seen: dict[LoomKey, float | None] = {}
    for line in lines:
        if line.window.kind is not WindowKind.STANDING and line.window.number == 1:
            seen.setdefault(line.key, line.left_m)
    seen |= dict.fromkeys(board.silent)
    rows = [(key.loom, key.hall, left, None, now) for key, left in seen.items()]
    frame = pd.DataFrame(rows, columns=["loom", "hall", "expected", "warp_left_m", "read_at"])
    return frame.astype({"expected": float, "warp_left_m": float, "read_at": "datetime64[ns]"})


def enter_readings(given: pd.DataFrame) -> LoadReport:
    """Write the rows that were filled in. InputRefused, naming the looms, where one does not fit or none is filled in."""
    filled: list[Any] = list(given[given["warp_left_m"].notna()].itertuples())
    rows = [
        {
            "loom": row.loom, "hall": row.hall, "warp_left_m": row.warp_left_m,
            "read_at": None if pd.isna(row.read_at) else row.read_at.to_pydatetime(),
        }
        for row in filled
    ]  # fmt: skip
    report = type_in(access.context(), "readings", rows)
    return or_refused(report, [say("loom-named", loom=LoomKey(row.hall, row.loom)) for row in filled])


# ---- a loom early or late, standing, protected


def _told(board: BeamOutBoard, lines: Sequence[BeamOutLine]) -> None:
    st.write(say("told-about"))
    with Form("beam-out told") as form:
        key = _loom(board, form, [line.key for line in lines])
        at = _moment(say("told-at"), board, form, "at")
        form.beside("told-too-late")
        form.act(say("told-enter"), lambda: _tell(_named(key), at, board))


def _tell(key: LoomKey, at: datetime, board: BeamOutBoard) -> LoadReport:
    return tell_beam_out(access.context(), key.loom, key.hall, at, board.as_of)


def _standing(board: BeamOutBoard, _: Sequence[BeamOutLine]) -> None:
    st.write(say("standing-about"))
    with Form("standing span") as form:
        key = _loom(board, form)
        first_at, last_at, why_at = st.columns(3)
        with first_at:
            first = _moment(say("standing-from"), board, form, "from")
            form.beside("From")
        with last_at:
            last = _moment(say("standing-to"), board, form, "to")
        why = why_at.text_input(say("reason"), key=form.key("why"))
        form.act(say("standing-enter"), lambda: _typed("standing", key, from_at=first, to_at=last, reason=why))
    for span in board.standing:
        local = span.from_at.astimezone(board.zone).replace(tzinfo=None)
        st.write(say("standing-span", loom=span.key, first=span.from_at.astimezone(board.zone),
                     last=span.to_at.astimezone(board.zone), why=span.reason))  # fmt: skip
        forms.button(
            f"standing {span.key} {local}", say("standing-take-out"),
            lambda k=span.key, at=local: _taken_out(k, at),
            asks=say("standing-asks", loom=span.key, first=span.from_at.astimezone(board.zone)),
        )  # fmt: skip


def _taken_out(key: LoomKey, at: datetime) -> Message:
    take_out(access.context(), "standing", (key.loom, key.hall, at))
    return message("standing-taken-out", loom=key)


def _protect(board: BeamOutBoard, _: Sequence[BeamOutLine]) -> None:
    st.write(say("protect-about"))
    with Form("protect a loom") as form:
        before = form.as_shown(board.protected)
        key = _loom(board, form)
        until = st.date_input(say("protect-until"), None, key=form.key("until"), format=typed_day())
        form.act(say("protect-enter"), lambda: _protected(form, _named(key), before, until))
    if board.protected:
        columns = [*heads("beam-outs-loom", "beam-outs-hall", whole=True), *heads("protect-until")]
        table(columns, [[loom_cell(key), key.hall, Cell(day(until), until)] for key, until in board.protected.items()])


def _protected(form: Form, key: LoomKey, before: Mapping[LoomKey, date], until: date | None) -> LoadReport:
    here = form.having_shown("looms", (key.loom, key.hall), protected_until=before.get(key))
    return _typed("looms", key, here, protected_until=until)


# ---- put off, leave out, take up again


def _aside(board: BeamOutBoard, _: Sequence[BeamOutLine]) -> None:
    st.write(say("aside-about"))
    with Form("put off") as form:
        key = _loom(board, form)
        stages = {Stage.PUT_OFF: "aside-put-off", Stage.LEFT_OUT: "aside-leave-out", Stage.SCOPED: "aside-take-up"}
        stage = st.radio(
            say("aside-what"),
            list(stages),
            horizontal=True,
            key=form.key("stage"),
            format_func=lambda s: say(stages[s]),
        )
        why = st.text_input(say("reason"), key=form.key("why"))
        form.beside("stage-without-reason", "stage-needs-reason")
        form.act(say("aside-enter"), lambda: _recorded(_named(key), stage, why))
    if board.aside:
        columns = [
            *heads("beam-outs-loom", "beam-outs-hall", "beam-outs-stage", "aside-since", whole=True),
            *heads("reason"),
        ]
        table(columns, [
            [loom_cell(key), key.hall, SPEAKER.word(change.stage), Cell(moment(change.at, board.zone), change.at),
             change.reason or ""]
            for key, change in board.aside.items()
        ])  # fmt: skip


def _recorded(key: LoomKey, stage: Stage, why: str) -> Any:
    assert stage in (*BESIDE, Stage.SCOPED)
    return record_stage(access.context(), key.loom, stage.value, key.hall, StageTold(why=why))


# ---- fields that several of them have


def _loom(board: BeamOutBoard, form: Form, first: Sequence[LoomKey] = ()) -> LoomKey | None:
    """Which loom; `first` stand at the head of the list."""
    looms = list(dict.fromkeys((*first, *board.looms)))
    key = st.selectbox(
        say("beam-outs-loom"),
        looms,
        index=None,
        key=form.key("loom"),
        placeholder=say("choose-a-loom"),
        format_func=str,
    )
    form.beside("loom-not-chosen", "told-without-forecast")
    return key


def _moment(label: str, board: BeamOutBoard, form: Form, name: str) -> datetime:
    """A moment of the mill's zone."""
    now = board.as_of.astimezone(board.zone).replace(tzinfo=None)
    at = st.datetime_input(label, now, key=form.key(name), step=STEP_S, format=typed_day())
    return (at or now).replace(tzinfo=board.zone)


def _named(key: LoomKey | None) -> LoomKey:
    if key is None:
        raise DataError("loom-not-chosen")
    return key


def _typed(name: str, key: LoomKey | None, here: Context | None = None, **values: Any) -> LoadReport:
    key = _named(key)
    report = type_in(here or access.context(), name, [{"loom": key.loom, "hall": key.hall, **values}])
    return or_refused(report, [say("loom-named", loom=key)])
