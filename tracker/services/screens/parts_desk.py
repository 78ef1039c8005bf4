"""What purchasing needs before it: what to order by when, what is on order, the kits, and who holds what."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from tracker.cards.content import card_numbers
from tracker.domain.mill import LoomKey, Receipt
from tracker.domain.needs import KitState, OrderLine
from tracker.domain.words import natural_key
from tracker.mill_state.stockroom import Stockroom
from tracker.services.context import Context
from tracker.services.parts.needs import PUBLISHED, NeedsReport, needed_by, needs_of
from tracker.services.parts.stock_report import PartStock


@dataclass(frozen=True, slots=True)
class OpenLine:
    """An order line that is still to come."""

    line: Receipt
    unit: str
    supplier: str
    """Of the line, else of the part; `` where neither names one."""
    amount: float
    days_late: int
    """Calendar days past its date; 0 where it is not."""
    wanted_by: tuple[LoomKey, ...]
    """The booked looms whose kits lack the part."""


@dataclass(frozen=True, slots=True)
class PartsDesk:
    needs: NeedsReport
    kits: tuple[KitState, ...]
    """Of the published plan, in booking order; empty where none is published."""
    open_lines: tuple[OpenLine, ...]
    """By due day."""
    stock: Mapping[str, PartStock]
    """Every part, in natural order."""
    held: Mapping[str, Mapping[LoomKey, float]]
    """Part → loom → what is reserved for it."""
    cards: Mapping[LoomKey, str]
    """Booked loom → the number of its card."""

    @property
    def today(self) -> date:
        """The mill's local day."""
        return self.needs.as_of.astimezone(self.needs.zone).date()

    @property
    def urgent(self) -> tuple[OrderLine, ...]:
        """What is to be ordered by Sunday of this week, the day passed or not; the earliest first."""
        sunday = self.today + timedelta(days=6 - self.today.weekday())
        lines = [line for line in self.needs.orders if line.order_by <= sunday]
        return tuple(sorted(lines, key=lambda line: (line.order_by, natural_key(line.part))))

    @property
    def short(self) -> tuple[KitState, ...]:
        """The kits that nothing on order makes whole in time, the earliest start first."""
        return tuple(kit for kit in self.kits if kit.state == "short")


def parts_desk(context: Context, as_of: datetime | None = None) -> PartsDesk:
    """All of it at `as_of` (default: now, or the start of a programme that lies ahead). DataError where the data cannot carry a
    plan."""
    room, at, basis = needed_by(context, as_of)
    with context.reading() as uow:
        number = uow.published_number()
    published = basis == PUBLISHED
    names = sorted(room.mill.parts, key=natural_key)
    return PartsDesk(
        needs_of(room, at, basis),
        room.kits if published else (),
        _open_lines(room, at, published),
        {name: _stock(room, name) for name in names},
        {name: held for name in names if (held := room.reserved(name))},
        card_numbers(room.plan, number) if published and room.plan and number is not None else {},
    )


def _open_lines(room: Stockroom, at: datetime, published: bool) -> tuple[OpenLine, ...]:
    wanting: Mapping[str, Mapping[LoomKey, float]] = room.wanting if published else {}
    today = at.astimezone(room.mill.terms.zone).date()
    lines = [
        OpenLine(
            line, room.mill.parts[line.part].unit or "", line.supplier or room.mill.parts[line.part].supplier or "",
            line.quantity * room.mill.parts[line.part].price, max(0, (today - line.due).days),
            tuple(sorted(wanting.get(line.part, ()), key=lambda key: key.sort_key)),
        )
        for line in room.mill.receipts
    ]  # fmt: skip
    return tuple(sorted(lines, key=lambda one: (one.line.due, natural_key(one.line.order), natural_key(one.line.part))))


def _stock(room: Stockroom, name: str) -> PartStock:
    part = room.part(name)
    return PartStock(name, part.unit or "", part.on_hand, sum(room.reserved(name).values()), part.safety_stock)
