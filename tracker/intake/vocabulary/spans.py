"""Weeks, months and years where a day belongs: `KW 12/27`, `2027-W12`, `03/2027`, `März 2027`, `2027`; and what may be one of
them: `01/27`, `Mar 27`, `KW 9`, `15.3.`."""

import re
from calendar import monthrange
from datetime import date, timedelta
from functools import cache, lru_cache
from typing import NamedTuple

from tracker.domain.words import fold
from tracker.intake.vocabulary.dictionary import is_cjk, read_data, vocabulary

_MONTH = re.compile(r"(\d{1,2})\s*[/.\-]\s*((?:19|20)\d{2})")
_MONTH_LAST = re.compile(r"((?:19|20)\d{2})\s*[/.\-年]\s*(\d{1,2})\s*月?")
_NAMED_MONTH = re.compile(r"([^\W\d_]+)\.?[\s\-/]*(?:de\s+|del\s+|di\s+)?((?:19|20)\d{2}|['’]\d{2})")
_SHORT_MONTH = re.compile(r"(\d{1,2})\s*[/.\-]\s*(\d{2})")
_NAMED_SHORT = re.compile(r"([^\W\d_]+)\.?[\s\-/]*(\d{2})")
_DAY_OF_MONTH = re.compile(r"(\d{1,2})(?:\s*([./\-])\s*(\d{1,2})\.?|\.?\s*([^\W\d_]+)\.?)|(\d{1,2})月(\d{1,2})[日号]?")
_MONTH_ALONE = re.compile(r"([^\W\d_]+)\.?|(\d{1,2}月)")
_ENDING = re.compile(r"(?<=\d)['’][^\W\d_]{1,4}$")
"""`31.03.2027'ye kadar`: what Turkish puts behind a number."""
_YEAR = re.compile(r"((?:19|20)\d{2})\s*年?")


class Span(NamedTuple):
    first: date
    last: date


@cache
def _week_forms() -> tuple[tuple[re.Pattern[str], bool], ...]:
    """(pattern, whether the year stands first)."""
    week = _week_word()
    return (
        (re.compile(rf"{week}[\s.]*(\d{{1,2}})\s*[/\-.,' ]\s*(\d{{4}}|\d{{2}})"), False),
        (re.compile(rf"(\d{{1,2}})[\s.]*{week}[\s./\-,']*(\d{{4}}|\d{{2}})"), False),
        (re.compile(rf"(\d{{4}})\s*[-/. ]?\s*{week}[\s.]*(\d{{1,2}})"), True),
        (re.compile(r"(\d{4})\s*年?\s*第?\s*(\d{1,2})\s*周"), True),
    )


@lru_cache(maxsize=20_000)
def without_until(text: str) -> str:
    """`bis Ende KW 9` → `KW 9`, `Mart 2027 sonu` → `Mart 2027`: the text without words that say until when."""
    left = fold(text.strip())
    for word in sorted(map(fold, vocabulary().words["until"]), key=len, reverse=True):
        joint = "" if is_cjk(word) else r"[\s:'’]+"
        left = re.sub(rf"^{re.escape(word)}{joint}|{joint}{re.escape(word)}$", "", left).strip()
    if left == fold(text.strip()):
        return text.strip()
    return _ENDING.sub("", left)


@lru_cache(maxsize=20_000)
def may_be_month(text: str, language: str) -> Span | None:
    """The month of `01/27` and `Mar 27`, which may as well be a day without its year."""
    return None if month_with_short_year(text, language) else _short_month(text)


@lru_cache(maxsize=20_000)
def month_with_short_year(text: str, language: str) -> Span | None:
    """The month of `03/35` and `Mrz 27`, which is no day: it has no 35th, and only English puts a month before its day."""
    hit = _SHORT_MONTH.fullmatch(text.strip()) or _NAMED_SHORT.fullmatch(text.strip())
    if not hit or (
        int(hit[2]) <= 31 and (hit[1].isdigit() or (language == "en" and fold(hit[1]) in _english_months()))
    ):
        return None
    return _short_month(text)


def _short_month(text: str) -> Span | None:
    if hit := _SHORT_MONTH.fullmatch(text.strip()):
        return _month_of(int(hit[1]), 2000 + int(hit[2]))
    hit = _NAMED_SHORT.fullmatch(text.strip())
    return _month_of(vocabulary().months.get(fold(hit[1]), 0), 2000 + int(hit[2])) if hit else None


@cache
def _english_months() -> frozenset[str]:
    words = read_data("en")["words"]
    return frozenset(fold(word) for name in ("months", "months_short") for word in words[name])


@lru_cache(maxsize=20_000)
def next_span(text: str, today: date) -> Span | None:
    """The next week, month or day that a text without a year names (`KW 9`, `März`, `15.3.`, `15 March`, `Mar 27`), today's among
    them; None for any other text, and for a day and month of which either may stand first (`5/6`)."""
    for year in range(today.year, today.year + 5):  # the 29th of February comes every four years
        span = _span_in(text.strip(), year)
        if span is not None and span.last >= today:
            return span
    return None


def is_part_of_date(text: str) -> bool:
    """Does the text name a month with two digits of its year, or a week, month or day without one?"""
    return _short_month(text) is not None or next_span(text, date(2000, 1, 1)) is not None


def _span_in(text: str, year: int) -> Span | None:
    months = vocabulary().months
    for form in _weeks_alone():
        if hit := form.fullmatch(fold(text)):
            return _week_of(int(hit[1]), year)
    if hit := _MONTH_ALONE.fullmatch(text):
        return _month_of(months.get(fold(hit[1] or hit[2]), 0), year)
    if hit := _NAMED_SHORT.fullmatch(text):
        return _day_of(int(hit[2]), months.get(fold(hit[1]), 0), year)
    hit = _DAY_OF_MONTH.fullmatch(text)
    if not hit:
        return None
    if hit[5]:
        return _day_of(int(hit[6]), int(hit[5]), year)
    if hit[4]:
        return _day_of(int(hit[1]), months.get(fold(hit[4]), 0), year)
    days = {
        _day_of(int(hit[1]), int(hit[3]), year),
        *([_day_of(int(hit[3]), int(hit[1]), year)] if hit[2] != "." else ()),
    }
    days.discard(None)
    return days.pop() if len(days) == 1 else None


@cache
def _weeks_alone() -> tuple[re.Pattern[str], ...]:
    week = _week_word()
    return (
        re.compile(rf"{week}[\s.]*(\d{{1,2}})\.?"),
        re.compile(rf"(\d{{1,2}})[\s.]*{week}\.?"),
        re.compile(r"第(\d{1,2})周"),
    )


def _week_word() -> str:
    return rf"(?:{'|'.join(map(re.escape, sorted(vocabulary().words['week'], key=len, reverse=True)))})"


@lru_cache(maxsize=20_000)
def span_text(text: str) -> Span | None:
    """The days that a week (ISO 8601: Monday to Sunday), a month or a year has; None for any other text."""
    text = text.strip()
    return _week(fold(text)) or _month(text) or _whole_year(text)


def _week(text: str) -> Span | None:
    for pattern, year_first in _week_forms():
        if hit := pattern.fullmatch(text):
            year, week = (hit[1], hit[2]) if year_first else (hit[2], hit[1])
            return _week_of(int(week), _year(year))
    return None


def _week_of(week: int, year: int) -> Span | None:
    try:
        monday = date.fromisocalendar(year, week, 1)
    except ValueError:
        return None
    return Span(monday, monday + timedelta(days=6))


def _month_of(month: int, year: int) -> Span | None:
    return Span(date(year, month, 1), date(year, month, monthrange(year, month)[1])) if 1 <= month <= 12 else None


def _day_of(day: int, month: int, year: int) -> Span | None:
    try:
        return Span(date(year, month, day), date(year, month, day))
    except ValueError:
        return None


def _month(text: str) -> Span | None:
    if hit := _MONTH.fullmatch(text):
        month, year = int(hit[1]), hit[2]
    elif hit := _MONTH_LAST.fullmatch(text):
        month, year = int(hit[2]), hit[1]
    elif (hit := _NAMED_MONTH.fullmatch(text)) and fold(hit[1]) in vocabulary().months:
        month, year = vocabulary().months[fold(hit[1])], hit[2].strip("'’")
    else:
        return None
    return _month_of(month, _year(year))


def _whole_year(text: str) -> Span | None:
    hit = _YEAR.fullmatch(text)
    return Span(date(int(hit[1]), 1, 1), date(int(hit[1]), 12, 31)) if hit else None


def _year(text: str) -> int:
    return int(text) if len(text) > 2 else 2000 + int(text)
