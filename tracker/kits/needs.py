"""Net needs by part and ISO week, with order proposals and their order-by days."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime, timedelta
from functools import cache
from itertools import groupby

from tracker.domain.calendars import iso_week
from tracker.domain.days import ONE_DAY, Days
from tracker.domain.mill import Mill, Part
from tracker.domain.needs import LoomQuantities, PartWeek, StillOut, Touched
from tracker.domain.ordering import Returning, lead_time_days
from tracker.domain.plan import Plan
from tracker.domain.stock import TOLERANCE
from tracker.domain.words import natural_key
from tracker.errors import DataError
from tracker.kits.flows import Flow
from tracker.kits.netting import NetPeriod, net_periods
from tracker.kits.relying import with_falls
from tracker.kits.state import in_booking_order, missing


@dataclass(frozen=True, slots=True)
class OnTheFloor:
    """Parts that are with looms, promised to them or still to come from them."""

    issued: LoomQuantities = field(default_factory=dict)
    """No longer needed."""
    held: LoomQuantities = field(default_factory=dict)
    """For looms that the plan does not book (they are in work): needed now."""
    coming_back: LoomQuantities = field(default_factory=dict)
    """Of a booked kit, back in stock when the conversion ends."""
    still_out: Sequence[StillOut] = ()
    """What other looms have yet to give back; what of it should be there is counted as there."""


@dataclass(frozen=True, slots=True)
class LeftOverKits:
    """The kits of the looms that the plan leaves over."""

    parts: LoomQuantities = field(default_factory=dict)
    day: date | None = None
    """When they are needed; None = at the target finish, at the latest the last day of the plan's horizon."""


NOTHING_OUT, NONE_LEFT_OVER = OnTheFloor(), LeftOverKits()


def needs(
    plan: Plan, mill: Mill, as_of: datetime, floor: OnTheFloor = NOTHING_OUT, left_over: LeftOverKits = NONE_LEFT_OVER
) -> tuple[PartWeek, ...]:
    """Net needs of every part of the mill, week by week from `as_of` to the last need or receipt.

    What should have been needed before `as_of` is needed now. What should have come is not ordered again: it counts like an
    order placed now. Nor is what an open order line brings as soon as an order placed now would, though it comes after its
    need. What comes back from a conversion counts like an order placed on the day of its end (`Returning`), so that every
    plan made until then finds what it needs. A part that cannot be ordered has its net, and no order.

    Raises `DataError` where a kit holds a part that the mill does not know.
    """
    days = Days(mill)
    today = days.local(as_of)
    flows = _receipts(mill, floor.still_out, today)
    _add_bookings(flows, plan, days, today, floor)
    _add_returns(flows, plan, mill, floor, today)
    _add_kits(flows, floor.held, today)
    _add_kits(flows, left_over.parts, max(today, left_over.day or _later(plan, mill, days)), left_over=True)
    _refuse_unknown(flows, mill)
    weeks = _weeks(today, max((flow.day for part in flows.values() for flow in part), default=today))
    rows = []
    for part in sorted(mill.parts.values(), key=lambda part: natural_key(part.part)):
        lead = lead_time_days(part, mill.terms)
        rows += _part_weeks(part, lead, flows.get(part.part, []), weeks, days, today)
    return tuple(rows)


def _receipts(mill: Mill, still_out: Iterable[StillOut], today: date) -> dict[str, list[Flow]]:
    flows: dict[str, list[Flow]] = defaultdict(list)
    for receipt in mill.receipts:
        flow = _coming(receipt.due, receipt.quantity, today)
        flows[receipt.part].append(flow._replace(not_come=flow.overdue, line=not flow.overdue))
    for out in still_out:
        flows[out.part].append(_coming(out.due, out.quantity, today))
    return flows


def _coming(due: date, quantity: float, today: date) -> Flow:
    return Flow(max(due, today), quantity, overdue=due < today)


def _add_bookings(
    flows: dict[str, list[Flow]],
    plan: Plan,
    days: Days,
    today: date,
    floor: OnTheFloor,
) -> None:
    for booking in in_booking_order(plan):
        day = max(today, days.local(booking.start))
        for part, quantity in missing(booking.parts, {}, floor.issued.get(booking.key, {})).items():
            flows[part].append(Flow(day, -quantity, booking.key))


def _add_returns(flows: dict[str, list[Flow]], plan: Plan, mill: Mill, floor: OnTheFloor, today: date) -> None:
    """What comes back from a booked conversion is there for a later booking once every plan counts with it, and for what is
    needed after the last booking as soon as it is back."""
    if not floor.coming_back:
        return
    zone = mill.terms.zone
    ends = {
        booking.key: booking.end.astimezone(zone).date()
        for booking in plan.bookings
        if booking.key in floor.coming_back
    }
    last = {part: max((flow.day for flow in found if flow.key), default=today) for part, found in flows.items()}
    returning = Returning(mill, today, max([today, *ends.values()]))
    for key, end in ends.items():
        for name, quantity in floor.coming_back[key].items():
            flow, part = _coming(end, quantity, today), mill.parts.get(name)
            counts = min(returning.counts_on(part, flow.day), last.get(name, today)) if part else flow.day
            flows[name].append(flow._replace(counts=counts) if counts > flow.day else flow)


def _add_kits(flows: dict[str, list[Flow]], kits: LoomQuantities, day: date, left_over: bool = False) -> None:
    for key in sorted(kits, key=lambda key: key.sort_key):
        for part, quantity in kits[key].items():
            if quantity > TOLERANCE:
                flows[part].append(Flow(day, -quantity, key, left_over))


def _later(plan: Plan, mill: Mill, days: Days) -> date:
    """The day on which left-over looms are taken to need their kits."""
    last = days.local(plan.horizon_end) - ONE_DAY
    return min(last, mill.terms.target_finish or last)


def _refuse_unknown(flows: dict[str, list[Flow]], mill: Mill) -> None:
    for part in flows.keys() - mill.parts.keys():
        key = next((flow.key for flow in flows[part] if flow.key), None)
        raise DataError("part-unlisted", part=part, where="kit" if key else "order", loom=key)


def _weeks(first: date, last: date) -> list[date]:
    """The Mondays of the ISO weeks from one day to another."""
    monday = _monday(first)
    return [monday + timedelta(weeks=i) for i in range((last - monday).days // 7 + 1)]


def _part_weeks(
    part: Part, lead: float | None, flows: list[Flow], weeks: list[date], days: Days, today: date
) -> list[PartWeek]:
    soonest = None if lead is None else days.soonest_delivery(today, lead)
    by_week = _by_week(flows)
    counted = [flow._replace(day=flow.counts) if flow.counts else flow for flow in flows]
    relied = _by_week(counted) if any(flow.counts for flow in flows) else by_week
    ordered = _by_week(_no_later(counted, soonest, today)) if soonest and any(flow.line for flow in flows) else relied
    periods, judged, relied = ([of.get(monday, []) for monday in weeks] for of in (by_week, ordered, relied))
    net = net_periods(
        part.on_hand,
        ([flow.quantity for flow in period] for period in judged),
        part.safety_stock,
        part.lot_size,
        part.minimum_order,
        lead is not None,
    )
    rows, to_come = [], 0.0
    for monday, period, seen, row in zip(weeks, periods, judged, net, strict=True):
        receipts = sum(flow.quantity for flow in period if flow.quantity > 0)
        to_come += row.receipts - receipts
        week = _row(part, monday, period, replace(row, receipts=receipts, on_hand_end=row.on_hand_end - to_come))
        if row.first_short is not None and lead is not None:
            needed_on = seen[row.first_short].day if row.gross else max(today, monday)
            week = _with_order(week, lead, needed_on, days, today)
        rows.append(week)
    if soonest is None:
        return rows
    return with_falls(_with_touched(rows, part, relied, days, soonest), part, relied, soonest)


def _no_later(flows: Iterable[Flow], soonest: date, today: date) -> list[Flow]:
    """The flows as they decide what to order: an order line that an order placed now would not beat counts as there."""
    return [flow._replace(day=today, overdue=True) if flow.line and flow.day <= soonest else flow for flow in flows]


def _by_week(flows: list[Flow]) -> dict[date, list[Flow]]:
    """Monday → the week's flows in order of days, receipts (unless overdue) after the needs of their day."""
    ordered = sorted(flows, key=lambda flow: (flow.day, flow.quantity > 0 and not flow.overdue))
    return {monday: list(group) for monday, group in groupby(ordered, lambda flow: _monday(flow.day))}


@cache
def _monday(day: date) -> date:
    return day - timedelta(days=day.weekday())


def _row(part: Part, monday: date, period: list[Flow], row: NetPeriod) -> PartWeek:
    left_over = -sum(flow.quantity for flow in period if flow.left_over)
    return PartWeek(
        part.part,
        iso_week(monday),
        gross=row.gross - left_over,
        gross_left_over=left_over,
        receipts=row.receipts,
        on_hand_end=row.on_hand_end,
        net=row.net,
        order_quantity=row.order_quantity,
    )


def _with_order(week: PartWeek, lead: float, needed_on: date, days: Days, today: date) -> PartWeek:
    due = days.due_for(needed_on)
    order_by = days.order_by(due, lead)
    return replace(week, due=due, order_by=order_by, late=order_by < today, days_late=max(0, (today - order_by).days))


def _with_touched(
    rows: list[PartWeek], part: Part, periods: list[list[Flow]], days: Days, delivery: date
) -> list[PartWeek]:
    """The rows with the looms that a late order, or a receipt past its date, cannot reach.

    A loom is touched where stock and receipts alone do not carry the needs up to its own and it starts before an order
    of today could be used (it comes on `delivery`). It stands with the last late order before it, whose lot was to cover
    it.
    """
    soonest = days.usable_on(delivery)
    covered, last_late, touched = part.on_hand - part.safety_stock, 0, defaultdict(list)
    for i, period in enumerate(periods):
        last_late = i if rows[i].late else last_late
        for flow in period:
            covered += 0 if flow.not_come else flow.quantity
            if flow.key and covered < -TOLERANCE and flow.day < soonest:
                touched[last_late].append(Touched(flow.key, flow.day, (soonest - flow.day).days))
    return [replace(row, touched=tuple(touched[i])) if i in touched else row for i, row in enumerate(rows)]
