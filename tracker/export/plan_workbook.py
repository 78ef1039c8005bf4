"""The plan as a workbook: the figures and their proof, bookings, kit needs, hours, looms left over and other dates."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.calendars import iso_week
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.needs import PartWeek
from tracker.domain.plan import Booking, Plan
from tracker.domain.tables import Kind
from tracker.domain.words import natural_key
from tracker.domain.work import Choices
from tracker.export.crew_sheets import Contents, Windows, crew_sheets
from tracker.export.needs_sheets import need_sheets
from tracker.office.writing.sheets import Col, TidySheet, write_tables
from tracker.words import ENGLISH
from tracker.words.formats import count, moment

_LOOM = (Col("Loom", Kind.IDENTIFIER), Col("Hall", Kind.IDENTIFIER), Col("Machine type"))
_SLOT_H = 0.5


@dataclass(frozen=True, slots=True)
class BesideThePlan:
    """What its workbook tells beside the plan itself."""

    needs: Sequence[PartWeek] = ()
    """The net needs of its kits."""
    windows: Windows = field(default_factory=dict)
    """The chances of each loom by the forecast."""
    contents: Contents | None = None
    """The work of each loom."""
    more: Sequence[TidySheet] = ()
    """Sheets to add at the end."""


NOTHING_BESIDE = BesideThePlan()


def write_plan(path: str | Path, plan: Plan, mill: Mill, beside: BesideThePlan = NOTHING_BESIDE) -> None:
    """Write the plan workbook (.xlsx).

    Moments are the mill's local time, money is in the plan's currency, hours are person-hours unless the heading says
    otherwise.
    """
    sheets = [
        _summary(plan, mill),
        _bookings(plan, mill),
        *crew_sheets(plan, mill, beside.windows, beside.contents),
        *need_sheets(beside.needs, mill),
        _hours(plan, mill),
        _costs(plan, mill),
        _left_over(plan, mill),
        _other_dates(plan, mill),
        _prices(plan),
        *beside.more,
    ]
    write_tables(path, [sheet for sheet in sheets if sheet.rows or sheet.lines])


def _summary(plan: Plan, mill: Mill) -> TidySheet:
    zone = mill.terms.zone
    lines = [
        f"{mill.terms.programme}: plan as of {moment(plan.as_of, zone)}",
        f"Booked: {count(len(plan.bookings), 'so-many-looms')}; left over: {count(len(plan.left_over), 'so-many-looms')}. "
        f"The plan is {plan.status}.",
        f"Times are local ({mill.terms.time_zone}), money is in {plan.currency}. Forecasts are estimates, not promises.",
        *map(ENGLISH.line, plan.reasons),
    ]
    ends = [booking.end for booking in plan.bookings]
    rows: list[list[Any]] = [
        ["Status", str(plan.status), ""],
        ["Cost of the plan (objective)", plan.objective, plan.currency],
        ["No plan can cost less than (bound)", plan.bound, plan.currency],
        ["Gap between the two", plan.gap * 100, "%"],
        ["Time taken to plan", plan.seconds, "s"],
        ["Looms booked", len(plan.bookings), "looms"],
        ["of them firm", sum(booking.firm for booking in plan.bookings), "looms"],
        ["of them pilots", sum(booking.pilot for booking in plan.bookings), "looms"],
        *([["Changes of crew within a shift", plan.crew_changes, "times"]] if plan.crew_changes is not None else []),
        ["Looms left over", len(plan.left_over), "looms"],
        ["First conversion starts", _local(min((b.start for b in plan.bookings), default=None), zone), ""],
        ["Last conversion ends", _local(max(ends, default=None), zone), ""],
        ["Horizon ends", _local(plan.horizon_end, zone), ""],
        ["Target finish", mill.terms.target_finish, ""],
        ["Labour", sum(booking.labour_h for booking in plan.bookings), "person-hours"],
        *([name, sum(getattr(b.cost, field) for b in plan.bookings), plan.currency] for field, name in _TERMS.items()),
        ["Cost of the looms left over", sum(loom.cost for loom in plan.left_over), plan.currency],
    ]
    return TidySheet("Plan", [Col("What"), Col("Value", Kind.ANY, digits=2), Col("Unit")], rows, lines, frozen=0)


_TERMS = {
    "lost_production": "Lost production", "late_beam_out": "Late beam-outs", "labour": "Labour cost", "parts": "Parts",
    "saving_foregone": "Saving foregone", "moves": "Moves",
}  # fmt: skip
"""Field of the cost terms → words."""


_PAUSE = [
    Col("Pause from", Kind.MOMENT, about="The first part is done; the new warp comes in, and nobody is held."),
    Col("Pause to", Kind.MOMENT, about="The second part begins."),
]
"""Only where a booking has two parts."""


def _bookings(plan: Plan, mill: Mill) -> TidySheet:
    zone, parted = mill.terms.zone, any(booking.pause for booking in plan.bookings)
    columns = [
        *_LOOM,
        Col("Mark", about="Firm: inside the firm period, replanning leaves it alone. Pilot: the first of its type."),
        Col("Week"),
        Col("Start", Kind.MOMENT),
        Col("End", Kind.MOMENT),
        *(_PAUSE if parted else []),
        Col("Window", about="The chance that is taken: a beam change (repeat or style), a standing loom, or mid-warp."),
        Col("Window number", Kind.INTEGER),
        Col("Warp runs out about", Kind.MOMENT, about="P50: as likely earlier as later."),
        Col("Crew", about="Who does it, in order of time; their hours stand on the sheet of each crew."),
        Col("Choices"),
        Col("Working time (h)", Kind.NUMBER, digits=1, total=True, about="Working hours from start to end."),
        Col("Labour (person-hours)", Kind.NUMBER, digits=1, total=True),
        Col(f"Total cost ({plan.currency})", Kind.NUMBER, digits=0, total=True),
    ]
    ordered = sorted(plan.bookings, key=lambda booking: (booking.start, booking.key.sort_key))
    return TidySheet("Bookings", columns, [_booking(booking, mill, zone, parted) for booking in ordered])


def _booking(booking: Booking, mill: Mill, zone: ZoneInfo, parted: bool) -> list[Any]:
    start = booking.start.astimezone(zone)
    marks = [word for word, is_set in (("firm", booking.firm), ("pilot", booking.pilot)) if is_set]
    return [
        *_loom(booking.key, mill),
        ", ".join(marks),
        iso_week(start.date()),
        _local(booking.start, zone),
        _local(booking.end, zone),
        *([_local(at, zone) for at in booking.pause or (None, None)] if parted else []),
        str(booking.kind),
        booking.window,
        _local(booking.beam_out_p50, zone),
        booking.crew_names,
        choices_text(booking.choices),
        booking.slots * _SLOT_H,
        booking.labour_h,
        booking.cost.total,
    ]


def _costs(plan: Plan, mill: Mill) -> TidySheet:
    names = (*_TERMS.values(), "Total cost")
    columns = [*_LOOM, *(Col(f"{name} ({plan.currency})", Kind.NUMBER, digits=0, total=True) for name in names)]
    ordered = sorted(plan.bookings, key=lambda booking: booking.key.sort_key)
    rows = [[*_loom(b.key, mill), *(getattr(b.cost, field) for field in _TERMS), b.cost.total] for b in ordered]
    return TidySheet("Costs", columns, rows)


def _hours(plan: Plan, mill: Mill) -> TidySheet:
    """Hours by machine type, and of its first and last booked loom, between which the crews learn."""
    by_type: dict[str, list[Booking]] = defaultdict(list)
    for booking in sorted(plan.bookings, key=lambda booking: booking.start):
        by_type[_type(booking.key, mill)].append(booking)
    left: dict[str, int] = defaultdict(int)
    for loom in plan.left_over:
        left[_type(loom.key, mill)] += 1
    columns = [
        Col("Machine type"),
        Col("Looms booked", Kind.INTEGER, total=True),
        Col("Looms left over", Kind.INTEGER, total=True),
        Col("Labour (person-hours)", Kind.NUMBER, digits=1, total=True),
        Col("Labour per loom (person-hours)", Kind.NUMBER, digits=1),
        Col("Labour of the first loom (person-hours)", Kind.NUMBER, digits=1),
        Col("Labour of the last loom (person-hours)", Kind.NUMBER, digits=1),
        Col("Working time per loom (h)", Kind.NUMBER, digits=1, about="Working hours from start to end."),
    ]
    rows = [_type_row(name, by_type[name], left[name]) for name in sorted({*by_type, *left}, key=natural_key)]
    return TidySheet("Booked hours by type", columns, rows)


def _type_row(name: str, bookings: Sequence[Booking], left: int) -> list[Any]:
    labour_h = sum(booking.labour_h for booking in bookings)
    count = len(bookings)
    per_loom = [labour_h / count, bookings[0].labour_h, bookings[-1].labour_h] if count else [None] * 3
    slots_h = sum(booking.slots for booking in bookings) * _SLOT_H
    return [name, count, left, labour_h, *per_loom, slots_h / count if count else None]


def _left_over(plan: Plan, mill: Mill) -> TidySheet:
    columns = [
        *_LOOM,
        Col("Why it is left over"),
        Col(f"Cost of leaving it over ({plan.currency})", Kind.NUMBER, digits=0),
    ]
    ordered = sorted(plan.left_over, key=lambda loom: loom.key.sort_key)
    rows = [[*_loom(loom.key, mill), ENGLISH.line(loom.why), loom.cost] for loom in ordered]
    lines = [] if ordered else ["Looms left over", "None: every loom that can be planned is booked."]
    return TidySheet("Left over", columns, rows, lines)


def _other_dates(plan: Plan, mill: Mill) -> TidySheet:
    zone = mill.terms.zone
    columns = [
        *_LOOM,
        Col("Other start", Kind.MOMENT),
        Col("Other end", Kind.MOMENT),
        Col("Window"),
        Col("Choices"),
        Col(f"Dearer than the booking by ({plan.currency})", Kind.NUMBER, digits=0),
    ]
    ordered = sorted(plan.other_dates, key=lambda other: (other.key.sort_key, other.extra_cost, other.start))
    rows = [
        [
            *_loom(o.key, mill),
            _local(o.start, zone),
            _local(o.end, zone),
            str(o.kind),
            choices_text(o.choices),
            o.extra_cost,
        ]
        for o in ordered
    ]
    return TidySheet("Other dates", columns, rows)


def _prices(plan: Plan) -> TidySheet:
    columns = [
        Col("What is scarce"),
        Col("Week"),
        Col(
            f"One more would save ({plan.currency})", Kind.NUMBER, digits=2,
            about="What one more unit in that week would save, from the prices of the relaxed plan: a guide, not a quotation.",
        ),
    ]  # fmt: skip
    rows = [[ENGLISH.say(price.what), price.week, price.price] for price in plan.prices]
    rows.sort(key=lambda row: (natural_key(row[0]), row[1]))
    return TidySheet("Prices of scarcity", columns, rows)


def choices_text(choices: Choices) -> str:
    """`rail: new rail; creel: kept`."""
    return "; ".join(f"{choice}: {alternative}" for choice, alternative in choices)


def _loom(key: LoomKey, mill: Mill) -> list[Any]:
    return [key.loom, key.hall, _type(key, mill)]


def _type(key: LoomKey, mill: Mill) -> str:
    loom = mill.looms.get(key)
    return loom.machine_type if loom else ""


def _local(at: datetime | None, zone: ZoneInfo) -> datetime | None:
    """The mill's local time without its offset, as a workbook cell holds it."""
    return at.astimezone(zone).replace(tzinfo=None) if at else None
