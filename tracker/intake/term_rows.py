"""Terms of the programme: each has a type of its own."""

from datetime import date, datetime
from typing import Any

from tracker.domain.findings import Severity
from tracker.domain.tables import TERM_HEADINGS
from tracker.domain.units import fraction
from tracker.domain.words import fold
from tracker.intake.dates import date_text, from_serial
from tracker.intake.numbers import quantity
from tracker.intake.report import Report
from tracker.intake.shown import plain_number

_FIELDS = {fold(term): (term, field) for term, field in TERM_HEADINGS.items()}
_BARE = {fold(term.partition(" (")[0]): (term, field) for term, field in TERM_HEADINGS.items()}
_TEXTS = ("programme", "time_zone", "currency", "lead_trade")
_DATES = ("start", "target_finish")
_WHOLE = ("horizon_days", "looms_stopped_at_once")
_SHARES_OF_ONE = ("learning_rate", "learning_floor")
"""Where 1 means all of it, not one percent."""


def typed_term(reading: Any, i: int, values: dict[str, Any], report: Report) -> dict[str, Any]:
    """The row with the term in our words and its value typed; refused where the value does not fit, noted where the
    term is not known."""
    term = str(values["term"])
    name = " ".join(fold(term).split())
    if name.startswith("pilot of "):
        return {"term": "pilot of " + " ".join(term.split())[len("pilot of ") :], "value": _text(values["value"])}
    known = _FIELDS.get(name) or _BARE.get(fold(name.partition(" (")[0]))
    sheet, row = reading.block.sheet, reading.rows[i].row
    if known is None:
        reading.refused.add(i)
        report.cell(Severity.REFUSED, "unknown-term", sheet, row, reading.column_of("term"),
                    f"There is no term {term!r}; the terms are {', '.join(TERM_HEADINGS)}, pilot of TYPE.",
                    heading="Term", raw=term, hint="Use one of these words, or delete the row.")  # fmt: skip
        return values
    value = _typed(known[1], values["value"])
    if value is None:
        reading.refused.add(i)
        report.cell(Severity.REFUSED, "impossible-value", sheet, row, reading.column_of("value"),
                    f"{known[0]}: {values['value']!r} is not possible here.", heading="Value", raw=values["value"],
                    hint="Correct the cell or delete the row.")  # fmt: skip
    return {"term": known[0], "value": value}


def _text(value: Any) -> str:
    return plain_number(value) if isinstance(value, float | int) and not isinstance(value, bool) else str(value)


def _typed(field: str, value: Any) -> Any:
    if field in _TEXTS:
        return _text(value)
    if field in _DATES:
        return _date(value)
    number = _number(value)
    if number is None or number < 0:
        return None
    if field in _WHOLE:
        return int(number) if number == int(number) else None
    if "(%)" in next(term for term, name in TERM_HEADINGS.items() if name == field):
        return _share(field, number, isinstance(value, str) and "%" in value)
    return number


def _share(field: str, number: float, marked: bool) -> float | None:
    """15, `15 %` and 0.15 are 15 %."""
    whole = number == 1 and field not in _SHARES_OF_ONE
    share = fraction(number) if marked or number > 1 or whole else float(number)
    return share if share <= 10 else None


def _number(value: Any) -> float | None:
    if isinstance(value, bool):
        return None
    if isinstance(value, float | int):
        return value
    found = quantity(value) if isinstance(value, str) else None
    return found.certain if found else None


def _date(value: Any) -> date | None:
    if isinstance(value, datetime):
        return value.date()
    if isinstance(value, date):
        return value
    if isinstance(value, float | int):
        moment = from_serial(float(value))
        return moment.date() if moment else None
    found = date_text(value) if isinstance(value, str) else None
    days = set(found.readings.values()) if found else set()
    return days.pop() if len(days) == 1 else None
