"""Terms: all of them with what they mean and where they act; change one, see what it was."""

from typing import Any

import streamlit as st

from dashboards import access, forms
from dashboards.forms import Form
from dashboards.parts import facts, heads, literal, table
from dashboards.speaking import SPEAKER, moment, say, shown
from dashboards.tables import Cell
from dashboards.value_field import as_typed, value_field
from tracker.errors import DataError, Message, message
from tracker.services.loading.by_hand import or_refused, take_out, type_in
from tracker.services.loading.load_report import LoadReport
from tracker.services.people.permissions import May
from tracker.services.screens.terms_board import TermLine, TermsBoard, terms_board


def page() -> None:
    st.title(say("screen-terms"))
    st.caption(say("terms-about"))
    forms.say_done()
    board = access.ask(terms_board)
    columns = [*heads("terms-term", "terms-value", whole=True), *heads("terms-means", "terms-acts")]
    table(columns, [[_named(line), Cell(_value(line)), *_says(line)] for line in board.lines])
    _one(board)


def _one(board: TermsBoard) -> None:
    st.header(say("terms-one"))
    names = [line.term for line in board.lines]
    asked = st.query_params.get("term")
    term = st.selectbox(
        say("terms-term"),
        names,
        names.index(asked) if asked in names else None,
        dict(zip(names, map(_named, board.lines), strict=True)).__getitem__,
        key="term",
        placeholder=say("terms-choose"),
    )
    line = next((line for line in board.lines if line.term == term), None)
    if line is None:
        return
    st.query_params["term"] = line.term
    means, acts = _says(line)
    in_sheet = [(say("terms-in-sheet"), line.term)] if line.term != _named(line) else []
    facts([(say("terms-value"), _value(line)), (say("terms-default"), _said(line.default)),
           (say("terms-means"), means), (say("terms-acts"), acts), *in_sheet])  # fmt: skip
    if forms.allowed(May.LOAD, say_why=True):
        _change(line)
    _was(line, board)


def _change(line: TermLine) -> None:
    with Form(f"term {line.term}") as form:
        line = form.as_shown(line)
        value = value_field(line.column, say("terms-new"), line.value, form.key("value"))
        form.beside("Value")
        if line.column:
            st.caption(literal(say("terms-possible", possible=line.column.possible)))
        form.act(say("terms-change"), lambda: _set(form, line, value))
    if line.given:
        forms.button(
            f"term back {line.term}", say("terms-back"), lambda: _back(line),
            asks=say("terms-back-asks", term=line.named, default=_said(line.default)),
        )  # fmt: skip


def _set(form: Form, line: TermLine, value: Any) -> LoadReport:
    if value in (None, ""):
        raise DataError("term-empty", term=line.named)
    context = form.having_shown("terms", (line.term,), value=line.kept)
    report = type_in(context, "terms", [{"term": line.term, "value": as_typed(line.column, value)}])
    return or_refused(report, [say("terms-named", term=line.named)])


def _back(line: TermLine) -> Message:
    take_out(access.context(), "terms", (line.term,))
    return message("term-taken-back", term=line.named, default=_said(line.default))


def _was(line: TermLine, board: TermsBoard) -> None:
    st.subheader(say("terms-was"))
    if not line.was:
        st.caption(say("terms-never"))
        return
    columns = [*heads("terms-when", "terms-who", whole=True), *heads("terms-old", "terms-now")]
    table(columns, [
        [Cell(moment(was.at, board.zone), (was.at, -i)), was.who, _said(was.old), _said(was.new)]
        for i, was in enumerate(line.was)
    ])  # fmt: skip


def _named(line: TermLine) -> str:
    return SPEAKER.say(line.named)


def _says(line: TermLine) -> tuple[str, str]:
    """What it means and where it acts."""
    return SPEAKER.say(line.means), SPEAKER.say(line.acts)


def _value(line: TermLine) -> str:
    return _said(line.value) if line.given else say("terms-by-default", value=_said(line.value))


def _said(value: Any) -> str:
    return shown(value) or say("terms-none")
