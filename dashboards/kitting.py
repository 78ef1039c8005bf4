"""Kits and needs: the kits of the booked looms and the stock of parts, and the forms of both."""

from collections import Counter
from collections.abc import Mapping

import streamlit as st

from dashboards import access, forms
from dashboards.forms import Form
from dashboards.ordering import quantity_input
from dashboards.parts import literal, of_part, table
from dashboards.speaking import SPEAKER, count, day, moment, number, say
from dashboards.tables import KIT_WORDS, Cell, Head, RowsAsShown, loom_cell
from tracker.domain.mill import LoomKey
from tracker.domain.needs import KitState, Quantities
from tracker.domain.words import natural_key
from tracker.errors import TrackerError
from tracker.services.looms import LoomName
from tracker.services.parts.kits import STATES
from tracker.services.parts.reservations import release, reserve, take, what_taking_costs
from tracker.services.parts.stock import count as count_stock
from tracker.services.parts.stock import issue, issue_kit
from tracker.services.parts.stock_entry import Told
from tracker.services.people.permissions import May
from tracker.services.screens.parts_desk import PartsDesk


def kits(desk: PartsDesk) -> None:
    """The kits by state; a part taken from another kit, parts reserved, a kit handed out."""
    st.header(say("kits-heading"))
    if not desk.kits:
        st.caption(say("kits-none"))
        return
    if forms.allowed(May.STOCK, say_why=True):
        _forms(desk)
    states = Counter(kit.state for kit in desk.kits)
    wanting = [state for state in ("short", "reserved") if states[state]]
    chosen = st.multiselect(
        say("kits-state"), STATES, wanting, lambda s: say("kits-state-count", state=say(KIT_WORDS[s]), kits=states[s]),
        placeholder=say("kits-all-states"), key="kit states",
    )  # fmt: skip
    _table(desk, [kit for kit in desk.kits if not chosen or kit.state in chosen])


def _forms(desk: PartsDesk) -> None:
    left, middle, right = st.columns(3, gap="large")
    with left:
        _take(desk)
    with middle:
        _reserve(desk)
        _release(desk)
    with right:
        _issue(desk)


def _table(desk: PartsDesk, shown: list[KitState]) -> None:
    columns = [
        *(Head(say(head), whole=True) for head in ("head-start", "head-loom", "head-hall", "head-card")),
        *(Head(say(head)) for head in ("head-state", "head-lacks", "head-expected")),
        *(Head(say(head), right=True) for head in ("head-reserved", "head-issued")),
    ]
    table(columns, RowsAsShown(shown, lambda kit: _kit(desk, kit)))


def _kit(desk: PartsDesk, kit: KitState) -> list[Cell | str]:
    expected = sorted(kit.expected.items(), key=lambda item: item[1])
    return [
        Cell(moment(kit.start, desk.needs.zone), kit.start), loom_cell(kit.key), kit.key.hall, desk.cards.get(kit.key, ""),
        Cell(say(KIT_WORDS[kit.state]), STATES[::-1].index(kit.state)), quantities(kit.short, desk.needs.units),
        ", ".join(f"{part} {day(due)}" for part, due in expected),
        Cell(count(len(kit.reserved), "so-many-parts"), len(kit.reserved)),
        Cell(count(len(kit.issued), "so-many-parts"), len(kit.issued)),
    ]  # fmt: skip


def quantities(of: Quantities, units: Mapping[str, str]) -> str:
    return ", ".join(of_part(of[part], part, units) for part in sorted(of, key=natural_key))


# ---- a part of another kit


def _take(desk: PartsDesk) -> None:
    st.subheader(say("take-heading"))
    lacking = _lacking_and_held(desk)
    if not lacking:
        st.caption(say("take-none"))
        return
    part = st.selectbox(say("head-part"), sorted(lacking, key=natural_key), key="take part")
    kit = _chosen(desk, say("take-for"), lacking[part], f"take for {part}")
    held = {key: q for key, q in desk.held[part].items() if key != kit.key}
    giver = st.selectbox(
        say("take-from"), _last_first(desk, held), key=f"take from {part} {kit.key}",
        format_func=lambda key: say("take-holds", loom=key, quantity=held[key], start=_start(desk, key)),
    )  # fmt: skip
    with Form(f"take {part} {kit.key}", framed=False) as form:
        most = min(kit.short[part], held[giver])
        many = quantity_input(st, say("take-quantity"), most, desk.needs.units[part], form.key(f"many {giver}"))
        form.beside("quantity-wrong", "part-not-lacking", "taken-above-reserved")
        giving, taking = LoomName(giver.loom, giver.hall), LoomName(kit.key.loom, kit.key.hall)
        try:
            costs = SPEAKER.line(access.ask(what_taking_costs, part, giving, taking, many))
        except TrackerError as error:
            st.error(literal(SPEAKER.line(error)))
            return
        st.info(literal(costs))
        form.act(say("take-act"), lambda: take(access.context(), part, giving, taking, many), asks=costs)


def _lacking_and_held(desk: PartsDesk) -> dict[str, list[KitState]]:
    """Part → the kits that lack it, where some other loom has it reserved."""
    found: dict[str, list[KitState]] = {}
    for kit in desk.kits:
        for part in kit.short:
            if desk.held.get(part, {}).keys() - {kit.key}:
                found.setdefault(part, []).append(kit)
    return found


def _last_first(desk: PartsDesk, held: Mapping[LoomKey, float]) -> list[LoomKey]:
    """Who is converted last can wait longest; who is not booked comes after all."""
    starts = {kit.key: kit.start for kit in desk.kits}
    return sorted(
        held, key=lambda key: (key not in starts, -starts[key].timestamp() if key in starts else 0.0, key.sort_key)
    )


def _start(desk: PartsDesk, key: LoomKey) -> str | None:
    return next((moment(kit.start, desk.needs.zone) for kit in desk.kits if kit.key == key), None)


def _chosen(desk: PartsDesk, label: str, of: list[KitState], key: str) -> KitState:
    """One of some kits, by loom, start and card."""
    return st.selectbox(
        label, of, key=key,
        format_func=lambda kit: say("kit-of", loom=kit.key, start=moment(kit.start, desk.needs.zone),
                                    card=desk.cards.get(kit.key)),
    )  # fmt: skip


# ---- reserve, issue, count


def _reserve(desk: PartsDesk) -> None:
    st.subheader(say("reserve-heading"))
    lacking = [kit for kit in desk.kits if kit.short]
    if not lacking:
        st.caption(say("reserve-none"))
        return
    kit = _chosen(desk, say("reserve-for"), lacking, "reserve for")
    with Form(f"reserve {kit.key}") as form:
        part = st.selectbox(say("head-part"), [None, *sorted(kit.short, key=natural_key)], key=form.key("part"),
                            format_func=lambda part: part or say("reserve-all"))  # fmt: skip
        safety = st.checkbox(say("reserve-safety"), key=form.key("safety"))
        form.beside("not-free")
        name = LoomName(kit.key.loom, kit.key.hall)
        form.act(say("reserve-act"), lambda: reserve(
            access.context(), name.loom, name.hall, part, use_safety_stock=safety), primary=False)  # fmt: skip


def _release(desk: PartsDesk) -> None:
    st.subheader(say("release-heading"))
    holding = [kit for kit in desk.kits if kit.reserved]
    if not holding:
        st.caption(say("release-none"))
        return
    kit = _chosen(desk, say("release-of"), holding, "release of")
    part = st.selectbox(say("head-part"), [None, *sorted(kit.reserved, key=natural_key)], key=f"release part {kit.key}",
                        format_func=lambda part: part or say("release-all"))  # fmt: skip
    with Form(f"release {kit.key} {part}", framed=False) as form:
        form.beside("nothing-reserved")
        given_up = kit.reserved if part is None else {part: kit.reserved[part]}
        will = say("release-asks", loom=kit.key, parts=quantities(given_up, desk.needs.units))
        form.act(say("release-act"), lambda: release(access.context(), kit.key.loom, kit.key.hall, part),
                 asks=will, primary=False)  # fmt: skip


def _issue(desk: PartsDesk) -> None:
    st.subheader(say("issue-heading"))
    ready = [kit for kit in desk.kits if kit.reserved]
    if not ready:
        st.caption(say("issue-none"))
        return
    kit = _chosen(desk, say("issue-to"), ready, "issue to")
    with Form(f"issue {kit.key}") as form:
        part = st.selectbox(say("head-part"), [None, *sorted(kit.needed, key=natural_key)], key=form.key("part"),
                            format_func=lambda part: part or say("issue-all"))  # fmt: skip
        incomplete = st.checkbox(say("issue-incomplete"), key=form.key("incomplete"))
        form.beside("kit-incomplete", "not-free", "issue-quantity")
        key = kit.key
        form.act(say("issue-act"), lambda: issue_kit(access.context(), key.loom, key.hall, incomplete) if part is None
                 else issue(access.context(), key.loom, part, hall=key.hall), primary=False)  # fmt: skip


def stock(desk: PartsDesk) -> None:
    """What there is of each part, and the form of a count."""
    st.header(say("stock-heading"))
    if not desk.stock:
        st.caption(say("stock-none"))
        return
    figures = ("head-on-hand", "head-reserved", "head-safety", "head-free")
    columns = [Head(say("head-part"), whole=True), *(Head(say(head), right=True) for head in figures)]
    table(columns, [
        [one.part, *(Cell(number(q, one.unit, 3), q) for q in (one.on_hand, one.reserved, one.safety_stock, one.free))]
        for one in desk.stock.values()
    ])  # fmt: skip
    if forms.allowed(May.STOCK, say_why=True):
        _count(desk)


def _count(desk: PartsDesk) -> None:
    st.subheader(say("count-heading"))
    part = st.selectbox(say("head-part"), list(desk.stock), key="count part")
    with Form(f"count {part}") as form:
        there = form.as_shown(desk.stock[part])
        found = quantity_input(st, say("count-found"), there.on_hand, there.unit, form.key("found"))
        form.beside("count-below-zero", "quantity-wrong", "stock-above-most")
        why = st.text_input(say("why-optional"), key=form.key("why"))
        form.act(say("count-act"), lambda: count_stock(
            form.having_shown("parts", (part,), on_hand=there.on_hand), part, found, Told(why)), primary=False)  # fmt: skip
