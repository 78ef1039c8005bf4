"""What a scenario file may say: each entry with its fields, checked as the cells of the workbook are."""

from collections.abc import Iterable, Mapping
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
from tracker.errors import UsageError
from tracker.intake.columns.single_values import possible, single_value
from tracker.intake.rows.pairs import contradiction, fits
from tracker.words import ENGLISH

LONGEST_NAME = 60


class Scenario(dict[str, Any]):
    """The content of a scenario file, and the file's name for messages."""

    file = ""

    @property
    def where(self) -> str:
        return f"scenario {self.file}" if self.file else "scenario"


@dataclass(frozen=True, slots=True)
class Entry:
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
ENTRIES: dict[str, Entry] = {
    "terms": Entry(fields=TERM_COLUMNS),
    "heads": Entry(values=CREWS.column("heads")),
    "tools": Entry(values=TOOLS.column("how_many")),
    "crew": Entry(_fields(CREWS, "crew", "trade", "heads"), CREWS.pairs),
    "absent": Entry(_fields(ABSENCES, "crew", "from_on", "to_on"), ABSENCES.pairs),
    "receipt": Entry(_fields(RECEIPTS, "order", "part", "due")),
    "closure": Entry(_fields(CLOSURES, "on")),
    "protect": Entry((*_LOOM, _field(replace(LOOMS.column("protected_until"), heading="Until", needed=True)))),
}
_ONE = ("terms", "heads", "tools")
"""Entries that stand once, as a table; the others are lists of tables."""


def checked_name(scenario: Scenario) -> None:
    """Refuse a name that the lists of plans cannot show."""
    name = scenario.get("name", "-")
    if not isinstance(name, str) or not 1 <= len(name.strip()) <= LONGEST_NAME or not name.isprintable():
        raise UsageError(
            f"{scenario.where}: name {_quoted(name)} is not possible; give a text of one line with 1 to {LONGEST_NAME} characters"
        )


def checked_items(where: str, name: str, content: Any) -> list[dict[str, Any]]:
    """The tables of an entry, each with its fields as the domain has them; UsageError for what does not fit."""
    if name not in ENTRIES:
        raise UsageError(f"{where}: {name!r} is not one of name, {', '.join(ENTRIES)}")
    items = [content] if isinstance(content, dict) else content
    many = name not in _ONE
    if (
        not isinstance(items, list)
        or not all(isinstance(item, dict) for item in items)
        or (len(items) > 1 and not many)
    ):
        raise UsageError(f"{where}: {name} {_quoted(content)} is not possible; write it as lines under {place(name)}")
    return [_checked(f"{where}: {place(name)}", ENTRIES[name], item) for item in items]


def place(entry: str) -> str:
    """The heading of an entry in the file."""
    return f"[{entry}]" if entry in _ONE else f"[[{entry}]]"


def _checked(where: str, entry: Entry, item: Mapping[str, Any]) -> dict[str, Any]:
    if values := entry.values:
        return {name: _value(where, name, values, value) for name, value in item.items()}
    found: dict[str, Any] = {}
    for word, value in item.items():
        column = _column(where, entry, word)
        if column.field in found:
            raise UsageError(f"{where}: {_word(column)} is given twice; leave one of them out")
        found[column.field] = _value(where, word, column, value)
    for column in entry.fields:
        if column.needed and column.field not in found:
            raise UsageError(f"{where} {_named(item)}has no {_word(column)}; give {possible(column)}")
    _check_pairs(where, entry, found)
    return found


def _column(where: str, entry: Entry, word: str) -> Column:
    said = fold(word.replace("_", " "))
    for column in entry.fields:
        if said in (fold(column.title), fold(column.heading), column.field.replace("_", " ")):
            return column
    what = "term" if entry.fields is TERM_COLUMNS else "field"
    raise UsageError(f"{where}: there is no {what} {word!r}; the {what}s are {_listed(entry.fields)}")


def _value(where: str, word: str, column: Column, value: Any) -> Any:
    found = single_value(column, _as_cell(column, value))
    if found is None:
        raise UsageError(f"{where} {word}: {_quoted(value)} is not possible; give {possible(column, value)}")
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


def _check_pairs(where: str, entry: Entry, found: Mapping[str, Any]) -> None:
    for pair in entry.pairs:
        first, second = found.get(pair.first), found.get(pair.second)
        if not fits(pair, first, second):
            names = tuple(_word(c) for name in (pair.first, pair.second) for c in entry.fields if c.field == name)
            said = ENGLISH.say(contradiction((names[0], names[1]), first, second))
            raise UsageError(f"{where}: {said}; correct one of them")


def _word(column: Column) -> str:
    return column.title if column in TERM_COLUMNS else column.heading.lower()


def _listed(fields: Iterable[Column]) -> str:
    return ", ".join(map(_word, fields))


def _named(item: Mapping[str, Any]) -> str:
    """The name of the table that lacks something, as far as it has one."""
    names = (str(item[word]) for word in ("crew", "order", "loom") if word in item)
    return next((f"{name} " for name in names), "")


def _quoted(value: Any) -> str:
    text = str(value) if isinstance(value, date) else repr(value)
    return text if len(text) <= 70 else f"{text[:70]}…"
