"""The stockroom at one moment, without a database: the mill, the bookings still to be supplied, and the book."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime
from functools import cached_property

from tracker.domain.clock import now
from tracker.domain.days import Days
from tracker.domain.mill import LoomKey, Mill, Part, Receipt
from tracker.domain.needs import KitState, LoomQuantities, Quantities, StillOut
from tracker.domain.ordering import as_expected
from tracker.domain.plan import Booking, Plan
from tracker.domain.progress import Stage
from tracker.domain.scopes import LoomScope
from tracker.domain.stock import Movement, MovementKind, Reservation
from tracker.domain.words import fold
from tracker.errors import DataError
from tracker.kits.returns import back_of
from tracker.kits.state import in_booking_order, issued_to, kit_states, missing, recovered_from
from tracker.scope.content import scope_looms


@dataclass(frozen=True)
class Stockroom:
    mill: Mill
    plan: Plan | None
    """The last published plan, less the bookings of looms that are signed off, put off or left out."""
    movements: tuple[Movement, ...]
    reservations: tuple[Reservation, ...]
    past: Mapping[LoomKey, Booking] = field(default_factory=dict)
    """The last bookings of looms that the plan does not book."""
    without_kit: Mapping[LoomKey, Stage] = field(default_factory=dict)
    """Looms that are signed off, put off or left out."""
    at: datetime = field(default_factory=now)
    """When it is looked at: lines that are past their date then are reckoned with later."""

    @cached_property
    def issued(self) -> LoomQuantities:
        """What each loom's kit holds."""
        return issued_to(self.movements)

    @cached_property
    def coming_back(self) -> LoomQuantities:
        """What of each booked kit is still to return to stock when its conversion ends."""
        bookings = self.plan.bookings if self.plan else ()
        return {booking.key: self._back(booking.key, booking.parts, booking) for booking in bookings}

    @cached_property
    def still_out(self) -> tuple[StillOut, ...]:
        """What is still to return from looms that the plan does not book: converted, or dropped from it."""
        booked, days = self.coming_back.keys(), Days(self.mill)
        last_issue = {m.key: m.at for m in self.movements if m.kind is MovementKind.ISSUE}
        return tuple(
            StillOut(key, part, quantity, days.local(past.end if (past := self.past.get(key)) else last_issue[key]))
            for key in sorted(self.issued.keys() - booked, key=lambda key: key.sort_key)
            for part, quantity in self._back(key, self.issued[key], self.past.get(key)).items()
        )

    def _back(self, key: LoomKey, kit: Quantities, booking: Booking | None) -> Quantities:
        if not any(line.comes_back for line in self.mill.method.kit_lines):
            return {}
        return missing(back_of(kit, self._scopes[key].contents, booking), self._recovered.get(key, {}), {})

    @cached_property
    def _scopes(self) -> Mapping[LoomKey, LoomScope]:
        return scope_looms(self.mill)

    @cached_property
    def _recovered(self) -> LoomQuantities:
        return recovered_from(self.movements)

    def with_returns(self, mill: Mill) -> Mill:
        """The mill with its order lines due when they can be reckoned with, and what is still out as if it were on order."""
        mill = as_expected(mill, self.at)
        back = tuple(Receipt(f"loom {out.key}", out.part, out.quantity, out.due) for out in self.still_out)
        return replace(mill, receipts=(*mill.receipts, *back))

    @cached_property
    def held_beside(self) -> LoomQuantities:
        """Loom → part → what is reserved for looms that the plan does not book: they are in work, or it was by hand."""
        others = {booking.key for booking in self.plan.bookings} if self.plan else set()
        others |= self.without_kit.keys()
        found: dict[LoomKey, dict[str, float]] = {}
        for reservation in self.reservations:
            if reservation.key not in others:
                found.setdefault(reservation.key, {})[reservation.part] = reservation.quantity
        return found

    @cached_property
    def kits(self) -> tuple[KitState, ...]:
        """In booking order; empty where nothing is published."""
        if not self.plan:
            return ()
        mill = self.with_returns(self.mill)
        return kit_states(self.plan, mill, self.reservations, self.movements, self.coming_back)

    @property
    def wanting(self) -> dict[str, dict[LoomKey, float]]:
        """Part → looms whose booked kits still lack it, and how much."""
        found: dict[str, dict[LoomKey, float]] = {}
        for kit in self.kits:
            for part, quantity in kit.short.items():
                found.setdefault(part, {})[kit.key] = quantity
        return found

    def part(self, name: str, unit: str | None = None) -> Part:
        """The part of that name; DataError where there is none, or where it is kept in another unit."""
        if name not in self.mill.parts:
            raise DataError("part-unknown", part=name)
        part = self.mill.parts[name]
        if unit and fold(unit) != fold(part.unit or ""):
            raise DataError("unit-differs", part=name, kept=part.unit or None, unit=unit)
        return part

    def booked(self, key: LoomKey) -> Booking | None:
        """The loom's booking in the plan."""
        return next((b for b in self.plan.bookings if b.key == key), None) if self.plan else None

    def held(self, key: LoomKey) -> dict[str, float]:
        """Part → what a loom has reserved of it."""
        return {r.part: r.quantity for r in self.reservations if r.key == key}

    def holds(self, key: LoomKey) -> dict[str, float]:
        """Part → what was issued to a loom and has not come back."""
        return missing(self.issued.get(key, {}), self._recovered.get(key, {}), {})

    def short(self, key: LoomKey) -> dict[str, float]:
        """Part → what a booked loom's kit lacks; nothing where it is not booked."""
        booking = self.booked(key)
        return missing(booking.parts, self.held(key), self.issued.get(key, {})) if booking else {}

    def reserved(self, part: str) -> dict[LoomKey, float]:
        """Loom → what it has reserved of a part."""
        return self._reserved.get(part, {})

    @cached_property
    def _reserved(self) -> Mapping[str, dict[LoomKey, float]]:
        found: dict[str, dict[LoomKey, float]] = {}
        for r in self.reservations:
            found.setdefault(r.part, {})[r.key] = r.quantity
        return found

    def needed(self, part: str) -> dict[LoomKey, float]:
        """Loom → what its kit needs of a part beyond what was issued, in booking order."""
        return self._needed.get(part, {})

    @cached_property
    def _needed(self) -> Mapping[str, dict[LoomKey, float]]:
        found: dict[str, dict[LoomKey, float]] = {}
        for booking in in_booking_order(self.plan) if self.plan else ():
            for part, quantity in missing(booking.parts, {}, self.issued.get(booking.key, {})).items():
                found.setdefault(part, {})[booking.key] = quantity
        return found


def part_units(mill: Mill) -> dict[str, str]:
    """Part → the unit that it is counted in; `` where none is given."""
    return {name: part.unit or "" for name, part in mill.parts.items()}
