"""Columns of texts and identifiers: numbers as their cells show them, numbers turned into dates put back or asked.

READING.md, section 5.
"""

import re
from collections import Counter
from dataclasses import dataclass
from datetime import date, datetime, time
from typing import Any

from tracker.domain.findings import Choice, Severity
from tracker.domain.tables import Kind
from tracker.domain.words import fold
from tracker.errors import message
from tracker.intake.columns.pool import CellProblem, ColumnPart, ColumnPool
from tracker.intake.columns.shown import (
    is_scientific,
    month_and_year,
    plain_number,
    shown_number,
    turned_into_date,
    turned_into_time,
)
from tracker.intake.vocabulary.dates import DAY_FIRST, MONTH_FIRST, date_text
from tracker.intake.vocabulary.dictionary import vocabulary
from tracker.intake.vocabulary.placeholders import says_unknown

_PAIR = re.compile(r"(\d{1,3})\s?([/\-.])\s?(\d{1,3})")
_DAY_MONTH = re.compile(r"(\d{1,2})\.?[\s\-./]*([^\W\d_]{3,})\.?(?:[\s\-/]*(\d{2}|\d{4}))?")
_MONTH_DAY = re.compile(r"([^\W\d_]{3,})\.?[\s\-./]*(\d{1,2})")
_MOMENT = re.compile(r"\d{4}-\d{2}-\d{2}(?:[T ]00:00(?::00(?:\.0+)?)?)?")


@dataclass(slots=True)
class TextPlan:
    pool: ColumnPool
    month_first: bool | None = None
    """For numbers that a spreadsheet turned into dates."""
    mark: str = "/"
    padded: bool = False
    strip_point_zero: bool = False
    whole: bool = True
    """No number of the column has decimals, so that those of a number format mean nothing (with 1.1, 1.10 is another)."""

    def read(self, value: Any, code: str) -> str | None:
        """The text as the cell shows it; None where a word says that nothing is known."""
        if isinstance(value, str):
            return self._text(value)
        if isinstance(value, bool):
            return "TRUE" if value else "FALSE"
        if isinstance(value, float | int):
            if self._is_identifier() and is_scientific(code):
                raise CellProblem("number-turned")
            return plain_number(value) if self.whole and "." in code else shown_number(value, code)
        if isinstance(value, datetime | date):
            if self._is_identifier():
                return turned_into_date(value, code, bool(self.month_first), self.mark, self.padded)
            return value.isoformat()
        return turned_into_time(value, code) if isinstance(value, time) else str(value)

    def _text(self, value: str) -> str | None:
        text = " ".join(value.split()) if self._names_something() else value
        if self._is_identifier() and (turned := turned_text(self.pool, value)):
            return turned_into_date(turned, "", bool(self.month_first), self.mark, self.padded)
        if self.strip_point_zero and text.endswith(".0"):
            return text[:-2]
        needed = self.pool.column is not None and self.pool.column.needed
        return None if needed and says_unknown(text) else text

    def _names_something(self) -> bool:
        return self._is_identifier() or (
            self.pool.column is not None and self.pool.column.field in ("machine_type", "trade")
        )

    def _is_identifier(self) -> bool:
        return self.pool.column is not None and self.pool.column.kind is Kind.IDENTIFIER


def turned_text(pool: ColumnPool, text: str) -> date | None:
    """In delimited text a number that a spreadsheet turned into a date: `12-Mar`, `2026-03-12 00:00:00`."""
    if not pool.column or pool.column.field not in ("loom", "article", "part", "order", "place"):
        return None
    if _MOMENT.fullmatch(text) and (found := date_text(text[:10])):
        return found.readings[DAY_FIRST]
    months = vocabulary().months
    if (hit := _DAY_MONTH.fullmatch(text)) and (month := months.get(fold(hit[2]))) and not text[0].isalpha():
        return _safe_date(pool.today.year, month, int(hit[1]))
    if pool.column.field == "loom" and (hit := _MONTH_DAY.fullmatch(text)) and (month := months.get(fold(hit[1]))):
        return _safe_date(pool.today.year, month, int(hit[2])) if "-" in text or " " in text else None
    return None


def _safe_date(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def plan_texts(pool: ColumnPool) -> TextPlan:
    """Ask for the order of numbers turned into dates; learn mark and padding from the numbers that stayed text."""
    plan = TextPlan(pool)
    if pool.column is None or pool.column.kind is not Kind.IDENTIFIER:
        return plan
    turned: list[tuple[ColumnPart, int, Any, str]] = []
    pairs: Counter[str] = Counter()
    padded, texts, pointed = False, 0, 0
    for part, row, value in pool.cells():
        if isinstance(value, str):
            if turned_text(pool, value):
                turned.append((part, row, value, ""))
                continue
            texts += 1
            pointed += bool(re.fullmatch(r"\d+\.0", value))
            if hit := _PAIR.fullmatch(value):
                pairs[hit[2]] += 1
                padded = padded or hit[1].startswith("0") or hit[3].startswith("0")
        elif isinstance(value, datetime | date):
            turned.append((part, row, value, part.code(row)))
        elif isinstance(value, float) and value != int(value):
            plan.whole = False
    if texts and pointed == texts and pool.column.field in ("loom", "row", "place"):
        plan.strip_point_zero = True
        pool.note("point-zero", understood=message("understood-whole"))
    if turned:
        plan.mark, plan.padded = (pairs.most_common(1)[0][0] if pairs else "/"), padded
        plan.month_first = _asked_order(pool, plan, turned)
    return plan


def _asked_order(pool: ColumnPool, plan: TextPlan, turned: list[tuple[ColumnPart, int, Any, str]]) -> bool:
    """Put back month first? Asked where a number reads otherwise then; 1/1 is the same either way."""
    answer = pool.answers.order(pool.called)
    open_one: tuple[Any, date | datetime, str, str] | None = None
    for other, line, raw, code in turned:
        day = turned_text(pool, raw) if isinstance(raw, str) else raw
        assert day is not None  # it is among the turned ones since it reads as a day
        day_first, month_first = (turned_into_date(day, code, order, plan.mark, plan.padded) for order in (False, True))
        alike = day_first == month_first
        if open_one is None and not alike and not month_and_year(code):
            open_one = (raw, day, day_first, month_first)
        put_back = message("understood-put-back", order=answer) if answer else day_first if alike else ""
        pool.report.cell(
            Severity.NOTE, "number-turned-into-date", other.sheet, line, other.column, heading=pool.heading, raw=raw,
            understood=put_back, field=pool.name,
        )  # fmt: skip
    if answer is None and open_one:
        raw, day, day_first, month_first = open_one
        choices = [Choice(pool.heading, DAY_FIRST, day_first), Choice(pool.heading, MONTH_FIRST, month_first)]
        pool.ask("order", choices, raw=raw, how="number", day=day, day_first=day_first, month_first=month_first)
    return answer == MONTH_FIRST
