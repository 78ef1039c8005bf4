"""How a column of dates is to be read: typed, serial numbers or text, the order of day and month proved or asked.

READING.md, section 5.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from typing import Any

from tracker.domain.findings import Choice
from tracker.domain.tables import Kind
from tracker.errors import message
from tracker.intake.answers import MONTH_AND_YEAR, NEXT
from tracker.intake.columns.pool import CellProblem, ColumnPool
from tracker.intake.report import answers_for
from tracker.intake.vocabulary.dates import DAY_FIRST, MONTH_FIRST, DateText, date_text, from_serial
from tracker.intake.vocabulary.spans import (
    Span,
    may_be_month,
    month_with_short_year,
    next_span,
    span_text,
    without_until,
)
from tracker.office.walking.format_codes import SYSTEM_DATE

_LAST_DAYS = frozenset({"protected_until", "due", "to_on", "to_at", "target_finish"})
"""Fields that say until when."""
_SERIAL = re.compile(r"\d{5}(?:[.,]\d+)?")


@dataclass(slots=True)
class DatePlan:
    pool: ColumnPool
    order: str = ""
    """`day first` or `month first`; `` where every cell says it itself."""
    turn: bool = False
    """Typed dates were read month first by the spreadsheet and are to be turned round."""
    months: bool = False
    """`01/27` and `Mar 27` are months of a year, as is proved or answered."""

    def read(self, value: Any, code: str) -> date | datetime:
        """The date (Kind.DATE) or the local moment (Kind.MOMENT) of a cell."""
        day, clock = self.day_and_time(value)
        if self.pool.column is not None and self.pool.column.kind is Kind.MOMENT:
            return datetime.combine(day, clock or time(0))
        return day

    def day_and_time(self, value: Any) -> tuple[date, time | None]:
        """The day of a cell, and the time of day where it names one."""
        if isinstance(value, datetime):
            return self._turned(value.date()), value.time().replace(microsecond=0)
        if isinstance(value, date):
            return self._turned(value), None
        moment = serial_of(value)
        if moment is not None:
            return moment.date(), moment.time()
        if isinstance(value, str):
            value = plain_text(self.pool, value)
        found = date_text(value) if isinstance(value, str) else None
        if found is not None:
            return self._reading(found), found.clock
        if day := self._of_span(value):
            return day, None
        raise CellProblem("not-a-date")

    def _of_span(self, value: Any) -> date | None:
        """Of a week, a month or a year the first day, or the last one where the column says until when."""
        span = span_of(value) or (self._short_span(value) if isinstance(value, str) else None)
        if span is None:
            return None
        column = self.pool.column
        if not says_last(self.pool):
            return span.first
        return span.last + timedelta(
            days=column is not None and column.kind is Kind.MOMENT
        )  # until that day's midnight

    def _short_span(self, text: str) -> Span | None:
        """Of a month with a year of two digits, and of what names no year: as answered, or as one of the readings asked about."""
        month = may_be_month(text, self.pool.language)
        if month is not None and (self.months or not self.pool.answers.takes_next(self.pool.called)):
            return month
        return month_with_short_year(text, self.pool.language) or next_span(text, self.pool.today)

    def _reading(self, found: DateText) -> date:
        days = set(found.readings.values())
        if len(days) == 1:
            return days.pop()
        return found.readings.get(self.order) or found.readings[DAY_FIRST]

    def _turned(self, day: date) -> date:
        return date(day.year, day.day, day.month) if self.turn and day.day <= 12 else day


def plan_dates(pool: ColumnPool) -> DatePlan:
    """Decide the order of day and month from all cells of a column, asking where nothing proves it."""
    plan = DatePlan(pool)
    texts: list[tuple[str, DateText]] = []
    typed: list[date] = []
    spans: list[tuple[Any, Span]] = []
    short: list[str] = []
    serial = None
    for part, row, value in pool.cells():
        said = plain_text(pool, value) if isinstance(value, str) else value
        if isinstance(said, str) and (found := date_text(said)):
            texts.append((value, found))
        elif isinstance(value, datetime | date):
            typed.append(value)
        elif serial_of(value) and not _is_date_code(part.code(row)):
            serial = value if serial is None else serial
        elif (span := span_of(said) or _certain_month(pool, said)) and pool.column is not None:
            spans.append((value, span))
        elif isinstance(value, str) and pool.column is not None:
            short.append(value)
    if serial is not None:
        moment = serial_of(serial)
        assert moment is not None
        pool.note("serial-date", understood=message("understood-serial"), raw=serial, day=moment.date())
    if spans:
        _note_span(pool, *spans[0])
    _settle_short(plan, short, proved=any(_is_month(span) for _, span in spans))
    plan.order = _order(pool, texts)
    plan.turn = _typed_are_turned(pool, texts, typed)
    return plan


def plain_text(pool: ColumnPool, text: str) -> str:
    """The text without `until` and `end of` where the column says until when."""
    return without_until(text) if says_last(pool) else text


def _note_span(pool: ColumnPool, raw: Any, span: Span) -> None:
    last = says_last(pool)
    how = "day" if span.first == span.last else "last" if last else "first"
    pool.note("date-of-span", raw=raw, how=how, day=span.last if last else span.first)


def _certain_month(pool: ColumnPool, value: Any) -> Span | None:
    return month_with_short_year(value, pool.language) if isinstance(value, str) else None


def _is_month(span: Span) -> bool:
    return 28 <= (span.last - span.first).days + 1 <= 31


def _settle_short(plan: DatePlan, texts: Sequence[str], proved: bool) -> None:
    """Ask once what texts such as `01/27` are, and once whether those without a year name the next such day."""
    pool = plan.pool
    said = {text: plain_text(pool, text) for text in texts}
    months = {text: span for text, one in said.items() if (span := may_be_month(one, pool.language))}
    plan.months = bool(months) and (proved or pool.answers.month_and_year(pool.called))
    coming = {text: span for text, one in said.items() if (span := next_span(one, pool.today))}
    takes_next = bool(coming) and pool.answers.takes_next(pool.called)
    for text, span in list(months.items())[:1]:
        if plan.months:
            _note_span(pool, text, span)
        elif not takes_next or text not in coming:
            _ask_short(pool, "month-or-day", text, {MONTH_AND_YEAR: span, NEXT: coming.get(text)})
    yearless = {text: span for text, span in coming.items() if text not in months or not plan.months}
    for text, span in list(yearless.items())[:1]:
        if takes_next:
            _note_span(pool, text, span)
    for text, span in [one for one in yearless.items() if one[0] not in months][:1]:
        if not takes_next:
            _ask_short(pool, "day-without-year", text, {NEXT: span})


def _ask_short(pool: ColumnPool, code: str, text: str, readings: dict[str, Span | None]) -> None:
    first, last = pool.parts[0], says_last(pool)
    choices = [
        Choice(pool.heading, answer, message("day-meant", day=span.last if last else span.first))
        for answer, span in readings.items() if span is not None
    ]  # fmt: skip
    pool.report.ask(code, first.sheet, pool.heading, first.heading_cell, choices, raw=text, code=code, field=pool.name)


def says_last(pool: ColumnPool) -> bool:
    """Is the column one of last days, so that a week in it means its Sunday?"""
    return pool.column is not None and pool.column.field in _LAST_DAYS


def serial_of(value: Any) -> datetime | None:
    """The moment of a serial day number, typed or as text has it."""
    if isinstance(value, str):
        value = float(value.replace(",", ".")) if _SERIAL.fullmatch(value) else None
    return from_serial(float(value)) if isinstance(value, float | int) and not isinstance(value, bool) else None


def span_of(value: Any) -> Span | None:
    """The days of a week, month or year; a year may be a number."""
    if isinstance(value, float | int) and not isinstance(value, bool):
        return span_text(str(int(value))) if value == int(value) else None
    return span_text(value) if isinstance(value, str) else None


def _is_date_code(code: str) -> bool:
    return SYSTEM_DATE in code or any(letter in code.lower() for letter in "dy")


def _order(pool: ColumnPool, texts: list[tuple[str, DateText]]) -> str:
    open_texts = [(text, found) for text, found in texts if len(set(found.readings.values())) > 1]
    if not open_texts:
        return ""
    if answer := pool.answers.order(pool.called):
        return answer
    proofs = {found.proves for _, found in texts if found.proves}
    if len(proofs) == 1:
        return proofs.pop()
    text, found = open_texts[0]
    choices = answers_for(pool.heading, DAY_FIRST, MONTH_FIRST)
    pool.ask("order", choices, raw=text, how="both" if proofs else "either", day_first=found.readings[DAY_FIRST],
             month_first=found.readings[MONTH_FIRST])  # fmt: skip
    return DAY_FIRST


def _typed_are_turned(pool: ColumnPool, texts: list[tuple[str, DateText]], typed: list[date]) -> bool:
    """Dates typed day first into a month-first spreadsheet: those up to the 12th became dates the wrong way round, the
    others stayed text. True where the answer says so; asked where it looks like it."""
    late = [text for text, found in texts if found.proves == DAY_FIRST]
    if len(typed) < 3 or len(late) < 2 or len(late) < len(texts) or any(day.day > 12 for day in typed):
        return False
    if answer := pool.answers.order(pool.called):
        return answer == DAY_FIRST
    day = min(typed)
    pool.ask(
        "order", answers_for(pool.heading, DAY_FIRST, MONTH_FIRST), raw=late[0], how="turned",
        day_first=date(day.year, day.day, day.month), month_first=date(day.year, day.month, day.day),
    )  # fmt: skip
    return False
