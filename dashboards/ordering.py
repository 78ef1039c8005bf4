"""Kits and needs: lines to order and lines on order, and the forms of both."""

from collections.abc import Iterable
from dataclasses import replace

import streamlit as st

from dashboards import access, forms
from dashboards.downloads import download
from dashboards.forms import Form
from dashboards.parts import literal, of_part, table
from dashboards.speaking import count, day, language, listed, money, number, say, typed_day
from dashboards.tables import Cell, Head
from tracker.domain.mill import LoomKey
from tracker.domain.needs import OrderLine, Slip
from tracker.domain.quantities import whole
from tracker.domain.words import natural_key
from tracker.services.parts.ordering import Ordered, expect, line_field, line_numbers, place
from tracker.services.parts.purchasing import order_file_name, order_workbook
from tracker.services.parts.stock import receive
from tracker.services.parts.stock_entry import Told
from tracker.services.people.permissions import May
from tracker.services.plans.what_if import what_if
from tracker.services.screens.parts_desk import OpenLine, PartsDesk

MOST_LINES = 20
"""Of one supplier that a form offers at a time, the most urgent."""


def to_order(desk: PartsDesk) -> None:
    """What to order by when, all of it by supplier, and the form that enters an order as placed."""
    st.header(say("needs-order-list"))
    if not desk.needs.orders:
        st.caption(say("needs-order-none"))
        return
    suppliers = _suppliers(desk)
    chosen = st.selectbox(say("head-supplier"), suppliers, format_func=named, key="order to")
    lines = sorted(
        (x for x in desk.needs.orders if x.supplier == chosen), key=lambda x: (x.order_by, natural_key(x.part))
    )
    _list(desk, lines)
    if forms.allowed(May.STOCK, say_why=True):
        _order(desk, chosen, lines[:MOST_LINES], len(lines))


def _suppliers(desk: PartsDesk) -> list[str]:
    """The one whose order is due first before all others."""
    return sorted({line.supplier for line in desk.needs.orders}, key=lambda name: supplier_rank(desk, name))


def supplier_rank(desk: PartsDesk, supplier: str) -> tuple:
    return min(x.order_by for x in desk.needs.orders if x.supplier == supplier), not supplier, natural_key(supplier)


def _list(desk: PartsDesk, lines: list[OrderLine]) -> None:
    columns = [
        *(Head(say(head), whole=True) for head in ("head-order-by", "head-in-time", "head-part")),
        Head(say("head-description")), Head(say("head-quantity"), right=True),
        *(Head(say(head), whole=True) for head in ("head-must-be-in", "head-comes")),
        Head(say("head-amount", currency=desk.needs.currency), right=True),
        Head(say("head-touched")), Head(say("head-falls")),
    ]  # fmt: skip
    table(columns, [
        [Cell(day(x.order_by), x.order_by), in_time(x), x.part, x.description, Cell(number(x.quantity, x.unit, 3), x.quantity),
         Cell(day(x.due), x.due), Cell(day(x.expected), x.expected), Cell(money(x.amount), x.amount),
         _touched(x),
         listed(by_number(x.falls))]
        for x in lines
    ])  # fmt: skip


def by_number(looms: Iterable[LoomKey]) -> list[LoomKey]:
    return sorted(looms, key=lambda key: key.sort_key)


def _touched(line: OrderLine) -> str:
    """The looms that it comes too late for, and by how much."""
    touched = sorted(line.touched, key=lambda one: one.key.sort_key)
    return ", ".join(say("touched-by", loom=one.key, days=one.days) for one in touched)


def _order(desk: PartsDesk, supplier: str, lines: list[OrderLine], of: int) -> None:
    st.subheader(say("order-heading", supplier=named(supplier)))
    st.caption(say("order-help"))
    if of > len(lines):
        st.caption(say("order-first", shown=len(lines), all=of))
    with Form(f"order to {supplier}", framed=False) as form:
        asked = [(_asked(form, desk, line), st.container()) for line in lines]
        form.beside("order-of-nothing")
        taken, below = [line for line, _ in asked if line], [of_line for line, of_line in asked if line]
        said = st.text_input(say("order-number"), key=form.key("number"), help=say("order-number-help"))
        form.beside("order-number-taken", "order-number-needed")
        for at, of_line in enumerate(below):
            with of_line:
                form.beside(line_field(at))
        numbers = line_numbers(said, len(taken))
        sent = [replace(x, order=order) for x, order in zip(taken, numbers, strict=True)] if said.strip() else taken
        with st.container(horizontal=True, vertical_alignment="bottom"):
            download(
                say("order-workbook"), lambda context: order_workbook(context, sent), order_file_name(supplier, language()),
                disabled=not taken, key=form.key("workbook"),
            )  # fmt: skip
        placed = [
            Ordered(order, x.part, x.quantity, x.due, supplier or None) for x, order in zip(taken, numbers, strict=True)
        ]
        form.act(say("order-enter"), lambda: place(access.context(), placed))


def _asked(form: Form, desk: PartsDesk, line: OrderLine) -> OrderLine | None:
    """The line as it is to be ordered: how much, and when it comes; None where it is not."""
    ticks, quantities, days = st.columns([4, 2, 2], vertical_alignment="bottom")
    label = say("order-line", part=line.part, description=line.description or None, by=line.order_by)
    chosen = ticks.checkbox(literal(label), line in desk.urgent, key=form.key(f"take {line.order}"))
    many = quantity_input(quantities, say("order-quantity-of", part=line.part), line.quantity, line.unit,
                          form.key(f"many {line.order}"))  # fmt: skip
    due = days.date_input(
        say("order-due-of", part=line.part),
        max(line.expected, desk.today),
        key=form.key(f"due {line.order}"),
        format=typed_day(),
    )
    return replace(line, quantity=many, due=due) if chosen else None


def quantity_input(at, label: str, value: float, unit: str, key: str) -> float:
    """A field for a quantity of a part, in whole ones where its unit is counted so."""
    if whole(unit):
        return float(at.number_input(literal(f"{label} ({unit})"), value=round(value), step=1, key=key))
    shown = f"{label} ({unit})" if unit else label
    return at.number_input(literal(shown), value=float(value), step=0.5, format="%.3f", key=key)


# ---- what is on order


def on_order(desk: PartsDesk) -> None:
    st.header(say("needs-open-lines"))
    if not desk.open_lines:
        st.caption(say("needs-open-none"))
    else:
        _open(desk)
    if not forms.allowed(May.STOCK, say_why=True):
        return
    if desk.open_lines:
        lines = {_line_says(one): one for one in sorted(desk.open_lines, key=lambda one: -one.days_late)}
        one = lines[st.selectbox(say("receive-which"), lines, key="open line")]
        left, middle, right = st.columns(3, gap="large")
        with left:
            _receive(one)
        with middle:
            _expect(one)
        with right:
            _what_if(one)
    _without_order(desk)


def _open(desk: PartsDesk) -> None:
    columns = [
        Head(say("head-due"), whole=True), Head(say("head-late"), whole=True), Head(say("head-order"), whole=True),
        Head(say("head-part"), whole=True), Head(say("head-open"), right=True), Head(say("head-supplier")),
        Head(say("head-amount", currency=desk.needs.currency), right=True), Head(say("head-wanted-by")),
    ]  # fmt: skip
    table(columns, [
        [Cell(day(x.line.due), x.line.due), Cell(count(x.days_late, "so-many-days") if x.days_late else "", -x.days_late),
         x.line.order, x.line.part, Cell(number(x.line.quantity, x.unit, 3), x.line.quantity), named(x.supplier),
         Cell(money(x.amount), x.amount), listed(x.wanted_by, 4)]
        for x in desk.open_lines
    ])  # fmt: skip


def _line_says(one: OpenLine) -> str:
    return say("receive-line", order=one.line.order, quantity=one.line.quantity, unit=one.unit or None, part=one.line.part,
               due=one.line.due)  # fmt: skip


def _receive(one: OpenLine) -> None:
    st.subheader(say("receive-heading"))
    with Form(f"receive {one.line.order} {one.line.part}") as form:
        line = form.as_shown(one.line)
        many = quantity_input(st, say("receive-quantity"), one.line.quantity, one.unit, form.key("many"))
        form.beside("entry-quantity", "quantity-wrong", "stock-above-most")
        rest = st.radio(
            say("receive-rest"), [True, False], key=form.key("rest"),
            format_func=lambda comes: say("receive-rest-comes" if comes else "receive-rest-ends"),
        )  # fmt: skip
        why = st.text_input(say("why-optional"), key=form.key("why"))
        form.act(say("receive-act"), lambda: receive(
            form.having_shown("receipts", (line.order, line.part), quantity=line.quantity), line.part, many, line.order, rest,
            Told(why)))  # fmt: skip


def _expect(one: OpenLine) -> None:
    st.subheader(say("expect-heading"))
    with Form(f"expect {one.line.order} {one.line.part}") as form:
        line = form.as_shown(one.line)
        due = st.date_input(say("expect-due"), line.due, key=form.key("due"), format=typed_day())
        form.beside("order-due-past", "moment-out-of-years")
        many = quantity_input(st, say("expect-quantity"), line.quantity, one.unit, form.key("many"))
        form.beside("order-quantity", "quantity-wrong")
        why = st.text_input(say("why-optional"), key=form.key("why"))
        form.act(say("expect-act"), lambda: expect(
            form.having_shown("receipts", (line.order, line.part), due=line.due, quantity=line.quantity), line.order, line.part,
            due if due != line.due else None, many if many != line.quantity else None, why), primary=False)  # fmt: skip


def _what_if(one: OpenLine) -> None:
    st.subheader(say("what-if-heading"))
    with Form(f"slip {one.line.order} {one.line.part}") as form:
        days = st.number_input(say("what-if-days"), -365, 365, 7, key=form.key("days"))
        st.caption(say("what-if-help"))
        form.act(say("what-if-act"), lambda: what_if(access.context(), [Slip(one.line.order, days)]), primary=False)


def _without_order(desk: PartsDesk) -> None:
    with st.expander(say("receive-without")), Form("receive without an order") as form:
        part = st.selectbox(say("head-part"), list(desk.stock), key=form.key("part"))
        many = st.number_input(say("receive-quantity"), value=1.0, format="%g", key=form.key("many"))
        form.beside("entry-quantity", "quantity-wrong", "stock-above-most")
        why = st.text_input(say("why"), key=form.key("why"))
        form.beside("reason-needed")
        form.act(say("receive-act"), lambda: receive(access.context(), part, many, told=Told(why)), primary=False)


def named(supplier: str) -> str:
    return supplier or say("no-supplier")


def in_time(line: OrderLine) -> Cell:
    return Cell(say("late-by", days=line.days_late) if line.late else say("in-time"), -line.days_late)


def so_much(line: OrderLine) -> str:
    return of_part(line.quantity, line.part, {line.part: line.unit})
