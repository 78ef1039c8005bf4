"""Net needs by week, what to order by when from whom, and the money it takes."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.clock import planning_moment
from tracker.domain.late import Late
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.needs import Cash, OrderLine, PartWeek, Quantities, StillOut, Touched
from tracker.domain.plan import Plan
from tracker.domain.scopes import LoomScope
from tracker.domain.words import natural_key
from tracker.domain.work import WorkContent, labour_cost, parts_cost
from tracker.errors import Message, message
from tracker.kits.needs import LeftOverKits, OnTheFloor, needs
from tracker.kits.orders import cash, order_lines
from tracker.kits.returns import coming_back
from tracker.mill_state.late import late_lines
from tracker.mill_state.planning import prepare
from tracker.mill_state.stockroom import Stockroom, part_units
from tracker.planning.baseline.walk import baseline as walk
from tracker.planning.model.pools import trade_rates
from tracker.scope.content import scope_looms
from tracker.services.context import Context
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.plans.planning_data import read_planning_data
from tracker.store import UnitOfWork
from tracker.words import ENGLISH

PUBLISHED = message("needs-of-published")


@dataclass(frozen=True, slots=True)
class NeedsReport:
    as_of: datetime
    zone: ZoneInfo
    currency: str
    weeks: tuple[PartWeek, ...]
    """Every part and week, also where nothing moves."""
    orders: tuple[OrderLine, ...]
    cash: Cash
    units: Mapping[str, str]
    """Part → unit, `` where it has none."""
    overdue: tuple[Late, ...]
    """Order lines past their dates; they are not ordered again."""
    still_out: tuple[StillOut, ...]
    """What looms should have given back; it is counted as there."""
    basis: Message = PUBLISHED
    """Which bookings these are the needs of."""

    @property
    def moving(self) -> tuple[PartWeek, ...]:
        """The rows in which something is needed, comes or is to be ordered."""
        return tuple(r for r in self.weeks if r.gross or r.gross_left_over or r.receipts or r.order_quantity)

    @property
    def late(self) -> tuple[OrderLine, ...]:
        return tuple(line for line in self.orders if line.late)

    def record(self) -> list[dict[str, Any]]:
        """As `--json` writes it: one entry per part and ISO week."""
        return [_week_record(row, self.units[row.part]) for row in self.weeks]

    def order_record(self) -> dict[str, Any]:
        """The order list and the money, for a program."""
        return {
            "basis": ENGLISH.say(self.basis),
            "currency": self.currency,
            "orders": [order_record(line) for line in self.orders],
            "cash": {
                "total": self.cash.total,
                "peak": {"month": peak.month, "amount": peak.total} if (peak := self.cash.peak) else None,
                "months": [
                    {"month": m.month, "proposed": m.proposed, "on_order": m.on_order} for m in self.cash.months
                ],
            },
        }

    def messages(self) -> list[Message]:
        """What a person should know beside the table."""
        found = [] if self.basis == PUBLISHED else [message("needs-of", basis=self.basis)]
        found += self.overdue_messages()
        if not self.orders:
            return [*found, message("nothing-to-order")]
        amount = sum(line.amount for line in self.orders)
        found.append(message("order-lines", many=len(self.orders), amount=amount, currency=self.currency))
        if self.late:
            looms = {touched.key for line in self.late for touched in line.touched}
            found.append(message("order-lines-late", many=len(self.late), looms=len(looms)))
        if peak := self.cash.peak:
            found.append(message("money-in-all", total=self.cash.total, month=peak.month, most=peak.total,
                                 currency=self.currency))  # fmt: skip
        return found

    def overdue_messages(self) -> list[Message]:
        """What should have come and has not."""
        lines = [message("overdue", what=late.what, follows=late.follows) for late in self.overdue]
        return lines + [
            message(
                "still-out",
                loom=out.key,
                quantity=out.quantity,
                unit=self.units[out.part] or None,
                part=out.part,
                due=out.due,
            )
            for out in self.still_out
        ]


def net_needs(
    context: Context, as_of: datetime | None = None, left_over: bool = True, left_over_on: date | None = None
) -> NeedsReport:
    """Net needs at `as_of` (default: now, or the start of a programme that lies ahead) of the published plan; where none
    is published, of the newest plan made, and without any of the bookings that taking each beam-out as it comes would
    give. The report says which.

    The looms that the plan leaves over are counted, apart, unless `left_over` is False; they need their cheapest kit on
    `left_over_on` (default: the target finish, at the latest the last day of the horizon). DataError where the data cannot
    carry a plan.
    """
    room, at, basis = needed_by(context, as_of)
    return needs_of(room, at, basis, left_over, left_over_on)


def needed_by(context: Context, as_of: datetime | None = None) -> tuple[Stockroom, datetime, Message]:
    """The stockroom with the bookings that the needs are of, looked at at a moment, and which bookings these are: see
    `net_needs`."""
    with context.reading() as uow:
        room = read_stockroom(uow, as_of, context.now())
        made = None if room.plan else _newest(uow)
    at = planning_moment(room.mill.terms, as_of, context.now())
    if room.plan:
        return room, at, PUBLISHED
    if made:
        number, plan = made
        return replace(room, plan=plan), at, message("needs-of-plan", number=str(number))
    walked = walk(prepare(read_planning_data(context), at).problem)
    return replace(room, plan=walked), at, message("needs-as-they-come")


def _newest(uow: UnitOfWork) -> tuple[int, Plan] | None:
    """Number and bookings of the newest plan made of the mill as it is."""
    number = next((entry.number for entry in uow.plan_entries() if entry.scenario is None), None)
    plan = None if number is None else uow.plan(number)
    return (number, plan) if number is not None and plan else None


def needs_of(
    room: Stockroom, at: datetime, basis: Message = PUBLISHED, left_over: bool = True, left_over_on: date | None = None
) -> NeedsReport:
    """Net needs of the plan in a stockroom."""
    plan, mill = room.plan, room.mill
    assert plan
    floor = OnTheFloor(room.issued, room.held_beside, room.coming_back, room.still_out)
    kits = LeftOverKits(left_over_kits(plan, mill) if left_over else {}, left_over_on)
    weeks = needs(plan, mill, at, floor, kits)
    orders = order_lines(weeks, mill, at, {m.order for m in room.movements if m.order})
    today = at.astimezone(mill.terms.zone).date()
    still_out = tuple(out for out in room.still_out if out.due < today)
    return NeedsReport(at, mill.terms.zone, mill.terms.currency, weeks, orders, cash(orders, mill, at), part_units(mill),
                       late_lines(mill, room.wanting, at), still_out, basis)  # fmt: skip


def orders_relied_on(context: Context, plan: Plan, mill: Mill) -> tuple[OrderLine, ...]:
    """The orders not placed yet without which bookings of a plan of this mill fall, by the day on which to place them."""
    with context.reading() as uow:
        room = read_stockroom(uow, plan.as_of)
    orders = needs_of(replace(room, mill=mill, plan=plan), plan.as_of).orders
    return tuple(
        sorted((line for line in orders if line.falls), key=lambda line: (line.order_by, natural_key(line.part)))
    )


def left_over_kits(plan: Plan, mill: Mill) -> dict[LoomKey, Quantities]:
    """The kit of every loom that the plan leaves over, of its cheapest work content by labour and parts.

    Left-over looms come one after the other, so what comes back is wanted once, for the loom that needs most of it.
    Looms still to survey have no kit yet, and without a method nothing has.
    """
    left = {item.key for item in plan.left_over} & mill.looms.keys() if mill.method.operations else set()
    scopes: Mapping[LoomKey, LoomScope] = scope_looms(mill) if left else {}
    rates = trade_rates(mill)

    def cost(content: WorkContent) -> float:
        return labour_cost(content, rates) + parts_cost(content, mill.parts)

    cheapest: dict[LoomKey, WorkContent] = {}
    for key in sorted(left, key=lambda key: key.sort_key):
        contents = [content for offered in scopes[key].contents.values() for content in offered]
        if contents:
            cheapest[key] = min(contents, key=cost)
    return _without_shared(cheapest)


def _without_shared(contents: Mapping[LoomKey, WorkContent]) -> dict[LoomKey, Quantities]:
    back = {key: coming_back(content) for key, content in contents.items()}
    most = {part: max(back, key=lambda key: back[key].get(part, 0.0)) for parts in back.values() for part in parts}
    return {
        key: {
            part: quantity if most.get(part, key) == key else quantity - back[key].get(part, 0.0)
            for part, quantity in content.parts.items()
        }
        for key, content in contents.items()
    }


def _week_record(row: PartWeek, unit: str) -> dict[str, Any]:
    return {
        "part": row.part,
        "unit": unit,
        "week": row.week,
        "gross": row.gross,
        "gross_left_over": row.gross_left_over,
        "receipts": row.receipts,
        "on_hand_end": row.on_hand_end,
        "net": row.net,
        "order_quantity": row.order_quantity,
        "due": row.due.isoformat() if row.due else None,
        "order_by": row.order_by.isoformat() if row.order_by else None,
        "late": row.late,
        "days_late": row.days_late,
        "touches": _touched_record(row.touched),
    }


def order_record(line: OrderLine) -> dict[str, Any]:
    return {
        "order": line.order,
        "supplier": line.supplier,
        "part": line.part,
        "description": line.description,
        "unit": line.unit,
        "quantity": line.quantity,
        "order_by": line.order_by.isoformat(),
        "due": line.due.isoformat(),
        "expected": line.expected.isoformat(),
        "price": line.price,
        "amount": line.amount,
        "late": line.late,
        "days_late": line.days_late,
        "touches": _touched_record(line.touched),
        "falls": [{"hall": key.hall, "loom": key.loom} for key in line.falls],
    }


def _touched_record(touched: Iterable[Touched]) -> list[dict[str, Any]]:
    return [
        {"hall": t.key.hall, "loom": t.key.loom, "needed_on": t.needed_on.isoformat(), "days": t.days} for t in touched
    ]
