"""Decision cells: the simple unary tests of S-FEEL, OMG Decision Model and Notation 1.3 to 1.5, clause 9.

Grammar (rules 5 to 14 of the clause): `-` holds for any value; a value, or a list of values, holds where one of them is
equal; `< <= > >=` with an endpoint; an interval `[8..16]`, with `(` or `]` for an open start and `)` or `[` for an open
end; `not(…)` around a whole list. What a mill's sheet needs beyond the standard, and nothing else:

* an empty cell is `-`; a bare word needs no quotes (the standard would read it as the name of a variable);
* words are compared without case, accents and repeated spaces; `yes` is `true`, `no` is `false`;
* a text that is plainly a number or an ISO date counts as one; a moment counts as its day;
* `≤ ≥ –` are read as `<= >= -`.

Of the date and time literals only `date("2027-01-04")` is read, since no attribute holds a time or a duration.
"""

import math
import re
from dataclasses import dataclass, field
from datetime import date, datetime
from decimal import Decimal
from functools import lru_cache
from operator import ge, gt, le, lt
from typing import Any

from tracker.domain.words import fold
from tracker.errors import DataError

Scalar = bool | float | date | str
"""What values are compared as; texts are folded."""

LONGEST_CELL = 1000
"""Characters; longer cells are refused unread."""
MOST_QUOTED = 40
"""Characters of an item that a refusal quotes."""

_NUMBER = r"-?(?:\d+(?:\.\d+)?|\.\d+)"
_DAY = r"\d{4}-\d{2}-\d{2}"
_STRING = r'"(?:[^"\\]|\\.)*"'
_DATE = rf"date\s*\(\s*{_STRING}\s*\)"
_ENDPOINT = rf"(?:{_DATE}|{_STRING}|{_DAY}|{_NUMBER})"
_INTERVAL = rf"(?P<start>[\[\](])\s*(?P<low>{_ENDPOINT})\s*\.\.\s*(?P<high>{_ENDPOINT})\s*(?P<end>[\])\[])"
_LIMIT = rf"(?P<op><=|>=|<|>|≤|≥)\s*(?P<limit>{_ENDPOINT})"
_VALUE = rf'(?P<value>{_DATE}|{_STRING}|[^\s,"<>\[\]=][^,"<>\[\]=]*)'
_ITEM = re.compile(rf"\s*(?:{_INTERVAL}|{_LIMIT}|{_VALUE})\s*(?:,|$)", re.IGNORECASE | re.DOTALL)
_NOT = re.compile(r"not\s*\((.*)\)", re.IGNORECASE | re.DOTALL)
_PLAIN_NUMBER = re.compile(r"-?(?:(?:0|[1-9]\d*)(?:\.\d+)?|\.\d+)")
_ANY = ("", "-", "–", "—")
_OPERATORS = {"<": lt, "<=": le, ">": gt, ">=": ge}
_SIGNS = {"≤": "<=", "≥": ">="}
_YES_NO = {"yes": True, "true": True, "no": False, "false": False}


@dataclass(frozen=True, slots=True)
class Equal:
    value: Scalar
    written: str = field(default="", compare=False)
    """As the cell writes it, for messages."""

    def holds(self, value: Scalar) -> bool | None:
        return type(value) is type(self.value) and value == self.value

    def __str__(self) -> str:
        return _text(self.value, self.written)


@dataclass(frozen=True, slots=True)
class Limit:
    op: str
    value: Scalar
    written: str = field(default="", compare=False)

    def holds(self, value: Scalar) -> bool | None:
        """None where the two cannot be put in order (a text against a number)."""
        return _OPERATORS[self.op](value, self.value) if type(value) is type(self.value) else None

    def __str__(self) -> str:
        return f"{self.op} {_endpoint(self.value, self.written)}"


@dataclass(frozen=True, slots=True)
class Interval:
    low: Scalar
    high: Scalar
    low_open: bool = False
    high_open: bool = False
    low_written: str = field(default="", compare=False)
    high_written: str = field(default="", compare=False)

    def holds(self, value: Scalar) -> bool | None:
        if type(value) is not type(self.low):
            return None
        above = lt if self.low_open else le
        below = lt if self.high_open else le
        return above(self.low, value) and below(value, self.high)

    @property
    def empty(self) -> bool:
        """True where no value can lie in it: low above high, or equal with an open end."""
        return not (self.low < self.high or (self.low == self.high and not (self.low_open or self.high_open)))  # type: ignore[operator]

    def __str__(self) -> str:
        low, high = _endpoint(self.low, self.low_written), _endpoint(self.high, self.high_written)
        return f"{'(' if self.low_open else '['}{low}..{high}{')' if self.high_open else ']'}"


@dataclass(frozen=True, slots=True)
class UnaryTest:
    """A list of positive tests, of which one must hold (none of which may hold, where `negated`). Empty: any value."""

    tests: tuple[Equal | Limit | Interval, ...] = ()
    negated: bool = False

    def holds(self, value: Any) -> bool | None:
        """Whether it holds for a value as a cell has it; None where the value is missing or cannot be compared."""
        if not self.tests:
            return True
        known = scalar(value)
        if known is None:
            return None
        results = [test.holds(known) for test in self.tests]
        found = True if True in results else None if None in results else False
        return found if found is None else found is not self.negated

    @property
    def values(self) -> tuple[Equal, ...]:
        """The values that the test names one by one."""
        return tuple(test for test in self.tests if isinstance(test, Equal))

    @property
    def never(self) -> bool:
        """True where no value at all can hold: only empty intervals."""
        return bool(self.tests) and not self.negated and all(isinstance(t, Interval) and t.empty for t in self.tests)

    def __str__(self) -> str:
        listed = ", ".join(str(test) for test in self.tests)
        return f"not({listed})" if self.negated else listed or "-"


def scalar(value: Any) -> Scalar | None:
    """A cell's value as it is compared; None where there is none (empty text, not a number, beyond float)."""
    if isinstance(value, bool):
        return value
    if isinstance(value, int | float):
        return _finite(value)
    if isinstance(value, date):
        return value.date() if isinstance(value, datetime) else value
    text = "" if value is None else fold(value)
    if text in _YES_NO:
        return _YES_NO[text]
    if _PLAIN_NUMBER.fullmatch(text):
        return _finite(text)
    return _day(text) or text or None


@lru_cache(maxsize=4096)
def parse_cell(text: str) -> UnaryTest:
    """The unary test that a cell writes. Raises `DataError`, and nothing else, for any other text: what to write instead."""
    cell = text.strip()
    if len(cell) > LONGEST_CELL:
        raise DataError("cell-too-long", length=len(cell), most=LONGEST_CELL)
    if cell in _ANY:
        return UnaryTest()
    inner = _NOT.fullmatch(cell)
    return UnaryTest(tuple(_items(inner[1] if inner else cell, cell)), negated=bool(inner))


def _items(text: str, cell: str) -> list[Equal | Limit | Interval]:
    found, at = [], 0
    if not text.strip() or text.rstrip().endswith(","):
        raise DataError("cell-empty-item", cell=cell)
    while at < len(text):
        match = _ITEM.match(text, at)
        if not match:
            raise _unreadable(text[at:].strip(), cell)
        found.append(_item(match, cell))
        at = match.end()
    return found


def _item(match: re.Match, cell: str) -> Equal | Limit | Interval:
    if op := str(match["op"] or ""):
        value, written = _end(match["limit"], cell)
        return Limit(_SIGNS.get(op, op), value, written)
    if match["start"]:
        (low, low_written), (high, high_written) = _end(match["low"], cell), _end(match["high"], cell)
        if type(low) is not type(high):
            raise DataError("cell-mixed-interval", cell=cell)
        return Interval(low, high, match["start"] != "[", match["end"] != "]", low_written, high_written)
    value, written = _literal(match["value"].strip(), cell)
    quoted = match["value"].startswith('"') or _is_date(match["value"])
    if not quoted and not _is_bare(written):
        raise _unreadable(written, cell)
    return Equal(value, written)


def _end(text: str, cell: str) -> tuple[Scalar, str]:
    """Value and writing of an endpoint, where digits are always a number."""
    value = _finite(text) if re.fullmatch(_NUMBER, text) else None
    value, written = (value, text) if value is not None else _literal(text, cell)
    if isinstance(value, bool):
        raise DataError("cell-without-order", cell=cell)
    return value, written


def _literal(text: str, cell: str) -> tuple[Scalar, str]:
    """Value and writing of a quoted text, a date, a number or a bare word."""
    if _is_date(text):
        written = _unquoted(text[text.index('"') : text.rindex('"') + 1])
        day = _day(written)
        if not day:
            raise DataError("cell-no-day", cell=cell, day=written)
        return day, written
    written = _unquoted(text) if text.startswith('"') else text
    value = scalar(written)
    if value is None:
        raise DataError("cell-no-value", cell=cell, item=text[:MOST_QUOTED])
    return value, written


def _unreadable(item: str, cell: str) -> DataError:
    if item.startswith(("!=", "<>")):
        return DataError("cell-unequal-sign", cell=cell, item=item[2:].strip())
    if item.startswith("="):
        return DataError("cell-equals-sign", cell=cell)
    if re.match(r"[\[\](]\s*-?\d+,\d|.*\.\.\s*-?\d+,\d", item):
        return DataError("cell-decimal-comma", cell=cell)
    if item.startswith(("<", ">", "≤", "≥")):
        return DataError("cell-limit-of-what", cell=cell)
    if _NOT.match(item):
        return DataError("cell-not-inside", cell=cell)
    return DataError("cell-unreadable", cell=cell, item=item[:MOST_QUOTED])


def _is_bare(text: str) -> bool:
    """Whether a text may stand without quotes: not `-`, no `not(`, no interval's bracket, brackets in pairs."""
    depth = 0
    for sign in text:
        depth += (sign == "(") - (sign == ")")
        if depth < 0:
            return False
    return depth == 0 and text not in _ANY and text[0] not in "(≤≥!" and not re.match(r"not\s*\(", text, re.IGNORECASE)


def _is_date(text: str) -> bool:
    return bool(re.fullmatch(_DATE, text, re.IGNORECASE | re.DOTALL))


def _unquoted(text: str) -> str:
    return re.sub(r"\\(.)", r"\1", text[1:-1], flags=re.DOTALL).strip()


def _finite(value: float | str) -> float | None:
    try:
        number = float(value)
    except OverflowError:
        return None
    return number if math.isfinite(number) else None


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text) if re.fullmatch(_DAY, text) else None
    except ValueError:
        return None


def _text(value: Scalar, written: str) -> str:
    """The value as a cell writes it, in quotes only where needed."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        match = _ITEM.fullmatch(written or value)
        bare = match and match["value"] and not match["value"].startswith('"') and not _is_date(match["value"])
        return (written or value) if bare and _is_bare(written or value) else _quoted(written or value)
    return _endpoint(value, written)


def _endpoint(value: Scalar, written: str) -> str:
    if isinstance(value, date):
        return f'date("{value.isoformat()}")'
    if isinstance(value, float):
        return format(Decimal(repr(value)), "f").removesuffix(".0")
    return _quoted(written or str(value))


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'
