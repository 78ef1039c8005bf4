"""The cells of a column, read by its plan: values, empty cells with a note, or refused rows."""

from dataclasses import dataclass
from typing import Any

from tracker.domain.findings import Severity
from tracker.domain.tables import LOOMS, Column
from tracker.errors import Message, message
from tracker.intake.columns.number_columns import NumberPlan
from tracker.intake.columns.pool import CellProblem, ColumnPart, ColumnPool
from tracker.intake.columns.table_reading import ColumnPlan, TableReading
from tracker.intake.report import Report
from tracker.intake.vocabulary.placeholders import emptiness, is_ditto, says_unknown
from tracker.office.sheet import Mark


def read_column(reading: TableReading, column: int, plan: ColumnPlan, report: Report) -> list[Any]:
    """The values of a column row by row; rows with a cell that cannot be read are refused."""
    part, pool = reading.parts[column], reading.pools[column]
    known: dict[tuple[type, Any, str], Any] = {}
    codes = part.sheet.extras.codes
    values: list[Any] = []
    for i, value in enumerate(part.values):
        if value is None:
            values.append(None)
            continue
        row = reading.rows[i].row
        code = part.code(row) if codes else ""
        key = (type(value), value, code)
        if key not in known:
            known[key] = _SPECIAL if _is_special(value) else _attempt(pool, plan, value, code)
        found = known[key]
        if found is _SPECIAL:
            found = _SpecialCell(reading, part, pool, i, value, report).read(values)
        elif type(found) is CellProblem:
            reading.refuse(i, column)
            report.cell(Severity.REFUSED, found.code, part.sheet, row, column, heading=pool.heading, raw=value,
                        understood=found.understood, field=pool.name, **found.params)  # fmt: skip
            found = None
        elif found is _UNKNOWN:
            reading.empties.add((i, column))
            report.cell(Severity.NOTE, "read-as-empty", part.sheet, row, column, heading=pool.heading, raw=value)
            found = None
        elif type(value) is str and isinstance(plan, NumberPlan) and (remark := plan.without_words(value)[1]):
            report.cell(Severity.NOTE, "remark-left-out", part.sheet, row, column, heading=pool.heading, raw=value,
                        understood=f"{found:g}", remark=remark)  # fmt: skip
        values.append(found)
    return values


_SPECIAL = object()
"""Stands for a cell that is judged where it stands: a mark, a placeholder, a ditto."""
EMPTY = message("understood-empty")
_UNKNOWN = object()
"""Stands for a word that says that the value is not known."""


def _is_special(value: Any) -> bool:
    return type(value) is Mark or (type(value) is str and bool(emptiness(value) or is_ditto(value)))


def _attempt(pool: ColumnPool, plan: ColumnPlan, value: Any, code: str) -> Any:
    """The value, or the problem that stands against it."""
    try:
        return plan.read(value, code)
    except CellProblem as problem:
        if isinstance(value, str) and pool.column is not None and says_unknown(value):
            return _UNKNOWN
        return problem


@dataclass(frozen=True, slots=True)
class _SpecialCell:
    """A mark, a placeholder or a ditto."""

    reading: TableReading
    part: ColumnPart
    pool: ColumnPool
    i: int
    """Which row of the table."""
    value: Any
    report: Report

    def read(self, above: list[Any]) -> Any:
        """None, or the value of the row above."""
        value, place = self.value, (self.i, self.part.column)
        self.reading.empties.add(place)
        if type(value) is Mark and value.kind == "formula":
            self.reading.refuse(*place)
            self._say("formula-without-value", "", Severity.REFUSED, field=self.pool.name)
            return None
        if type(value) is str and is_ditto(value) and above:
            self.reading.empties.discard(place)
            self._say("ditto", str(above[-1]))
            return above[-1]
        if self.pool.column is None and self.pool.table.open_columns == "conditions" and value == "-":
            return None
        if type(value) is Mark and value.kind == "empty text":
            self._say("empty-text")
        elif type(value) is Mark or emptiness(value) == "error":
            self._say("error-cell")
        else:
            self._say("placeholder")
        return None

    def _say(
        self, code: str, understood: str | Message = EMPTY, severity: Severity = Severity.NOTE, **params: Any
    ) -> None:
        self.report.cell(
            severity, code, self.part.sheet, self.reading.rows[self.i].row, self.part.column, heading=self.pool.heading,
            raw=self.value, understood=understood, **params,
        )  # fmt: skip


def find_unfilled(reading: TableReading) -> None:
    """Find the lines of a form that nobody filled in: they only say what is asked for."""
    asked = [c for name in reading.table.filled_by if (c := reading.column_of(name)) is not None]
    if asked:
        reading.unfilled.update(
            i
            for i in range(len(reading.rows))
            if i not in reading.refused and all(reading.values[c][i] in (None, "") for c in asked)
        )


def check_needed(reading: TableReading, report: Report) -> None:
    """Refuse rows without a value that the table needs (the hall of a loom is looked for elsewhere, too)."""
    for column in reading.table.columns:
        if not column.needed or (reading.table is LOOMS and column.field == "hall"):
            continue
        c = reading.column_of(column.field)
        if c is None:
            continue
        instead = reading.column_of(column.unless) if column.unless else None
        for i, value in enumerate(reading.values[c]):
            if i in reading.unfilled or (instead is not None and reading.values[instead][i]):
                continue
            if (value is None or value == "") and (i, c) not in reading.faults:
                _refuse_missing(reading, i, c, column, report)


def _refuse_missing(reading: TableReading, i: int, c: int, column: Column, report: Report) -> None:
    reading.refused.add(i)
    sheet, row = reading.block.sheet, reading.rows[i].row
    report.cell(
        Severity.REFUSED, "missing-value", sheet, row, c, heading=reading.block.headings[c], raw=sheet.value(row, c) or "",
        line=sheet.row_range(row, reading.block.columns), field=column.heading.lower(),
    )  # fmt: skip
