"""When parts come that are ordered only now, and when those come that should have come already."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, datetime, timedelta

from tracker.domain.clock import start_of_day
from tracker.domain.days import ONE_DAY, Days
from tracker.domain.mill import Mill, Part, Receipt
from tracker.domain.shifts import running_calendar
from tracker.domain.terms import Terms


def lead_time_days(part: Part, terms: Terms) -> float | None:
    """Calendar days from order to receipt: the part's own, else the term's; None = it cannot be ordered."""
    if part.lead_time_days is not None:
        return part.lead_time_days
    return float(terms.lead_time_none_given_days) or None


def as_expected(mill: Mill, as_of: datetime) -> Mill:
    """The mill with its open order lines due when they can be reckoned with: a line past its date counts like one
    ordered on the day of `as_of`, and not at all where its part cannot be ordered."""
    days = Days(mill)
    today = days.local(as_of)
    return replace(mill, receipts=tuple(_expected(mill, days, today, mill.receipts)))


def _expected(mill: Mill, days: Days, today: date, receipts: Iterable[Receipt]):
    for receipt in receipts:
        part = mill.parts.get(receipt.part)
        if receipt.due >= today or part is None:
            yield receipt
        elif (lead := lead_time_days(part, mill.terms)) is not None:
            yield replace(receipt, due=days.soonest_delivery(today, lead))


class Ordering:
    """Which day an order comes that the plan asks for: conversions that start on a later local day may rely on it."""

    def __init__(self, mill: Mill, as_of: datetime):
        self._terms, self._days = mill.terms, Days(mill)
        self._placed = self._days.local(as_of) + self._terms.days_to_order * ONE_DAY
        self._firm_until = _firm_until(mill, as_of)

    def comes(self, part: Part) -> date | None:
        """Placed after the `days to order`, and never within the firm period, whose kits must be on hand or on order.
        None where the part cannot be ordered, or the plan may not rely on orders that are not placed yet."""
        lead = lead_time_days(part, self._terms)
        if not self._terms.plan_with_orders or lead is None:
            return None
        return max(self._days.soonest_delivery(self._placed, lead), self._firm_until)


class Returning:
    """From which day on what comes back may be counted with. A plan holds a part that comes back for used up until it is in
    stock again. So a plan of any day up to the return keeps the conversions without it that start before an order of that day
    could be used, and whoever orders as if the part were there leaves such a plan short: a return counts like an order that is
    placed on its day."""

    def __init__(self, mill: Mill, first: date, last: date):
        """For returns from `first` to `last`."""
        terms = mill.terms
        self._terms, self._days = terms, Days(mill)
        reach = max(first, last) + timedelta(days=60 + terms.firm_h / 4)
        halls = {key.hall for key in mill.looms}
        self._weaving = [running_calendar(mill, hall, first - ONE_DAY, reach) for hall in halls]
        self._firm: dict[date, date] = {}

    def counts_on(self, part: Part, back: date) -> date:
        """The day on which an order placed on the day of the return would come, never within the firm period of that day: for
        conversions that start on a later local day. The return itself where the plan relies on no orders."""
        lead = lead_time_days(part, self._terms)
        if not self._terms.plan_with_orders or lead is None:
            return back
        placed = back + self._terms.days_to_order * ONE_DAY
        comes = max(self._days.soonest_delivery(placed, lead), self._firm_until(back))
        return comes + self._terms.receipts_later_days * ONE_DAY

    def _firm_until(self, day: date) -> date:
        if day not in self._firm:
            night = start_of_day(day + ONE_DAY, self._terms)
            ends = (weaving.after(night, self._terms.firm_h) for weaving in self._weaving)
            self._firm[day] = max((end.astimezone(self._terms.zone).date() for end in ends), default=day)
        return self._firm[day]


def _firm_until(mill: Mill, as_of: datetime) -> date:
    """The last local day on which a booking may be firm, in whichever hall."""
    terms = mill.terms
    today = as_of.astimezone(terms.zone).date()
    reach = today + timedelta(days=60 + terms.firm_h / 4)
    halls = {key.hall for key in mill.looms}
    ends = (running_calendar(mill, hall, today - ONE_DAY, reach).after(as_of, terms.firm_h) for hall in halls)
    return max((end.astimezone(terms.zone).date() for end in ends), default=today)
