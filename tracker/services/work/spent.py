"""What the programme has cost so far: parts issued, hours recorded."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from tracker.domain.mill import Crew, LoomKey, Mill
from tracker.domain.plan import Booking
from tracker.domain.progress import Conversion
from tracker.domain.shifts import crew_calendar
from tracker.domain.stock import Movement
from tracker.domain.words import fold


@dataclass(frozen=True, slots=True)
class Labour:
    """What a recorded conversion took."""

    key: LoomKey
    ended_at: datetime
    """Its start where no end was recorded."""
    person_h: float
    """Elapsed time × heads of the crew that did it."""
    cost: float


def parts_issued(movements: Iterable[Movement], mill: Mill) -> dict[LoomKey, float]:
    """Loom → parts issued less returned and recovered, those scrapped for it with them, at the list price; currency."""
    found: dict[LoomKey, float] = {}
    for m in movements:
        if m.key and m.part in mill.parts:
            found[m.key] = found.get(m.key, 0.0) - m.quantity * mill.parts[m.part].price
    return found


def labour_recorded(conversions: Iterable[Conversion], mill: Mill) -> list[Labour]:
    """The recorded conversions with their person-hours and what these cost."""
    return [_labour(done, crew_row(mill, done.crew, done.key.hall, done.started_at)) for done in conversions]


def _labour(done: Conversion, crew: Crew | None) -> Labour:
    person_h = elapsed_min(done) / 60 * (crew.heads if crew else 1)
    return Labour(
        done.key, done.ended_at or done.started_at, person_h, person_h * (crew.rate_per_head_h if crew else 0.0)
    )


@dataclass(frozen=True, slots=True)
class MonthMoney:
    """Money of one month, currency: parts and labour."""

    month: str
    """`2027-01`."""
    planned: float
    """Labour and parts of the reference plan, in the month in which each booking ends."""
    spent: float
    """Parts issued and labour recorded."""
    committed: float
    """Order lines still open, in the month in which they are due."""


def by_month(
    mill: Mill, planned: Iterable[Booking], movements: Iterable[Movement], labour: Iterable[Labour]
) -> tuple[MonthMoney, ...]:
    """What was planned, what is spent and what is ordered, month by month."""
    sums: dict[str, list[float]] = {}

    def add(at: date, column: int, amount: float) -> None:
        sums.setdefault(f"{at:%Y-%m}", [0.0, 0.0, 0.0])[column] += amount

    zone = mill.terms.zone
    for booking in planned:
        add(booking.end.astimezone(zone).date(), 0, booking.cost.labour + booking.cost.parts)
    for m in movements:
        if m.key and m.part in mill.parts:
            add(m.at.astimezone(zone).date(), 1, -m.quantity * mill.parts[m.part].price)
    for done in labour:
        add(done.ended_at.astimezone(zone).date(), 1, done.cost)
    for line in mill.receipts:
        if line.part in mill.parts:
            add(line.due, 2, line.quantity * mill.parts[line.part].price)
    return tuple(MonthMoney(month, *amounts) for month, amounts in sorted(sums.items()))


def elapsed_min(done: Conversion) -> float:
    """Minutes on the loom as recorded, 0 where nobody took them."""
    return done.total_min or sum(done.operation_minutes.values())


def crew_row(mill: Mill, name: str, hall: str, at: datetime) -> Crew | None:
    """The row of a crew by which it worked in a hall at a moment: one of the lead trade, valid on that day, in that
    shift; where none is all of that, the one that comes nearest."""
    lead, on = fold(mill.terms.lead_trade), at.astimezone(mill.terms.zone).date()

    def fits(crew: Crew) -> tuple[bool, ...]:
        valid = (crew.from_on or on) <= on <= (crew.to_on or on)
        calendar = crew_calendar(mill, crew, hall, on, on)
        at_work = calendar.hours_between(at, at + timedelta(minutes=1)) > 0
        return crew.heads > 0, fold(crew.trade) == lead, at_work, valid

    return max((crew for crew in mill.crews if crew.crew == name), key=fits, default=None)
