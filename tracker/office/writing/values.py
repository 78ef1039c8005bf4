"""Values as workbook cells: percent for fractions, days as words, text that a spreadsheet would run as plain text."""

import re
from collections.abc import Iterable, Sequence
from datetime import UTC, date, datetime, time
from typing import Any

from tracker.domain.plain_text import guarded
from tracker.domain.tables import Kind
from tracker.domain.units import percent
from tracker.errors import DataError

MAX_TEXT = 32_767
"""Characters that a cell of an xlsx holds (published limit of the format)."""
WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_NOT_XML = re.compile("[\x00-\x08\x0b-\x1f\ufffe\uffff\ud800-\udfff]|_(?=x[0-9A-Fa-f]{4}_)")
_FIRST_DAY = date(1900, 3, 1)
"""Serial dates before it are ambiguous, for the format counts a 29 February 1900 that never was."""


def workbook_value(kind: Kind, value: Any, days: Sequence[str] = WEEKDAYS) -> Any:
    """The value that a workbook shows for a domain value: str, int, float, bool, date, datetime, time or None.

    Fractions become percent (0.88 → 88, see `shown_share`), whole floats ints, weekdays `Mon-Fri` by the names of `days`, yes/no
    words, aware moments UTC. Days before March 1900, which a spreadsheet cannot count, become ISO text.
    """
    match value:
        case None | "":
            return None
        case bool():
            return value if kind is Kind.ANY else "yes" if value else "no"
        case Share():
            return value
        case float() | int() if kind is Kind.FRACTION:
            return shown_share(value)
        case float():
            return whole(value)
        case frozenset() | set():
            return weekdays(value, days)
        case list() | tuple():
            return weekdays(value, days) if kind is Kind.WEEKDAYS else ", ".join(map(str, value))
        case datetime() if value.tzinfo is not None:
            return workbook_value(kind, value.astimezone(UTC).replace(tzinfo=None))
        case date() if _day(value) < _FIRST_DAY:
            return value.isoformat()
    return value


class Share(float):
    """A fraction that a workbook shows with its own percent mark."""


def shown_share(share: float) -> float | int | Share:
    """The fraction as percent; up to 1 % as a `Share`, because a bare 0.8 below `(%)` could as well be meant as 80 %."""
    shown = whole(percent(share))
    return Share(share) if 0 < abs(shown) <= 1 else shown


def whole(value: float) -> float | int:
    """190.0 → 190; other numbers as they are. Raises DataError for infinities and NaN, which no cell holds."""
    if value != value or value in (float("inf"), float("-inf")):
        raise DataError("number-not-held", value=value)
    return int(value) if value == int(value) and abs(value) < 1e15 else value


def weekdays(which: Iterable[int], days: Sequence[str] = WEEKDAYS) -> str:
    """`Mon-Fri` for a run of three or more days, else `Mon, Wed`; 0 = Monday."""
    order = sorted(which)
    if len(order) > 2 and order[-1] - order[0] == len(order) - 1:
        return f"{days[order[0]]}-{days[order[-1]]}"
    return ", ".join(days[day] for day in order)


def xml_text(text: str) -> str:
    """The text as an xlsx keeps it: characters that XML cannot hold, and CR, as `_x000D_` (ECMA-376 part 1, 22.9.2.19).

    Raises DataError where it is longer than a cell may be.
    """
    if len(text) > MAX_TEXT:
        raise DataError("text-too-long", begins=text[:40], length=len(text), most=MAX_TEXT)
    return _NOT_XML.sub(lambda hit: f"_x{ord(hit[0]):04X}_", text)


def csv_text(value: Any) -> str:
    """The value as a field of a CSV file: numbers and dates plain, text that might run with an apostrophe before it."""
    match value:
        case None:
            return ""
        case bool():
            return "yes" if value else "no"
        case str():
            return guarded(value)
        case Share():
            return f"{whole(percent(value))}%"
        case datetime():
            return value.isoformat(" ", "minutes" if value.second == 0 else "seconds")
        case time():
            return value.isoformat("minutes" if value.second == 0 else "seconds")
        case date():
            return value.isoformat()
    return repr(value) if isinstance(value, float) else str(value)


def _day(value: date) -> date:
    return value.date() if isinstance(value, datetime) else value
