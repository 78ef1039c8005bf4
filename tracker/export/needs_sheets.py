"""Kit needs as sheets: what the bookings need week by week, and what is to be ordered by when."""

from collections.abc import Sequence
from typing import Any

from tracker.domain.mill import Mill, Part
from tracker.domain.needs import PartWeek
from tracker.domain.tables import Kind
from tracker.domain.words import natural_key
from tracker.office.writing.sheets import Col, TidySheet
from tracker.words.formats import count, listed

_PART = (Col("Part", Kind.IDENTIFIER), Col("Description"), Col("Unit"))


def need_sheets(needs: Sequence[PartWeek], mill: Mill) -> list[TidySheet]:
    """`Kit needs` (part × week) and `Net needs` (one row for a part and week in which something moves)."""
    if not needs:
        return []
    ordered = sorted(needs, key=lambda need: (natural_key(need.part), need.week))
    return [_by_week(ordered, mill), _net(ordered, mill)]


def _by_week(needs: Sequence[PartWeek], mill: Mill) -> TidySheet:
    gross = {(need.part, need.week): need.gross for need in needs if need.gross}
    weeks = sorted({week for _, week in gross})
    parts = sorted({part for part, _ in gross}, key=natural_key)
    columns = [*_PART, *(Col(week, Kind.NUMBER) for week in weeks), Col("All weeks", Kind.NUMBER)]
    rows = []
    for part in parts:
        by_week = [gross.get((part, week)) for week in weeks]
        rows.append([*_part(part, mill), *by_week, sum(quantity or 0 for quantity in by_week)])
    lines = [
        "Kit needs by ISO week",
        "What the bookings that start in the week need, less what has been issued to them.",
    ]
    return TidySheet("Kit needs", columns, rows, lines)


def _net(needs: Sequence[PartWeek], mill: Mill) -> TidySheet:
    columns = [
        *_PART,
        Col("Week"),
        Col("Needed by bookings", Kind.NUMBER),
        Col("Needed by left-over looms", Kind.NUMBER),
        Col("Receipts due", Kind.NUMBER),
        Col("In stock at the end", Kind.NUMBER, about="Projected, the proposed orders taken as received."),
        Col("Net need", Kind.NUMBER, about="What lacks to stay at or above the safety stock."),
        Col("To order", Kind.NUMBER, about="The net need in whole lots, at least the minimum order."),
        Col("Due", Kind.DATE),
        Col("Order by", Kind.DATE),
        Col("Late"),
        Col("Looms touched"),
        Col("Looms that fall without the order"),
    ]
    moving = [n for n in needs if n.gross or n.gross_left_over or n.receipts or n.order_quantity]
    marks = {index: "late" for index, need in enumerate(moving) if need.late}
    return TidySheet("Net needs", columns, [_net_row(need, mill) for need in moving], frozen=1, marks=marks)


def _net_row(need: PartWeek, mill: Mill) -> list[Any]:
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
        late_text(need.late, need.days_late),
        ", ".join(f"{touched.key} by {count(touched.days, 'so-many-days')}" for touched in need.touched),
        listed(need.falls),
    ]


def late_text(late: bool, days: int) -> str:
    """`late by 5 days`; empty where not late."""
    return f"late by {count(days, 'so-many-days')}" if late else ""


def _part(name: str, mill: Mill) -> list[Any]:
    part = mill.parts.get(name, Part(name, 0))
    return [name, part.description, part.unit]
