"""What is known of one loom, where it came from, and the form that sets a value right."""

from typing import Any

import streamlit as st

from dashboards import forms
from dashboards.forms import Form
from dashboards.parts import heads, literal, table
from dashboards.speaking import SPEAKER, day, say, shown
from dashboards.tables import Cell
from tracker.domain.columns import unit_named
from tracker.domain.tables import LOOMS, TABLES
from tracker.services.loading.correct_value import correct_value
from tracker.services.loading.load_report import LoadReport
from tracker.services.people.permissions import May
from tracker.services.screens.loom_sheet import Fact, LoomSheet

NAMES = ("loom", "hall")


def values(sheet: LoomSheet) -> None:
    st.header(say("sheet-values"))
    columns = heads("sheet-value-of", "sheet-value", "sheet-file", "sheet-sheet")
    columns += [*heads("sheet-cell", "sheet-entered", whole=True), *heads("sheet-entered-by")]
    known = [fact for fact in sheet.facts if fact.value is not None]
    table(columns, [_fact(fact, sheet) for fact in known])
    missing = [_named(fact) for fact in sheet.facts if fact.value is None]
    if missing:
        st.caption(literal(say("sheet-unknown", what=missing)))
    if forms.allowed(May.LOAD, say_why=True):
        _correct(sheet)


def _fact(fact: Fact, sheet: LoomSheet) -> list[Cell | str]:
    origin = fact.origin
    return [
        _named(fact),
        f"{_text(fact.value, fact.unit)} {_unit(fact)}".rstrip(),
        (origin.file or say("sheet-entered-here")) if origin else "",
        origin.sheet if origin else "",
        origin.cell if origin else "",
        Cell(day(origin.at.astimezone(sheet.zone).date()), origin.at) if origin else "",
        origin.who if origin else "",
    ]


def _named(fact: Fact) -> str:
    """A heading of ours in the language of whoever looks, one of the mill's own as it is."""
    column = next((column for column in LOOMS.columns if column.field == fact.field), None)
    return SPEAKER.say(column.named) if column else fact.heading


def _unit(fact: Fact) -> str:
    return SPEAKER.say(unit_named(fact.unit))


def _text(value: Any, unit: str) -> str:
    return shown(value * 100 if unit == "%" else value)


def _correct(sheet: LoomSheet) -> None:
    """One value, with the reason; who it was stands in the account of changes."""
    st.subheader(say("sheet-correct"))
    facts = {fact.heading: fact for fact in sheet.facts if fact.field not in NAMES}
    heading = st.selectbox(say("sheet-value-of"), list(facts), format_func=lambda heading: _named(facts[heading]))
    fact, key = facts[heading], sheet.key
    with Form(f"correct {key} {heading}") as form:
        value = form.as_shown(fact.value)
        label = say("sheet-new-value", unit=_unit(fact) or None)
        given = st.text_input(label, "" if value is None else _text(value, fact.unit), key=form.key("value"))
        form.beside(heading, "typed-impossible", "ground-moved")
        why = st.text_input(say("sheet-correct-why"), key=form.key("why"))
        form.beside("correct-without-why")
        there = {"loom": key.loom, "hall": key.hall}
        row = [there[name] for name in TABLES["looms"].key]

        def correct() -> LoadReport:
            context = form.having_shown("looms", row, **{fact.field: value})
            return correct_value(context, key.loom, key.hall, heading, given, why)

        form.act(say("sheet-correct-it"), correct)
