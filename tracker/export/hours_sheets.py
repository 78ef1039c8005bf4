"""The hours of a conversion as a workbook: by machine type and variant, trade and kind of window, first and last loom."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

from tracker.domain.hours import Hours
from tracker.domain.tables import Kind
from tracker.domain.words import natural_key
from tracker.office.writing.sheets import Col, TidySheet
from tracker.words.formats import count


@dataclass(frozen=True, slots=True)
class HoursOf:
    """What the hours were worked out from."""

    programme: str
    currency: str
    looms: int
    method_version: int


def hours_sheets(hours: Iterable[Hours], of: HoursOf) -> list[TidySheet]:
    """A sheet by machine type and one by variant."""
    rows = list(hours)
    types, variants = [row for row in rows if not row.variant], [row for row in rows if row.variant]
    return [
        _sheet("Hours per loom by type", types, of, False),
        _sheet("Hours per loom by variant", variants, of, True),
    ]


def _sheet(title: str, rows: Sequence[Hours], of: HoursOf, by_variant: bool) -> TidySheet:
    trades = sorted({trade for row in rows for trade in row.trades}, key=natural_key)
    columns = [
        Col("Machine type", Kind.IDENTIFIER),
        *([Col("Variant", about="What sets these looms apart.")] if by_variant else []),
        Col("Window", about="The kinds of window for which the figures hold."),
        Col("Looms", Kind.INTEGER),
        Col("First loom (person-hours)", Kind.NUMBER, digits=2, about="A crew's first one of the type."),
        Col("Next loom (person-hours)", Kind.NUMBER, digits=2, about="As the next plan counts it."),
        Col("Last loom (person-hours)", Kind.NUMBER, digits=2, about="If one crew did all looms of the type."),
        Col("Number of the last", Kind.INTEGER),
        Col(
            "P10 (person-hours)", Kind.NUMBER, digits=2, about="Of the next one, by the method's three-point estimates."
        ),
        Col("P90 (person-hours)", Kind.NUMBER, digits=2),
        *(Col(f"Next loom: {trade} (person-hours)", Kind.NUMBER, digits=2) for trade in trades),
        Col("On the loom (h)", Kind.NUMBER, digits=2, about="Elapsed hours of the next one, loom stopped."),
        Col("On the bench before (h)", Kind.NUMBER, digits=2),
        Col("After restart (h)", Kind.NUMBER, digits=2),
        Col(f"Parts ({of.currency})", Kind.NUMBER, digits=2),
        Col("Hours are", about="Standard: the learning curve of the terms. Fitted: from recorded conversions."),
    ]
    lines = [
        f"{of.programme}: hours for one loom, by {'variant' if by_variant else 'machine type'}",
        f"{count(of.looms, 'so-many-looms')} by method version {of.method_version}; the mean over the looms of a row, "
        "allowance included, with the choices that take the least.",
    ]
    return TidySheet(title, columns, [_row(row, trades, by_variant) for row in rows], lines, frozen=1 + by_variant)


def _row(row: Hours, trades: Sequence[str], by_variant: bool) -> list[Any]:
    return [
        row.machine_type, *([row.variant] if by_variant else []), ", ".join(row.kinds), row.looms, row.first_h, row.next_h,
        row.last_h, row.last_number, row.low_h, row.high_h, *(row.trades.get(trade, 0.0) for trade in trades),
        row.on_loom_h, row.bench_h, row.after_restart_h, row.parts_cost, row.source,
    ]  # fmt: skip
