"""The week of each crew, the day list of each other trade, and the stops that the weaving department is to expect."""

import re
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.calendars import iso_week
from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import Booking, Need, Plan
from tracker.domain.tables import Kind
from tracker.domain.windows import Window, WindowKind
from tracker.domain.words import natural_key
from tracker.office.writing.sheets import Col, TidySheet

Windows = Mapping[LoomKey, Iterable[Window]]
_NO_TITLE = re.compile(r"[\[\]:*?/\\']")
"""Signs that a sheet's name cannot have."""
LONGEST_TITLE = 31
_WHEN = (Col("Week"), Col("Day", Kind.DATE), Col("From", Kind.TIME), Col("To", Kind.TIME))
_WHERE = (Col("Loom", Kind.IDENTIFIER), Col("Hall", Kind.IDENTIFIER), Col("Machine type"))


def crew_sheets(plan: Plan, mill: Mill, windows: Windows) -> list[TidySheet]:
    """One sheet a crew, one a trade, one of stops; none for plans made before crews were named."""
    if plan.crew_changes is None:
        return []
    bookings = sorted(plan.bookings, key=lambda booking: (booking.start, booking.key.sort_key))
    sheets = [*_crews(bookings, mill), *_trades(bookings, mill), _stops(bookings, mill, windows)]
    return _told_apart(sheets)


def _crews(bookings: list[Booking], mill: Mill) -> Iterator[TidySheet]:
    zone = mill.terms.zone
    rows: dict[str, list[tuple[datetime, list[Any]]]] = defaultdict(list)
    for booking in bookings:
        for i, turn in enumerate(booking.crews):
            begins = "begin" if turn.start == booking.start else "take over" if _new(booking, i) else "go on"
            does = begins + (", finish" if turn.end == booking.end else "")
            row = [
                *_when(turn.start, turn.end, zone), *_where(booking.key, mill), does, _choices(booking),
                _needed(booking, turn.start, turn.end, zone),
            ]  # fmt: skip
            rows[turn.crew].append((turn.start, row))
    columns = [
        *_WHEN,
        *_WHERE,
        Col("What"),
        Col("Choices"),
        Col("Needs", about="Other trades and tools, from when to when."),
    ]
    for crew in sorted(rows, key=natural_key):
        yield TidySheet(f"Crew {crew}", columns, [row for _, row in sorted(rows[crew], key=lambda item: item[0])])


def _new(booking: Booking, i: int) -> bool:
    return i > 0 and booking.crews[i].crew != booking.crews[i - 1].crew


def _trades(bookings: list[Booking], mill: Mill) -> Iterator[TidySheet]:
    rows: dict[str, list[tuple[datetime, list[Any]]]] = defaultdict(list)
    for booking in bookings:
        for need in booking.needs:
            if need.kind == "trade":
                row = [
                    *_when(need.start, need.end, mill.terms.zone), need.amount, *_where(booking.key, mill),
                    _crew_at(booking, need),
                ]  # fmt: skip
                rows[need.what].append((need.start, row))
    columns = [*_WHEN, Col("Heads", Kind.INTEGER), *_WHERE, Col("Crew at the loom")]
    for trade in sorted(rows, key=natural_key):
        yield TidySheet(f"Days {trade}", columns, [row for _, row in sorted(rows[trade], key=lambda item: item[0])])


def _crew_at(booking: Booking, need: Need) -> str:
    crews = (turn.crew for turn in booking.crews if turn.start < need.end and need.start < turn.end)
    return ", ".join(dict.fromkeys(crews))


def _stops(bookings: list[Booking], mill: Mill, windows: Windows) -> TidySheet:
    """A stop lasts from the beam-out, or the start where that comes first, to the end of the conversion."""
    zone = mill.terms.zone
    columns = [
        *_WHERE, Col("Section", Kind.IDENTIFIER), Col("Window"),
        Col("Beam-out P10", Kind.MOMENT, about="One in ten runs out before it."),
        Col("Beam-out P50", Kind.MOMENT), Col("Beam-out P90", Kind.MOMENT, about="One in ten runs out after it."),
        Col("Stops from", Kind.MOMENT), Col("Stops to", Kind.MOMENT), Col("Article that comes next", Kind.IDENTIFIER),
    ]  # fmt: skip
    rows = []
    for booking in bookings:
        window = next(
            (w for w in windows.get(booking.key, ()) if (w.number, w.kind) == (booking.window, booking.kind)), None
        )
        out = booking.beam_out_p50
        spread = [window.p10_at, out, window.p90_at] if window and out else [None, out, None]
        loom = mill.looms.get(booking.key)
        rows.append([
            *_where(booking.key, mill), loom.section if loom else None, str(booking.kind),
            *(_local(at, zone) for at in spread), _local(min(booking.start, out or booking.start), zone),
            _local(booking.end, zone), window.article_in if window and booking.kind is not WindowKind.MID_WARP else None,
        ])  # fmt: skip
    return TidySheet("Stops to come", columns, rows)


def _needed(booking: Booking, start: datetime, end: datetime, zone: ZoneInfo) -> str:
    """`electrician 10:00-12:30, drilling jig 06:30-08:30` within a turn."""
    spans = ((max(need.start, start), min(need.end, end), need) for need in booking.needs)
    return ", ".join(
        f"{f'{need.amount} × ' if need.amount > 1 else ''}{need.what} "
        f"{begin.astimezone(zone):%H:%M}-{finish.astimezone(zone):%H:%M}"
        for begin, finish, need in spans
        if begin < finish
    )


def _when(start: datetime, end: datetime, zone: ZoneInfo) -> list[Any]:
    begin, finish = start.astimezone(zone), end.astimezone(zone)
    return [iso_week(begin.date()), begin.date(), begin.time(), finish.time()]


def _where(key: LoomKey, mill: Mill) -> list[Any]:
    loom = mill.looms.get(key)
    return [key.loom, key.hall, loom.machine_type if loom else ""]


def _choices(booking: Booking) -> str:
    return "; ".join(f"{choice}: {alternative}" for choice, alternative in booking.choices)


def _local(at: datetime | None, zone: ZoneInfo) -> datetime | None:
    return at.astimezone(zone).replace(tzinfo=None) if at else None


def _told_apart(sheets: list[TidySheet]) -> list[TidySheet]:
    """The sheets under names that a workbook can have, each once."""
    named: list[TidySheet] = []
    taken: set[str] = set()
    for sheet in sheets:
        title = plain = _NO_TITLE.sub(" ", sheet.title)[:LONGEST_TITLE].strip()
        n = 1
        while title.casefold() in taken:
            n += 1
            title = f"{plain[: LONGEST_TITLE - len(str(n)) - 1]} {n}"
        taken.add(title.casefold())
        named.append(replace(sheet, title=title))
    return named
