"""Two values of a row that contradict each other: a warp left longer than its set, a span that ends before it begins."""

from datetime import date, time
from operator import le, lt, ne
from typing import Any

from tracker.domain.findings import Severity
from tracker.domain.tables import Pair
from tracker.errors import Message, message
from tracker.intake.columns.number_columns import NumberPlan
from tracker.intake.columns.table_reading import TableReading
from tracker.intake.report import Report

_HOLDS = {"<=": le, "<": lt, "!=": ne}


def fits(pair: Pair, first: Any, second: Any) -> bool:
    """Do the values stand to each other as they must? True where one of them is not given, and for a shift from midnight
    to midnight (00:00 to 24:00), which is the whole day."""
    if first is None or second is None or first == second == time(0):
        return True
    return _HOLDS[pair.relation](first, second)


def contradiction(names: tuple[str | Message, str | Message], first: Any, second: Any, unit: str = "") -> Message:
    """What is wrong with two values that do not fit."""
    how = "same" if first == second else "later" if isinstance(first, date) else "more"
    said = (_said(first, unit), _said(second, unit))
    return message("values-contradict", how=how, name=names[0], other=names[1], first=said[0], second=said[1])


def _said(value: Any, unit: str) -> object:
    if isinstance(value, date | time):
        return value
    return message("with-unit", number=float(f"{value:.6g}"), unit=unit or None)


def check_pairs(reading: TableReading, report: Report) -> None:
    """Refuse the rows whose values contradict each other."""
    for pair in reading.table.pairs:
        columns = reading.column_of(pair.first), reading.column_of(pair.second)
        if None not in columns and not any(_is_open(reading, c) for c in columns):
            _check(reading, pair, columns, report)


def _is_open(reading: TableReading, column: int | None) -> bool:
    """Is the unit of a column still asked for?"""
    plan = reading.plans.get(column)  # type: ignore[arg-type]
    return isinstance(plan, NumberPlan) and plan.asked


def _check(reading: TableReading, pair: Pair, columns: Any, report: Report) -> None:
    first, second = (reading.values[c] for c in columns)
    fields = reading.table.column(pair.first), reading.table.column(pair.second)
    names = fields[0].named, fields[1].named
    for i, body in enumerate(reading.rows):
        if not fits(pair, first[i], second[i]):
            reading.refuse(i, columns[0])
            said = contradiction(names, first[i], second[i], fields[0].unit or "")
            report.cell(
                Severity.REFUSED, "contradiction", reading.block.sheet, body.row, columns[0], why=said,
                heading=reading.block.headings[columns[0]], raw=reading.block.sheet.value(body.row, columns[0]),
            )  # fmt: skip
