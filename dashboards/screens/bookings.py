"""Bookings on a time axis, hall by hall."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from dashboards import access
from dashboards.charts import board_chart
from dashboards.empty import no_looms, no_plan
from dashboards.frames import board_frame, marks, rest_frame, wall_ms, week_says
from dashboards.parts import board_legend, literal, table
from dashboards.speaking import SPEAKER, count, moment, money
from dashboards.tables import Cell, Head, loom_cell, stage_cell
from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking
from tracker.domain.words import fold
from tracker.services.plans.moves import Move
from tracker.services.plans.plan import PlanReport
from tracker.services.screens.bookings import Board, BoardRow, bookings
from tracker.services.screens.proposed import proposed, proposed_number

ROWS_PER_PAGE = 40
MOST_UNBOOKED = 8
"""Looms sought that have no booking; the others are counted."""
ZOOMS = {"1 week": 7, "4 weeks": 28}


@dataclass(frozen=True, slots=True)
class Shown:
    """What the filters leave."""

    first: date
    days: int
    rows: tuple[BoardRow, ...]
    number: str = ""
    """The loom number sought; empty where none is."""


def page() -> None:
    board = access.ask_now(bookings)
    st.title("Bookings")
    if board.plan is None or not board.rows:
        _empty(board)
        return
    st.caption(
        f"{count(len(board.rows), 'so-many-bookings')} of {count(board.looms, 'so-many-looms')} "
        f"· as of {moment(board.as_of, board.zone)} · local times of the mill ({board.zone.key})"
    )
    _proposed()
    shown = _filters(board)
    _sought(board, shown)
    if not shown.rows:
        st.info(
            "No booking fits these filters. Choose another hall or machine type, or another week: those with bookings "
            "say how many."
        )
        return
    board_legend()
    for hall in board.halls:
        rows = [row for row in shown.rows if row.booking.key.hall == hall]
        if rows:
            _hall(board, hall, rows, shown)
    st.header("The same bookings as a table")
    _table(board, shown.rows)


def _proposed() -> None:
    """What the newest plan would move that was made and not published. Worked out when it is asked for."""
    number = access.ask(proposed_number)
    if number is None or not st.toggle(f"Show what plan {number} would move, which is made and not published"):
        return
    report = access.ask(proposed)
    if report is None or not report.moves:
        st.info(f"Plan {number} moves no booking.")
        return
    currency = report.plan.currency
    columns = [
        *(Head(heading, whole=True) for heading in ("Loom", "Hall", "Booked", f"In plan {number}")),
        Head("Why"),
        *(Head(f"{heading} ({currency})", right=True) for heading in ("Dearer by", "Staying would cost")),
    ]
    table(columns, [_moved(move, report) for move in report.moves])
    st.caption(
        f"{count(len(report.moves), 'so-many-bookings')} of the published plan would be others. Nothing is published yet."
    )


def _moved(move: Move, report: PlanReport) -> list[Cell | str]:
    def starts(booking: Booking | None) -> Cell:
        return Cell(moment(booking.start, report.zone), booking.start) if booking else Cell("")

    def costs(amount: float | None) -> Cell:
        return Cell("") if amount is None else Cell(money(amount), amount)

    return [
        loom_cell(move.key), move.key.hall, starts(move.before), starts(move.after), SPEAKER.line(move.why),
        costs(move.dearer), costs(move.price),
    ]  # fmt: skip


def _empty(board: Board) -> None:
    if not board.looms:
        no_looms()
    elif board.plan is None:
        no_plan("it shows here at once")
    else:
        st.info("The published plan has no booking. **Programme status** says why each loom is left over.")


def _filters(board: Board) -> Shown:
    halls_at, types_at, loom_at = st.columns([3, 3, 2])
    halls = halls_at.multiselect("Hall", board.halls, placeholder="all halls")
    types = types_at.multiselect("Machine type", board.machine_types, placeholder="all machine types")
    number = _number(loom_at)
    rows = [
        row
        for row in board.rows
        if (not halls or row.booking.key.hall in halls)
        and (not types or row.machine_type in types)
        and _fits(number, row.booking.key)
    ]
    zoom_at, week_at = st.columns([1, 3])
    zoom = zoom_at.segmented_control("Show", list(ZOOMS), default="1 week", required=True)
    exact = [row for row in rows if number and fold(row.booking.key.loom) == fold(number)]
    mondays, counts = weeks_of(board), Counter(_monday(row, board) for row in rows)
    days = ZOOMS[zoom]
    first = week_at.selectbox(
        "From week", mondays, index=_first_week(board, mondays, exact or (rows if number else ()), days),
        key=f"from week {number}", format_func=lambda m: week_says(m, counts[m]),
    )  # fmt: skip
    return Shown(first, days, in_span(rows, board, first, days), number)


def _number(where: DeltaGenerator) -> str:
    """The loom number sought. It stands in the address, so that it is still there on the way back from a loom's sheet."""
    number = where.text_input(
        "Loom, in any week", st.query_params.get("loom", ""), key="loom sought", placeholder="all looms"
    )
    if number:
        st.query_params["loom"] = number
    else:
        st.query_params.pop("loom", None)
    return number


def _sought(board: Board, shown: Shown) -> None:
    """What is to be said of looms sought that have no booking."""
    if not shown.number:
        return
    booked = [row.booking.key for row in board.rows if _fits(shown.number, row.booking.key)]
    found = [(key, why) for key, why in board.unbooked.items() if _fits(shown.number, key)]
    if not booked and not found:
        st.info(f"No loom has {literal(shown.number)} in its number.")
    if found:
        lines = [f"- Loom {literal(key)}: {literal(SPEAKER.line(why))}" for key, why in found[:MOST_UNBOOKED]]
        more = len(found) - MOST_UNBOOKED
        st.info("\n".join(["Without a booking:", "", *lines, *([f"- and {more:,} more"] if more > 0 else [])]))


def _fits(number: str, key: LoomKey) -> bool:
    return fold(number) in fold(key.loom)


def weeks_of(board: Board) -> list[date]:
    """The Mondays from the first booking to the last, none left out."""
    mondays = [_monday(row, board) for row in board.rows]
    last = max(mondays)
    found = [min(mondays)]
    while found[-1] < last:
        found.append(found[-1] + timedelta(days=7))
    return found


def in_span(rows: Sequence[BoardRow], board: Board, first: date, days: int) -> tuple[BoardRow, ...]:
    """The bookings that run at some time in the `days` days from `first`."""
    end = first + timedelta(days=days)
    local = board.zone
    return tuple(
        row
        for row in rows
        if row.booking.start.astimezone(local).date() < end and row.booking.end.astimezone(local).date() >= first
    )


def _monday(row: BoardRow, board: Board) -> date:
    on = row.booking.start.astimezone(board.zone).date()
    return on - timedelta(days=on.weekday())


def _first_week(board: Board, mondays: Sequence[date], sought: Sequence[BoardRow], days: int) -> int:
    """The week of today where it has bookings, else the nearest; where a loom is sought that has none in the days shown
    from there, the week of its booking."""
    today = board.as_of.astimezone(board.zone).date()
    now = max([i for i, monday in enumerate(mondays) if monday <= today], default=0)
    if not sought or in_span(sought, board, mondays[now], days):
        return now
    return mondays.index(_monday(sought[0], board))


def _hall(board: Board, hall: str, rows: Sequence[BoardRow], shown: Shown) -> None:
    st.header(f"{literal(hall)}: {count(len(rows), 'so-many-bookings')}")
    pages = [rows[i : i + ROWS_PER_PAGE] for i in range(0, len(rows), ROWS_PER_PAGE)]
    chosen = 0
    if len(pages) > 1:
        chosen = st.segmented_control(
            "Page, by start", range(len(pages)), default=0, required=True, key=f"page of {hall}",
            format_func=lambda i: f"{i * ROWS_PER_PAGE + 1} to {i * ROWS_PER_PAGE + len(pages[i])}",
        )  # fmt: skip
    frame = board_frame(pages[chosen], board.zone)
    rest = rest_frame(board.working.get(hall, ()), board.zone, shown.first, shown.days)
    chart = board_chart(frame, rest, shown.first, shown.days, wall_ms(board.as_of, board.zone))
    st.altair_chart(chart, theme=None, alt=f"Time axis of the bookings in {hall}; the table below says the same")


def _table(board: Board, rows: Sequence[BoardRow]) -> None:
    """What is looked up most stands first: on a narrow screen the last columns are reached by scrolling."""
    choosing = any(row.booking.choices for row in rows)
    columns = [
        *(Head(heading, whole=True) for heading in ("Loom", "Hall", "Start", "End")),
        Head("Window"),
        Head("Crew"),
        Head("Kit"),
        Head("Stage"),
        Head("Person-hours", right=True),
        Head(f"Cost ({board.currency})", right=True),
        *(Head(heading, whole=True) for heading in ("Type", "Beam-out P10", "Beam-out P90")),
        *([Head("Choices")] if choosing else []),
    ]
    table(columns, [_record(board, row, choosing) for row in rows])


def _record(board: Board, row: BoardRow, choosing: bool) -> list[Cell | str]:
    booking = row.booking
    return [
        loom_cell(booking.key),
        booking.key.hall,
        Cell(moment(booking.start, board.zone), booking.start),
        Cell(moment(booking.end, board.zone), booking.end),
        ", ".join([booking.kind.value, *marks(row), *_reading(row)]),
        booking.crew_names,
        row.kit,
        stage_cell(row.stage),
        Cell(f"{booking.labour_h:,.1f}", booking.labour_h),
        Cell(money(booking.cost.total), booking.cost.total),
        row.machine_type,
        *_beam_out(board, row),
        *([", ".join(f"{choice}: {taken}" for choice, taken in booking.choices)] if choosing else []),
    ]


def _beam_out(board: Board, row: BoardRow) -> list[Cell]:
    out = row.beam_out
    if out is None:
        return [Cell(""), Cell("")]
    return [Cell(moment(at, board.zone), at) for at in (out.p10_at, out.p90_at)]


def _reading(row: BoardRow) -> list[str]:
    """A word where the forecast rests on a reading that should be taken again."""
    return [f"reading {row.beam_out.state}"] if row.beam_out and row.beam_out.state != "ok" else []
