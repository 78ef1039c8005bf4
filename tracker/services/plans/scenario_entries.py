"""What a scenario file may say: each entry with its fields, checked as the cells of the workbook are."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from tracker.domain.tables import (
    ABSENCES,
    CLOSURES,
    CREWS,
    LOOMS,
    RECEIPTS,
    TERM_COLUMNS,
    TOOLS,
    Column,
    Kind,
    Pair,
    Table,
)
from tracker.domain.words import fold
from tracker.errors import Message, UsageError, message
from tracker.intake.columns.single_values import possible, single_value
from tracker.intake.rows.pairs import contradiction, fits

LONGEST_NAME = 60


@dataclass(frozen=True, slots=True)
class Spot:
    """Where something stands in a scenario."""

    file: str = ""
    place: str = ""
    """`[heads]`, `[[crew]]`"""
    where: str = ""
    """The field, or the name of the table."""

    def refused(self, what: Message, how: str = "wrong") -> UsageError:
        """What is wrong here; `how` is `lacks` where something is missing."""
        at = {"file": self.file or None, "place": self.place or None, "where": self.where or None}
        return UsageError("scenario-refused", what=what, how=how, **at)


class Scenario(dict[str, Any]):
    """The content of a scenario file, and the file's name for messages."""

    file = ""

    @property
    def spot(self) -> Spot:
        return Spot(self.file)


@dataclass(frozen=True, slots=True)
class EntryKind:
    """One kind of entry."""

    fields: tuple[Column, ...] = ()
    """Of each `[[entry]]`; the word in the file is the heading or the field."""
    pairs: tuple[Pair, ...] = ()
    values: Column | None = None
    """Of a plain `[entry]` that gives a value to names of the mill's own: crew = heads."""


def _fields(table: Table, *needed: str, only: tuple[str, ...] = ()) -> tuple[Column, ...]:
    """Columns of a table; `needed` are those that the entry must have."""
    columns = (column for column in table.columns if not only or column.field in only)
    return tuple(_field(replace(column, needed=column.field in needed)) for column in columns)


def _field(column: Column) -> Column:
    """Days within the years that can be reckoned with."""
    return replace(column, low=1970, high=2099) if column.kind is Kind.DATE else column


_LOOM = _fields(LOOMS, "loom", only=("loom", "hall"))
ENTRIES: dict[str, EntryKind] = {
    "terms": EntryKind(fields=TERM_COLUMNS),
    "heads": EntryKind(values=CREWS.column("heads")),
    "tools": EntryKind(values=TOOLS.column("how_many")),
    "crew": EntryKind(_fields(CREWS, "crew", "trade", "heads"), CREWS.pairs),
    "absent": EntryKind(_fields(ABSENCES, "crew", "from_on", "to_on"), ABSENCES.pairs),
    "receipt": EntryKind(_fields(RECEIPTS, "order", "part", "due")),
    "closure": EntryKind(_fields(CLOSURES, "on")),
    "protect": EntryKind((*_LOOM, _field(replace(LOOMS.column("protected_until"), heading="Until", needed=True)))),
}
ONE_TABLE = ("terms", "heads", "tools")
"""Entries that stand once, as a table; the others are lists of tables."""


def checked_name(scenario: Scenario) -> None:
    """Refuse a name that the lists of plans cannot show."""
    name = scenario.get("name", "-")
    if not isinstance(name, str) or not 1 <= len(name.strip()) <= LONGEST_NAME or not name.isprintable():
        raise scenario.spot.refused(message("scenario-name", value=_quoted(name), most=LONGEST_NAME))


def checked_items(spot: Spot, name: str, content: Any) -> list[dict[str, Any]]:
    """The tables of an entry, each with its fields as the domain has them; UsageError for what does not fit."""
    if name not in ENTRIES:
        raise spot.refused(message("scenario-entry-unknown", name=name, entries=list(ENTRIES)))
    items = [content] if isinstance(content, dict) else content
    many = name not in ONE_TABLE
    if (
        not isinstance(items, list)
        or not all(isinstance(item, dict) for item in items)
        or (len(items) > 1 and not many)
    ):
        raise spot.refused(message("scenario-entry-shape", name=name, value=_quoted(content), place=place(name)))
    return [_checked(replace(spot, place=place(name)), ENTRIES[name], item) for item in items]


def place(entry: str) -> str:
    """The heading of an entry in the file."""
    return f"[{entry}]" if entry in ONE_TABLE else f"[[{entry}]]"


def _checked(spot: Spot, entry: EntryKind, item: Mapping[str, Any]) -> dict[str, Any]:
    if values := entry.values:
        return {name: _value(spot, name, values, value) for name, value in item.items()}
    found: dict[str, Any] = {}
    for word, value in item.items():
        column = _column(spot, entry, word)
        if column.field in found:
            raise spot.refused(message("scenario-twice", field=_word(column)))
        found[column.field] = _value(spot, word, column, value)
    for column in entry.fields:
        if column.needed and column.field not in found:
            lacks = message("scenario-lacks", field=_word(column), possible=possible(column))
            raise replace(spot, where=_named(item)).refused(lacks, "lacks")
    _check_pairs(spot, entry, found)
    return found


def _column(spot: Spot, entry: EntryKind, word: str) -> Column:
    said = fold(word.replace("_", " "))
    for column in entry.fields:
        if said in (fold(column.title), fold(column.heading), column.field.replace("_", " ")):
            return column
    kind, names = "term" if entry.fields is TERM_COLUMNS else "field", ", ".join(map(_word, entry.fields))
    raise spot.refused(message("scenario-field-unknown", kind=kind, name=word, names=names))


def _value(spot: Spot, word: str, column: Column, value: Any) -> Any:
    found = single_value(column, _as_cell(column, value))
    if found is None:
        wrong = message("scenario-value", value=_quoted(value), possible=possible(column, value))
        raise replace(spot, where=word).refused(wrong)
    return found


def _as_cell(column: Column, value: Any) -> Any:
    """Percent as percent, also below 1; a list of weekdays as a cell would list them."""
    if column.kind is Kind.FRACTION and isinstance(value, float | int) and not isinstance(value, bool):
        return f"{value} %"
    if column.kind is Kind.WEEKDAYS:
        days = value if isinstance(value, list) else [value]
        named = [day for day in days if isinstance(day, str)]
        return ", ".join(named) if len(named) == len(days) else "?"
    return value


def _check_pairs(spot: Spot, entry: EntryKind, found: Mapping[str, Any]) -> None:
    for pair in entry.pairs:
        first, second = found.get(pair.first), found.get(pair.second)
        if not fits(pair, first, second):
            names = tuple(_word(c) for name in (pair.first, pair.second) for c in entry.fields if c.field == name)
            what = contradiction((names[0], names[1]), first, second)
            raise spot.refused(message("scenario-contradicts", what=what))


def _word(column: Column) -> str:
    return column.title if column in TERM_COLUMNS else column.heading.lower()


def _named(item: Mapping[str, Any]) -> str:
    """The name of the table that lacks something, as far as it has one."""
    return next((str(item[word]) for word in ("crew", "order", "loom") if word in item), "")


def _quoted(value: Any) -> str:
    text = str(value) if isinstance(value, date) else repr(value)
    return text if len(text) <= 70 else f"{text[:70]}…"
