"""Kit needs as sheets: what the bookings need week by week, and what is to be ordered by when."""

from collections.abc import Iterable, Sequence
from typing import Any

from tracker.domain.mill import Mill, Part
from tracker.domain.needs import PartWeek, Touched
from tracker.domain.tables import Kind
from tracker.domain.words import natural_key
from tracker.export.wording import Wording
from tracker.office.writing.sheets import Col, TidySheet


def need_sheets(needs: Sequence[PartWeek], mill: Mill, write: Wording) -> list[TidySheet]:
    """`Kit needs` (part × week) and `Net needs` (one row for a part and week in which something moves)."""
    if not needs:
        return []
    ordered = sorted(needs, key=lambda need: (natural_key(need.part), need.week))
    return [_by_week(ordered, mill, write), _net(ordered, mill, write)]


def _by_week(needs: Sequence[PartWeek], mill: Mill, write: Wording) -> TidySheet:
    gross = {(need.part, need.week): need.gross for need in needs if need.gross}
    weeks = sorted({week for _, week in gross})
    parts = sorted({part for part, _ in gross}, key=natural_key)
    columns = [*_parts(write), *(Col(week, Kind.NUMBER) for week in weeks), write.col("col-all-weeks", Kind.NUMBER)]
    rows = []
    for part in parts:
        by_week = [gross.get((part, week)) for week in weeks]
        rows.append([*_part(part, mill), *by_week, sum(quantity or 0 for quantity in by_week)])
    return write.sheet(
        "book-kit-needs", columns, rows, map(write.say, ("book-kit-needs-by-week", "book-kit-needs-about"))
    )


def _net(needs: Sequence[PartWeek], mill: Mill, write: Wording) -> TidySheet:
    col = write.col
    columns = [
        *_parts(write),
        col("col-week"),
        col("col-needed-by-bookings", Kind.NUMBER),
        col("col-needed-by-left-over", Kind.NUMBER),
        col("col-receipts-due", Kind.NUMBER),
        col("col-in-stock-at-end", Kind.NUMBER, about="hint-in-stock-at-end"),
        col("col-net-need", Kind.NUMBER, about="hint-net-need"),
        col("col-to-order", Kind.NUMBER, about="hint-to-order"),
        col("heading-due", Kind.DATE),
        col("col-order-by", Kind.DATE),
        col("col-late"),
        col("col-looms-touched"),
        col("col-looms-that-fall"),
    ]
    moving = [n for n in needs if n.gross or n.gross_left_over or n.receipts or n.order_quantity]
    marks = {index: "late" for index, need in enumerate(moving) if need.late}
    return write.sheet(
        "book-net-needs", columns, [_net_row(need, mill, write) for need in moving], frozen=1, marks=marks
    )


def _net_row(need: PartWeek, mill: Mill, write: Wording) -> list[Any]:
    return [
        *_part(need.part, mill),
        need.week,
        need.gross or None,
        need.gross_left_over or None,
        need.receipts or None,
        need.on_hand_end,
        need.net or None,
        need.order_quantity or None,
        need.due,
        need.order_by,
        late_text(need.late, need.days_late, write),
        touched_text(need.touched, write),
        write.listed(need.falls),
    ]


def late_text(late: bool, days: int, write: Wording) -> str:
    """`late by 5 days`; empty where not late."""
    return write.say("book-late-by", days=write.count(days, "so-many-days")) if late else ""


def touched_text(looms: Iterable[Touched], write: Wording) -> str:
    """`007 (Hall 2) by 3 days, …`"""
    return ", ".join(
        write.say("book-touched", loom=loom.key, days=write.count(loom.days, "so-many-days")) for loom in looms
    )


def _parts(write: Wording) -> list[Col]:
    return [write.col("heading-part", Kind.IDENTIFIER), write.col("heading-description"), write.col("heading-unit")]


def _part(name: str, mill: Mill) -> list[Any]:
    part = mill.parts.get(name, Part(name, 0))
    return [name, part.description, part.unit]
