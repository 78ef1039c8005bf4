"""Beam-outs: what runs out in the next fortnight, whether its reading can be trusted, and what is booked on it."""

from collections import Counter
from collections.abc import Sequence
from datetime import UTC, datetime

import streamlit as st

from dashboards import access, forms
from dashboards.beam_out_charts import beam_out_chart, beam_out_frame, reading_says
from dashboards.beam_out_forms import acts
from dashboards.empty import no_looms
from dashboards.frames import wall_ms
from dashboards.look import INK, KIND_COLOURS, KIND_SIGNS, MADDER
from dashboards.parts import figures, heads, legend, literal, table
from dashboards.speaking import SPEAKER, count, day, moment, number, say
from dashboards.tables import Cell, loom_cell, stage_cell
from tracker.domain.windows import WindowKind
from tracker.services.people.permissions import May
from tracker.services.screens.beam_outs import DAYS, TRUST, BeamOutBoard, BeamOutLine, beam_outs

ROWS_PER_FIGURE = 40
WEEK_DAYS = 7
LATEST = datetime.max.replace(tzinfo=UTC)
"""What is not booked sorts behind all that is."""


def page() -> None:
    st.title(say("screen-beam-outs"))
    board = access.ask_now(beam_outs)
    if not board.looms:
        no_looms()
        return
    st.caption(say("beam-outs-about", first=board.as_of.astimezone(board.zone), days=DAYS, zone=board.zone.key))
    forms.say_done()
    figures(_figures(board))
    lines = _chosen(board)
    if not lines:
        st.info(say("beam-outs-none", days=DAYS))
    else:
        _legend()
        for hall in board.halls:
            _hall(board, hall, [line for line in lines if line.key.hall == hall])
        st.header(say("beam-outs-table"))
        _table(board, lines)
    _silent(board)
    if forms.allowed(May.LOAD, say_why=True):
        acts(board, lines)


def _figures(board: BeamOutBoard) -> list[tuple[str, str, str]]:
    states = Counter(line.window.state for line in board.lines)
    soon = [line for line in board.lines if (line.window.p50_at - board.as_of).days < WEEK_DAYS]
    without = len({line.key for line in board.lines if line.booking is None and not line.booked_elsewhere})
    return [
        (say("beam-outs-overdue"), count(states["overdue"], "so-many-looms"), say("beam-outs-overdue-means")),
        (say("beam-outs-stale"), count(states["stale"], "so-many-looms"), say("beam-outs-stale-means")),
        (say("beam-outs-silent"), count(len(board.silent), "so-many-looms"), say("beam-outs-silent-means")),
        (say("beam-outs-soon"), count(len(soon), "so-many-beam-outs"), say("beam-outs-without", many=without)),
    ]  # fmt: skip


def _chosen(board: BeamOutBoard) -> list[BeamOutLine]:
    """What the filters leave; they stand in the address."""
    halls_at, states_at = st.columns(2)
    asked = [hall for hall in st.query_params.get_all("hall") if hall in board.halls]
    halls = halls_at.multiselect(say("filter-hall"), board.halls, asked, placeholder=say("filter-all-halls"))
    st.query_params.from_dict({**st.query_params.to_dict(), "hall": halls})
    states = states_at.multiselect(
        say("beam-outs-reading"), list(TRUST), format_func=reading_says, placeholder=say("beam-outs-all-readings"),
    )  # fmt: skip
    return [
        line
        for line in board.lines
        if (not halls or line.key.hall in halls) and (not states or line.window.state in states)
    ]


def _legend() -> None:
    kinds = [WindowKind.REPEAT, WindowKind.STYLE, WindowKind.STANDING]
    legend([
        *((KIND_SIGNS[kind.value], KIND_COLOURS[kind.value], SPEAKER.word(kind)) for kind in kinds),
        ("▬", INK, say("beam-outs-bar")), ("|", INK, say("beam-outs-stroke")), ("▭", INK, say("beam-outs-frame")),
        ("¦", MADDER, say("beam-outs-now")),
    ])  # fmt: skip


def _hall(board: BeamOutBoard, hall: str, lines: Sequence[BeamOutLine]) -> None:
    if not lines:
        return
    st.header(f"{literal(hall)}: {count(len(lines), 'so-many-beam-outs')}")
    shown = lines[:ROWS_PER_FIGURE]
    first = board.as_of.astimezone(board.zone).date()
    chart = beam_out_chart(beam_out_frame(shown, board.zone), first, DAYS + 1, wall_ms(board.as_of, board.zone))
    st.altair_chart(chart, theme=None, alt=say("beam-outs-figure", hall=hall))
    if len(lines) > len(shown):
        st.caption(say("and-so-many-more", many=len(lines) - len(shown)))


def _table(board: BeamOutBoard, lines: Sequence[BeamOutLine]) -> None:
    columns = [
        *heads("beam-outs-loom", "beam-outs-hall", whole=True), *heads("beam-outs-reading"),
        *heads("beam-outs-read-at", whole=True), *heads("beam-outs-left", right=True),
        *heads("beam-outs-p10", "beam-outs-p90", whole=True), *heads("beam-outs-window", "beam-outs-article"),
        *heads("beam-outs-booked", "beam-outs-protected", whole=True), *heads("beam-outs-stage"),
    ]  # fmt: skip
    table(columns, [_row(board, line) for line in lines])


def _row(board: BeamOutBoard, line: BeamOutLine) -> list[Cell | str]:
    window, booking, zone = line.window, line.booking, board.zone
    ends = window.ends_at or window.p90_at
    return [
        loom_cell(line.key),
        line.key.hall,
        Cell(reading_says(window.state), TRUST[window.state]),
        Cell(moment(window.reading_at, zone), window.reading_at) if window.kind is not WindowKind.STANDING else "",
        Cell(number(line.left_m, "m"), line.left_m),
        Cell(moment(window.p10_at, zone), window.p10_at),
        Cell(moment(ends, zone), ends),
        SPEAKER.word(window.kind),
        _articles(line),
        Cell(moment(booking.start, zone), booking.start) if booking else _without(line),
        Cell(day(line.protected_until), line.protected_until) if line.protected_until else "",
        stage_cell(line.stage),
    ]


def _without(line: BeamOutLine) -> Cell:
    return Cell(say("beam-outs-booked-elsewhere" if line.booked_elsewhere else "beam-outs-not-booked"), LATEST)


def _articles(line: BeamOutLine) -> str:
    names = [name for name in (line.window.article_out, line.window.article_in) if name]
    return " → ".join(dict.fromkeys(names))


def _silent(board: BeamOutBoard) -> None:
    """Looms of which nothing can be said, and why."""
    if not board.silent:
        return
    with st.expander(say("beam-outs-silent-list", many=len(board.silent))):
        columns = [*heads("beam-outs-loom", "beam-outs-hall", whole=True), *heads("beam-outs-why")]
        table(columns, [
            [loom_cell(key), key.hall, SPEAKER.line(why)] for key, why in board.silent.items()
        ])  # fmt: skip
