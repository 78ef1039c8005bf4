"""Net needs by week, what to order by when from whom, and the money it takes."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from tracker.domain.clock import planning_moment
from tracker.domain.formats import count, day, money, number
from tracker.domain.mill import LoomKey, Mill, Receipt
from tracker.domain.needs import Cash, OrderLine, PartWeek, Quantities, StillOut, Touched
from tracker.domain.plan import Plan
from tracker.domain.scopes import LoomScope
from tracker.domain.work import WorkContent
from tracker.errors import DataError
from tracker.kits.needs import needs
from tracker.kits.orders import cash, order_lines
from tracker.kits.returns import coming_back
from tracker.planning.model.contents import labour_cost, parts_cost
from tracker.planning.model.pools import trade_rates
from tracker.scope.content import scope_looms
from tracker.services.context import Context
from tracker.services.store_room import part_units, read_store_room


@dataclass(frozen=True, slots=True)
class NeedsReport:
    as_of: datetime
    currency: str
    weeks: tuple[PartWeek, ...]
    """Every part and week, also where nothing moves."""
    orders: tuple[OrderLine, ...]
    cash: Cash
    units: Mapping[str, str]
    """Part → unit, `` where it has none."""
    overdue: tuple[Receipt, ...]
    """Order lines that should have come; they are counted as there."""
    still_out: tuple[StillOut, ...]
    """Likewise what looms should have given back."""

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
            "currency": self.currency,
            "orders": [_order_record(line) for line in self.orders],
            "cash": {
                "total": self.cash.total,
                "peak": {"month": peak.month, "amount": peak.total} if (peak := self.cash.peak) else None,
                "months": [
                    {"month": m.month, "proposed": m.proposed, "on_order": m.on_order} for m in self.cash.months
                ],
            },
        }

    def lines(self) -> list[str]:
        """What a person should know beside the table."""
        found = self._overdue_lines()
        if not self.orders:
            return [*found, "Nothing is to be ordered: stock and open orders cover every need."]
        amount = money(sum(line.amount for line in self.orders), self.currency)
        found.append(f"{count(len(self.orders), 'order line')}, {amount}.")
        if self.late:
            looms = {touched.key for line in self.late for touched in line.touched}
            found.append(
                f"{count(len(self.late), 'line is', 'lines are')} late: the order-by day is past. "
                f"That touches {count(len(looms), 'loom')}."
            )
        if peak := self.cash.peak:
            found.append(
                f"With the open orders {money(self.cash.total, self.currency)} in all, the most in {peak.month}: "
                f"{money(peak.total, self.currency)}, taken at delivery."
            )
        return found

    def _overdue_lines(self) -> list[str]:
        return [
            f"Order {line.order}: {number(line.quantity, self.units[line.part], 3)} of {line.part} were due on "
            f"{day(line.due)} and are counted as there; receive them, or correct the day."
            for line in self.overdue
        ] + [
            f"Loom {out.key} still has {number(out.quantity, self.units[out.part], 3)} of {out.part} that should have come "
            f"back on {day(out.due)}; counted as there, recover it."
            for out in self.still_out
        ]


def net_needs(
    context: Context, as_of: datetime | None = None, left_over: bool = True, left_over_on: date | None = None
) -> NeedsReport:
    """Net needs of the published plan at `as_of` (default: now, or the start of a programme that lies ahead).

    The looms that the plan leaves over are counted, apart, unless `left_over` is False; they need their cheapest kit on
    `left_over_on` (default: the target finish, at the latest the last day of the horizon). DataError where no plan is
    published.
    """
    with context.reading() as uow:
        room, used = read_store_room(uow), uow.movements()
    if room.plan is None:
        raise DataError("no plan is published, so nothing is needed yet; `beamslot plan --publish` makes one")
    at = planning_moment(room.mill.terms, as_of, context.now())
    kits = left_over_kits(room.plan, room.mill) if left_over else {}
    mill = room.with_returns(room.mill)
    weeks = needs(room.plan, mill, at, kits, room.issued, room.coming_back, left_over_on, room.held_beside)
    orders = order_lines(weeks, room.mill, at, {m.order for m in used if m.order})
    today = at.astimezone(room.mill.terms.zone).date()
    overdue = tuple(receipt for receipt in room.mill.receipts if receipt.due < today)
    still_out = tuple(out for out in room.still_out if out.due < today)
    return NeedsReport(at, room.mill.terms.currency, weeks, orders, cash(orders, room.mill, at), part_units(room.mill),
                       overdue, still_out)  # fmt: skip


def left_over_kits(plan: Plan, mill: Mill) -> dict[LoomKey, Quantities]:
    """The kit of every loom that the plan leaves over, of its cheapest work content by labour and parts.

    Left-over looms come one after the other, so what comes back is wanted once, for the loom that needs most of it.
    Looms still to survey have no kit yet.
    """
    left = {item.key for item in plan.left_over} & mill.looms.keys()
    scopes: Mapping[LoomKey, LoomScope] = scope_looms(mill) if left else {}
    rates = trade_rates(mill)

    def cost(content: WorkContent) -> float:
        return labour_cost(content, rates) + parts_cost(content, mill)

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


def _order_record(line: OrderLine) -> dict[str, Any]:
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
    }


def _touched_record(touched: Iterable[Touched]) -> list[dict[str, Any]]:
    return [
        {"hall": t.key.hall, "loom": t.key.loom, "needed_on": t.needed_on.isoformat(), "days": t.days} for t in touched
    ]
