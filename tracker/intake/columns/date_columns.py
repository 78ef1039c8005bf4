"""How a column of dates is to be read: typed, serial numbers or text, the order of day and month proved or asked.

READING.md, section 5.
"""

from dataclasses import dataclass
from datetime import date, datetime, time
from typing import Any

from tracker.domain.tables import Kind
from tracker.errors import message
from tracker.intake.columns.pool import CellProblem, ColumnPool
from tracker.intake.report import answers_for
from tracker.intake.vocabulary.dates import DAY_FIRST, MONTH_FIRST, DateText, date_text, from_serial
from tracker.office.walking.format_codes import SYSTEM_DATE


@dataclass(slots=True)
class DatePlan:
    pool: ColumnPool
    order: str = ""
    """`day first` or `month first`; `` where every cell says it itself."""
    turn: bool = False
    """Typed dates were read month first by the spreadsheet and are to be turned round."""

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
        if isinstance(value, float | int) and not isinstance(value, bool):
            moment = from_serial(float(value))
            if moment is not None:
                return moment.date(), moment.time()
        found = date_text(str(value)) if isinstance(value, str) else None
        if found is None:
            raise CellProblem("not-a-date")
        return self._reading(found, str(value)), found.clock

    def _reading(self, found: DateText, text: str) -> date:
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
    serial = None
    for part, row, value in pool.cells():
        if isinstance(value, str):
            if found := date_text(value):
                texts.append((value, found))
        elif isinstance(value, datetime | date):
            typed.append(value)
        elif isinstance(value, float | int) and from_serial(float(value)) and not _is_date_code(part.code(row)):
            serial = value if serial is None else serial
    if serial is not None:
        moment = from_serial(float(serial))
        assert moment is not None
        pool.note("serial-date", understood=message("understood-serial"), raw=serial, day=moment.date())
    plan.order = _order(pool, texts)
    plan.turn = _typed_are_turned(pool, texts, typed)
    return plan


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
