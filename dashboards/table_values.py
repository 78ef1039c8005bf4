"""What the cells of a table stand for, for a file of it: numbers with their unit apart, days, moments, else the text."""

import re
from collections.abc import Sequence
from datetime import date, datetime
from functools import lru_cache
from typing import NamedTuple
from zoneinfo import ZoneInfo

from dashboards.speaking import day, language, moment
from dashboards.tables import Cell, Head, Row
from tracker.domain.units import percent
from tracker.words.values import signs_of_numbers

Value = str | float | int | date | None
DUST = 9
"""Decimals beyond which a number has only what reckoning with binary fractions leaves."""


class Worth(NamedTuple):
    """What a cell stands for. `unit`: of a number, as the cell shows it; None of anything else."""

    value: Value
    unit: str | None = None


def values_of(rows: Sequence[Row], zone: ZoneInfo) -> list[list[Worth]]:
    """Of every cell; moments in the local time of the zone."""
    return [[worth(cell, zone) for cell in row] for row in rows[:]]


def worth(cell: Cell | str, zone: ZoneInfo) -> Worth:
    """A cell is sorted by its value where it has one; what it shows decides whether that is a number, a day or a moment, so that a
    rank, or the start of a span, never stands in its place."""
    if isinstance(cell, str) or not cell.text:
        return Worth((cell if isinstance(cell, str) else cell.text) or None)
    known = cell.sort[0] if isinstance(cell.sort, tuple) and cell.sort else cell.sort
    match known:
        case datetime():
            return Worth(_moment(cell.text, known, zone))
        case date() if day(known) == cell.text:
            return Worth(known)
        case float() | int() if not isinstance(known, bool) and not isinstance(cell.sort, tuple):
            return _number(cell.text, known)
    return Worth(cell.text)


def headed(
    columns: Sequence[Head], rows: Sequence[Sequence[Worth]], unit_word: str
) -> tuple[list[str], list[list[Value]]]:
    """Headings and rows. The unit that all numbers of a column share stands in its heading; several stand in a column beside it. A
    column without a heading holds buttons and no values, and is left out."""
    headings: list[str] = []
    found: list[list[Value]] = []
    for i, column in enumerate(columns):
        if not column.heading:
            continue
        units = {row[i].unit for row in rows if row[i].unit is not None}
        only = units.pop() if len(units) == 1 else ""
        headings.append(f"{column.heading} ({only})" if only and f"({only})" not in column.heading else column.heading)
        found.append([row[i].value for row in rows])
        if units:
            headings.append(f"{column.heading}: {unit_word}")
            found.append([row[i].unit or None for row in rows])
    return headings, [list(row) for row in zip(*found, strict=True)]


def _moment(text: str, known: datetime, zone: ZoneInfo) -> Value:
    try:
        local = known.astimezone(zone).replace(tzinfo=None) if known.tzinfo else known
    except OverflowError:  # the end of time, by which what never comes is sorted last
        return text
    if text == moment(known, zone):
        return local
    return local.date() if text == day(local.date()) else text


def _number(text: str, known: float) -> Worth:
    """The number that is shown, to the last figure of `known` where that is the same number."""
    decimal, group = signs_of_numbers(language())
    shown = _number_pattern(decimal, group).fullmatch(text)
    if not shown:
        return Worth(text)
    whole = shown["whole"].replace(group, "").replace("\u2212", "-")
    decimals, unit = shown["decimals"] or "", shown["unit"] or ""
    value = float(f"{whole}.{decimals or 0}")
    exact = round(percent(known) if unit == "%" else known, DUST)
    return Worth(exact if round(exact, len(decimals)) == value else value, unit)


@lru_cache
def _number_pattern(decimal: str, group: str) -> re.Pattern[str]:
    """`1,204.5 m`: a unit is one word."""
    decimal, group = re.escape(decimal), re.escape(group)
    unit = r"(?P<unit>\S*[^\W\d]\S*|[%‰°])"
    return re.compile(rf"(?P<whole>[-+\u2212]?\d[\d{group}]*)(?:{decimal}(?P<decimals>\d+))?(?:\s{unit})?")
