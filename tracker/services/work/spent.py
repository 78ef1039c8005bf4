"""What the programme has cost so far: parts issued, hours recorded."""

from collections.abc import Iterable
from datetime import timedelta

from tracker.domain.mill import Crew, Mill
from tracker.domain.progress import Conversion
from tracker.domain.shifts import crew_calendar
from tracker.domain.stock import Movement
from tracker.domain.words import fold


def parts_issued_cost(movements: Iterable[Movement], mill: Mill) -> float:
    """Parts issued less returned and recovered, those scrapped for a loom with them, at the list price; currency."""
    return sum(-m.quantity * mill.parts[m.part].price for m in movements if m.key and m.part in mill.parts)


def labour_recorded(conversions: Iterable[Conversion], mill: Mill) -> tuple[float, float]:
    """Person-hours of the recorded conversions and what they cost: elapsed time × heads of the crew that did it."""
    hours = cost = 0.0
    for done in conversions:
        crew = _row_of(done, mill)
        person_h = elapsed_min(done) / 60 * (crew.heads if crew else 1)
        hours += person_h
        cost += person_h * (crew.rate_per_head_h if crew else 0.0)
    return hours, cost


def elapsed_min(done: Conversion) -> float:
    """Minutes on the loom as recorded, 0 where nobody took them."""
    return done.total_min or sum(done.operation_minutes.values())


def _row_of(done: Conversion, mill: Mill) -> Crew | None:
    """The row of the crew by which it worked when the conversion began: one of the lead trade, valid on that day, in that
    shift; where none is all of that, the one that comes nearest."""
    lead, on = fold(mill.terms.lead_trade), done.started_at.astimezone(mill.terms.zone).date()

    def fits(crew: Crew) -> tuple[bool, ...]:
        valid = (crew.from_on or on) <= on <= (crew.to_on or on)
        calendar = crew_calendar(mill, crew, done.key.hall, on, on)
        at_work = calendar.hours_between(done.started_at, done.started_at + timedelta(minutes=1)) > 0
        return crew.heads > 0, fold(crew.trade) == lead, at_work, valid

    return max((crew for crew in mill.crews if crew.crew == done.crew), key=fits, default=None)
