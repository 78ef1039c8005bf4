"""Kits and needs: what must be ordered today, what comes late, which kits lack what; and what purchasing does about it."""

from collections import Counter
from collections.abc import Callable

import streamlit as st

from dashboards import access, forms, kitting, needs_weeks, ordering
from dashboards.empty import no_plan
from dashboards.parts import Figure, figures, literal, pair, table
from dashboards.speaking import SPEAKER, count, day, listed, moment, money, month, say
from dashboards.tables import Cell, Head, RowsAsShown, loom_cell
from tracker.errors import DataError, message
from tracker.services.parts.needs import PUBLISHED
from tracker.services.screens.next_step import lacking
from tracker.services.screens.parts_desk import PartsDesk, parts_desk

AREAS: dict[str, tuple[str, Callable[[PartsDesk], None]]] = {
    "orders": ("needs-area-orders", ordering.to_order),
    "receipts": ("needs-area-receipts", ordering.on_order),
    "kits": ("needs-area-kits", kitting.kits),
    "stock": ("needs-area-stock", kitting.stock),
    "weeks": ("needs-area-weeks", needs_weeks.weeks),
}
"""As the address has it (`?show=kits`) → its word, and what is shown and done there."""
FIRST_KITS, FIRST_OVERDUE = 8, 3
"""That stand at first glance."""


def page() -> None:
    st.title(say("screen-needs"))
    forms.say_done()
    try:
        desk = access.look_at(parts_desk)
    except DataError as error:
        if access.ask(lacking):
            no_plan(say("needs-then"))
        else:
            st.error(literal(SPEAKER.line(error)))
        return
    st.caption(say("as-of", at=moment(desk.needs.as_of, desk.needs.zone)))
    figures(_figures(desk))
    if desk.needs.basis != PUBLISHED:
        st.info(literal(SPEAKER.line(message("needs-of", basis=desk.needs.basis))))
    _overdue(desk)
    left, right = pair("first glance")
    with left:
        _urgent(desk)
    with right:
        _short(desk)
    AREAS[_area()][1](desk)


def _figures(desk: PartsDesk) -> list[Figure]:
    report, states = desk.needs, Counter(kit.state for kit in desk.kits)
    late, peak = len(report.late), report.cash.peak
    return [
        (say("needs-kits-whole"), say("of-all", some=states["complete"] + states["issued"], all=len(desk.kits)),
         say("needs-kits-waiting", reserved=states["reserved"], short=states["short"])),
        (say("needs-to-place"), count(len(report.orders), "so-many-lines"), say("needs-late", late=late)),
        (say("needs-on-order"), count(len(desk.open_lines), "so-many-lines"),
         say("needs-past-date", late=sum(bool(one.days_late) for one in desk.open_lines))),
        (say("needs-money"), money(report.cash.total, report.currency),
         say("needs-dearest", month=month(peak.month), most=money(peak.total, report.currency)) if peak else ""),
    ]  # fmt: skip


def _overdue(desk: PartsDesk) -> None:
    """What should have come and has not: the first order lines, the rest folded away."""
    said = [literal(SPEAKER.line(late)) for late in desk.needs.overdue_messages()]
    first = min(len(desk.needs.overdue), FIRST_OVERDUE)
    for line in said[:first]:
        st.warning(line)
    if rest := said[first:]:
        with st.expander(say("needs-overdue", many=len(rest)), icon=":material/warning:"):
            for line in rest:
                st.write(line)


def _urgent(desk: PartsDesk) -> None:
    st.header(say("needs-urgent"))
    if not desk.urgent:
        following = min((line.order_by for line in desk.needs.orders), default=None)
        st.caption(say("needs-urgent-none", following=following))
        return
    columns = [Head(say("head-supplier")), Head(say("head-order-by"), whole=True), Head(say("head-in-time"), whole=True),
               Head(say("head-part")), Head(say("head-amount", currency=desk.needs.currency), right=True),
               Head(say("head-falls"))]  # fmt: skip
    lines = sorted(desk.urgent, key=lambda line: (ordering.supplier_rank(desk, line.supplier), line.order_by))
    table(columns, [
        [ordering.named(line.supplier), Cell(day(line.order_by), line.order_by), ordering.in_time(line),
         ordering.so_much(line), Cell(money(line.amount), line.amount), listed(line.falls or line.looms, 4)]
        for line in lines
    ])  # fmt: skip


def _short(desk: PartsDesk) -> None:
    st.header(say("needs-short"))
    if not desk.short:
        st.caption(say("needs-short-none"))
        return
    zone, units = desk.needs.zone, desk.needs.units
    columns = [
        *(Head(say(head), whole=True) for head in ("head-start", "head-loom", "head-hall")),
        Head(say("head-lacks")),
    ]
    rows = RowsAsShown(desk.short, lambda kit: [
        Cell(moment(kit.start, zone), kit.start), loom_cell(kit.key), kit.key.hall, kitting.quantities(kit.short, units)
    ])  # fmt: skip
    table(columns, rows, name="short", first=FIRST_KITS)
    if len(desk.short) > FIRST_KITS:
        st.caption(say("needs-short-more", more=len(desk.short) - FIRST_KITS))


def _area() -> str:
    """What is to be done; it stands in the address."""
    names = list(AREAS)
    asked = st.query_params.get("show", names[0])
    at = names.index(asked) if asked in names else 0
    chosen = st.radio(say("needs-area"), names, at, lambda name: say(AREAS[name][0]), horizontal=True, key="parts area")
    st.query_params["show"] = chosen
    return chosen
