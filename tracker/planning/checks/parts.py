"""Parts: what bookings take is there when they start (MODEL.md, section 6)."""

from collections import defaultdict
from collections.abc import Iterator
from datetime import date, timedelta
from itertools import groupby
from math import ceil

from tracker.domain.mill import Part, Receipt
from tracker.domain.plan import Booking
from tracker.errors import Message, message
from tracker.planning.checks.case import Case

_TOLERANCE = 1e-6


def parts_are_there(case: Case) -> Iterator[Message]:
    """For each part and each start before it can be had to order: Σ need of the bookings started ≤ stock on hand without
    safety stock and what is held for others + receipts due on an earlier day.

    A receipt is usable from the first working slot of the next working day; bookings start in working slots, so that
    means on a later local day than the one on which it is due. What is to come is reckoned with so much later as the term says.
    """
    takers, later = _takers(case), timedelta(days=case.terms.receipts_later_days)
    for part in sorted(takers):
        stock = case.mill.parts.get(part)
        usable = stock.on_hand - stock.safety_stock - case.problem.taken.get(part, 0.0) if stock else 0.0
        comes = order_comes(case, stock) if stock else None
        needed = given = 0.0
        by_day = groupby(sorted(takers[part], key=lambda taker: taker[0]), key=lambda taker: taker[0])
        for day, started in by_day:
            if comes and day > comes + later:
                break
            for _, quantity, booking in started:
                needed, given = needed + quantity, given + quantity * case.fixed(booking)
            there = usable + _received(case, part, day - later)
            if needed > max(there, given) + _TOLERANCE:
                yield message("part-short", part=part, needed=needed, day=day, usable=max(0.0, there))
                break


def _takers(case: Case) -> dict[str, list[tuple[date, float, Booking]]]:
    """Part → (local day of the start, quantity still to be taken from stock, booking)."""
    takers: dict[str, list[tuple[date, float, Booking]]] = defaultdict(list)
    for booking in case.plan.bookings:
        content = case.content(booking)
        issued = case.problem.issued.get(booking.key, {})
        for part, quantity in (content.parts if content else booking.parts).items():
            still = max(0.0, quantity - issued.get(part, 0.0))
            if still:
                takers[part].append((booking.start.astimezone(case.terms.zone).date(), still, booking))
    return takers


def _received(case: Case, part: str, day: date) -> float:
    return sum(line.quantity for due, line in receipts_of(case, part) if due < day)


def receipts_of(case: Case, part: str) -> Iterator[tuple[date, Receipt]]:
    """(day, line) of the open order lines of a part; one past its date comes as if it were ordered today."""
    for receipt in case.mill.receipts:
        if receipt.part == part:
            due = receipt.due if receipt.due >= case.today else _ordered(case, case.mill.parts[part], case.today)
            if due:
                yield due, receipt


def order_comes(case: Case, part: Part) -> date | None:
    """The day on which an order not placed yet comes, at the soonest the last one of the firm period; None = never."""
    if not case.terms.plan_with_orders:
        return None
    comes = _ordered(case, part, case.today + timedelta(days=case.terms.days_to_order))
    as_of, zone = case.problem.as_of, case.terms.zone
    firm = {hall: case.running(hall).after(as_of, case.terms.firm_h) for hall in {key.hall for key in case.mill.looms}}
    return comes and max(comes, *(until.astimezone(zone).date() for until in firm.values()))


def _ordered(case: Case, part: Part, on: date) -> date | None:
    """The working day on which an order of a day (or the next working day) comes; None where there is no ordering it."""
    lead = case.terms.lead_time_none_given_days or None if part.lead_time_days is None else part.lead_time_days
    if lead is None:
        return None
    works = case.days.on
    return works(works(on) + timedelta(days=ceil(lead)))
