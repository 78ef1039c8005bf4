"""Kits and needs: the money by month, one part week by week, and the net needs of all."""

import streamlit as st

from dashboards.charts import cash_chart, stock_chart
from dashboards.frames import cash_frame, stock_frame
from dashboards.look import WALNUT, WELD, WOAD
from dashboards.parts import legend, pair, table
from dashboards.speaking import day, number, say
from dashboards.tables import Cell, Head, RowsAsShown
from tracker.domain.needs import PartWeek
from tracker.domain.words import natural_key
from tracker.services.parts.needs import NeedsReport
from tracker.services.screens.parts_desk import PartsDesk


def weeks(desk: PartsDesk) -> None:
    left, right = pair("needs")
    with left:
        _cash(desk.needs)
    with right:
        _stock(desk.needs)
    _weeks(desk.needs)


def _cash(report: NeedsReport) -> None:
    st.header(say("cash-heading"))
    if not report.cash.months:
        st.caption(say("cash-none"))
        return
    legend([("■", WOAD, say("cash-on-order")), ("□", WOAD, say("cash-to-order"))])
    st.altair_chart(cash_chart(cash_frame(report), report.currency), theme=None, alt=say("cash-alt"))


def _stock(report: NeedsReport) -> None:
    st.header(say("one-part-heading"))
    parts = sorted({row.part for row in report.moving}, key=natural_key)
    if not parts:
        st.caption(say("one-part-none"))
        return
    part = st.selectbox(say("head-part"), parts, key="one part")
    legend(
        [
            ("■", WOAD, say("one-part-booked")),
            ("□", WALNUT, say("one-part-left-over")),
            ("●", WELD, say("one-part-stock")),
        ]
    )
    frame = stock_frame([row for row in report.weeks if row.part == part])
    unit = report.units[part] or say("pieces")
    st.altair_chart(stock_chart(frame, unit), theme=None, alt=say("one-part-alt", part=part))
    st.caption(say("one-part-help"))


def _weeks(report: NeedsReport) -> None:
    st.header(say("weeks-heading"))
    parts = sorted({row.part for row in report.moving}, key=natural_key)
    chosen = st.multiselect(say("weeks-parts"), parts, placeholder=say("weeks-all-parts"), key="weeks parts")
    only = st.checkbox(say("weeks-only"), value=True, key="weeks only")
    rows = [r for r in report.moving if (not chosen or r.part in chosen) and (r.order_quantity or not only)]
    if not rows:
        st.caption(say("weeks-none"))
        return
    columns = [
        Head(say("head-part"), whole=True), Head(say("head-unit")), Head(say("head-week"), whole=True),
        *(Head(say(head), right=True) for head in ("head-needed", "head-left-over", "head-receipts", "head-stock-end",
                                                   "head-net", "head-to-order")),
        *(Head(say(head), whole=True) for head in ("head-order-by", "head-in-time")),
    ]  # fmt: skip
    table(columns, RowsAsShown(rows, lambda row: _week(row, report)))


def _week(row: PartWeek, report: NeedsReport) -> list[Cell | str]:
    figures = (row.gross, row.gross_left_over, row.receipts, row.on_hand_end, row.net, row.order_quantity)
    in_time = say("late-by", days=row.days_late) if row.late else say("in-time")
    return [
        row.part, report.units[row.part], row.week, *(Cell(number(figure, "", 3), figure) for figure in figures),
        Cell(day(row.order_by), row.order_by) if row.order_by else "",
        Cell(in_time, -row.days_late) if row.order_by else "",
    ]  # fmt: skip
