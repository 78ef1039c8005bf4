"""The sheet Terms of a template: every term with its default, unit, meaning and where it acts, the value left empty."""

from typing import Any

from tracker.domain.columns import Column, Kind, unit_named
from tracker.domain.tables import TERM_COLUMNS, TERMS, acts
from tracker.domain.terms import Terms
from tracker.export.wording import Wording
from tracker.office.writing.sheets import Col, TidySheet
from tracker.office.writing.values import workbook_value

REMARKS = ("remark-default", "heading-unit", "remark-meaning", "remark-acts")
_UNITS = {"left_over_penalty": "unit-currency", "move_cost": "unit-currency", "days_to_order": "unit-days"}
_KINDS = {Kind.DATE: "unit-day", Kind.INTEGER: "unit-looms", Kind.YES_NO: "unit-yes-no"}


def term_sheet(columns: list[Col], write: Wording) -> TidySheet:
    """`columns` are those of the table. A term without a value is not loaded, so the sheet as it is changes nothing."""
    beside = [write.col(code, Kind.ANY if code == "remark-default" else Kind.TEXT) for code in REMARKS]
    pilot = write.say("term-pilot", machine_type=write.say("book-type"))
    says = map(write.say, ("book-none", "unit-loom-number", "about-term-pilot", "acts-pilot"))
    rows = [*(_row(term, write) for term in TERM_COLUMNS), [pilot, None, *says]]
    return write.named(write.speaker.say(TERMS.named), [*columns, *beside], rows, frozen=1)


def _row(term: Column, write: Wording) -> list[Any]:
    default = workbook_value(term.kind, getattr(Terms(), term.field))
    default = {None: write.say("book-none"), "yes": write.say("word-yes"), "no": write.say("word-no")}.get(
        default, default
    )
    about = write.say(term.about)
    if term.example:
        about += f" {write.say('book-example', example=term.example)}"
    return [write.speaker.say(term.titled), None, default, _unit(term, write), about, write.speaker.say(acts(term))]


def _unit(term: Column, write: Wording) -> str:
    if term.kind is Kind.FRACTION:
        return "%"
    if code := _UNITS.get(term.field):
        return write.say(code)
    return write.speaker.say(unit_named(term.unit)) if term.unit else write.say(_KINDS.get(term.kind, "unit-text"))
