"""What a scenario changes, row by row, so that reasons can name it as they name what was entered."""

from collections.abc import Hashable, Iterator, Mapping
from dataclasses import asdict
from typing import Any

from tracker.domain.mill import Mill
from tracker.domain.since import RowChanged
from tracker.domain.tables import TABLES, TERM_COLUMNS

Rows = Mapping[Hashable, Mapping[str, Any]]
CHANGED = ("absences", "closures", "crews", "tools", "terms", "receipts")
"""Tables that a scenario may change; protection of a loom says itself what it is."""


def rows_changed(before: Mill, after: Mill) -> Iterator[RowChanged]:
    """Every row that differs, in the order of the tables and as the mill has them."""
    for table in CHANGED:
        was, now = _rows(before, table), _rows(after, table)
        for key in dict.fromkeys((*was, *now)):
            if was.get(key) != now.get(key):
                yield RowChanged(table, was.get(key, {}), now.get(key, {}))


def _rows(mill: Mill, table: str) -> Rows:
    if table == "terms":
        terms = ({"term": column.title, "value": getattr(mill.terms, column.field)} for column in TERM_COLUMNS)
        return {row["term"]: row for row in terms}
    of_mill = getattr(mill, table)
    rows = [asdict(row) for row in (of_mill.values() if isinstance(of_mill, Mapping) else of_mill)]
    return {tuple(row[field] for field in TABLES[table].key): row for row in rows}
