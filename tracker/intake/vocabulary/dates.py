"""Dates, moments and times of day: typed, serial or text, day or month first, in eight languages."""

import re
from datetime import date, datetime, time, timedelta
from functools import lru_cache
from typing import NamedTuple

from tracker.domain.words import fold
from tracker.intake.vocabulary.dictionary import vocabulary

DAY_FIRST, MONTH_FIRST = "day first", "month first"

SERIAL_DAYS = (25_569, 73_050)
"""Serial day numbers taken for dates: 1970 to 2099 in the 1900 system."""
_EPOCH = datetime(1899, 12, 30)

_ISO = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})")
_NUMERIC = re.compile(r"(\d{1,2})([./\-\s])\s?(\d{1,2})\2\s?(\d{4}|\d{2})\.?")
_CHINESE = re.compile(r"(\d{4}|\d{2})\s*年\s*(\d{1,2})\s*月\s*(\d{1,2})\s*[日号]?")
_COMPACT = re.compile(r"((?:19|20)\d{2})(\d{2})(\d{2})")
_NAMED = re.compile(
    r"(?:[^\W\d]+\.?,?\s+)?(\d{1,2})(?:\.|st|nd|rd|th|er|º|°)?[\s\-./]*(?:de\s+|di\s+)?([^\W\d_]+)\.?,?[\s\-./']*(?:de\s+|del\s+)?(\d{4}|\d{2})"
)
_NAMED_FIRST = re.compile(r"([^\W\d_]+)\.?[\s\-]*(\d{1,2})(?:st|nd|rd|th)?,?[\s\-]+(\d{4}|\d{2})")
_CLOCK = re.compile(
    r"(\d{1,2})(?:\s*[:h.]\s*(\d{2})?|\s*(?=[ap]\.?m))(?::(\d{2})(?:\.\d+)?)?\s*(?:uhr|h|hrs)?\s*([ap])?\.?m?\.?",
    re.IGNORECASE,
)
_WHOLE_HOUR = re.compile(r"(\d{1,2})\s*(?:uhr|h|hrs|o'clock|点|时)", re.IGNORECASE)
_SPLIT = re.compile(
    r"(.*\d(?:\s*年.*?日)?)(?:T|,?\s+(?:um\s+|at\s+|à\s+|alle\s+)?)(\d{1,2}\s*[:h.]\s*(?:\d{2}.*|))", re.IGNORECASE
)


class DateText(NamedTuple):
    """What a text may mean as a date."""

    readings: dict[str, date]
    """Order → date; both where the text does not say which."""
    clock: time | None = None
    proves: str = ""
    """The order that this text proves; `` where it proves none."""


@lru_cache(maxsize=50_000)
def date_text(text: str) -> DateText | None:
    """The readings of a text as date, with a time of day behind it or not; None where it is no date."""
    text = text.strip()
    head, _, tail = text.partition(" ")
    if tail and fold(head).strip(".,") in vocabulary().weekdays:
        text = tail.strip()
    clock = None
    day = _day(text)
    if day is None and (hit := _SPLIT.fullmatch(text)):
        clock = time_text(hit[2])
        day = _day(hit[1].strip(" ,")) if clock is not None else None
    return None if day is None else day._replace(clock=clock)


def _day(text: str) -> DateText | None:
    if (hit := _ISO.fullmatch(text)) or (hit := _CHINESE.fullmatch(text)) or (hit := _COMPACT.fullmatch(text)):
        return _certain(_make(_year(hit[1]), int(hit[2]), int(hit[3])))
    if hit := _NUMERIC.fullmatch(text):
        return _numeric(int(hit[1]), int(hit[3]), _year(hit[4]), dotted=hit[2] == ".")
    for pattern, day_at, month_at in ((_NAMED, 1, 2), (_NAMED_FIRST, 2, 1)):
        if hit := pattern.fullmatch(text):
            month = vocabulary().months.get(fold(hit[month_at]))
            if month:
                return _certain(_make(_year(hit[3]), month, int(hit[day_at])))
    return None


def _numeric(first: int, second: int, year: int, dotted: bool) -> DateText | None:
    readings = {
        order: made
        for order, made in ((DAY_FIRST, _make(year, second, first)), (MONTH_FIRST, _make(year, first, second)))
        if made
    }
    if not readings:
        return None
    if len(readings) == 1:
        return DateText(readings, proves=next(iter(readings)))
    if dotted:  # the month never stands first before a point
        return DateText({DAY_FIRST: readings[DAY_FIRST]})
    return DateText(readings)


def _certain(day: date | None) -> DateText | None:
    return DateText({DAY_FIRST: day, MONTH_FIRST: day}) if day else None


def _make(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def _year(text: str) -> int:
    """Two digits: 00 to 69 → 2000 to 2069, 70 to 99 → 1970 to 1999."""
    year = int(text)
    return year if len(text) > 2 else year + (2000 if year < 70 else 1900)


def time_text(text: str) -> time | None:
    """`06:00`, `6h30`, `6 PM`, `24:00` (midnight); None where it is no time of day."""
    text = text.strip()
    whole = _WHOLE_HOUR.fullmatch(text)
    hit = _CLOCK.fullmatch(f"{whole[1]}:00" if whole else text)
    if not hit:
        return None
    hour, minute, second = int(hit[1]), int(hit[2] or 0), int(hit[3] or 0)
    if hit[4]:
        hour = hour % 12 + (12 if hit[4].lower() == "p" else 0)
    if (hour, minute, second) == (24, 0, 0):
        hour = 0
    return time(hour, minute, second) if hour < 24 and minute < 60 and second < 60 else None


def from_serial(number: float) -> datetime | None:
    """The moment of a serial day number, None outside 1970 to 2099; rounded to the second."""
    if not SERIAL_DAYS[0] <= number < SERIAL_DAYS[1]:
        return None
    return _EPOCH + timedelta(seconds=round(number * 86_400))


def year_of(value: date) -> int:
    """The year of a date. A number such as 2012 that its cell shows as a date is a day of 1905; the number is meant."""
    serial = (date(value.year, value.month, value.day) - date(1899, 12, 30)).days
    return serial if 1900 <= serial < 2200 and value.year < 1910 else value.year
