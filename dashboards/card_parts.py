"""The parts of an open card: the kit and where it lies, and what became of it."""

import streamlit as st

from dashboards.forms import Form
from dashboards.hand import Hand
from dashboards.ordering import quantity_input
from dashboards.parts import heads, literal, of_part, table
from dashboards.speaking import number, say
from dashboards.tables import Cell
from tracker.domain.cards import CardPart
from tracker.services.screens.work_card import PartLine, WorkCard
from tracker.services.work import at_the_loom

TOLD = {"used": "today-part-used", "left_over": "today-part-left-over", "broken": "today-part-broken"}
"""Field of Parts used → its code."""


def kit(work: WorkCard) -> None:
    """What is fetched before the start, by where it lies."""
    if not work.card.parts:
        return
    with st.expander(say("card-kit"), expanded=not work.begun):
        columns = [*heads("today-kit-where", "today-kit-part", whole=True), *heads("today-kit-what"),
                   *heads("today-kit-quantity", right=True), *heads("today-kit-mark")]  # fmt: skip
        table(columns, [_part(one) for one in work.card.parts], sorts=False)


def _part(part: CardPart) -> list[Cell | str]:
    short = say("card-short", quantity=number(part.short, part.unit, 3)) if part.short else ""
    marks = [short, say("card-comes-back") if part.comes_back else ""]
    quantity = Cell(number(part.quantity, part.unit, 3), part.quantity)
    return [
        part.location or say("card-no-location"),
        part.part,
        part.description,
        quantity,
        ", ".join(filter(None, marks)),
    ]


def parts_used(hand: Hand) -> None:
    if not hand.work.parts:
        st.caption(say("today-parts-none"))
    for line in hand.work.parts:
        words, act = st.columns([3, 2], vertical_alignment="center")
        with words:
            st.write(f"**{literal(of_part(line.issued, line.part, {line.part: line.unit}))}**")
            if line.row:
                told = {name: number(line.row[name] or 0.0, line.unit, 3) for name in TOLD}
                st.write(
                    literal(say("today-part-told", used=told["used"], left=told["left_over"], broken=told["broken"]))
                )
        with act:
            _tell(line, hand)


def _tell(line: PartLine, hand: Hand) -> None:
    with Form(f"part {line.part} {hand.work.card.key}") as form:
        row: dict[str, float | str] = {"part": line.part}
        for name, code in TOLD.items():
            known = line.row.get(name) or (line.issued if name == "used" and not line.row else 0.0)
            row[name] = quantity_input(st, say(code), known, line.unit, form.key(name))
            form.beside(name.replace("_", " "))
        again = say("today-noted-anew") if line.row else ""
        form.act(say("today-part-note"), lambda: at_the_loom.part_used(hand.context, hand.here, row, again))
