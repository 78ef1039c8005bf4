"""The hours of a conversion as a workbook: by machine type and variant, trade and kind of window, first and last loom."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from tracker.domain.hours import Hours
from tracker.domain.tables import Kind
from tracker.domain.words import natural_key
from tracker.export.wording import Wording
from tracker.office.writing.sheets import Col, TidySheet


@dataclass(frozen=True, slots=True)
class HoursOf:
    """What the hours were worked out from."""

    programme: str
    currency: str
    looms: int
    method_version: int


def hours_sheets(hours: Iterable[Hours], of: HoursOf, write: Wording) -> list[TidySheet]:
    """A sheet by machine type and one by variant."""
    rows = list(hours)
    types, variants = [row for row in rows if not row.variant], [row for row in rows if row.variant]
    return [
        _sheet("book-hours-by-type", types, of, write),
        _sheet("book-hours-by-variant", variants, of, write, by_variant=True),
    ]


def _sheet(title: str, rows: Sequence[Hours], of: HoursOf, write: Wording, by_variant: bool = False) -> TidySheet:
    col, hours = write.col, write.say("book-unit-person-hours")
    trades = sorted({trade for row in rows for trade in row.trades}, key=natural_key)
    columns = [
        col("heading-machine-type", Kind.IDENTIFIER),
        *([col("col-variant", about="hint-variant")] if by_variant else []),
        col("col-window", about="hint-windows"),
        col("own-sheet-looms", Kind.INTEGER),
        col("col-first-loom", Kind.NUMBER, unit=hours, digits=2, about="hint-first-loom"),
        col("col-next-loom", Kind.NUMBER, unit=hours, digits=2, about="hint-next-loom"),
        col("col-last-loom", Kind.NUMBER, unit=hours, digits=2, about="hint-last-loom"),
        col("col-number-of-last", Kind.INTEGER),
        col("col-p10", Kind.NUMBER, unit=hours, digits=2, about="hint-of-the-next"),
        col("col-p90", Kind.NUMBER, unit=hours, digits=2),
        *(Col(write.say("col-next-loom-trade", trade=trade, unit=hours), Kind.NUMBER, digits=2) for trade in trades),
        col("col-on-the-loom", Kind.NUMBER, unit="h", digits=2, about="hint-on-the-loom"),
        col("col-on-the-bench", Kind.NUMBER, unit="h", digits=2),
        col("col-after-restart", Kind.NUMBER, unit="h", digits=2),
        col("own-sheet-parts", Kind.NUMBER, unit=of.currency, digits=2),
        col("col-hours-are", about="hint-hours-are"),
    ]
    lines = [
        write.say("book-hours-of", programme=of.programme, by="variant" if by_variant else "type"),
        write.say("book-hours-about", looms=write.count(of.looms, "so-many-looms"), version=str(of.method_version)),
    ]
    return write.sheet(
        title, columns, [_row(row, trades, by_variant, write) for row in rows], lines, frozen=1 + by_variant
    )


def _row(row: Hours, trades: Sequence[str], by_variant: bool, write: Wording) -> list[Any]:
    return [
        row.machine_type, *([row.variant] if by_variant else []), ", ".join(map(write.speaker.word, row.kinds)),
        row.looms, row.first_h, row.next_h,
        row.last_h, row.last_number, row.low_h, row.high_h, *(row.trades.get(trade, 0.0) for trade in trades),
        row.on_loom_h, row.bench_h, row.after_restart_h, row.parts_cost,
        write.say("book-hours-source", source=row.source),
    ]  # fmt: skip
