"""Scenarios: plans made as if something were otherwise, side by side with the plan in force."""

from collections.abc import Callable

import streamlit as st
from streamlit.delta_generator import DeltaGenerator

from dashboards import access
from dashboards.charts import scenario_chart
from dashboards.empty import no_plan
from dashboards.frames import TERM_WORDS, scenario_frame
from dashboards.parts import literal, of_part, table
from dashboards.sentences import share
from dashboards.speaking import SPEAKER, count, day, moment, money, number
from dashboards.tables import Head
from dashboards.uploads import kept_text
from tracker.domain.plan import CostTerms
from tracker.domain.words import fold
from tracker.errors import Message, TrackerError
from tracker.services.people.permissions import May
from tracker.services.plans.plan import PlanRequest, Progress, Search, plan
from tracker.services.screens.scenario_board import (
    PlanLine,
    ScenarioBoard,
    Wishes,
    later_receipt,
    scenario_board,
    scenario_text,
)

LONGEST_S = 600
LONGEST_NAME = 40
"""Characters: so much fits over a column and beside a bar."""


def page() -> None:
    st.title("Scenarios")
    st.caption("Plans made as if something were otherwise. The published plan stays as it is.")
    board = access.ask(scenario_board)
    if not board.lines:
        no_plan("compare it here with others then")
        return
    if done := st.session_state.pop("scenario made", None):
        st.success(literal(done))
    if len(board.lines) == 1:
        st.caption("Only one plan so far." + (" Make a scenario below." if access.may(May.PLAN) else ""))
    _compare(board)
    if access.may(May.PLAN):
        _make(board)


# ---- side by side


def _compare(board: ScenarioBoard) -> None:
    chart = scenario_chart(scenario_frame(board), board.currency)
    st.altair_chart(chart, theme=None, alt="Bars: cost of each plan by term; the table says the same")
    columns = [
        Head("What", whole=True),
        *(Head(_heading(line, board), right=True) for line in board.lines),
    ]
    table(columns, [[name, *map(says, board.lines)] for name, says in _figures(board)], sorts=False)
    if len({line.plan.horizon_end for line in board.lines}) > 1:
        st.caption(
            "The plans do not reach equally far: what is left over is counted to the end of each, so the costs compare "
            "only in part."
        )


def _heading(line: PlanLine, board: ScenarioBoard) -> str:
    return line.name if line.made_at is None else f"{line.name}, made {moment(line.made_at, board.zone)}"


def _figures(board: ScenarioBoard) -> list[tuple[str, Callable[[PlanLine], str]]]:
    """Each figure and what a plan says of it."""
    cash, first = board.currency, board.lines[0]

    def term(field: str) -> Callable[[PlanLine], str]:
        return lambda line: money(getattr(line.cost, field), cash)

    return [
        ("cost without moves", lambda line: money(line.comparable, cash)),
        (f"against {first.name}", lambda line: money(line.comparable - first.comparable, cash)),
        *((f"· {TERM_WORDS[field]}", term(field)) for field in CostTerms.__slots__ if field != "moves"),
        ("· looms left over", lambda line: money(line.left_over_cost, cash)),
        ("apart: moved bookings", term("moves")),
        ("booked", lambda line: count(len(line.plan.bookings), "so-many-looms")),
        ("left over", lambda line: count(len(line.plan.left_over), "so-many-looms")),
        ("last conversion ends", lambda line: day(line.finish_on) or "none"),
        ("weaving hours stopped", lambda line: number(line.stopped_h, "h")),
        ("gap of the proof", lambda line: share(line.plan.gap)),
    ]


# ---- a new one


def _make(board: ScenarioBoard) -> None:
    st.header("A new scenario")
    with st.form("scenario"):
        wishes = _wishes(board)
        seconds = st.number_input("Stop the search after (s)", 5, LONGEST_S, 60, 5)
        sent = st.form_submit_button("Plan it", type="primary")
        st.caption(
            "Stay on this screen until it is done: leaving it stops the planning, and nothing is kept. At the time limit the "
            "best plan found so far is kept."
        )
    said = st.empty()  # one place for both: an older fault goes when a new run begins
    if not sent:
        return
    if why := _name_fault(wishes.name, board):
        said.error(why)
        return
    file = kept_text("scenario.toml", scenario_text(wishes))
    said.progress(0.0, "planning")
    try:
        report = plan(
            access.context(), PlanRequest(scenario=file, as_of=access.state().as_of), Search(float(seconds), _bar(said))
        )
    except TrackerError as error:
        said.error(literal(SPEAKER.line(error)))
        return
    moves = sum(booking.cost.moves for booking in report.plan.bookings)
    cost = money(report.plan.objective - moves, report.plan.currency)
    made = f"{wishes.name}: {count(len(report.plan.bookings), 'so-many-looms')} booked, {cost}."
    made = " ".join([made, *(SPEAKER.line(note) for note in report.notes)])
    access.show_again("scenario made", made)


def _name_fault(name: str, board: ScenarioBoard) -> str:
    """Why a scenario cannot have this name; empty where it can."""
    if not name:
        return "Give the scenario a name."
    taken = fold(name) in (fold(line.name) for line in board.lines)
    return "There is a scenario of that name; choose another." if taken else ""


def _bar(place: DeltaGenerator) -> Progress:
    """Shows how far the search is."""

    def show(what: Message, fraction: float) -> None:
        place.progress(min(1.0, max(0.0, fraction)), literal(SPEAKER.say(what)))

    return show


def _wishes(board: ScenarioBoard) -> Wishes:
    """What the form asks for; only what differs from the data becomes part of the scenario."""
    name = st.text_input("Name", placeholder="rails a week later", max_chars=LONGEST_NAME)
    heads = {}
    for at, (crew, now) in zip(st.columns(max(1, len(board.heads))), board.heads.items(), strict=False):
        wanted = at.number_input(literal(f"Heads: {crew}"), 0, 100, now)
        if wanted != now:
            heads[crew] = int(wanted)
    left, middle, right = st.columns(3)
    horizon = left.number_input("Horizon (days)", 1, 1000, board.horizon_days)
    target = middle.date_input("Target finish", board.target_finish, format="YYYY-MM-DD")
    closed = right.date_input("Nobody converts on", None, format="YYYY-MM-DD")
    left, right = st.columns(2)
    line = left.selectbox(
        "Order line that comes later", board.receipts, index=None, placeholder="none",
        format_func=lambda r: f"{r.order}: {of_part(r.quantity, r.part, board.units)}, due {day(r.due)}",
    )  # fmt: skip
    weeks = right.number_input("by weeks", 1, 52, 2)
    return Wishes(
        name.strip(),
        heads,
        int(horizon) if horizon != board.horizon_days else None,
        target if target != board.target_finish else None,
        later_receipt(line, int(weeks)) if line else None,
        closed,
    )
