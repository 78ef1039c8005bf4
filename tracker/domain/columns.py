"""What a table of a mill is declared with: its columns, what each may hold, and what must hold between two of them."""

import re
from dataclasses import dataclass
from enum import StrEnum
from functools import reduce

from tracker.errors import Message, message


class Kind(StrEnum):
    """What a column holds, and the Python type of its value once read (empty = None)."""

    TEXT = "text"  # str
    IDENTIFIER = "identifier"  # str, never turned into a number; natural sort
    WORD = "word"  # str, one of Column.words
    NUMBER = "number"  # float, in Column.unit
    INTEGER = "integer"  # int
    FRACTION = "percent"  # float, 0.88 for 88 %; percent is the unit in workbooks
    YES_NO = "yes/no"  # bool
    DATE = "date"  # datetime.date
    MOMENT = "moment"  # naive datetime.datetime in the mill's local time; the store keeps UTC
    TIME = "time"  # datetime.time
    WEEKDAYS = "weekdays"  # frozenset[int], 0 = Monday
    ANY = "any"  # bool, int, float, str or date as the cell has it


@dataclass(frozen=True, slots=True)
class Column:
    field: str
    heading: str
    """Canonical heading without its unit."""
    kind: Kind
    needed: bool = False
    unless: str = ""
    """A field with which a row needs no value here, `needed` as the column is."""
    key: bool = False
    unit: str | None = None
    low: float | None = None
    """Lowest possible value, in `unit` (a fraction for percent, the year for a day)."""
    high: float | None = None
    words: tuple[str, ...] = ()
    about: str = ""
    """Code of what belongs there; `` = the heading says it."""
    example: str = ""
    meant: str = ""
    """Which of its meanings, where one heading has several that other languages tell apart."""

    @property
    def named(self) -> Message:
        """The heading for a person, in any language; in English it is the canonical one."""
        code = f"heading-{_kebab(self.meant or self.heading)}"
        return message(code)

    @property
    def titled(self) -> Message:
        """`named` with its unit."""
        unit = "%" if self.kind is Kind.FRACTION else unit_named(self.unit) if self.unit else None
        return message("name-with-unit", name=self.named, unit=unit) if unit else self.named

    @property
    def meaning(self) -> Message | None:
        """What belongs there."""
        return message(self.about) if self.about else None

    @property
    def title(self) -> str:
        """Canonical heading with its unit, as templates and exports write it."""
        unit = "%" if self.kind is Kind.FRACTION else self.unit
        return f"{self.heading} ({unit})" if unit else self.heading

    @property
    def possible(self) -> Message:
        """What a cell may hold: `a whole number from 1 to 40`."""
        kind = self.kind.name.lower()
        if self.kind is Kind.WORD:
            words = map(word_named, self.words)
            return reduce(lambda one, other: message("one-or-other", one=one, other=other), words)
        if self.kind in (Kind.NUMBER, Kind.INTEGER, Kind.FRACTION):
            low, high = self._limit(self.low), self._limit(self.high)
            bounds = "from-to" if low and high else "at-least" if low else "at-most" if high else "any"
            unit = unit_named(self.unit) if self.unit else None
            return message("possible-number", kind=kind, bounds=bounds, low=low, high=high, unit=unit)
        if self.kind is Kind.DATE and self.low is not None and self.high is not None:
            return message("possible-day", first=self.low, last=self.high)
        return message("possible-value", kind=kind)

    def _limit(self, limit: float | None) -> Message | None:
        if limit is None:
            return None
        percent = self.kind is Kind.FRACTION
        return message("limit", value=limit * 100 if percent else limit, unit="%" if percent else None)


@dataclass(frozen=True, slots=True)
class Pair:
    """Two fields of a row that must stand to each other, where both are given."""

    first: str
    relation: str
    """`<=`, `<` or `!=`."""
    second: str


@dataclass(frozen=True, slots=True)
class Table:
    name: str
    sheet: str
    columns: tuple[Column, ...]
    about: str
    """Code of what the sheet holds."""
    open_columns: str = ""
    """`attributes`: other columns are kept under their own heading; `conditions`: they are condition columns; `` = none."""
    whole: bool = False
    """True where the sheet is taken as a whole (the method): loading it replaces all its rows by a new version."""
    pairs: tuple[Pair, ...] = ()
    history: bool = False
    """True where rows are only added and completed: a row that says otherwise than the stored one is refused."""
    filled_by: tuple[str, ...] = ()
    """Fields of which a row has at least one; without, it is a line of a form that nobody filled in. () = not asked."""

    @property
    def named(self) -> Message:
        """The name of the sheet for a person."""
        code = f"own-sheet-{_kebab(self.name)}"
        return message(code)

    @property
    def meaning(self) -> Message:
        return message(self.about)

    @property
    def key(self) -> tuple[str, ...]:
        return tuple(column.field for column in self.columns if column.key)

    def column(self, field: str) -> Column:
        return next(column for column in self.columns if column.field == field)


WORDED_UNITS = ("picks/min", "picks/cm", "days", "hours")
"""Units that other languages write otherwise."""


def unit_named(unit: str) -> Message:
    """A unit as a person reads it."""
    code = f"unit-{_kebab(unit)}"
    return message(code) if unit in WORDED_UNITS else message("just", value=unit)


def word_named(word: str) -> Message:
    """A word that a cell of our sheets may hold, as a person reads it."""
    code = f"word-{_kebab(word)}"
    return message(code)


def _kebab(words: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", words.lower()).strip("-")


def loom_columns(needed_hall: bool = False) -> tuple[Column, ...]:
    """The columns that say which loom a row is about."""
    return (
        Column("loom", "Loom", Kind.IDENTIFIER, needed=True, key=True, about="about-loom", example="007"),
        Column("hall", "Hall", Kind.IDENTIFIER, needed=needed_hall, key=True, example="Hall 1",
               about="" if needed_hall else "about-hall"),
    )  # fmt: skip
