"""Small pieces that several screens show."""

import re
from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from html import escape

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from dashboards.downloads import offer_table
from dashboards.look import GREY, INK, KIND_COLOURS, KIND_SIGNS, LINE, REST
from dashboards.speaking import SPEAKER, language, number, say
from dashboards.tables import MOST_ROWS, Head, Row, facts_html, in_order, part_of, table_html
from tracker.domain.windows import WindowKind

MARKUP = re.compile(r"([\\`*_\[\]$~#|<>]|:(?=[a-z]))")
ADDRESS = re.compile(r"(?<=:/)(?=/)|(?<=www)(?=\.)|(?=@)", re.IGNORECASE)
"""Where the screen library would see an address of the web or of a person: it makes links of them, escaped or not."""
APART = ":small[]"
"""Nothing, in small letters: parts the text before it from the text behind it."""
Figure = tuple[str, str, str]
"""What it is, its value, and a line below."""


def literal(text: object) -> str:
    """The mill's own words inside a sentence: nothing in them is taken for markup, and no address becomes a link."""
    return ADDRESS.sub(APART, MARKUP.sub(r"\\\1", str(text)))


def of_part(quantity: float, part: str, units: Mapping[str, str]) -> str:
    """`1 pc of RAIL`, `2.5 m of CABLE`."""
    return _of_part(quantity, part, units.get(part, ""), language())


@lru_cache(maxsize=4096)
def _of_part(quantity: float, part: str, unit: str, _language: str) -> str:
    """Hundreds of kits on a page want the same of forty parts each."""
    return say("quantity-of-part", quantity=number(quantity, unit, 3), part=part)


def figures(items: Iterable[Figure]) -> None:
    """A row of key figures that wraps on narrow screens."""
    cards = "".join(
        f'<div class="figure"><div class="what">{escape(what)}</div><div class="value">{escape(value)}</div>'
        f'<div class="more">{escape(more)}</div></div>'
        for what, value, more in items
    )
    st.html(f'<div class="figures">{cards}</div>')


def table(
    columns: Sequence[Head],
    rows: Sequence[Row],
    sorts: bool = True,
    name: str = "",
    first: int | None = None,
    files: bool = True,
) -> None:
    """The one way to show a table. A long one is sent page by page, and ordered here; below it stands what downloads all of it.
    `name` tells it from another of the same headings on its screen; `first`: only so many rows are shown, and the file has all;
    `files` False where another table's file has these rows, too."""
    name = name or "|".join(column.heading for column in columns)
    shown = rows if first is None else rows[:first]
    if len(shown) <= MOST_ROWS:
        st.html(table_html(columns, shown, sorts))
    else:
        _pages(columns, shown, sorts, name)
    if sorts and files:
        offer_table(columns, rows, name)


def _pages(columns: Sequence[Head], rows: Sequence[Row], sorts: bool, name: str) -> None:
    with st.container(horizontal=True, vertical_alignment="bottom"):
        if sorts:
            by = st.selectbox(say("table-by"), range(len(columns)), None, lambda i: columns[i].heading,
                              key=f"{name}: by", placeholder=say("table-by-none"))  # fmt: skip
            down = st.checkbox(say("table-down"), key=f"{name}: down")
            rows = rows if by is None else in_order(rows, by, down)
        pages = range(1, -(-len(rows) // MOST_ROWS) + 1)
        page = st.selectbox(say("table-page"), pages, key=f"{name}: page")
    before, shown = part_of(rows, page)
    st.caption(say("table-rows", first=before + 1, last=before + len(shown), rows=len(rows)))
    st.html(table_html(columns, shown, sorts=False))


def heads(*codes: str, right: bool = False, whole: bool = False) -> list[Head]:
    """Headings of a table by their codes."""
    return [Head(say(code), right, whole) for code in codes]


def pair(key: str) -> list[DeltaGenerator]:
    """Two columns, one below the other on narrow screens."""
    with st.container(key=f"pair-{key}"):
        return st.columns([5, 6], gap="large")


def facts(items: Iterable[tuple[str, str]]) -> None:
    st.html(facts_html(items))


def legend(items: Iterable[tuple[str, str, str]]) -> None:
    """Sign, colour and meaning of what a figure shows."""
    said = "".join(
        f'<span><b class="sign" style="color: {colour}">{sign}</b>{what}</span>' for sign, colour, what in items
    )
    st.html(f'<div class="legend">{said}</div>')


LEGEND = ("mark-firm", "legend-warp-between", "legend-beam-out", "legend-nobody", "legend-now")


def board_legend() -> None:
    """What the shapes, colours and lines of the time axis mean."""
    kinds = "".join(f"<span>{_shape(kind)}{escape(SPEAKER.word(kind))}</span>" for kind in WindowKind)
    said = {code: escape(say(code)) for code in LEGEND}
    st.html(
        f'<div class="legend">{kinds}'
        f'<span><i style="border: 2px solid {INK}"></i>{said["mark-firm"]}</span>'
        f'<span><i style="border: 3px solid {KIND_COLOURS["repeat"]}; background: white"></i>{said["legend-warp-between"]}</span>'
        f'<span><b style="color: {GREY}; margin: 0">├─┼─┤</b>{said["legend-beam-out"]}</span>'
        f'<span><i style="background: {REST}; border: 1px solid {LINE}"></i>{said["legend-nobody"]}</span>'
        f'<span><i style="border-left: 2px dashed {KIND_COLOURS["mid-warp"]}; width: 4px"></i>{said["legend-now"]}</span></div>'
    )


def _shape(kind: WindowKind) -> str:
    colour = KIND_COLOURS[kind.value]
    return f'<b style="color: {colour}">{KIND_SIGNS[kind.value]}</b><i style="background: {colour}"></i>'
