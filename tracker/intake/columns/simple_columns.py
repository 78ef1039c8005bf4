"""Columns of words, yes/no, years, times of day, weekdays and free values."""

import re
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from typing import Any

from tracker.domain.tables import Column
from tracker.domain.words import fold
from tracker.intake.columns.pool import CellProblem, ColumnPool
from tracker.intake.columns.shown import plain_number
from tracker.intake.vocabulary.dates import date_text, from_serial, time_text, year_of
from tracker.intake.vocabulary.dictionary import vocabulary
from tracker.intake.vocabulary.numbers import quantity
from tracker.intake.vocabulary.units import unit_named

_YEAR = re.compile(r"(?:[^\W\d]*\.?\s*)?((?:18|19|20)\d{2})\s*(?:年|yılı|г\.?)?")
_MONTH = r"(?:0?[1-9]|1[0-2])"
_MONTH_YEAR = re.compile(
    rf"{_MONTH}\s*[./\-]\s*((?:19|20)\d{{2}})|((?:19|20)\d{{2}})\s*[./\-年]\s*{_MONTH}\s*月?|[^\W\d]+\.?\s+((?:19|20)\d{{2}})"
)
"""`06/1998`, `1998年6月`, `Juni 1998`; `1998/99` is two years."""
_MONTH_SHORT_YEAR = re.compile(rf"({_MONTH})\s*[./\-]\s*(\d{{2}})|([^\W\d_]+)\.?[\s\-/]*['’]?(\d{{2}})")
"""`06/98`, `Jun 98`; `05/06` may be two years."""
_SHORT_YEAR = re.compile(r"['’]?(\d{2})")


@dataclass(slots=True)
class WordPlan:
    pool: ColumnPool

    def read(self, value: Any, code: str) -> str:
        column = self._column()
        for word in column.words:
            if vocabulary().options.get(word, {}).get(fold(value)) == word:
                return word
        raise CellProblem("unknown-word", words=list(column.words))

    def _column(self) -> Column:
        assert self.pool.column is not None
        return self.pool.column


@dataclass(slots=True)
class YesNoPlan:
    pool: ColumnPool

    def read(self, value: Any, code: str) -> bool:
        answer = yes_or_no(value)
        if answer is None:
            raise CellProblem("not-yes-or-no")
        return answer


def yes_or_no(value: Any) -> bool | None:
    """What a word or a mark of any of the eight languages says; None where it says neither."""
    if isinstance(value, bool):
        return value
    word = plain_number(value) if isinstance(value, float | int) else fold(value)
    words = vocabulary().words
    for answer, spellings in ((True, words["yes"]), (False, words["no"])):
        if word in spellings or word in {fold(s) for s in spellings}:
            return answer
    return None


@dataclass(slots=True)
class YearPlan:
    pool: ColumnPool

    def read(self, value: Any, code: str) -> int:
        year = self._year(value)
        if year is None:
            raise CellProblem("not-a-year")
        latest = self.pool.today.year
        if year > latest:
            raise CellProblem("impossible-value", str(year), how="to-come", limit=str(latest))
        low = int(self.pool.column.low or 0) if self.pool.column else 0
        if year < low:
            raise CellProblem("impossible-value", str(year), how="too-early", limit=str(low))
        return year

    def _year(self, value: Any) -> int | None:
        if isinstance(value, datetime | date):
            return year_of(value)
        if isinstance(value, bool) or not isinstance(value, float | int | str):
            return None
        if isinstance(value, str):
            return self._worded(value)
        if value != int(value):
            return None
        if 0 <= value < 100:
            return self._short(int(value))
        moment = from_serial(float(value))
        return moment.year if moment else int(value)

    def _worded(self, text: str) -> int | None:
        if hit := _YEAR.fullmatch(text) or _MONTH_YEAR.fullmatch(text):
            return int(next(group for group in hit.groups() if group))
        if (short := _year_of_month(text)) is not None:
            return self._short(short)
        if found := date_text(text):
            return next(iter(found.readings.values())).year
        if hit := _SHORT_YEAR.fullmatch(text):
            return self._short(int(hit[1]))
        one = quantity(text)
        if (
            one
            and one.certain is not None
            and one.certain == int(one.certain)
            and (not one.unit or unit_named("year", one.unit))
        ):
            return int(one.certain)
        return next((int(v) for v in one.readings.values() if v == int(v) and 1900 <= v < 2200), None) if one else None

    def _short(self, year: int) -> int:
        """Two digits: the last such year that is not to come."""
        return year + (2000 if year <= self.pool.today.year % 100 else 1900)


def _year_of_month(text: str) -> int | None:
    """The two figures of the year in `06/98` and `Jun 98`; None where the first may be a year as well, or is no month."""
    hit = _MONTH_SHORT_YEAR.fullmatch(text)
    if not hit or (hit[3] and fold(hit[3]) not in vocabulary().months):
        return None
    year = int(hit[2] or hit[4])
    return None if hit[1] and int(hit[1]) < year <= max(12, int(hit[1]) + 1) else year


@dataclass(slots=True)
class TimePlan:
    pool: ColumnPool

    def read(self, value: Any, code: str) -> time:
        found = self._time(value)
        if found is None:
            raise CellProblem("not-a-time")
        return found.replace(microsecond=0)

    def _time(self, value: Any) -> time | None:
        if isinstance(value, datetime):
            return value.time()
        if isinstance(value, time):
            return value
        if isinstance(value, timedelta):
            return (datetime.min + value).time() if timedelta(0) <= value <= timedelta(days=1) else None
        if isinstance(value, float | int) and not isinstance(value, bool):
            return _time_of_number(float(value))
        return time_text(value) if isinstance(value, str) else None


def _time_of_number(value: float) -> time | None:
    """0.25 of a day is 06:00; 6 is six o'clock."""
    if 0 <= value < 1:
        return (datetime.min + timedelta(seconds=round(value * 86_400))).time()
    if value == int(value) and 1 <= value <= 24:
        return time(int(value) % 24)
    return None


@dataclass(slots=True)
class WeekdaysPlan:
    pool: ColumnPool

    def read(self, value: Any, code: str) -> frozenset[int]:
        days = _weekdays(plain_number(value) if isinstance(value, float | int) else str(value))
        if days is None:
            raise CellProblem("not-weekdays")
        return days


def _weekdays(text: str) -> frozenset[int] | None:
    vocab = vocabulary()
    folded = fold(text).replace("–", "-").replace("—", "-").replace("~", "-")
    if folded in vocab.words["daily"] or folded in {fold(w) for w in vocab.words["daily"]}:
        return frozenset(range(7))
    found: set[int] = set()
    for part in re.split(r"[,;/+&、，]|\bund\b|\band\b|\bet\b|\be\b|\by\b|\bve\b|和", folded):
        days = _run_of_days(part.strip())
        if days is None:
            return None
        found |= days
    return frozenset(found)


def _run_of_days(part: str) -> set[int] | None:
    if (day := _weekday(part)) is not None:
        return {day}
    joints = sorted((fold(w) for w in vocabulary().words["weekday_to"]), key=len, reverse=True)
    for joint in joints:
        split = part.split(joint) if joint == "-" or not joint.isascii() else re.split(rf"\s{re.escape(joint)}\s", part)
        if len(split) >= 2:
            for at in range(1, len(split)):
                first, last = _weekday(joint.join(split[:at])), _weekday(joint.join(split[at:]))
                if first is not None and last is not None:
                    return {(first + i) % 7 for i in range((last - first) % 7 + 1)}
    return None


def _weekday(word: str) -> int | None:
    word = word.strip(" .")
    if word.isdigit() and 1 <= int(word) <= 7:
        return int(word) - 1
    return vocabulary().weekdays.get(word)


@dataclass(slots=True)
class AnyPlan:
    pool: ColumnPool

    def read(self, value: Any, code: str) -> Any:
        """The value as the cell has it: whole numbers as int, moments at midnight as dates."""
        if isinstance(value, float) and value == int(value):
            return int(value)
        if isinstance(value, datetime) and value.time() == time(0):
            return value.date()
        if isinstance(value, time):
            return value.isoformat("minutes")
        return str(value) if isinstance(value, timedelta) else value


_NO_UNIT = ("", "°", "º")
"""A value in any other unit stays a text: which unit is meant the method knows, not the sheet."""


@dataclass(slots=True)
class ReadingPlan:
    """A setting's value or a check's result, as a fitter writes it: a number where it surely is one, `yes` and `no` in eight
    languages where the answer may be one, else the text."""

    pool: ColumnPool

    def read(self, value: Any, code: str) -> Any:
        if isinstance(value, bool | float | int):
            return value
        text = str(value).strip()
        found = quantity(text)
        if found and found.certain is not None and found.unit in _NO_UNIT:
            return found.certain
        if self.pool.column is None or self.pool.column.field != "result":
            return text
        return YesNoPlan(self.pool).read(text, code)
