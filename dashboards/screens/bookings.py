"""Bookings: the plan on a time axis by hall and by crew, and what the planner does with it."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from dashboards import access, forms, job_parts
from dashboards.booking_acts import absence_part, one_booking_part
from dashboards.booking_charts import crew_chart, crew_frame, hours_chart, hours_frame, hours_says
from dashboards.charts import board_chart
from dashboards.empty import no_looms, no_plan
from dashboards.frames import board_frame, marks, rest_frame, wall_ms
from dashboards.parts import board_legend, heads, literal, table
from dashboards.planning_parts import earlier_plans, plan_form, show_proposed
from dashboards.speaking import SPEAKER, count, moment, money, number, say, who_and_when
from dashboards.tables import KIT_WORDS, Cell, Head, loom_cell, stage_cell
from tracker.domain.calendars import iso_week
from tracker.domain.jobs import JobKind
from tracker.domain.mill import LoomKey
from tracker.domain.words import fold
from tracker.errors import message
from tracker.services.people.permissions import May
from tracker.services.screens.bookings import Board, BoardRow, bookings
from tracker.services.screens.next_step import lacking
from tracker.services.screens.week_hours import TradeWeek, week_hours

ROWS_PER_PAGE = 40
MOST_UNBOOKED = 8
"""Looms sought that have no booking; the others are counted."""
ZOOMS = {"bookings-one-week": 7, "bookings-four-weeks": 28}
BY_HALL, BY_CREW = "bookings-by-hall", "bookings-by-crew"


@dataclass(frozen=True, slots=True)
class Shown:
    """What the filters leave."""

    first: date
    days: int
    rows: tuple[BoardRow, ...]
    number: str = ""
    """The loom number sought; empty where none is."""
    by: str = BY_HALL


def page() -> None:
    board = access.ask_now(bookings)
    st.title(say("screen-bookings"))
    plans = access.may(May.PLAN)
    if not board.looms:
        no_looms()
        return
    forms.say_done()
    job_parts.show(JobKind.PLAN)
    proposes = show_proposed(plans)
    shown = None
    with st.container():  # in one place, whatever stands in it: what stands below keeps what is being typed
        if board.plan is None or not board.rows:
            _without_plan(board, plans, proposes)
        else:
            shown = _board(board)
            _hours()
    if forms.allowed(May.PLAN, say_why=True) and not access.ask(lacking):
        _acts(board)
    if shown and shown.rows:
        st.header(say("bookings-table"))
        _table(board, shown.rows)


def _without_plan(board: Board, plans: bool, proposes: bool) -> None:
    if board.plan is not None:
        st.info(say("bookings-plan-empty"))
    elif plans and not access.ask(lacking):
        st.info(say("bookings-publish-it" if proposes else "bookings-first-plan"))
    else:
        no_plan(say("bookings-then"))


def _board(board: Board) -> Shown:
    booked, looms = message("so-many-bookings", n=len(board.rows)), message("so-many-looms", n=board.looms)
    as_of = board.as_of.astimezone(board.zone)
    st.caption(say("bookings-about", booked=booked, looms=looms, as_of=as_of, zone=board.zone.key))
    shown = _filters(board)
    _sought(board, shown)
    if not shown.rows:
        st.info(say("bookings-none-fit"))
        return shown
    board_legend()
    if shown.by == BY_CREW:
        _crews(board, shown)
    else:
        for hall in board.halls:
            rows = [row for row in shown.rows if row.booking.key.hall == hall]
            if rows:
                _hall(board, hall, rows, shown)
    return shown


def _acts(board: Board) -> None:
    """What the planner does here, one a tab."""
    st.header(say("bookings-acts"))
    ahead = [row.booking for row in board.rows if row.booking.start >= board.as_of]
    tabs = st.tabs([say(code) for code in ("tab-plan", "tab-one", "tab-absence", "tab-earlier")])
    with tabs[0]:
        plan_form([b.key for b in ahead], [b.key for b in ahead if b.firm])
    with tabs[1]:
        looms = [row.booking.key for row in board.rows] + (
            [left.key for left in board.plan.left_over] if board.plan else []
        )
        one_booking_part(sorted(looms, key=lambda key: key.sort_key))
    with tabs[2]:
        absence_part()
    with tabs[3]:
        earlier_plans()


def _hours() -> None:
    """Hours of each trade by week beside what there is."""
    weeks = access.ask(week_hours)
    trades = list(dict.fromkeys(week.trade for week in weeks))
    if not trades:
        return
    st.header(say("hours-heading"))
    st.caption(say("hours-about"))
    for at, trade in zip(st.columns(len(trades)), trades, strict=True):
        mine = [week for week in weeks if week.trade == trade]
        with at:
            st.subheader(literal(trade))
            st.altair_chart(hours_chart(hours_frame(mine)), theme=None, alt=say("hours-figure", trade=trade))
    with st.expander(say("hours-table")):
        _hours_table(weeks, trades)


def _hours_table(weeks: Sequence[TradeWeek], trades: Sequence[str]) -> None:
    found = {(week.trade, week.monday): week for week in weeks}
    mondays = sorted({week.monday for week in weeks})
    columns = [*heads("hours-week", whole=True), *(Head(trade, right=True) for trade in trades)]
    table(columns, [
        [iso_week(monday), *(Cell(hours_says(w), w.booked_h / (w.there_h or 1)) for t in trades if (w := found[t, monday]))]
        for monday in mondays
    ])  # fmt: skip


def _filters(board: Board) -> Shown:
    halls_at, types_at, loom_at = st.columns([3, 3, 2])
    asked = [hall for hall in st.query_params.get_all("hall") if hall in board.halls]
    halls = halls_at.multiselect(say("filter-hall"), board.halls, asked, placeholder=say("filter-all-halls"))
    st.query_params.from_dict({**st.query_params.to_dict(), "hall": halls})
    types = types_at.multiselect(say("filter-type"), board.machine_types, placeholder=say("filter-all-types"))
    number = _number(loom_at)
    rows = [
        row
        for row in board.rows
        if (not halls or row.booking.key.hall in halls)
        and (not types or row.machine_type in types)
        and _fits(number, row.booking.key)
    ]
    by_at, zoom_at, week_at = st.columns([3, 2, 4])
    by = by_at.segmented_control(
        say("bookings-rows"), [BY_HALL, BY_CREW], default=BY_HALL, required=True, format_func=say, key="bookings rows"
    )
    zoom = zoom_at.segmented_control(
        say("bookings-show"),
        list(ZOOMS),
        default=next(iter(ZOOMS)),
        required=True,
        format_func=say,
        key="bookings zoom",
    )
    exact = [row for row in rows if number and fold(row.booking.key.loom) == fold(number)]
    mondays, counts = weeks_of(board), Counter(_monday(row, board) for row in rows)
    days = ZOOMS[zoom]
    first = week_at.selectbox(
        say("bookings-from-week"), mondays, index=_first_week(board, mondays, exact or (rows if number else ()), days),
        key=f"from week {number}", format_func=lambda m: say("week-says", week=iso_week(m), monday=m, bookings=counts[m]),
    )  # fmt: skip
    return Shown(first, days, in_span(rows, board, first, days), number, by)


def _number(where: DeltaGenerator) -> str:
    """The loom number sought. It stands in the address, so that it is still there on the way back from a loom's sheet."""
    number = where.text_input(
        say("bookings-sought"), st.query_params.get("loom", ""), key="loom sought", placeholder=say("filter-all-looms")
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
        st.info(literal(say("bookings-no-such", number=shown.number)))
    if found:
        lines = [literal(say("bookings-unbooked", loom=key, why=why)) for key, why in found[:MOST_UNBOOKED]]
        if (more := len(found) - MOST_UNBOOKED) > 0:
            lines.append(say("and-so-many-more", many=more))
        st.info("\n".join([say("bookings-without"), "", *(f"- {line}" for line in lines)]))


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
            say("bookings-page"), range(len(pages)), default=0, required=True, key=f"page of {hall}",
            format_func=lambda i: f"{i * ROWS_PER_PAGE + 1}–{i * ROWS_PER_PAGE + len(pages[i])}",
        )  # fmt: skip
    frame = board_frame(pages[chosen], board.zone)
    rest = rest_frame(board.working.get(hall, ()), board.zone, shown.first, shown.days)
    chart = board_chart(frame, rest, shown.first, shown.days, wall_ms(board.as_of, board.zone))
    st.altair_chart(chart, theme=None, alt=say("bookings-figure", hall=hall))


def _crews(board: Board, shown: Shown) -> None:
    frame = crew_frame(shown.rows, board.zone)
    crews = sorted(dict.fromkeys(frame["crew"]))
    if not crews:
        st.info(say("bookings-no-crews"))
        return
    chart = crew_chart(frame, crews, shown.first, shown.days, wall_ms(board.as_of, board.zone))
    st.altair_chart(chart, theme=None, alt=say("bookings-crew-figure"))


def _table(board: Board, rows: Sequence[BoardRow]) -> None:
    """What is looked up most stands first: on a narrow screen the last columns are reached by scrolling."""
    choosing = any(row.booking.choices for row in rows)
    columns = [
        *heads("bookings-loom", "bookings-hall", "bookings-start", "bookings-end", whole=True),
        *heads("bookings-window", "bookings-crew", "bookings-kit", "bookings-stage"),
        *heads("bookings-hours", "bookings-cost", right=True),
        *heads("bookings-type", "bookings-p10", "bookings-p90", whole=True),
        *heads("bookings-who-when"),
        *(heads("bookings-choices") if choosing else []),
    ]
    table(columns, [_record(board, row, choosing) for row in rows])


def _record(board: Board, row: BoardRow, choosing: bool) -> list[Cell | str]:
    booking = row.booking
    return [
        loom_cell(booking.key),
        booking.key.hall,
        Cell(moment(booking.start, board.zone), booking.start),
        Cell(moment(booking.end, board.zone), booking.end),
        ", ".join([SPEAKER.word(booking.kind), *marks(row), *_reading(row)]),
        booking.crew_names,
        say(KIT_WORDS[row.kit]) if row.kit else "",
        stage_cell(row.stage),
        Cell(number(booking.labour_h, "", 1), booking.labour_h),
        Cell(money(booking.cost.total), booking.cost.total),
        row.machine_type,
        *_beam_out(board, row),
        who_and_when(booking, board.zone),
        *([", ".join(f"{choice}: {taken}" for choice, taken in booking.choices)] if choosing else []),
    ]


def _beam_out(board: Board, row: BoardRow) -> list[Cell]:
    out = row.beam_out
    if out is None:
        return [Cell(""), Cell("")]
    return [Cell(moment(at, board.zone), at) for at in (out.p10_at, out.p90_at)]


def _reading(row: BoardRow) -> list[str]:
    """A word where the forecast rests on a reading that should be taken again."""
    state = row.beam_out.state if row.beam_out else "ok"
    return (
        [] if state == "ok" else [say("bookings-reading-overdue" if state == "overdue" else "bookings-reading-stale")]
    )
