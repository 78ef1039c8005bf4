"""The stockroom's book: receive, issue, give back, scrap, recover, adjust, count.

After what comes in or is lost, the reservations of the part are settled by booking date.
"""

from collections.abc import Mapping
from dataclasses import replace

from tracker.domain.mill import LoomKey, Receipt
from tracker.domain.stock import TOLERANCE, Movement, MovementKind, received
from tracker.domain.words import natural_key
from tracker.errors import DataError, UsageError
from tracker.mill_state.stockroom import Stockroom
from tracker.services.context import Context
from tracker.services.looms import find_loom
from tracker.services.parts.stock_entry import NO_MORE, Entry, Told, entry_in, refusal
from tracker.services.parts.stock_report import StockReport, parts_listed
from tracker.services.parts.stockroom import read_stockroom


def receive(
    context: Context,
    part: str | None = None,
    quantity: float | None = None,
    order: str | None = None,
    rest_comes: bool = True,
    told: Told = NO_MORE,
) -> StockReport:
    """Book what came in: on an order line (by default all that is open of it), or a part without one, with the reason.

    The line stays open for the rest unless `rest_comes` is False.
    """
    with entry_in(context, told.at) as entry:
        line = order_line(entry.room, order, part) if order else None
        if line:
            part, quantity = line.part, line.quantity if quantity is None else quantity
        if part is None or quantity is None:
            raise UsageError("receipt-of-what")
        if not line and not told.why.strip():
            raise UsageError("reason-needed", how="receipt", part=part)
        entry.room.part(part, told.unit)
        entry.move(MovementKind.RECEIPT, {part: quantity}, told.why, order=order)
        if line:
            rest = max(0.0, line.quantity - quantity) if rest_comes else 0.0
            entry.leave_open(line, rest, received(quantity))
        entry.settle([part], "received")
    return entry.report()


def order_line(room: Stockroom, order: str, part: str | None) -> Receipt:
    """The open order line of that number, and of that part where it is named. UsageError, DataError where there is not one."""
    lines = [r for r in room.mill.receipts if r.order == order and part in (None, r.part)]
    if len(lines) == 1:
        return lines[0]
    if lines:
        raise UsageError("order-of-several-parts", order=order, parts=[line.part for line in lines])
    known = sorted((r.order for r in room.mill.receipts), key=natural_key)
    raise DataError("order-unknown", order=order, part=part or None, open=known or None)


def issue_kit(
    context: Context, loom: str, hall: str | None = None, incomplete: bool = False, told: Told = NO_MORE
) -> StockReport:
    """Hand out a loom's whole kit as reserved; one that is short only with `incomplete`."""
    with entry_in(context, told.at) as entry:
        key = find_loom(entry.room.mill, loom, hall)
        _hand_out(entry, key, _whole_kit(entry.room, key, incomplete), told)
    return entry.report()


def issue(
    context: Context,
    loom: str,
    part: str,
    quantity: float | None = None,
    hall: str | None = None,
    told: Told = NO_MORE,
) -> StockReport:
    """Hand out one part to a loom, by default what its kit still needs. Parts reserved for other looms are not touched: take
    them first."""
    with entry_in(context, told.at) as entry:
        _hand_out(entry, find_loom(entry.room.mill, loom, hall), {part: quantity}, told)
    return entry.report()


def _hand_out(entry: Entry, key: LoomKey, wanted: Mapping[str, float | None], told: Told) -> None:
    asked = {name: _to_issue(entry.room, key, name, quantity, told.unit) for name, quantity in wanted.items()}
    own = {name: entry.room.reserved(name).get(key, 0.0) for name in asked}
    entry.hold({(key, name): max(0.0, own[name] - asked[name]) for name in asked}, "issued")
    entry.move(MovementKind.ISSUE, {name: -quantity for name, quantity in asked.items()}, told.why, key)


def _whole_kit(room: Stockroom, key: LoomKey, incomplete: bool) -> dict[str, float | None]:
    if not room.booked(key):
        raise DataError("loom-without-booking", loom=key, then="issue")
    short, held = room.short(key), room.held(key)
    if short and not incomplete:
        raise DataError("kit-incomplete", loom=key, short=parts_listed(short))
    if not held:
        raise DataError("nothing-reserved", loom=key, part=None, issued="no" if short else "yes")
    return {part: held[part] for part in sorted(held, key=natural_key)}


def _to_issue(room: Stockroom, key: LoomKey, name: str, quantity: float | None, unit: str | None) -> float:
    part, reserved = room.part(name, unit), room.reserved(name)
    asked = room.needed(name).get(key, 0.0) if quantity is None else quantity
    if not asked > 0:
        raise DataError("issue-quantity", part=name, quantity=asked, loom=key)
    free = part.on_hand - sum(reserved.values()) + reserved.get(key, 0.0)
    if asked > free + TOLERANCE:
        raise refusal(replace(part, safety_stock=0), key, asked, free, reserved)
    return asked


def give_back(
    context: Context,
    loom: str,
    part: str | None = None,
    quantity: float | None = None,
    hall: str | None = None,
    told: Told = NO_MORE,
) -> StockReport:
    """Book a return of what a loom did not use after all: its whole kit, one part of it, or a quantity of the part, at most
    what was issued to it. The kit needs it again."""
    with entry_in(context, told.at) as entry:
        key = find_loom(entry.room.mill, loom, hall)
        back = _to_give_back(entry.room, key, part, quantity, told.unit)
        entry.move(MovementKind.RETURN, back, told.why, key)
        entry.settle(back, "given back")
    return entry.report()


def _to_give_back(
    room: Stockroom, key: LoomKey, part: str | None, quantity: float | None, unit: str | None
) -> dict[str, float]:
    if part is not None and quantity is not None:
        return {room.part(part, unit).part: quantity}
    holds = room.holds(key)
    wanted = sorted(holds, key=natural_key) if part is None else [room.part(part, unit).part]
    if not any(name in holds for name in wanted):
        raise DataError("nothing-issued", loom=key, part=part or None)
    return {name: holds[name] for name in wanted}


def scrap(
    context: Context,
    loom: str,
    part: str,
    quantity: float,
    hall: str | None = None,
    told: Told = NO_MORE,
) -> StockReport:
    """Book a part of a loom's kit as scrapped: it comes back, is taken off the stock, and the kit needs it again."""
    with entry_in(context, told.at) as entry:
        key = find_loom(entry.room.mill, loom, hall)
        holds = entry.room.holds(key).get(entry.room.part(part, told.unit).part, 0.0)
        if not 0 < quantity <= holds + TOLERANCE:
            raise DataError("scrap-above-issued", part=part, quantity=quantity, loom=key, held=holds)
        entry.move(MovementKind.RETURN, {part: quantity}, told.why, key)
        entry.move(MovementKind.ADJUSTMENT, {part: -quantity}, told.why, key)
        entry.settle([part], "scrapped")
    return entry.report()


def recover(
    context: Context,
    loom: str,
    hall: str | None = None,
    part: str | None = None,
    quantity: float | None = None,
    told: Told = NO_MORE,
) -> StockReport:
    """Book back into stock, after use, what the method says comes back: all of it, or a quantity of one part.

    Parts that do not come back stay with the loom.
    """
    with entry_in(context, told.at) as entry:
        key = find_loom(entry.room.mill, loom, hall)
        back = _to_recover(entry.room, key, part, quantity)
        entry.move(MovementKind.RECOVERED, back, told.why, key)
        entry.settle(back, "recovered")
    return entry.report()


def _to_recover(room: Stockroom, key: LoomKey, part: str | None, quantity: float | None) -> dict[str, float]:
    issued = room.issued.get(key, {})
    back = room.coming_back.get(key) or {out.part: out.quantity for out in room.still_out if out.key == key}
    out = {name: min(q, issued.get(name, 0.0)) for name, q in back.items()}
    if part is None:
        found = {name: out[name] for name in sorted(out, key=natural_key) if out[name] > TOLERANCE}
        if not found:
            raise DataError("nothing-to-recover", loom=key)
        return found
    if room.part(part).part not in back:
        raise DataError("part-stays", part=part, loom=key)
    return {part: out[part] if quantity is None else quantity}


def adjust(
    context: Context,
    part: str,
    quantity: float,
    told: Told = NO_MORE,
) -> StockReport:
    """Add to the stock or (below 0) take from it, with the reason: scrapped, found, used elsewhere."""
    with entry_in(context, told.at) as entry:
        entry.room.part(part, told.unit)
        entry.move(MovementKind.ADJUSTMENT, {part: quantity}, told.why)
        entry.settle([part], told.why)
    return entry.report()


def count(
    context: Context,
    part: str,
    found: float,
    told: Told = NO_MORE,
) -> StockReport:
    """Book a count; the ledger keeps the difference, also where it is none."""
    if not found >= 0:
        raise UsageError("count-below-zero", part=part, quantity=found)
    with entry_in(context, told.at) as entry:
        kept = entry.room.part(part, told.unit)
        entry.move(MovementKind.COUNT, {part: found - kept.on_hand}, told.why)
        entry.settle([part], "counted")
    return entry.report()


def movements(context: Context, part: str | None = None) -> tuple[Movement, ...]:
    """The ledger in the order booked, of one part or of all."""
    with context.reading() as uow:
        if part is not None:
            read_stockroom(uow).part(part)
        return tuple(uow.movements(part))
