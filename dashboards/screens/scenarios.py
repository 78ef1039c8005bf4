"""Scenarios: plans made as if something were otherwise, side by side with the plan in force."""

from collections.abc import Callable

import streamlit as st

from dashboards import access, job_parts
from dashboards.charts import scenario_chart
from dashboards.empty import no_plan
from dashboards.forms import Form, say_done
from dashboards.frames import plan_name, scenario_frame, term_word
from dashboards.parts import literal, of_part, table
from dashboards.sentences import share
from dashboards.speaking import count, day, money, number, say
from dashboards.tables import Head
from tracker.domain.jobs import JobKind
from tracker.domain.plan import CostTerms
from tracker.domain.words import fold
from tracker.errors import Message, UsageError
from tracker.services.people.permissions import May
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
    st.title(say("screen-scenarios"))
    st.caption(say("scenarios-about"))
    board = access.ask(scenario_board)
    if not board.lines:
        no_plan(say("scenarios-then"))
        return
    say_done()
    job_parts.show(JobKind.SCENARIO)
    if len(board.lines) == 1:
        st.caption(say("scenarios-only-one", may=access.may(May.PLAN)))
    _compare(board)
    if access.may(May.PLAN):
        _make(board)


# ---- side by side


def _compare(board: ScenarioBoard) -> None:
    chart = scenario_chart(scenario_frame(board), board.currency)
    st.altair_chart(chart, theme=None, alt=say("scenarios-chart"))
    columns = [
        Head(say("scenarios-what"), whole=True),
        *(Head(_heading(line, board), right=True) for line in board.lines),
    ]
    table(columns, [[name, *map(says, board.lines)] for name, says in _figures(board)], sorts=False)
    if len({line.plan.horizon_end for line in board.lines}) > 1:
        st.caption(say("scenarios-unlike"))


def _heading(line: PlanLine, board: ScenarioBoard) -> str:
    made_at = line.made_at and line.made_at.astimezone(board.zone)
    return say("scenarios-made", name=plan_name(line), at=made_at) if made_at else plan_name(line)


def _figures(board: ScenarioBoard) -> list[tuple[str, Callable[[PlanLine], str]]]:
    """Each figure and what a plan says of it."""
    cash, first = board.currency, board.lines[0]

    def term(field: str) -> Callable[[PlanLine], str]:
        return lambda line: money(getattr(line.cost, field), cash)

    return [
        (say("scenarios-cost"), lambda line: money(line.comparable, cash)),
        (say("scenarios-against", name=plan_name(first)), lambda line: money(line.comparable - first.comparable, cash)),
        *((f"· {term_word(field)}", term(field)) for field in CostTerms.__slots__ if field != "moves"),
        (f"· {say('chart-left-over')}", lambda line: money(line.left_over_cost, cash)),
        (say("scenarios-moves"), lambda line: money(line.cost.moves, cash)),
        (say("scenarios-booked"), lambda line: count(len(line.plan.bookings), "so-many-looms")),
        (say("scenarios-left-over"), lambda line: count(len(line.plan.left_over), "so-many-looms")),
        (say("scenarios-ends"), lambda line: day(line.finish_on) or say("scenarios-none")),
        (say("scenarios-stopped"), lambda line: number(line.stopped_h, "h")),
        (say("scenarios-gap"), lambda line: share(line.plan.gap)),
    ]


# ---- a new one


def _make(board: ScenarioBoard) -> None:
    st.header(say("scenarios-new"))
    with Form("scenario") as form:
        wishes = _wishes(board, form)
        seconds = st.number_input(say("scenarios-seconds"), 5, LONGEST_S, 60, 5)
        form.act(say("scenarios-plan"), lambda: _begin(wishes, float(seconds), board))
        st.caption(say("scenarios-plan-help"))


def _begin(wishes: Wishes, seconds: float, board: ScenarioBoard) -> Message:
    """Start planning it. UsageError for a name that it cannot have."""
    if not wishes.name:
        raise UsageError("scenario-unnamed")
    for line in board.lines:
        if fold(line.name) == fold(wishes.name):
            raise UsageError("scenario-name-taken", name=line.name)
    as_of = access.state().as_of.isoformat()
    return job_parts.begin(JobKind.SCENARIO, {"text": scenario_text(wishes), "time_limit_s": seconds, "as_of": as_of})


def _wishes(board: ScenarioBoard, form: Form) -> Wishes:
    """What the form asks for; only what differs from the data becomes part of the scenario."""
    name = st.text_input(say("scenarios-name"), placeholder=say("scenarios-name-such-as"), max_chars=LONGEST_NAME)
    form.beside("scenario-unnamed", "scenario-name-taken")
    heads = {}
    for at, (crew, now) in zip(st.columns(max(1, len(board.heads))), board.heads.items(), strict=False):
        wanted = at.number_input(literal(say("scenarios-heads", crew=crew)), 0, 100, now)
        if wanted != now:
            heads[crew] = int(wanted)
    left, middle, right = st.columns(3)
    horizon = left.number_input(say("scenarios-horizon"), 1, 1000, board.horizon_days)
    target = middle.date_input(say("scenarios-target"), board.target_finish, format="YYYY-MM-DD")
    closed = right.date_input(say("scenarios-closed"), None, format="YYYY-MM-DD")
    left, right = st.columns(2)
    line = left.selectbox(
        say("scenarios-later"), board.receipts, index=None, placeholder=say("scenarios-none"),
        format_func=lambda r: say(
            "scenarios-order", order=r.order, what=of_part(r.quantity, r.part, board.units), due=r.due
        ),
    )  # fmt: skip
    weeks = right.number_input(say("scenarios-weeks"), 1, 52, 2)
    return Wishes(
        name.strip(),
        heads,
        int(horizon) if horizon != board.horizon_days else None,
        target if target != board.target_finish else None,
        later_receipt(line, int(weeks)) if line else None,
        closed,
    )
