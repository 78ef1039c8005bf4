"""The store room as the services see it: the mill, the bookings still to be supplied, the ledger, and one entry in it.

Every entry is one unit of work that holds the ledger's lock from before it reads, and says afterwards what is on hand
and which kits it touched.
"""

from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field, replace
from datetime import datetime
from functools import cached_property
from typing import Any

from tracker.domain.clock import now, start_of_day
from tracker.domain.formats import day, moment, number
from tracker.domain.mill import LoomKey, Mill, Part, Receipt
from tracker.domain.needs import KitState, LoomQuantities, Quantities, StillOut
from tracker.domain.plan import Booking, Plan
from tracker.domain.progress import Stage
from tracker.domain.scopes import LoomScope
from tracker.domain.stock import TOLERANCE, Movement, MovementKind, Reservation
from tracker.domain.words import fold, natural_key
from tracker.errors import DataError, UsageError
from tracker.kits.days import Days
from tracker.kits.reserving import settle
from tracker.kits.returns import back_of
from tracker.kits.state import in_booking_order, issued_to, kit_states, missing, recovered_from
from tracker.scope.content import scope_looms
from tracker.store import UnitOfWork, open_store
from tracker.store.stock import change_reservations
from tracker.store.unit_of_work import user

SUPPLIED_NO_MORE = (Stage.SIGNED_OFF, Stage.PUT_OFF, Stage.LEFT_OUT)


@dataclass(frozen=True)
class StoreRoom:
    mill: Mill
    plan: Plan | None
    """The last published plan, less the bookings of looms that are signed off, put off or left out."""
    movements: tuple[Movement, ...]
    reservations: tuple[Reservation, ...]
    past: Mapping[LoomKey, Booking] = field(default_factory=dict)
    """The last bookings of looms that were issued parts and that the plan does not book."""
    supplied_no_more: Mapping[LoomKey, Stage] = field(default_factory=dict)
    """Looms that are signed off, put off or left out."""

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
        """The mill with what is still out as if it were on order."""
        back = tuple(Receipt(f"loom {out.key}", out.part, out.quantity, out.due) for out in self.still_out)
        return replace(mill, receipts=(*mill.receipts, *back))

    @cached_property
    def held_beside(self) -> LoomQuantities:
        """Loom → part → what is reserved for looms that the plan does not book: they are in work, or it was by hand."""
        others = {booking.key for booking in self.plan.bookings} if self.plan else set()
        others |= self.supplied_no_more.keys()
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

    def part(self, name: str, unit: str | None = None) -> Part:
        """The part of that name; DataError where there is none, or where it is kept in another unit."""
        if name not in self.mill.parts:
            raise DataError(f"unknown part {name}; `beamslot needs` lists the parts")
        part = self.mill.parts[name]
        if unit and fold(unit) != fold(part.unit or ""):
            raise DataError(
                f"part {name} is kept in {part.unit or 'no unit'}, not in {unit}; give the quantity in that"
            )
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


def read_store_room(uow: UnitOfWork) -> StoreRoom:
    """The store room as the database knows it."""
    plan = uow.published_plan()
    gone = {key: change.stage for key, change in uow.stages().items() if change.stage in SUPPLIED_NO_MORE}
    if plan:
        plan = replace(plan, bookings=tuple(b for b in plan.bookings if b.key not in gone))
    movements = tuple(uow.movements())
    past = issued_to(movements).keys() - {booking.key for booking in (plan.bookings if plan else ())}
    return StoreRoom(uow.mill(), plan, movements, tuple(uow.reservations()), uow.last_bookings(past), gone)


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
                 "who": m.who, "why": m.why, "order": m.order, "hall": m.key.hall if m.key else None,
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

    def lines(self) -> list[str]:
        """What a person should know: the stock that the entry leaves, and which kits lack something now."""
        stock = [
            f"{s.part}: {number(s.on_hand, s.unit, 3)} on hand, {number(s.reserved, digits=3)} reserved, "
            f"{number(s.free, digits=3)} free."
            for s in self.stock
        ]
        return stock + [f"Loom {kit.key} lacks {quantities(kit.short)} ({kit.state})." for kit in self.short]


def quantities(parts: Mapping[str, float]) -> str:
    """`8 NUT, 1 RAIL`"""
    return ", ".join(f"{number(parts[part], digits=3)} {part}" for part in sorted(parts, key=natural_key))


class Entry:
    """One entry under way: what was read under the lock, what it books and which reservations it changes."""

    def __init__(self, uow: UnitOfWork, at: datetime | None, who: str | None):
        if at and at > now():
            raise UsageError(f"{at:%Y-%m-%d %H:%M} UTC is still to come; book what has happened")
        self.uow, self.at, self.who = uow, at or now(), who or user()
        self.told = at
        """When it happened, where that was said."""
        self.room = read_store_room(uow)
        self.booked: list[Movement] = []
        self.parts: set[str] = set()
        self.looms: set[LoomKey] = set()

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
        booked = [Movement(part, kind, q, self.at, self.who, why, key, order) for part, q in quantities.items()]
        self.uow.add_movements(booked)
        self.booked += booked
        self.parts |= quantities.keys()
        self.looms |= {key} if key else set()
        self.room = read_store_room(self.uow)

    def _refuse_early(self, why: str) -> None:
        """What happened before the programme belongs to another; a year typed wrong is the usual cause."""
        terms = self.room.mill.terms
        if self.told and terms.start and self.told < start_of_day(terms.start, terms) and not why.strip():
            raise UsageError(
                f"{moment(self.told, terms.zone)} is before the programme, which starts on {day(terms.start)}; "
                "say with --why TEXT why it is booked here"
            )

    def hold(self, quantities: Mapping[tuple[LoomKey, str], float], why: str) -> None:
        """Set reservations (0 = none) of some looms and parts."""
        before = {(r.key, r.part): r.quantity for r in self.room.reservations}
        changed = {held: q for held, q in quantities.items() if abs(q - before.get(held, 0.0)) > TOLERANCE}
        change_reservations(self.uow.session, changed, self.at, self.who, why)
        self.parts |= {part for _, part in changed}
        self.looms |= {key for key, _ in changed}
        self.room = replace(self.room, reservations=tuple(self.uow.reservations()))

    def settle(self, parts: Iterable[str], why: str) -> None:
        """Share out the changed stock of parts by booking date."""
        shared: dict[tuple[LoomKey, str], float] = {}
        for part in parts:
            reserved = self.room.reserved(part)
            settled = settle(self.room.part(part), reserved, self.room.needed(part))
            shared |= {(key, part): settled.get(key, 0.0) for key in reserved | settled}
        self.hold(shared, why)

    def report(self) -> StockReport:
        stock = [_stock(self.room, part) for part in sorted(self.parts, key=natural_key)]
        kits = tuple(kit for kit in self.room.kits if kit.key in self.looms)
        return StockReport(tuple(self.booked), tuple(stock), kits)


def _stock(room: StoreRoom, part: str) -> PartStock:
    kept = room.part(part)
    return PartStock(part, kept.unit or "", kept.on_hand, sum(room.reserved(part).values()), kept.safety_stock)


@contextmanager
def entry_in(db: str, at: datetime | None = None, who: str | None = None) -> Iterator[Entry]:
    """An entry that is written when the block ends without an error."""
    with open_store(db).unit_of_work() as uow:
        yield Entry(uow, at, who)
        uow.commit()


def part_units(mill: Mill) -> dict[str, str]:
    """Part → the unit that it is counted in; `` where none is given."""
    return {name: part.unit or "" for name, part in mill.parts.items()}


def refusal(part: Part, key: LoomKey, asked: float, free: float, reserved: Mapping[LoomKey, float]) -> DataError:
    """Why a quantity of a part is not to be had for a loom."""
    others = ", ".join(f"{q:g} for loom {other}" for other, q in reserved.items() if other != key)
    held = [f"{others} reserved"] if others else []
    held += [f"{part.safety_stock:g} safety stock"] if part.safety_stock else []
    return DataError(
        f"part {part.part}: {asked:g} asked for loom {key}, {max(0.0, free):g} free of {part.on_hand:g} on hand"
        + (f" ({', '.join(held)})" if held else "")
        + "; take it from another kit or wait for a receipt"
    )
