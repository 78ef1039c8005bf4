"""Weeks, months and years where a day belongs: `KW 12/27`, `2027-W12`, `03/2027`, `März 2027`, `2027`."""

import re
from calendar import monthrange
from datetime import date, timedelta
from functools import cache, lru_cache
from typing import NamedTuple

from tracker.domain.words import fold
from tracker.intake.vocabulary.dictionary import vocabulary

_MONTH = re.compile(r"(\d{1,2})\s*[/.\-]\s*((?:19|20)\d{2})")
_MONTH_LAST = re.compile(r"((?:19|20)\d{2})\s*[/.\-年]\s*(\d{1,2})\s*月?")
_NAMED_MONTH = re.compile(r"([^\W\d_]+)\.?[\s\-/]*(?:de\s+|del\s+|di\s+)?((?:19|20)\d{2}|['’]\d{2})")
_YEAR = re.compile(r"((?:19|20)\d{2})\s*年?")


class Span(NamedTuple):
    first: date
    last: date


@cache
def _week_forms() -> tuple[tuple[re.Pattern[str], bool], ...]:
    """(pattern, whether the year stands first)."""
    words = sorted(vocabulary().words["week"], key=len, reverse=True)
    week = rf"(?:{'|'.join(map(re.escape, words))})"
    return (
        (re.compile(rf"{week}[\s.]*(\d{{1,2}})\s*[/\-.,' ]\s*(\d{{4}}|\d{{2}})"), False),
        (re.compile(rf"(\d{{1,2}})[\s.]*{week}[\s./\-,']*(\d{{4}}|\d{{2}})"), False),
        (re.compile(rf"(\d{{4}})\s*[-/. ]?\s*{week}[\s.]*(\d{{1,2}})"), True),
        (re.compile(r"(\d{4})\s*年?\s*第?\s*(\d{1,2})\s*周"), True),
    )


@lru_cache(maxsize=20_000)
def span_text(text: str) -> Span | None:
    """The days that a week (ISO 8601: Monday to Sunday), a month or a year has; None for any other text."""
    text = text.strip()
    return _week(fold(text)) or _month(text) or _whole_year(text)


def _week(text: str) -> Span | None:
    for pattern, year_first in _week_forms():
        if hit := pattern.fullmatch(text):
            year, week = (hit[1], hit[2]) if year_first else (hit[2], hit[1])
            try:
                monday = date.fromisocalendar(_year(year), int(week), 1)
            except ValueError:
                return None
            return Span(monday, monday + timedelta(days=6))
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
    number = _year(year)
    return Span(date(number, month, 1), date(number, month, monthrange(number, month)[1])) if 1 <= month <= 12 else None


def _whole_year(text: str) -> Span | None:
    hit = _YEAR.fullmatch(text)
    return Span(date(int(hit[1]), 1, 1), date(int(hit[1]), 12, 31)) if hit else None


def _year(text: str) -> int:
    return int(text) if len(text) > 2 else 2000 + int(text)
