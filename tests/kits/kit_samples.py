"""Tiny mills and plans for the kit tests, in Europe/Berlin time, so that local days and UTC days differ."""

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta

from tracker.domain.mill import Crew, Loom, LoomKey, Mill, Part, Receipt
from tracker.domain.plan import Booking, CostTerms, Plan, PlanStatus
from tracker.domain.terms import Terms
from tracker.domain.windows import WindowKind

TERMS = Terms(time_zone="Europe/Berlin", start=date(2027, 1, 4))
AS_OF = datetime(2027, 1, 4, 5, tzinfo=UTC)
"""Mon 4 Jan 2027, 06:00 in Berlin: the first day of 2027-W01."""
HORIZON_END = datetime(2027, 3, 28, 22, tzinfo=UTC)
"""Mon 29 Mar 2027, 00:00 in Berlin: the last day of the horizon is Sun 28 Mar 2027, in 2027-W12."""


def key(loom: str) -> LoomKey:
    return LoomKey("Hall 1", loom)


def mill(
    *parts: Part, receipts: tuple[Receipt, ...] = (), looms: tuple[str, ...] = (), terms: Terms = TERMS, **more
) -> Mill:
    """Parts for which no lead time is given come on the day on which they are ordered."""
    crews = (Crew("Fitters 1", "fitter", 2, shift_start=time(6), shift_end=time(14)),)
    return Mill(
        looms={key(loom): Loom("Hall 1", loom, "AJ-190") for loom in looms},
        parts={part.part: replace(part, lead_time_days=part.lead_time_days or 0.0) for part in parts},
        receipts=receipts,
        crews=crews,
        terms=terms,
        **more,
    )


def booking(loom: str, day: date, hour: int = 7, **parts: float) -> Booking:
    """A conversion of four hours that starts at a local hour; `RAIL=1` reads as one part RAIL."""
    start = datetime(day.year, day.month, day.day, hour, tzinfo=TERMS.zone).astimezone(UTC)
    end = start + timedelta(hours=4)
    return Booking(key(loom), 1, WindowKind.REPEAT, (), start, end, None, 8, 8.0, parts, CostTerms())


def plan(*bookings: Booking) -> Plan:
    return Plan(PlanStatus.OPTIMAL, 0, 0, 0, "EUR", AS_OF, HORIZON_END, bookings)
