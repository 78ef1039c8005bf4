"""The stockroom's book in memory: the sums that the kept book does too, for whoever only plays with it."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import date

from tracker.domain.mill import LoomKey, Receipt
from tracker.domain.quantities import tidy
from tracker.domain.stock import TOLERANCE, Movement, Reservation, check_movement
from tracker.errors import DataError
from tracker.kits.reserving import settle
from tracker.mill_state.stockroom import Stockroom

Held = Mapping[tuple[LoomKey, str], float]
"""(loom, part) → quantity reserved, in the part's unit."""


class InMemory:
    """A stockroom under way. What it was made from stays as it is; `room` is how it stands after every entry."""

    def __init__(self, room: Stockroom):
        self.room = room

    def add(self, movements: Iterable[Movement]) -> None:
        """Enter movements, in order. DataError where one is impossible (see `check_movement`); those before it stand."""
        for movement in movements:
            self._add(movement)

    def _add(self, movement: Movement) -> None:
        room, name = self.room, movement.part
        if name not in room.mill.parts:
            raise DataError("part-unlisted", part=name, where="book")
        part = room.mill.parts[name]
        held = room.holds(movement.key).get(name, 0.0) if movement.key else 0.0
        check_movement(movement, part.on_hand, held, part.unit)
        parts = {**room.mill.parts, name: replace(part, on_hand=tidy(part.on_hand + movement.quantity))}
        self.room = replace(room, mill=replace(room.mill, parts=parts), movements=(*room.movements, movement))

    def order(self, line: Receipt) -> None:
        """Add an open order line."""
        self._replace_lines((*self.room.mill.receipts, line))

    def leave_open(self, line: Receipt, quantity: float) -> None:
        """Set what is still to come of an order line; at 0 it is no longer open."""
        self._replace_line(line, (replace(line, quantity=quantity),) if quantity > TOLERANCE else ())

    def expect(self, line: Receipt, due: date) -> None:
        """Set the day on which an order line is due."""
        self._replace_line(line, (replace(line, due=due),))

    def _replace_line(self, line: Receipt, by: tuple[Receipt, ...]) -> None:
        self._replace_lines(tuple(one for old in self.room.mill.receipts for one in (by if old == line else (old,))))

    def _replace_lines(self, lines: tuple[Receipt, ...]) -> None:
        self.room = replace(self.room, mill=replace(self.room.mill, receipts=lines))

    def hold(self, quantities: Held) -> dict[tuple[LoomKey, str], float]:
        """Set reservations (0 = none) of some looms and parts; gives those that this changes."""
        before = {(r.key, r.part): r.quantity for r in self.room.reservations}
        changed = {held: q for held, q in quantities.items() if abs(q - before.get(held, 0.0)) > TOLERANCE}
        kept = tuple(r for r in self.room.reservations if (r.key, r.part) not in changed)
        new = tuple(Reservation(key, part, q) for (key, part), q in changed.items() if q > 0)
        self.room = replace(self.room, reservations=kept + new)
        return changed

    def settle(self, parts: Iterable[str]) -> dict[tuple[LoomKey, str], float]:
        """Share out parts whose stock has changed by booking date; gives the reservations that this changes."""
        shared: dict[tuple[LoomKey, str], float] = {}
        for part in parts:
            reserved = self.room.reserved(part)
            settled = settle(self.room.part(part), reserved, self.room.needed(part))
            shared |= {(key, part): settled.get(key, 0.0) for key in reserved | settled}
        return self.hold(shared)
