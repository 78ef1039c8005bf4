"""What an entry in the stockroom's book did: the stock that it leaves, and the kits that it touched."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from tracker.domain.needs import KitState
from tracker.domain.stock import Movement
from tracker.domain.words import natural_key
from tracker.errors import Message, message


@dataclass(frozen=True, slots=True)
class PartStock:
    """Stock of a part after an entry, in its unit."""

    part: str
    unit: str
    on_hand: float
    reserved: float
    safety_stock: float

    @property
    def free(self) -> float:
        """On hand and neither reserved nor safety stock; never below 0."""
        return max(0.0, self.on_hand - self.reserved - self.safety_stock)


@dataclass(frozen=True, slots=True)
class StockReport:
    """What an entry did."""

    movements: tuple[Movement, ...]
    stock: tuple[PartStock, ...]
    """Of the parts that it touched."""
    kits: tuple[KitState, ...]
    """Of the booked looms whose reservations or issued parts it changed, as they stand now."""

    @property
    def short(self) -> tuple[KitState, ...]:
        """Those that lack something now."""
        return tuple(kit for kit in self.kits if kit.short)

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        return {
            "movements": [
                {"part": m.part, "kind": m.kind.value, "quantity": m.quantity, "at": m.at.isoformat(timespec="seconds"),
                 "entered_at": m.entered_at.isoformat(timespec="seconds") if m.entered_at else None, "who": m.who,
                 "why": m.why, "order": m.order, "hall": m.key.hall if m.key else None,
                 "loom": m.key.loom if m.key else None}
                for m in self.movements
            ],
            "stock": [
                {"part": s.part, "unit": s.unit, "on_hand": s.on_hand, "reserved": s.reserved, "free": s.free}
                for s in self.stock
            ],
            "kits": [
                {"hall": k.key.hall, "loom": k.key.loom, "state": k.state, "reserved": dict(k.reserved),
                 "issued": dict(k.issued), "short": dict(k.short)}
                for k in self.kits
            ],
        }  # fmt: skip

    def messages(self) -> list[Message]:
        """What a person should know: the stock that the entry leaves, and which kits lack something now."""
        stock = [
            message(
                "stock-of-part", part=s.part, unit=s.unit or None, on_hand=s.on_hand, reserved=s.reserved, free=s.free
            )
            for s in self.stock
        ]
        short = [message("kit-lacks", loom=k.key, parts=parts_listed(k.short), state=k.state) for k in self.short]
        return stock + short


def parts_listed(parts: Mapping[str, float]) -> list[Message]:
    """Part → quantity, as a message says them: `8 NUT, 1 RAIL`."""
    return [message("part-quantity", quantity=parts[part], part=part) for part in sorted(parts, key=natural_key)]
