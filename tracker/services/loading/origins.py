"""Where a loom's value came from: file, sheet, cell and load, the newest first."""

from dataclasses import asdict, dataclass
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.mill import LoomKey, Mill
from tracker.domain.tables import LOOMS
from tracker.domain.words import fold
from tracker.errors import DataError
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.store import UnitOfWork
from tracker.store.rows import plain


@dataclass(frozen=True, slots=True)
class ValueOrigin:
    at: datetime
    who: str
    file: str
    """Empty where a command or a screen set the value."""
    sheet: str
    cell: str
    old: Any
    new: Any
    zone: ZoneInfo
    comment: str = ""

    def record(self) -> dict[str, Any]:
        return {name: plain(value) for name, value in asdict(self).items() if name != "zone"}


def origins(context: Context, loom: str, field: str, hall: str | None = None) -> list[ValueOrigin]:
    """Every event that set a field or attribute of a loom; `field` as a heading or as a field name."""
    with context.reading() as uow:
        mill = uow.mill()
        key = find_loom(mill, loom, hall)
        return origins_of(uow, mill, key, _field(mill, field))


def origins_of(uow: UnitOfWork, mill: Mill, key: LoomKey, field: str) -> list[ValueOrigin]:
    """Likewise for a field or kept heading exactly as the store names it."""
    found = uow.origin("looms", (key.loom, key.hall), field)
    return [ValueOrigin(o.at, o.who, o.file, o.sheet, o.cell, o.old, o.new, mill.terms.zone, o.comment) for o in found]


def _field(mill: Mill, wanted: str) -> str:
    """The field or kept heading meant; DataError with what there is where none fits."""
    names = {fold(column.heading): column.field for column in LOOMS.columns} | {c.field: c.field for c in LOOMS.columns}
    names |= {fold(heading): heading for loom in mill.looms.values() for heading in loom.attributes}
    if fold(wanted) in names:
        return names[fold(wanted)]
    raise DataError("loom-field-unknown", name=wanted, names=", ".join(sorted(set(names.values()))))
