"""One entry in the stockroom's book: a unit of work that reads and writes under one lock, and says what it did."""

from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from datetime import date, datetime

from tracker.domain.mill import LoomKey, Part, Receipt
from tracker.domain.stock import Movement, MovementKind
from tracker.domain.words import natural_key
from tracker.errors import DataError, UsageError, message
from tracker.mill_state.ledger import Held, InMemory
from tracker.mill_state.stockroom import Stockroom
from tracker.services.context import Context
from tracker.services.moments import began, is_before, refuse_ahead
from tracker.services.parts.stock_report import PartStock, StockReport
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.people.permissions import May
from tracker.store import UnitOfWork
from tracker.store.stock import add_line, change_reservations, set_due, set_open


@dataclass(frozen=True, slots=True)
class Told:
    """What is told with an entry beside what was moved."""

    why: str = ""
    at: datetime | None = None
    """When it happened; None = now."""
    unit: str | None = None
    """In which the quantity is meant; None = the part's own."""


NO_MORE = Told()
"""Nothing is told beside what was moved: now, in the part's own unit."""


class Entry:
    """One entry under way: what was read under the lock, what it books and which reservations it changes."""

    def __init__(self, uow: UnitOfWork, at: datetime | None = None):
        if at:
            refuse_ahead(uow, at)
        self.entered_at = uow.now()
        self.uow, self.at, self.who = uow, at or self.entered_at, uow.who
        self.told = at
        """When it happened, where that was said."""
        self.book = InMemory(read_stockroom(uow, None, self.entered_at))
        self.booked: list[Movement] = []
        self.parts: set[str] = set()
        self.looms: set[LoomKey] = set()

    @property
    def room(self) -> Stockroom:
        """The stockroom as the entry leaves it so far."""
        return self.book.room

    def move(
        self,
        kind: MovementKind,
        quantities: Mapping[str, float],
        why: str,
        key: LoomKey | None = None,
        order: str | None = None,
    ) -> None:
        """Book movements of some parts, in the sign of the ledger."""
        self._refuse_early(why)
        booked = [
            Movement(part, kind, q, self.at, self.who, why, key, order, self.entered_at)
            for part, q in quantities.items()
        ]
        self.book.add(booked)
        self.uow.add_movements(booked)
        self.booked += booked
        self.parts |= quantities.keys()
        self.looms |= {key} if key else set()

    def order(self, line: Receipt, why: str) -> None:
        """Add an open order line."""
        self.book.order(line)
        add_line(self.uow.session, line, self.entered_at, self.who, why)

    def expect(self, line: Receipt, due: date, why: str) -> Receipt:
        """Set the day on which an open order line is due; gives the line as it is then."""
        self.book.expect(line, due)
        set_due(self.uow.session, line, due, self.entered_at, self.who, why)
        return replace(line, due=due)

    def leave_open(self, line: Receipt, quantity: float, why: str) -> None:
        """Set what is still to come of an order line."""
        self.book.leave_open(line, quantity)
        set_open(self.uow.session, line, quantity, self.entered_at, self.who, why)

    def _refuse_early(self, why: str) -> None:
        """What happened before the programme belongs to another; a year typed wrong is the usual cause."""
        terms = self.room.mill.terms
        if self.told and not why.strip() and is_before(self.told, first := began(self.uow, terms), terms):
            raise UsageError("before-programme", at=self.told.astimezone(terms.zone), start=first)

    def hold(self, quantities: Mapping[tuple[LoomKey, str], float], why: str) -> None:
        """Set reservations (0 = none) of some looms and parts."""
        self._keep(self.book.hold(quantities), why)

    def settle(self, parts: Iterable[str], why: str) -> None:
        """Share out the changed stock of parts by booking date."""
        self._keep(self.book.settle(parts), why)

    def _keep(self, changed: Held, why: str) -> None:
        if changed:
            change_reservations(self.uow.session, changed, self.entered_at, self.who, why)
        self.parts |= {part for _, part in changed}
        self.looms |= {key for key, _ in changed}

    def report(self) -> StockReport:
        stock = [_stock(self.room, part) for part in sorted(self.parts, key=natural_key)]
        kits = tuple(kit for kit in self.room.kits if kit.key in self.looms)
        return StockReport(tuple(self.booked), tuple(stock), kits)


def _stock(room: Stockroom, part: str) -> PartStock:
    kept = room.part(part)
    return PartStock(part, kept.unit or "", kept.on_hand, sum(room.reserved(part).values()), kept.safety_stock)


@contextmanager
def entry_in(context: Context, at: datetime | None = None) -> Iterator[Entry]:
    """An entry that is written when the block ends without an error."""
    with context.unit_of_work(May.STOCK) as uow:
        yield Entry(uow, at)
        uow.commit()


def refusal(part: Part, key: LoomKey, asked: float, free: float, reserved: Mapping[LoomKey, float]) -> DataError:
    """Why a quantity of a part is not to be had for a loom."""
    others = [message("quantity-for-loom", quantity=q, loom=other) for other, q in reserved.items() if other != key]
    held = [message("held-for-looms", looms=others)] if others else []
    held += [message("held-as-safety", quantity=part.safety_stock)] if part.safety_stock else []
    return DataError(
        "not-free", part=part.part, asked=asked, loom=key, free=max(0.0, free), on_hand=part.on_hand, held=held or None
    )
