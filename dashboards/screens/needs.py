"""Kits and needs: what to order by when, what is late, and which kits lack what."""

from collections import Counter
from collections.abc import Mapping

import streamlit as st

from dashboards import access
from dashboards.charts import cash_chart, stock_chart
from dashboards.empty import no_plan
from dashboards.frames import cash_frame, month_says, stock_frame
from dashboards.look import WALNUT, WELD, WOAD
from dashboards.parts import Figure, figures, legend, literal, of_part, pair, table
from dashboards.speaking import SPEAKER, count, day, listed, moment, money, number
from dashboards.tables import Cell, Head, loom_cell
from tracker.domain.needs import KitState, OrderLine, PartWeek, Quantities
from tracker.domain.words import natural_key
from tracker.errors import DataError, message
from tracker.services.parts.kits import STATES, KitsReport, kits
from tracker.services.parts.needs import PUBLISHED, NeedsReport, net_needs


def page() -> None:
    st.title("Kits and needs")
    try:
        report = access.ask_now(net_needs)
    except DataError:
        no_plan("what it needs shows here at once")
        return
    kitted = access.ask_now(kits) if report.basis == PUBLISHED else KitsReport(report.zone, (), report.units)
    st.caption(f"as of {moment(report.as_of, report.zone)}")
    figures(_figures(report, kitted))
    if report.basis != PUBLISHED:
        st.info(literal(SPEAKER.line(message("needs-of", basis=report.basis))))
    for late in report.overdue_messages():
        st.warning(literal(SPEAKER.line(late)))
    _orders(report)
    left, right = pair("needs")
    with left:
        _cash(report)
    with right:
        _stock(report)
    _weeks(report)
    _kits(kitted)


def _figures(report: NeedsReport, kitted: KitsReport) -> list[Figure]:
    states = Counter(kit.state for kit in kitted.kits)
    peak = report.cash.peak
    late = len(report.late)
    return [
        ("Kits whole", f"{states['complete'] + states['issued']:,} of {len(kitted.kits):,}",
         f"{states['reserved']:,} waiting for receipts, {states['short']:,} short"),
        ("Orders to place", count(len(report.orders), "so-many-lines"), f"{late:,} late" if late else "none late"),
        ("Money, open orders included", money(report.cash.total, report.currency), "taken at the day of delivery"),
        ("Dearest month", month_says(peak.month) if peak else "none", money(peak.total, report.currency) if peak else ""),
    ]  # fmt: skip


def _orders(report: NeedsReport) -> None:
    st.header("What to order, by when")
    if not report.orders:
        st.caption("Nothing: stock and open orders cover every need.")
        return
    suppliers = sorted({line.supplier for line in report.orders}, key=natural_key)
    chosen = st.multiselect("Supplier", suppliers, placeholder="all suppliers", format_func=lambda name: name or "none")
    columns = [
        *(Head(heading, whole=True) for heading in ("Order by", "In time?", "Part")),
        Head("Description"),
        Head("Quantity", right=True),
        *(Head(heading, whole=True) for heading in ("Must be in", "Comes")),
        Head("Supplier"),
        Head(f"Amount ({report.currency})", right=True),
        Head("Looms it comes too late for"),
        Head("Looms that fall without it"),
    ]
    lines = [line for line in report.orders if not chosen or line.supplier in chosen]
    table(columns, [_order(line) for line in sorted(lines, key=lambda line: (line.order_by, natural_key(line.part)))])


def _order(line: OrderLine) -> list[Cell | str]:
    touched = sorted(line.touched, key=lambda t: t.key.sort_key)
    falling = sorted(line.falls, key=lambda key: key.sort_key)
    return [
        Cell(day(line.order_by), line.order_by),
        Cell(f"late by {count(line.days_late, 'so-many-days')}" if line.late else "in time", -line.days_late),
        line.part,
        line.description,
        Cell(number(line.quantity, line.unit, 3), line.quantity),
        Cell(day(line.due), line.due),
        Cell(day(line.expected), line.expected),
        line.supplier,
        Cell(money(line.amount), line.amount),
        ", ".join(f"{t.key} by {count(t.days, 'so-many-days')}" for t in touched),
        listed(falling),
    ]


def _cash(report: NeedsReport) -> None:
    st.header("Money by month")
    if not report.cash.months:
        st.caption("Nothing is on order and nothing is to be ordered.")
        return
    legend([("■", WOAD, "on order"), ("□", WOAD, "still to order")])
    chart = cash_chart(cash_frame(report), report.currency)
    st.altair_chart(chart, theme=None, alt="Bars: money by month, on order and still to order")


def _stock(report: NeedsReport) -> None:
    st.header("One part, week by week")
    parts = sorted({row.part for row in report.moving}, key=natural_key)
    if not parts:
        st.caption("No part moves.")
        return
    part = st.selectbox("Part", parts)
    unit = report.units[part] or "pieces"
    legend(
        [
            ("■", WOAD, "needed by bookings"),
            ("□", WALNUT, "needed by looms left over"),
            ("●", WELD, "stock at the week's end"),
        ]
    )
    frame = stock_frame([row for row in report.weeks if row.part == part])
    st.altair_chart(stock_chart(frame, unit), theme=None, alt=f"Bars: need of {part} by week; line: projected stock")
    st.caption("The stock takes open receipts and the orders proposed above as received.")


def _weeks(report: NeedsReport) -> None:
    st.header("Net needs by week")
    parts = sorted({row.part for row in report.moving}, key=natural_key)
    chosen = st.multiselect("Parts", parts, placeholder="all parts")
    only = st.checkbox("only what is to be ordered", value=True)
    rows = [r for r in report.moving if (not chosen or r.part in chosen) and (r.order_quantity or not only)]
    if not rows:
        st.caption("Nothing to order here.")
        return
    columns = [
        Head("Part", whole=True),
        Head("Unit"),
        Head("ISO week", whole=True),
        *(
            Head(heading, right=True)
            for heading in ("Needed", "By looms left over", "Receipts", "Stock at the end", "Net", "To order")
        ),
        Head("Order by", whole=True),
        Head("In time?", whole=True),
    ]
    table(columns, [_week(row, report) for row in rows])


def _week(row: PartWeek, report: NeedsReport) -> list[Cell | str]:
    figures = (row.gross, row.gross_left_over, row.receipts, row.on_hand_end, row.net, row.order_quantity)
    in_time = f"late by {count(row.days_late, 'so-many-days')}" if row.late else "in time"
    return [
        row.part,
        report.units[row.part],
        row.week,
        *(Cell(number(figure, "", 3), figure) for figure in figures),
        Cell(day(row.order_by), row.order_by) if row.order_by else "",
        Cell(in_time, -row.days_late) if row.order_by else "",
    ]


def _kits(kitted: KitsReport) -> None:
    st.header("Kits of the booked looms")
    if not kitted.kits:
        st.caption("No loom is booked.")
        return
    counts = Counter(kit.state for kit in kitted.kits)
    chosen = st.multiselect(
        "State",
        STATES,
        default=_wanting(counts),
        placeholder="all states",
        format_func=lambda s: f"{s} ({counts[s]:,})",
    )
    shown = [kit for kit in kitted.kits if not chosen or kit.state in chosen]
    columns = [
        *(Head(heading, whole=True) for heading in ("Start", "Loom", "Hall")),
        *(Head(heading) for heading in ("State", "Lacks", "On order, due by")),
        *(Head(heading, right=True) for heading in ("Reserved", "Issued")),
    ]
    table(columns, [_kit(kit, kitted) for kit in shown])


def _wanting(counts: Counter[str]) -> list[str]:
    """The states that purchasing has to do with, where a kit is in one."""
    return [state for state in ("short", "reserved") if counts[state]]


def _kit(kit: KitState, kitted: KitsReport) -> list[Cell | str]:
    expected = sorted(kit.expected.items(), key=lambda item: item[1])
    return [
        Cell(moment(kit.start, kitted.zone), kit.start),
        loom_cell(kit.key),
        kit.key.hall,
        kit.state,
        _quantities(kit.short, kitted.units),
        ", ".join(f"{part} {day(due)}" for part, due in expected),
        Cell(count(len(kit.reserved), "so-many-parts"), len(kit.reserved)),
        Cell(count(len(kit.issued), "so-many-parts"), len(kit.issued)),
    ]


def _quantities(quantities: Quantities, units: Mapping[str, str]) -> str:
    return ", ".join(of_part(quantities[part], part, units) for part in sorted(quantities, key=natural_key))
