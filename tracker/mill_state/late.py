"""What is late, with its days and what follows: bookings, conversions in work, beam-outs, receipts."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from datetime import date, datetime

from tracker.domain.days import Days
from tracker.domain.late import Late
from tracker.domain.mill import LoomKey, Mill, Receipt
from tracker.domain.ordering import as_expected
from tracker.domain.plan import Booking
from tracker.domain.progress import NOT_BEGUN, Stage
from tracker.domain.windows import Window
from tracker.errors import message

ORDER = ("late-end", "late-start", "late-receipt", "late-beam-out")
"""What holds people up first."""


def late(
    mill: Mill,
    bookings: Iterable[Booking],
    stages: Mapping[LoomKey, Stage],
    windows: Mapping[LoomKey, tuple[Window, ...]],
    needed: Mapping[str, Mapping[LoomKey, float]],
    as_of: datetime,
) -> tuple[Late, ...]:
    """Everything late at a moment: conversions, bookings, order lines, warps, of each kind the oldest first.

    `bookings` are those of the plan in force, `stages` what was recorded, `needed` says by part which looms' kits still
    want it. A booking is late when its start has passed and nothing was recorded; a conversion in work when its booked end
    has; a loom to come when its warp should be gone by its last reading; an order line from the day after it was due.
    """  # fmt: skip
    days = Days(mill)
    today = days.local(as_of)
    found = [one for booking in bookings for one in _of_booking(booking, stages.get(booking.key), mill, as_of)]
    found += [one for key, loom in windows.items() if stages.get(key) in NOT_BEGUN for one in _of_warp(key, loom, mill)]
    dated = [replace(one, days=(today - days.local(one.due)).days) for one in found]
    dated += late_lines(mill, needed, as_of)
    return tuple(sorted(dated, key=lambda one: (ORDER.index(one.what.code), one.due, str(one.key))))


def late_lines(mill: Mill, needed: Mapping[str, Mapping[LoomKey, float]], as_of: datetime) -> tuple[Late, ...]:
    """The order lines past their dates, in the mill's order; `needed` as for `late`."""
    today = Days(mill).local(as_of)
    comes = {receipt.order: receipt for receipt in as_expected(mill, as_of).receipts}
    lines = [line for line in mill.receipts if line.due < today]
    return tuple(_of_line(line, comes.get(line.order), needed.get(line.part, {}), mill, today) for line in lines)


def _of_booking(booking: Booking, stage: Stage | None, mill: Mill, as_of: datetime) -> Iterable[Late]:
    zone = mill.terms.zone
    if stage in NOT_BEGUN and booking.start < as_of:
        what = message("late-start", loom=booking.key, start=booking.start.astimezone(zone))
        yield Late(what, message("late-start-follows"), booking.start, 0, booking.key)
    if stage is Stage.IN_WORK and booking.end < as_of:
        what = message("late-end", loom=booking.key, end=booking.end.astimezone(zone))
        yield Late(what, message("late-end-follows"), booking.end, 0, booking.key)


def _of_warp(key: LoomKey, windows: Iterable[Window], mill: Mill) -> Iterable[Late]:
    zone = mill.terms.zone
    for window in windows:
        if window.state == "overdue":
            what = message(
                "late-beam-out", loom=key, out=window.p50_at.astimezone(zone), read=window.reading_at.astimezone(zone)
            )
            yield Late(what, message("late-beam-out-follows"), window.p50_at, 0, key)


def _of_line(
    line: Receipt, expected: Receipt | None, waiting: Mapping[LoomKey, float], mill: Mill, today: date
) -> Late:
    due = datetime(line.due.year, line.due.month, line.due.day, tzinfo=mill.terms.zone)
    unit = mill.parts[line.part].unit if line.part in mill.parts else None
    what = message("late-receipt", order=line.order, part=line.part, quantity=line.quantity, unit=unit, due=line.due)
    looms = sorted(waiting, key=lambda key: key.sort_key)
    follows = message("late-receipt-follows", many=len(looms), looms=looms, reckoned="yes" if expected else "no",
                      comes=expected.due if expected else line.due)  # fmt: skip
    return Late(what, follows, due, (today - line.due).days)
