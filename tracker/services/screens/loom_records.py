"""What was read of one loom over time, beside its settings: stops, waste, bobbins, and what was remarked."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from tracker.domain.tables import TABLES
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.services.screens.remarks import Remark, remarks_of
from tracker.store.rows import read_rows

Row = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class LoomRecords:
    """Rows by the fields of their sheets, moments local, the newest first."""

    stops: tuple[Row, ...]
    waste: tuple[Row, ...]
    bobbins: tuple[Row, ...]
    remarks: tuple[Remark, ...]


def loom_records(context: Context, loom: str, hall: str | None = None) -> LoomRecords:
    """DataError where there is no such loom."""
    with context.reading() as uow:
        key = find_loom(uow.mill(), loom, hall)
        found = {
            name: read_rows(uow.session, TABLES[name], uow.zone, key).values()
            for name in ("stops", "waste", "bobbins", "work_done")
        }
        remarks = remarks_of(key, found["work_done"], uow.photos([key]), uow.zone)
    stops, waste, bobbins = (
        tuple(sorted(found[name], key=lambda row, at=at: row[at], reverse=True))
        for name, at in (("stops", "from_at"), ("waste", "from_at"), ("bobbins", "at"))
    )
    return LoomRecords(stops, waste, bobbins, tuple(reversed(remarks)))
