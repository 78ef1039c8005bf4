"""The mill as a load leaves it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from tracker.domain.rows import RowKey, TypedRow
from tracker.domain.tables import TABLES
from tracker.domain.words import fold

Values = Mapping[str, Any]
Stored = Mapping[str, Mapping[RowKey, Values]]
"""Table → key → field → value, as the database holds it."""
NEEDS = ("articles", "looms", "terms", "crews", "absences")
"""Tables that the checks look up."""


@dataclass(frozen=True, slots=True)
class Around:
    """What is empty is not checked against: it may be loaded later."""

    articles: frozenset[str]
    halls: frozenset[str]
    types: Mapping[str, frozenset[str]]
    """Loom number → machine types of the looms of that number."""
    terms: Mapping[str, Any]
    """Folded term → value."""
    crews: tuple[Values, ...]
    absences: tuple[Values, ...]
    today: date


def around(rows: Iterable[TypedRow], stored: Stored, today: date) -> Around:
    """`stored`: the tables of `NEEDS`."""
    rows = list(rows)
    after = {name: _after(name, rows, stored) for name in NEEDS}
    types: dict[str, set[str]] = {}
    for loom in after["looms"]:
        types.setdefault(loom["loom"], set()).add(loom.get("machine_type", ""))
    return Around(
        articles=frozenset(article["article"] for article in after["articles"]),
        halls=frozenset(loom["hall"] for loom in after["looms"]),
        types={loom: frozenset(names) for loom, names in types.items()},
        terms={fold(term["term"]): term["value"] for term in after["terms"]},
        crews=after["crews"],
        absences=after["absences"],
        today=today,
    )


def _after(name: str, rows: list[TypedRow], stored: Stored) -> tuple[Values, ...]:
    """The rows of a table, those of the load laid over the stored ones."""
    found: dict[RowKey, dict[str, Any]] = {key: dict(values) for key, values in stored.get(name, {}).items()}
    for row in rows:
        if row.table == name:
            key = tuple(row.values.get(field) for field in TABLES[name].key)
            found[key] = {**found.get(key, {}), **row.values}
    return tuple(found.values())
