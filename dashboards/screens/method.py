"""Method: what a conversion consists of, what its review finds, and a new version with what it changes before it counts."""

import streamlit as st

from dashboards import access, forms
from dashboards.downloads import download
from dashboards.parts import heads, literal, table
from dashboards.screens.load import examine
from dashboards.speaking import SPEAKER, moment, say, shown
from dashboards.tables import Cell, Head
from dashboards.uploads import ENDINGS
from tracker.errors import Message
from tracker.services.people.permissions import May
from tracker.services.screens.method_board import FILE, MethodBoard, MethodPart, method_board, method_file
from tracker.words.findings import in_words


def page() -> None:
    st.title(say("screen-method"))
    board = access.ask(method_board)
    if board.version:
        since = board.versions[0][1].astimezone(board.zone)
        st.caption(say("method-about", version=str(board.version), since=since))
    else:
        st.info(say("method-not-loaded"))
    if done := st.session_state.pop("loaded", None):
        st.success("\n".join(f"- {literal(line)}" for line in done))
    tabs = st.tabs(
        [*(SPEAKER.say(sheet.named) for sheet in board.sheets), say("method-review"), say("method-versions")]
    )
    for tab, sheet in zip(tabs, board.sheets, strict=False):
        with tab:
            _sheet(sheet)
    with tabs[-2]:
        _review(board)
    with tabs[-1]:
        _versions(board)
    _new(board)


def _sheet(sheet: MethodPart) -> None:
    if not sheet.rows:
        st.caption(say("method-sheet-empty", sheet=sheet.named))
        return
    rows = [[SPEAKER.say(value) if isinstance(value, Message) else shown(value) for value in row] for row in sheet.rows]
    with st.container(key=f"method-{sheet.name.replace('_', '-')}"):
        table([Head(SPEAKER.say(heading)) for heading in sheet.headings], rows, sorts=False, name=sheet.name)


def _review(board: MethodBoard) -> None:
    if not board.findings:
        st.caption(say("method-review-none"))
        return
    st.caption(say("method-review-about"))
    columns = heads("load-head-severity", "load-head-sheet", "load-head-cell", "load-head-what", "load-head-to-do")
    said = [in_words(finding, SPEAKER) for finding in board.findings]
    table(columns, [[say("load-severity", severity=str(f.severity)), f.sheet, f.cell, f.message, f.hint] for f in said])


def _versions(board: MethodBoard) -> None:
    columns = [*heads("method-version-head", right=True), *heads("method-since", whole=True)]
    table(columns, [[Cell(str(number), number), Cell(moment(at, board.zone), at)] for number, at in board.versions])


def _new(board: MethodBoard) -> None:
    st.header(say("method-change"))
    st.caption(say("method-change-about"))
    if board.version:
        download(say("method-download"), method_file, FILE)
    if not forms.allowed(May.LOAD, say_why=True):
        return
    times = st.session_state.get("loads", 0)
    sent = st.file_uploader(say("method-upload"), type=ENDINGS, accept_multiple_files=True, key=f"method {times}")
    if sent:
        examine(sent)
