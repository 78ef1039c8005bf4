"""The parts of an open card: what became of the kit."""

import streamlit as st

from dashboards.forms import Form
from dashboards.hand import Hand
from dashboards.ordering import quantity_input
from dashboards.parts import literal, of_part
from dashboards.speaking import number, say
from tracker.services.screens.work_card import PartLine
from tracker.services.work import at_the_loom

TOLD = {"used": "today-part-used", "left_over": "today-part-left-over", "broken": "today-part-broken"}
"""Field of Parts used → its code."""


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
