"""Where a programme stands against what was first planned: the reference, what was done, what is expected, the pace."""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, fields
from datetime import date, timedelta
from math import ceil

from tracker.domain.calendars import iso_week
from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, CostTerms, Plan
from tracker.domain.progress import NOT_TO_COME, UNDER_WAY, Stage, StageChange
from tracker.domain.terms import Terms

PACE_DAYS, LEAST_DAYS = 28, 7
"""The pace is that of the last four weeks, and not told before one has passed."""


@dataclass(frozen=True, slots=True)
class WeekCount:
    """Conversions of one ISO week, and all up to its end."""

    week: str
    planned: int
    """By the reference plan."""
    done: int
    planned_total: int
    done_total: int
    expected: int = 0
    """Done, and still to come by the plan in force."""
    expected_total: int = 0


@dataclass(frozen=True, slots=True)
class Pace:
    """How fast it goes."""

    done: int
    """Looms signed off in the `days` before the moment looked at."""
    days: int
    """Four weeks, or as long as the programme has run; 0 = it has not begun."""
    to_come: int
    """Looms booked by the plan in force and not signed off."""
    finish_on: date | None
    """The day on which the last of them is done at this pace; None = never, or not to be told yet."""

    @property
    def how(self) -> str:
        """`ahead` of its beginning, too `soon` to tell, `never` (nothing was done), or `told`."""
        if self.days < LEAST_DAYS:
            return "soon" if self.days else "ahead"
        return "told" if self.done else "never"


def reference_of(plan: Plan | None, others: Mapping[LoomKey, Booking]) -> dict[LoomKey, Booking]:
    """What was first planned: the bookings of the reference plan, and for looms that it does not know (added later, or
    done before it) the booking that was published nearest to it (`others`)."""
    if plan is None:
        return {}
    known = {booking.key for booking in plan.bookings} | {item.key for item in plan.left_over}
    later = {key: booking for key, booking in others.items() if key not in known}
    return {booking.key: booking for booking in plan.bookings} | later


def done_on(history: Iterable[StageChange], terms: Terms) -> dict[LoomKey, date]:
    """Loom → the local day on which it was signed off first, unless it was taken back since; `history` oldest first."""
    found: dict[LoomKey, date] = {}
    for change in history:
        if change.stage is Stage.SCOPED:
            found.pop(change.key, None)
        if change.stage is Stage.SIGNED_OFF:
            found.setdefault(change.key, change.at.astimezone(terms.zone).date())
    return found


def still_to_come(
    plan: Plan | None, stages: Mapping[LoomKey, Stage], last: Mapping[LoomKey, Booking]
) -> tuple[Booking, ...]:
    """The bookings that are still to be done: those of the plan in force, unless signed off, put off or left out since, and
    the `last` ones of looms under way, which a plan made since they began books no more."""
    ahead = [b for b in plan.bookings if stages.get(b.key) not in NOT_TO_COME] if plan else []
    booked = {booking.key for booking in ahead}
    under_way = [b for key, b in last.items() if key not in booked and stages.get(key) in UNDER_WAY]
    return (*ahead, *under_way)


def by_week(
    reference: Iterable[Booking], done: Mapping[LoomKey, date], to_come: Iterable[Booking], as_of: date, terms: Terms
) -> tuple[WeekCount, ...]:
    """Looms planned, done and expected by ISO week. What should have been done by now is expected in this week."""
    planned = Counter(iso_week(b.end.astimezone(terms.zone).date()) for b in reference)
    finished = Counter(iso_week(day) for day in done.values())
    expected = finished + Counter(
        iso_week(max(as_of, b.end.astimezone(terms.zone).date())) for b in to_come if b.key not in done
    )
    sums, rows = [0, 0, 0], []
    for week in sorted(planned.keys() | expected.keys()):
        counts = planned[week], finished[week], expected[week]
        sums = [total + count for total, count in zip(sums, counts, strict=True)]
        rows.append(WeekCount(week, counts[0], counts[1], sums[0], sums[1], counts[2], sums[2]))
    return tuple(rows)


def pace(done: Mapping[LoomKey, date], to_come: int, began: date | None, today: date) -> Pace:
    """How many looms were signed off in the last four weeks (or since the programme began), and when the rest is done if
    it goes on like that."""
    days = min(PACE_DAYS, max(0, (today - began).days)) if began else PACE_DAYS
    lately = sum(timedelta(0) <= today - day < timedelta(days=days) for day in done.values())
    told = lately and days >= LEAST_DAYS
    finish = today + timedelta(days=ceil(to_come * days / lately)) if told else None
    return Pace(lately, days, to_come, today if not to_come and done else finish)


def expected_cost(
    to_come: Iterable[Booking],
    behind: Iterable[Booking],
    begun: Mapping[LoomKey, object],
    parts_issued: Mapping[LoomKey, float],
    labour_recorded: Mapping[LoomKey, float],
) -> CostTerms:
    """What all looms together will have cost: those `behind` (signed off, by their last booking) and those in work by the
    records as far as these tell, everything else as estimated."""  # fmt: skip
    sums = dict.fromkeys((field.name for field in fields(CostTerms) if field.name != "surviving"), 0.0)
    ahead = list(to_come)
    for booking in (*ahead, *behind):
        for term in sums:
            sums[term] += _of(booking, term, begun, parts_issued, labour_recorded)
    booked = {booking.key for booking in (*ahead, *behind)}
    sums["parts"] += sum(amount for key, amount in parts_issued.items() if key not in booked)
    return CostTerms(**sums)


def _of(
    booking: Booking, term: str, begun: Mapping[LoomKey, object], parts_issued: Mapping[LoomKey, float],
    labour_recorded: Mapping[LoomKey, float],
) -> float:  # fmt: skip
    if term == "parts" and booking.key in begun:
        return parts_issued.get(booking.key, 0.0)
    if term == "labour" and booking.key in labour_recorded:
        return labour_recorded[booking.key]
    return getattr(booking.cost, term)
