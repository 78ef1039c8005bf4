"""Order proposals per supplier, and the money that they and the open orders take."""

from collections import defaultdict
from collections.abc import Collection, Iterable
from datetime import date, datetime
from itertools import chain, count

from tracker.domain.days import Days
from tracker.domain.mill import Mill
from tracker.domain.needs import Cash, MonthCash, OrderLine, PartWeek
from tracker.domain.ordering import lead_time_days
from tracker.domain.words import natural_key


def order_lines(
    rows: Iterable[PartWeek], mill: Mill, as_of: datetime, taken: Collection[str] = ()
) -> tuple[OrderLine, ...]:
    """The order proposals of the net needs by supplier, then order-by day, then part.

    `taken` are order numbers used before, beside those of the open order lines.
    """
    days, numbers = Days(mill), _Numbers({*taken, *(receipt.order for receipt in mill.receipts)})
    lines = [_line(row, mill, days, days.local(as_of), numbers) for row in rows if row.order_by and row.due]
    return tuple(sorted(lines, key=_by_supplier))


def _by_supplier(line: OrderLine) -> tuple:
    return not line.supplier, natural_key(line.supplier), line.order_by, natural_key(line.part)


class _Numbers:
    def __init__(self, taken: Collection[str]):
        self._taken = taken

    def of(self, row: PartWeek) -> str:
        plain = f"{row.week.replace('-', '')}-{row.part}"
        return next(name for name in chain([plain], (f"{plain}-{i}" for i in count(2))) if name not in self._taken)


def _line(row: PartWeek, mill: Mill, days: Days, today: date, numbers: _Numbers) -> OrderLine:
    part = mill.parts[row.part]
    assert row.order_by and row.due
    return OrderLine(
        order=numbers.of(row),
        supplier=part.supplier or "",
        part=part.part,
        description=part.description or "",
        unit=part.unit or "",
        quantity=row.order_quantity,
        order_by=row.order_by,
        due=max(row.due, today),
        expected=days.soonest_delivery(today, lead_time_days(part, mill.terms) or 0) if row.late else row.due,
        price=part.price,
        late=row.late,
        days_late=row.days_late,
        touched=row.touched,
        falls=row.falls,
    )


def cash(lines: Iterable[OrderLine], mill: Mill, as_of: datetime) -> Cash:
    """Money by month of delivery; overdue order lines count in the month of `as_of`."""
    today = Days(mill).local(as_of)
    proposed: dict[int, float] = defaultdict(float)
    on_order: dict[int, float] = defaultdict(float)
    for line in lines:
        proposed[_number(line.expected)] += line.amount
    for receipt in mill.receipts:
        on_order[_number(max(receipt.due, today))] += receipt.quantity * mill.parts[receipt.part].price
    months = [month for month in (*proposed, *on_order) if proposed[month] or on_order[month]]
    return Cash(
        tuple(
            MonthCash(f"{month // 12}-{month % 12 + 1:02d}", proposed[month], on_order[month])
            for month in range(min(months), max(months) + 1)
        )
        if months
        else ()
    )


def _number(day: date) -> int:
    """Months since year 0."""
    return day.year * 12 + day.month - 1
