"""Reserve parts for looms, release them, take them from one kit for another; and reserve anew for a published plan."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Plan
from tracker.domain.progress import NOT_TO_COME, UNDER_WAY, Stage, StageChange
from tracker.domain.stock import TOLERANCE, check_quantity
from tracker.domain.words import natural_key
from tracker.errors import DataError, Message, UsageError, message
from tracker.kits.reserving import reserve as reserve_all
from tracker.mill_state.ledger import InMemory
from tracker.mill_state.stockroom import Stockroom
from tracker.services.context import Context
from tracker.services.looms import LoomName, find_loom
from tracker.services.parts.stock_entry import Entry, entry_in, refusal
from tracker.services.parts.stock_report import StockReport
from tracker.services.parts.stockroom import read_stockroom
from tracker.store import UnitOfWork
from tracker.words import ENGLISH


def reserve(
    context: Context,
    loom: str,
    hall: str | None = None,
    part: str | None = None,
    quantity: float | None = None,
    use_safety_stock: bool = False,
) -> StockReport:
    """Reserve for a loom what its kit lacks (of one part or of all), or a quantity of one part more than it has.

    Refused as a whole where not all of it is free: on hand, not reserved, and (unless `use_safety_stock`) not safety
    stock.
    """
    with entry_in(context) as entry:
        key = find_loom(entry.room.mill, loom, hall)
        held = {}
        for name, asked in _lacking(entry.room, key, part, quantity).items():
            reserved = entry.room.reserved(name)
            kept = entry.room.part(name)
            free = kept.on_hand - sum(reserved.values()) - (0.0 if use_safety_stock else kept.safety_stock)
            if asked > free + TOLERANCE:
                raise refusal(kept, key, asked, free, reserved)
            held[key, name] = reserved.get(key, 0.0) + asked
        entry.hold(held, ENGLISH.say(message("held-by-hand")))
    return entry.report()


def _lacking(room: Stockroom, key: LoomKey, part: str | None, quantity: float | None) -> dict[str, float]:
    if stage := room.without_kit.get(key):
        raise DataError("kit-not-needed", loom=key, stage=stage)
    short = room.short(key)
    if part is not None:
        asked = short.get(room.part(part).part, 0.0) if quantity is None else quantity
        if not asked > 0:
            raise DataError("part-not-lacking", part=part, loom=key)
        if quantity is not None:
            check_quantity(part, quantity, room.part(part).unit)
        return {part: asked}
    if not room.booked(key):
        raise DataError("loom-without-booking", loom=key, then="reserve")
    if not short:
        raise DataError("kit-lacks-nothing", loom=key)
    return {name: short[name] for name in sorted(short, key=natural_key)}


def release(
    context: Context,
    loom: str,
    hall: str | None = None,
    part: str | None = None,
) -> StockReport:
    """Give up a loom's reservations, of one part or of all; what becomes free stays free until the next receipt or
    published plan."""
    with entry_in(context) as entry:
        key = find_loom(entry.room.mill, loom, hall)
        held = {(key, r.part): 0.0 for r in entry.room.reservations if r.key == key and part in (None, r.part)}
        if not held:
            raise DataError("nothing-reserved", loom=key, part=part or None, issued="no")
        entry.hold(held, ENGLISH.say(message("released-by-hand")))
    return entry.report()


def take(
    context: Context,
    part: str,
    giving: LoomName,
    taking: LoomName,
    quantity: float | None = None,
    why: str = "",
) -> StockReport:
    """Take a reserved part (by default what the other lacks) from one loom's kit for another's. The report's `short`
    says who lacks it now."""
    with entry_in(context) as entry:
        giver, taker, moved = _taken(entry.room, part, giving, taking, quantity)
        entry.hold(moved, why or ENGLISH.say(message("taken-for-loom", giver=giver, taker=taker)))
    return entry.report()


def what_taking_costs(
    context: Context, part: str, giving: LoomName, taking: LoomName, quantity: float | None = None
) -> Message:
    """What the giving loom lacks once the other has the part: told before it is done; nothing is written."""
    with context.reading() as uow:
        book = InMemory(read_stockroom(uow, None, context.now()))
    giver, taker, moved = _taken(book.room, part, giving, taking, quantity)
    gives = book.room.reserved(part)[giver] - moved[giver, part]
    book.hold(moved)
    kit = next((kit for kit in book.room.kits if kit.key == giver), None)
    terms, unit = book.room.mill.terms, book.room.part(part).unit
    return message(
        "taking-costs", giver=giver, taker=taker, part=part, quantity=gives, unit=unit or None,
        lacks=kit.short.get(part) if kit else None, start=kit.start.astimezone(terms.zone) if kit else None,
        expected=kit.expected.get(part) if kit else None,
    )  # fmt: skip


def _taken(
    room: Stockroom, part: str, giving: LoomName, taking: LoomName, quantity: float | None
) -> tuple[LoomKey, LoomKey, dict[tuple[LoomKey, str], float]]:
    """Giver, taker, and what both hold then."""
    giver, taker = giving.in_mill(room.mill), taking.in_mill(room.mill)
    asked = next(iter(_lacking(room, taker, part, quantity).values()))
    reserved = room.reserved(part)
    if giver == taker:
        raise UsageError("taken-from-itself", loom=giver)
    if asked > reserved.get(giver, 0.0) + TOLERANCE:
        held = reserved.get(giver, 0.0)
        raise DataError("taken-above-reserved", part=part, quantity=asked, loom=giver, held=held)
    return giver, taker, {(giver, part): reserved[giver] - asked, (taker, part): reserved.get(taker, 0.0) + asked}


def follow_stage(uow: UnitOfWork, change: StageChange) -> Mapping[str, float]:
    """Give up what is held for a loom that by its new stage gets no kit any more, or share out anew to the kit of one that
    is taken back; the caller commits. Gives part → what became free."""
    return _follow(Entry(uow), change)


def _follow(entry: Entry, change: StageChange) -> Mapping[str, float]:
    key = change.key
    booking, held = entry.room.booked(key), entry.room.held(key)
    if key in entry.room.without_kit or (change.stage is Stage.SCOPED and not booking):
        entry.hold({(key, part): 0.0 for part in held}, change.stage.value)
        entry.settle(held, change.stage.value)
        return held
    if change.stage is Stage.SCOPED and booking:
        entry.settle(booking.parts, "taken back")
    return {}


def follow_stages(uow: UnitOfWork, changes: Iterable[StageChange]) -> None:
    """As `follow_stage` for each of several; stages that leave what is held alone are passed over without a look."""
    if heard := [change for change in changes if change.stage in (*NOT_TO_COME, Stage.SCOPED)]:
        entry = Entry(uow)
        for change in heard:
            _follow(entry, change)


def follow_stock(uow: UnitOfWork, parts: Iterable[str]) -> dict[LoomKey, dict[str, float]]:
    """Share out parts whose stock or safety stock was loaded anew; the caller commits. Gives what looms gave up, since
    less is there than was held."""
    entry = Entry(uow)
    before = entry.room.reservations
    entry.settle(sorted(parts, key=natural_key), "stock loaded")
    now = {(r.key, r.part): r.quantity for r in entry.room.reservations}
    found: dict[LoomKey, dict[str, float]] = {}
    for r in before:
        if (lost := r.quantity - now.get((r.key, r.part), 0.0)) > TOLERANCE:
            found.setdefault(r.key, {})[r.part] = lost
    return found


def reserve_plan(uow: UnitOfWork, plan: Plan) -> StockReport:
    """Reserve anew for a plan that is being published, first by booking date; the caller commits.

    To be called in the unit of work that saves the plan. Reservations by hand give way; what is reserved for a loom in
    work that the plan does not book stays.
    """
    room, booked = read_stockroom(uow), {booking.key for booking in plan.bookings}
    in_work = {key for key, change in uow.stages().items() if change.stage in UNDER_WAY}
    kept = [r for r in room.reservations if r.key in in_work - booked]
    shared = reserve_all(plan, room.mill, room.movements, kept)
    uow.set_reservations(shared)
    changed = {reservation.key for reservation in {*room.reservations} ^ {*shared}}
    room = replace(room, plan=plan, reservations=shared)
    return StockReport((), (), tuple(kit for kit in room.kits if kit.key in changed))
