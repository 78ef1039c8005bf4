"""What stands against an undo: somebody changed it since, or something that came later rests on it."""

from dataclasses import dataclass
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.mill import LoomKey
from tracker.domain.rows import RowKey
from tracker.domain.tables import TABLES
from tracker.errors import Message, message
from tracker.services.loading.told_changes import row_named
from tracker.services.plans.plan_record import in_json, local
from tracker.store.rows import plain

Tie = tuple[str, LoomKey | str]
"""(`loom`, its key) or (`part`, its name): what of one load or record hangs together and is undone together or not at all."""


@dataclass(frozen=True, slots=True)
class Moved:
    what: Message
    """Which value of which loom or part."""
    who: str | None = None
    at: datetime | None = None
    then: object = None
    """What the load or record had left there."""
    now: object = None
    tie: Tie | None = None

    def says(self, zone: ZoneInfo) -> Message:
        then, now = (value if isinstance(value, Message) else _said(value) for value in (self.then, self.now))
        at = self.at.astimezone(zone) if self.at else None
        return message("undo-moved", what=self.what, who=self.who, at=at, then=then, now=now)

    def record(self, zone: ZoneInfo) -> dict[str, Any]:
        """As `--json` writes it."""
        then, now = (in_json(value) if isinstance(value, Message) else plain(value) for value in (self.then, self.now))
        at = local(self.at, zone) if self.at else None
        return {"what": in_json(self.what), "who": self.who, "at": at, "then": then, "now": now}


def _said(value: object) -> Message:
    return message("empty-value") if value is None else message("own-value", value=value)


def value_of(table: str, key: RowKey, field: str = "") -> Message:
    """A value of a row, or the row itself, as the mill's workbook names it."""
    named = next((column.named for column in TABLES[table].columns if column.field == field), field)
    return message("undo-value", sheet=TABLES[table].named, row=row_named(table, key), field=named or None)
