"""The sheet Terms of a template: every term with its default, unit, meaning and where it acts, the value left empty."""

from typing import Any

from tracker.domain.own_sheets import REMARKS
from tracker.domain.tables import TERM_COLUMNS, TERMS, Column, Kind, acts
from tracker.domain.terms import Terms
from tracker.errors import message
from tracker.office.writing.sheets import Col, TidySheet
from tracker.office.writing.values import workbook_value
from tracker.words import ENGLISH

_OF_A_PILOT = (message("about-term-pilot"), message("acts-pilot"))
_UNITS = {"left_over_penalty": "currency", "move_cost": "currency", "days_to_order": "days"}


def term_sheet(columns: list[Col]) -> TidySheet:
    """`columns` are those of the table. A term without a value is not loaded, so the sheet as it is changes nothing."""
    beside = [Col(heading, Kind.ANY if heading == "Default" else Kind.TEXT) for heading in REMARKS[TERMS.name]]
    rows = [*map(_row, TERM_COLUMNS), ["pilot of TYPE", None, "none", "loom number", *map(ENGLISH.say, _OF_A_PILOT)]]
    return TidySheet(TERMS.sheet, [*columns, *beside], rows, frozen=1)


def _row(term: Column) -> list[Any]:
    default = workbook_value(term.kind, getattr(Terms(), term.field))
    about = ENGLISH.say(message(term.about)) + (f" For example: {term.example}" if term.example else "")
    return [term.title, None, "none" if default is None else default, _unit(term), about, ENGLISH.say(acts(term))]


def _unit(term: Column) -> str:
    if term.kind is Kind.FRACTION:
        return "%"
    if term.field in _UNITS:
        return _UNITS[term.field]
    return term.unit or {Kind.DATE: "day", Kind.INTEGER: "looms", Kind.YES_NO: "yes or no"}.get(term.kind, "text")
