"""Terms of the programme: each has a type of its own."""

from typing import Any

from tracker.domain.findings import Severity
from tracker.domain.tables import PILOT_OF, TERM_COLUMNS, TERM_HEADINGS
from tracker.domain.words import fold
from tracker.intake.columns.shown import plain_number
from tracker.intake.columns.single_values import possible, single_value
from tracker.intake.report import Report
from tracker.intake.vocabulary.dictionary import vocabulary

_TERMS = {fold(column.title): column for column in TERM_COLUMNS}
_FIELDS = {column.field: column for column in TERM_COLUMNS}
_BARE = {fold(column.heading): column for column in TERM_COLUMNS}


def typed_term(reading: Any, i: int, values: dict[str, Any], report: Report) -> dict[str, Any]:
    """The row with the term in our words and its value typed; refused where the value does not fit, noted where the
    term is not known."""
    term = str(values["term"])
    name = " ".join(fold(term).split())
    for pilot in (PILOT_OF, *(f"{words} " for words, field in vocabulary().terms.items() if field == "pilot")):
        if name.startswith(pilot):
            return {"term": PILOT_OF + " ".join(term.split())[len(pilot) :], "value": _text(values["value"])}
    bare = fold(name.partition(" (")[0])
    known = _TERMS.get(name) or _BARE.get(bare) or _FIELDS.get(vocabulary().terms.get(bare, ""))
    sheet, row = reading.block.sheet, reading.rows[i].row
    if known is None:
        reading.refused.add(i)
        report.cell(Severity.REFUSED, "unknown-term", sheet, row, reading.column_of("term"), heading="Term", raw=term,
                    terms=", ".join(TERM_HEADINGS))  # fmt: skip
        return values
    value = single_value(known, values["value"])
    if value is None:
        reading.refused.add(i)
        report.cell(Severity.REFUSED, "impossible-value", sheet, row, reading.column_of("value"), heading="Value",
                    raw=values["value"], how="term", field=known.title, possible=possible(known, values["value"]))  # fmt: skip
    return {"term": known.title, "value": value}


def _text(value: Any) -> str:
    return plain_number(value) if isinstance(value, float | int) and not isinstance(value, bool) else str(value)
