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
from tracker.export.crew_sheets import Contents, Windows, crew_sheets, marks_of
from tracker.export.needs_sheets import need_sheets
from tracker.export.wording import Wording
from tracker.office.writing.sheets import Col, TidySheet, write_tables

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


def write_plan(
    path: str | Path, plan: Plan, mill: Mill, beside: BesideThePlan = NOTHING_BESIDE, language: str = "en"
) -> None:
    """Write the plan workbook (.xlsx).

    Moments are the mill's local time, money is in the plan's currency, hours are person-hours unless the heading says
    otherwise.
    """
    write = Wording(language, mill.terms.zone)
    sheets = [
        _summary(plan, mill, write),
        _bookings(plan, mill, write),
        *crew_sheets(plan, mill, beside.windows, beside.contents, write),
        *need_sheets(beside.needs, mill, write),
        _hours(plan, mill, write),
        _costs(plan, mill, write),
        _left_over(plan, mill, write),
        _other_dates(plan, mill, write),
        _prices(plan, write),
        *beside.more,
    ]
    write_tables(path, [sheet for sheet in sheets if sheet.rows or sheet.lines])


def _summary(plan: Plan, mill: Mill, write: Wording) -> TidySheet:
    say, zone, status = write.say, mill.terms.zone, write.speaker.word(plan.status)
    booked, left_over = (write.count(len(looms), "so-many-looms") for looms in (plan.bookings, plan.left_over))
    lines = [
        say("book-plan-of", programme=mill.terms.programme, at=plan.as_of),
        say("book-plan-booked", booked=booked, left_over=left_over, status=status),
        say("book-plan-times", zone=mill.terms.time_zone, currency=plan.currency),
        *map(write.line, plan.reasons),
    ]
    ends = [booking.end for booking in plan.bookings]
    looms, hours = say("book-unit-looms"), say("book-unit-person-hours")
    changes = [[say("book-crew-changes"), plan.crew_changes, say("book-unit-times")]]
    rows: list[list[Any]] = [
        [say("book-status"), status, ""],
        [say("book-objective"), plan.objective, plan.currency],
        [say("book-bound"), plan.bound, plan.currency],
        [say("book-gap"), plan.gap * 100, "%"],
        [say("book-seconds"), plan.seconds, "s"],
        [say("col-looms-booked"), len(plan.bookings), looms],
        [say("book-of-them-firm"), sum(booking.firm for booking in plan.bookings), looms],
        [say("book-of-them-pilots"), sum(booking.pilot for booking in plan.bookings), looms],
        *(changes if plan.crew_changes is not None else []),
        [say("col-looms-left-over"), len(plan.left_over), looms],
        [say("book-first-start"), _local(min((b.start for b in plan.bookings), default=None), zone), ""],
        [say("book-last-end"), _local(max(ends, default=None), zone), ""],
        [say("book-horizon-ends"), _local(plan.horizon_end, zone), ""],
        [say("book-target-finish"), mill.terms.target_finish, ""],
        [say("book-labour"), sum(booking.labour_h for booking in plan.bookings), hours],
        *([say(code), sum(getattr(b.cost, field) for b in plan.bookings), plan.currency] for field, code in COST_TERMS.items()),
        [say("book-left-over-cost"), sum(loom.cost for loom in plan.left_over), plan.currency],
    ]  # fmt: skip
    columns = [write.col("col-what"), write.col("heading-value", Kind.ANY, digits=2), write.col("heading-unit")]
    return write.sheet("book-plan", columns, rows, lines, frozen=0)


COST_TERMS = {
    "lost_production": "col-lost-production", "late_beam_out": "col-late-beam-outs", "labour": "col-labour-cost",
    "parts": "own-sheet-parts", "saving_foregone": "col-saving-foregone", "moves": "col-moves",
    "surviving": "col-surviving",
}  # fmt: skip
"""Field of the cost terms → code of its words."""


def _pause(write: Wording) -> list[Col]:
    """Only where a booking has two parts."""
    return [
        write.col("col-pause-from", Kind.MOMENT, about="hint-pause-from"),
        write.col("col-pause-to", Kind.MOMENT, about="hint-pause-to"),
    ]


def _bookings(plan: Plan, mill: Mill, write: Wording) -> TidySheet:
    parted, col = any(booking.pause for booking in plan.bookings), write.col
    columns = [
        *write.where(),
        col("col-mark", about="hint-mark-firm"),
        col("col-week"),
        col("heading-start", Kind.MOMENT),
        col("heading-end", Kind.MOMENT),
        *(_pause(write) if parted else []),
        col("col-window", about="hint-window"),
        col("col-window-number", Kind.INTEGER),
        col("col-warp-runs-out", Kind.MOMENT, about="hint-p50"),
        col("heading-crew", about="hint-booking-crew"),
        col("own-sheet-choices"),
        col("col-working-time", Kind.NUMBER, unit="h", digits=1, total=True, about="hint-working-time"),
        col("col-labour", Kind.NUMBER, unit=write.say("book-unit-person-hours"), digits=1, total=True),
        col("col-total-cost", Kind.NUMBER, unit=plan.currency, digits=0, total=True),
    ]
    ordered = sorted(plan.bookings, key=lambda booking: (booking.start, booking.key.sort_key))
    return write.sheet("book-bookings", columns, [_booking(booking, mill, write, parted) for booking in ordered])


def _booking(booking: Booking, mill: Mill, write: Wording, parted: bool) -> list[Any]:
    zone = mill.terms.zone
    return [
        *_loom(booking.key, mill),
        marks_of(booking, write),
        iso_week(booking.start.astimezone(zone).date()),
        _local(booking.start, zone),
        _local(booking.end, zone),
        *([_local(at, zone) for at in booking.pause or (None, None)] if parted else []),
        write.speaker.word(booking.kind),
        booking.window,
        _local(booking.beam_out_p50, zone),
        booking.crew_names,
        choices_text(booking.choices),
        booking.slots * _SLOT_H,
        booking.labour_h,
        booking.cost.total,
    ]


def _costs(plan: Plan, mill: Mill, write: Wording) -> TidySheet:
    amounts = (
        write.col(code, Kind.NUMBER, unit=plan.currency, digits=0, total=True)
        for code in (*COST_TERMS.values(), "col-total-cost")
    )
    ordered = sorted(plan.bookings, key=lambda booking: booking.key.sort_key)
    rows = [[*_loom(b.key, mill), *(getattr(b.cost, field) for field in COST_TERMS), b.cost.total] for b in ordered]
    return write.sheet("book-costs", [*write.where(), *amounts], rows)


def _hours(plan: Plan, mill: Mill, write: Wording) -> TidySheet:
    """Hours by machine type, and of its first and last booked loom, between which the crews learn."""
    by_type: dict[str, list[Booking]] = defaultdict(list)
    for booking in sorted(plan.bookings, key=lambda booking: booking.start):
        by_type[_type(booking.key, mill)].append(booking)
    left: dict[str, int] = defaultdict(int)
    for loom in plan.left_over:
        left[_type(loom.key, mill)] += 1
    col, hours = write.col, write.say("book-unit-person-hours")
    columns = [
        col("heading-machine-type"),
        col("col-looms-booked", Kind.INTEGER, total=True),
        col("col-looms-left-over", Kind.INTEGER, total=True),
        col("col-labour", Kind.NUMBER, unit=hours, digits=1, total=True),
        col("col-labour-per-loom", Kind.NUMBER, unit=hours, digits=1),
        col("col-labour-first", Kind.NUMBER, unit=hours, digits=1),
        col("col-labour-last", Kind.NUMBER, unit=hours, digits=1),
        col("col-working-time-per-loom", Kind.NUMBER, unit="h", digits=1, about="hint-working-time"),
    ]
    rows = [_type_row(name, by_type[name], left[name]) for name in sorted({*by_type, *left}, key=natural_key)]
    return write.sheet("book-booked-hours", columns, rows)


def _type_row(name: str, bookings: Sequence[Booking], left: int) -> list[Any]:
    labour_h = sum(booking.labour_h for booking in bookings)
    count = len(bookings)
    per_loom = [labour_h / count, bookings[0].labour_h, bookings[-1].labour_h] if count else [None] * 3
    slots_h = sum(booking.slots for booking in bookings) * _SLOT_H
    return [name, count, left, labour_h, *per_loom, slots_h / count if count else None]


def _left_over(plan: Plan, mill: Mill, write: Wording) -> TidySheet:
    columns = [
        *write.where(),
        write.col("col-why-left-over"),
        write.col("col-cost-left-over", Kind.NUMBER, unit=plan.currency, digits=0),
    ]
    ordered = sorted(plan.left_over, key=lambda loom: loom.key.sort_key)
    rows = [[*_loom(loom.key, mill), write.line(loom.why), loom.cost] for loom in ordered]
    lines = [] if ordered else [write.say("col-looms-left-over"), write.say("book-none-left-over")]
    return write.sheet("book-left-over", columns, rows, lines)


def _other_dates(plan: Plan, mill: Mill, write: Wording) -> TidySheet:
    zone = mill.terms.zone
    columns = [
        *write.where(),
        write.col("col-other-start", Kind.MOMENT),
        write.col("col-other-end", Kind.MOMENT),
        write.col("col-window"),
        write.col("own-sheet-choices"),
        write.col("col-dearer", Kind.NUMBER, unit=plan.currency, digits=0),
    ]
    ordered = sorted(plan.other_dates, key=lambda other: (other.key.sort_key, other.extra_cost, other.start))
    rows = [
        [
            *_loom(o.key, mill),
            _local(o.start, zone),
            _local(o.end, zone),
            write.speaker.word(o.kind),
            choices_text(o.choices),
            o.extra_cost,
        ]
        for o in ordered
    ]
    return write.sheet("book-other-dates", columns, rows)


def _prices(plan: Plan, write: Wording) -> TidySheet:
    columns = [
        write.col("col-scarce"),
        write.col("col-week"),
        write.col("col-one-more-saves", Kind.NUMBER, unit=plan.currency, digits=2, about="hint-one-more-saves"),
    ]
    rows = [[write.speaker.say(price.what), price.week, price.price] for price in plan.prices]
    rows.sort(key=lambda row: (natural_key(row[0]), row[1]))
    return write.sheet("book-prices", columns, rows)


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
