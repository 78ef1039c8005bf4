"""When parts come that are ordered only now, and when those come that should have come already."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, datetime, timedelta

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


def _firm_until(mill: Mill, as_of: datetime) -> date:
    """The last local day on which a booking may be firm, in whichever hall."""
    terms = mill.terms
    today = as_of.astimezone(terms.zone).date()
    reach = today + timedelta(days=60 + terms.firm_h / 4)
    halls = {key.hall for key in mill.looms}
    ends = (running_calendar(mill, hall, today - ONE_DAY, reach).after(as_of, terms.firm_h) for hall in halls)
    return max((end.astimezone(terms.zone).date() for end in ends), default=today)
