"""The stockroom's book as it was written, with the stock after every entry."""

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.quantities import tidy
from tracker.domain.stock import Movement
from tracker.services.context import Context
from tracker.services.parts.stockroom import read_stockroom


@dataclass(frozen=True, slots=True)
class LedgerLine:
    movement: Movement
    on_hand: float
    """Stock of the part after it."""


@dataclass(frozen=True, slots=True)
class Ledger:
    zone: ZoneInfo
    units: Mapping[str, str]
    """Part → unit, `` where it has none."""
    lines: tuple[LedgerLine, ...]
    """In the order booked."""

    def record(self) -> list[dict[str, Any]]:
        """As `--json` writes it."""
        return [
            {"at": m.at.astimezone(self.zone).isoformat(timespec="seconds"), "part": m.part, "kind": m.kind.value,
             "quantity": m.quantity, "unit": self.units.get(m.part, ""), "on_hand": line.on_hand, "order": m.order,
             "hall": m.key.hall if m.key else None, "loom": m.key.loom if m.key else None, "who": m.who, "why": m.why,
             "entered_at": m.entered_at.astimezone(self.zone).isoformat(timespec="seconds") if m.entered_at else None}
            for line in self.lines for m in (line.movement,)
        ]  # fmt: skip


def ledger(context: Context, part: str | None = None) -> Ledger:
    """Every entry of one part, or of all. DataError for an unknown part."""
    with context.reading() as uow:
        room = read_stockroom(uow)
    if part is not None:
        room.part(part)
    lines, on_hand = [], defaultdict[str, float](float)
    for movement in room.movements:
        on_hand[movement.part] = tidy(on_hand[movement.part] + movement.quantity)
        if part in (None, movement.part):
            lines.append(LedgerLine(movement, on_hand[movement.part]))
    units = {name: kept.unit or "" for name, kept in room.mill.parts.items()}
    return Ledger(room.mill.terms.zone, units, tuple(lines))
