"""What a scenario has otherwise, as rows of the mill's workbook."""

from collections.abc import Iterator, Mapping
from dataclasses import asdict
from typing import Any

from tracker.domain.mill import Crew, Mill
from tracker.domain.rows import RowKey, TypedRow
from tracker.domain.since import RowChanged
from tracker.domain.tables import TABLES
from tracker.services.plans.scenario_changes import rows_changed

Stored = Mapping[str, Mapping[RowKey, Mapping[str, Any]]]
"""Table → key → row, as the database has it."""


def rows_otherwise(before: Mill, after: Mill, stored: Stored) -> Iterator[TypedRow]:
    """A row for each that differs, with what a row must have and the values that are others; of a new row, all that it has."""
    for change in rows_changed(before, after):
        yield TypedRow(change.table, _values(change, stored))
    for key, loom in after.looms.items():
        if loom.protected_until != before.looms[key].protected_until:
            named = {"loom": key.loom, "hall": key.hall}
            yield TypedRow("looms", named | {"protected_until": loom.protected_until})


def _values(change: RowChanged, stored: Stored) -> dict[str, Any]:
    if not change.was:
        return {field: value for field, value in change.now.items() if value is not None}
    table = TABLES[change.table]
    must = {column.field for column in table.columns if column.needed}
    values = {field: now for field, now in change.now.items() if field in must or now != change.was.get(field)}
    return values | dict(zip(table.key, _key(change, stored), strict=True))


def _key(change: RowChanged, stored: Stored) -> RowKey:
    """As the database has it: a crew's weekdays and shift may be left out there."""
    if change.table == "crews":
        return next(key for key, row in stored["crews"].items() if asdict(_crew(row)) == change.was)
    return tuple(change.was[field] for field in TABLES[change.table].key)


def _crew(row: Mapping[str, Any]) -> Crew:
    return Crew(**{field: value for field, value in row.items() if value is not None})
