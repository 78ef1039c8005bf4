"""What a scenario has otherwise, gathered on its screen entry by entry; each is refused beside its field."""

from collections.abc import Mapping, Sequence
from typing import Any

import streamlit as st

from dashboards import access, forms
from dashboards.forms import Form
from dashboards.parts import heads, literal, of_part, table
from dashboards.speaking import SPEAKER, say
from dashboards.tables import Cell
from dashboards.value_field import as_typed, value_field
from tracker.domain.columns import Column
from tracker.domain.mill import Receipt
from tracker.domain.tables import CLOSURES, CREWS, TERM_COLUMNS, TOOLS
from tracker.errors import Message, message
from tracker.services.plans.scenario_draft import Draft, DraftEntry, with_entry
from tracker.services.plans.scenario_entries import ENTRIES
from tracker.services.screens.scenario_board import ScenarioBoard

DRAFT = "scenario-so-far"
IN_A_ROW = 3


def draft() -> Draft:
    """The entries so far; kept while the page is open."""
    return st.session_state.get(DRAFT, ())


def gather(board: ScenarioBoard) -> None:
    """The entries so far, each to be taken out again, and a form for one more."""
    for number, entry in enumerate(draft()):
        with st.container(horizontal=True, vertical_alignment="center"):
            st.markdown(literal(SPEAKER.say(_says(entry))))
            forms.button(f"scenario out {number}", say("scenarios-take-out"), lambda entry=entry: _take_out(entry))
    kind = st.selectbox(
        say("scenarios-entry"), list(ENTRIES), None, lambda kind: say("scenarios-kind", kind=kind),
        key="scenario entry", placeholder=say("value-choose"),
    )  # fmt: skip
    if kind is None:
        return
    if kind in board.now:
        _one_value(kind, board.now[kind])
    else:
        _fields(kind, board)


def _one_value(kind: str, now: Mapping[str, Any]) -> None:
    """Another value for one of the mill's own names."""
    label = say("scenarios-whose", kind=kind)
    says = _term if kind == "terms" else str
    name = st.selectbox(label, list(now), None, says, key=f"scenario {kind}", placeholder=say("value-choose"))
    if name is None:
        return
    column = ENTRIES[kind].values or next(column for column in TERM_COLUMNS if column.title == name)
    with Form(f"scenario {kind} {name}") as form:
        value = value_field(column, say("scenarios-instead"), now[name], form.key("value"))
        form.beside(name)
        st.caption(literal(say("scenarios-possible", possible=column.possible)))
        form.act(say("scenarios-add"), lambda: _add(kind, {name: as_typed(column, value) or ""}))


def _fields(kind: str, board: ScenarioBoard) -> None:
    columns, line = ENTRIES[kind].fields, _line(board) if kind == "receipt" else None
    given = {"order": line.order, "part": line.part, "due": line.due} if line else {}
    names = _names(kind, board)
    typed: dict[str, Any] = {}
    with Form(f"scenario {kind} {line.order if line else ''}") as form:
        for first in range(0, len(columns), IN_A_ROW):
            some = columns[first : first + IN_A_ROW]
            for at, column in zip(st.columns(IN_A_ROW), some, strict=False):
                with at:
                    typed[column.heading] = value_field(
                        column,
                        _label(column),
                        given.get(column.field),
                        form.key(column.field),
                        names.get(column.field, ()),
                    )
                    form.beside(column.heading, column.title)
        st.caption(say("scenarios-needed"))
        form.act(
            say("scenarios-add"), lambda: _add(kind, {word: v for word, v in typed.items() if v not in (None, "")})
        )


def _line(board: ScenarioBoard) -> Receipt | None:
    """The order line that is to come otherwise; None where it is a new one."""
    return st.selectbox(
        say("scenarios-line"), board.receipts, None, key="scenario line", placeholder=say("scenarios-line-new"),
        format_func=lambda r: say(
            "scenarios-order", order=r.order, what=of_part(r.quantity, r.part, board.units), due=r.due
        ),
    )  # fmt: skip


def _names(kind: str, board: ScenarioBoard) -> Mapping[str, Sequence[str]]:
    """What there is to choose from; a new crew has a name of its own, and may be away like the others."""
    if kind == "crew":
        return {field: names for field, names in board.names.items() if field != "crew"}
    added = [str(entry.values["Crew"]) for entry in draft() if entry.kind == "crew"]
    return {**board.names, "crew": [*board.names["crew"], *added]}


def _term(name: str) -> str:
    return SPEAKER.say(next(column.titled for column in TERM_COLUMNS if column.title == name))


def _label(column: Column) -> str:
    named = SPEAKER.say(column.titled)
    return f"{named} *" if column.needed else named


def _add(kind: str, values: Mapping[str, Any]) -> Message:
    entry = DraftEntry(kind, values)
    st.session_state[DRAFT] = with_entry(access.context(), draft(), entry)
    return message("scenarios-added", entry=_says(entry))


def _take_out(entry: DraftEntry) -> Message:
    st.session_state[DRAFT] = tuple(one for one in draft() if one is not entry)
    return message("scenarios-taken-out", entry=_says(entry))


def _says(entry: DraftEntry) -> Message:
    named = {column.title if entry.kind == "terms" else column.heading: column for column in ENTRIES[entry.kind].fields}
    pairs = [
        message("scenarios-value", field=_field(named.get(word), word), value=value)
        for word, value in entry.values.items()
    ]
    return message("scenarios-says", kind=message("scenarios-kind", kind=entry.kind), values=pairs)


def _field(column: Column | None, word: str) -> Message | str:
    """A term with its unit; a name of the mill's own as it is."""
    if column is None:
        return word
    return column.titled if column in TERM_COLUMNS else column.named


WHERE = {
    "terms": ("terms", None), "heads": ("load", CREWS), "tools": ("load", TOOLS), "crew": ("load", CREWS),
    "absent": ("bookings", None), "receipt": ("needs", None), "closure": ("load", CLOSURES), "protect": ("beam-outs", None),
}  # fmt: skip
"""Kind of entry → the screen on which the mill's own data are changed so, and the table whose sheet is loaded there."""


def where_to_enter() -> None:
    """What a scenario had otherwise, with the screen on which it is made true."""
    rows = []
    for kind, (path, loaded) in WHERE.items():
        title = say(f"screen-{path}")
        where = say("scenarios-sheet", screen=title, sheet=loaded.named) if loaded else title
        rows.append([say("scenarios-kind", kind=kind), Cell(where, href=path)])
    table(heads("scenarios-entry", "scenarios-where", whole=True), rows, sorts=False)
