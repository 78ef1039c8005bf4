"""In which language the chart library writes its own numbers and days."""

from typing import Any

from dashboards.speaking import language
from tracker.words.values import names_of_days, signs_of_numbers


def embedded() -> dict[str, Any]:
    """Drawn as text and shapes: sharp at any size and on paper, and read by screen readers; in the language of whoever looks, which
    the library has to be told (d3-format, d3-time-format) where it is not English."""
    spoken = language()
    locale = {} if spoken == "en" else {"formatLocale": _numbers(spoken), "timeFormatLocale": _days(spoken)}
    return {"embedOptions": {"renderer": "svg", **locale}}


def _numbers(spoken: str) -> dict[str, Any]:
    decimal, group = signs_of_numbers(spoken)
    return {"decimal": decimal, "thousands": group, "grouping": [3], "currency": ["", ""]}


def _days(spoken: str) -> dict[str, Any]:
    written = {"dateTime": "%a %-d. %b %Y %H:%M", "date": "%-d. %b %Y", "time": "%H:%M", "periods": ["AM", "PM"]}
    return written | names_of_days(spoken)
