"""Orders that were placed: order lines become receipts that are expected; their day and quantity change until they have come."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from tracker.domain.clock import within_reach
from tracker.domain.mill import Receipt
from tracker.domain.needs import KitState
from tracker.domain.stock import TOLERANCE, check_quantity
from tracker.errors import DataError, Message, UsageError, message
from tracker.services.context import Context
from tracker.services.parts.stock import order_line
from tracker.services.parts.stock_entry import Entry, entry_in
from tracker.words import ENGLISH


@dataclass(frozen=True, slots=True)
class Ordered:
    """A line of an order that was placed."""

    order: str
    """Its number: order and line, `4500123-10`; each line has one of its own."""
    part: str
    quantity: float
    due: date
    """The day on which the supplier says it comes."""
    supplier: str | None = None
    """None = the part's own."""


@dataclass(frozen=True, slots=True)
class OrderReport:
    """What became of some order lines."""

    lines: tuple[Receipt, ...]
    """As they stand open now."""
    closed: tuple[Receipt, ...]
    """Of which nothing more is expected, with what was open."""
    kits: tuple[KitState, ...]
    """Those whose state this changed, as they stand now."""
    units: dict[str, str]

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        return {
            "lines": [_line_record(line) for line in self.lines],
            "closed": [_line_record(line) for line in self.closed],
            "kits": [
                {"hall": k.key.hall, "loom": k.key.loom, "state": k.state, "short": dict(k.short)} for k in self.kits
            ],
        }

    def messages(self) -> list[Message]:
        """What a person should know: the lines, and the kits that wait otherwise now."""
        said = [
            message("order-expected", order=line.order, quantity=line.quantity, unit=self.units[line.part] or None,
                    part=line.part, due=line.due)
            for line in self.lines
        ]  # fmt: skip
        said += [message("order-closed", order=line.order, part=line.part) for line in self.closed]
        return said + [message("kit-is-now", loom=kit.key, state=kit.state) for kit in self.kits]


def line_numbers(order: str, lines: int) -> list[str]:
    """`4500123` for one line; `4500123-10`, `4500123-20`, … for several."""
    return [order] if lines == 1 else [f"{order}-{10 * i}" for i in range(1, lines + 1)]


def place(context: Context, lines: Sequence[Ordered]) -> OrderReport:
    """Enter order lines that were placed as receipts to expect, all of them or none. DataError or UsageError for a number
    that is taken, an unknown part, a quantity that the unit does not have, a day that is past; its parameter `field` says of which
    line (`line_field`)."""
    with entry_in(context) as entry:
        before = entry.room.kits
        if not lines:
            raise UsageError("order-of-nothing")
        placed = [_named(entry, line, at) for at, line in enumerate(lines)]
    return _report(entry, before, placed)


def line_field(at: int) -> str:
    """Of the line at that place, from 0."""
    return f"line {at}"


def _named(entry: Entry, asked: Ordered, at: int) -> Receipt:
    try:
        return _placed(entry, asked)
    except (DataError, UsageError) as refusal:
        params = {**refusal.message.params, "field": line_field(at)}
        raise type(refusal)(refusal.message.code, **params) from refusal


def _placed(entry: Entry, asked: Ordered) -> Receipt:
    room, order = entry.room, asked.order.strip()
    part = room.part(asked.part)
    if not order:
        raise UsageError("order-number-needed", part=asked.part)
    taken = {r.order for r in room.mill.receipts} | {m.order for m in room.movements}
    if order in taken:
        raise DataError("order-number-taken", order=order)
    _check_open(asked.part, asked.quantity, part.unit)
    _check_due(entry, order, asked.due)
    line = Receipt(order, asked.part, asked.quantity, asked.due, asked.supplier or part.supplier)
    entry.order(line, ENGLISH.say(message("line-ordered")))
    return line


def expect(
    context: Context, order: str, part: str | None = None, due: date | None = None, quantity: float | None = None,
    why: str = "",
) -> OrderReport:  # fmt: skip
    """Set anew when an open order line comes, or how much of it still does; 0 = nothing more."""
    if due is None and quantity is None:
        raise UsageError("expect-what")
    with entry_in(context) as entry:
        before, line = entry.room.kits, order_line(entry.room, order, part)
        said = why.strip() or ENGLISH.say(message("line-expected-anew"))
        if due is not None:
            _check_due(entry, order, due)
            line = entry.expect(line, due, said)
        if quantity:
            _check_open(line.part, quantity, entry.room.part(line.part).unit)
        if quantity is not None:
            entry.leave_open(line, quantity, said)
    return _report(entry, before, [line])


def _check_open(part: str, quantity: float, unit: str | None) -> None:
    if not quantity > TOLERANCE:
        raise UsageError("order-quantity", part=part, quantity=quantity)
    check_quantity(part, quantity, unit)


def _check_due(entry: Entry, order: str, due: date) -> None:
    today = entry.entered_at.astimezone(entry.room.mill.terms.zone).date()
    if due < today:
        raise UsageError("order-due-past", order=order, due=due, today=today)
    within_reach(due, due.isoformat())


def _report(entry: Entry, before: Sequence[KitState], touched: Sequence[Receipt]) -> OrderReport:
    room, was = entry.room, {kit.key: kit.state for kit in before}
    lines = {(line.order, line.part): line for line in room.mill.receipts}
    here = [(line, lines.get((line.order, line.part))) for line in touched]
    return OrderReport(
        tuple(now for _, now in here if now),
        tuple(line for line, now in here if not now),
        tuple(kit for kit in room.kits if kit.state != was.get(kit.key)),
        {line.part: room.part(line.part).unit or "" for line in touched},
    )


def _line_record(line: Receipt) -> dict[str, Any]:
    return {"order": line.order, "part": line.part, "quantity": line.quantity, "due": line.due.isoformat(),
            "supplier": line.supplier}  # fmt: skip
