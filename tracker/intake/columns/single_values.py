"""One value on its own, a term or an entry of a scenario, by the rules for a cell of its column."""

from datetime import date, datetime
from math import isfinite
from typing import Any

from tracker.domain.tables import TERMS, Column, Kind
from tracker.domain.terms import nearest_zone, zones
from tracker.domain.units import fraction
from tracker.errors import Message, message
from tracker.intake.answers import Answers
from tracker.intake.columns.pool import CellProblem, ColumnPool
from tracker.intake.columns.shown import plain_number
from tracker.intake.columns.simple_columns import TimePlan, WeekdaysPlan, WordPlan, YesNoPlan
from tracker.intake.report import Report
from tracker.intake.vocabulary.dates import date_text, from_serial
from tracker.intake.vocabulary.numbers import quantity

_SHARES_OF_ONE = ("learning_rate", "learning_floor")
"""Where 1 means all of it, not one percent."""
_PLANS = {Kind.WORD: WordPlan, Kind.YES_NO: YesNoPlan, Kind.TIME: TimePlan, Kind.WEEKDAYS: WeekdaysPlan}


def single_value(column: Column, value: Any) -> Any:
    """The value as the column has it; None where it does not fit, or may mean two things."""
    if column.kind in (Kind.NUMBER, Kind.INTEGER, Kind.FRACTION):
        return _number_within(column, value)
    if column.kind is Kind.DATE:
        day = _date(value)
        return day if day and (column.low or 1) <= day.year <= (column.high or 9999) else None
    if column.kind in _PLANS:
        return _as_cell(column, value)
    return _text(column, value)


def possible(column: Column, value: Any = None) -> Message:
    """What the column may hold; of a name that is misspelt, with the nearest."""
    if column.field == "time_zone":
        near = nearest_zone(str(value))
        return message("zone-name", near=near or column.example)
    if column.field == "currency":
        return message("currency-sign", example=column.example)
    return column.possible


def _as_cell(column: Column, value: Any) -> Any:
    today = date.today()  # no kind in _PLANS asks for it
    pool = ColumnPool(TERMS, column, [], Answers({}, {}), Report(), today)
    try:
        return _PLANS[column.kind](pool).read(value, "")
    except CellProblem:
        return None


def _text(column: Column, value: Any) -> str | None:
    if isinstance(value, bool) or not isinstance(value, str | float | int):
        return None
    text = value.strip() if isinstance(value, str) else plain_number(value)
    if column.field == "time_zone" and text not in zones():
        return None
    if column.field == "currency" and any(sign.isdigit() for sign in text):
        return None
    return text or None


def _number_within(column: Column, value: Any) -> float | int | None:
    number = _number(value)
    if number is None or not isfinite(number) or (column.kind is Kind.INTEGER and number != int(number)):
        return None
    if column.kind is Kind.FRACTION and number >= 0:
        number = _share(column.field, number, isinstance(value, str) and "%" in value)
    low, high = column.low, column.high
    if (low is not None and number < low) or (high is not None and number > high):
        return None
    return int(number) if column.kind is Kind.INTEGER else number


def _share(field: str, number: float, marked: bool) -> float:
    """15, `15 %` and 0.15 are 15 %."""
    whole = number == 1 and field not in _SHARES_OF_ONE
    return fraction(number) if marked or number > 1 or whole else float(number)


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
    if isinstance(value, float | int) and not isinstance(value, bool):
        moment = from_serial(float(value))
        return moment.date() if moment else None
    found = date_text(value) if isinstance(value, str) else None
    days = set(found.readings.values()) if found else set()
    return days.pop() if len(days) == 1 else None
