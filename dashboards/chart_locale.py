"""In which language the chart library writes its own numbers and days."""

from typing import Any

from dashboards.speaking import language
from tracker.words.values import names_of_days, signs_of_numbers


def locale_here() -> dict[str, Any]:
    """What is set of a chart where whoever looks does not read English, which the library writes by itself (d3-format,
    d3-time-format)."""
    spoken = language()
    return {} if spoken == "en" else {"locale": {"number": _numbers(spoken), "time": _days(spoken)}}


def _numbers(spoken: str) -> dict[str, Any]:
    decimal, group = signs_of_numbers(spoken)
    return {"decimal": decimal, "thousands": group, "grouping": [3], "currency": ["", ""]}


def _days(spoken: str) -> dict[str, Any]:
    written = {"dateTime": "%a %-d. %b %Y %H:%M", "date": "%-d. %b %Y", "time": "%H:%M", "periods": ["AM", "PM"]}
    return written | names_of_days(spoken)
