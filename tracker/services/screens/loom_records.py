"""What was read of one loom over time, beside its settings: stops, waste, bobbins."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from tracker.domain.tables import TABLES
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.store.rows import read_rows

Row = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class LoomRecords:
    """Rows by the fields of their sheets, moments local, the newest first."""

    stops: tuple[Row, ...]
    waste: tuple[Row, ...]
    bobbins: tuple[Row, ...]


def loom_records(context: Context, loom: str, hall: str | None = None) -> LoomRecords:
    """DataError where there is no such loom."""
    with context.reading() as uow:
        key = find_loom(uow.mill(), loom, hall)
        found = {
            name: read_rows(uow.session, TABLES[name], uow.zone, key).values() for name in ("stops", "waste", "bobbins")
        }
    stops, waste, bobbins = (
        tuple(sorted(found[name], key=lambda row, at=at: row[at], reverse=True))
        for name, at in (("stops", "from_at"), ("waste", "from_at"), ("bobbins", "at"))
    )
    return LoomRecords(stops, waste, bobbins)
