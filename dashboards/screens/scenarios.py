"""Scenarios: plans made as if something were otherwise, side by side with the plan in force."""

from collections.abc import Callable, Sequence
from dataclasses import replace

import streamlit as st

from dashboards import access, job_parts, scenario_form
from dashboards.charts import scenario_chart
from dashboards.empty import no_plan
from dashboards.forms import Form, say_done
from dashboards.frames import BESIDE, plan_name, scenario_frame, term_word
from dashboards.parts import table
from dashboards.scenario_in_force import in_force_part
from dashboards.sentences import share
from dashboards.speaking import count, day, money, number, say
from dashboards.tables import Head
from tracker.domain.jobs import JobKind
from tracker.domain.plan import CostTerms
from tracker.domain.words import fold
from tracker.errors import Message, UsageError
from tracker.services.context import Context
from tracker.services.people.permissions import May
from tracker.services.plans.scenario_draft import scenario_text
from tracker.services.plans.setting_aside import aside, list_again, set_aside
from tracker.services.screens.scenario_board import PlanLine, ScenarioBoard, scenario_board

LONGEST_S = 600
LONGEST_NAME = 40
"""Characters: so much fits over a column and beside a bar."""


def page() -> None:
    st.title(say("screen-scenarios"))
    st.caption(say("scenarios-about"))
    board, put_aside = _listed(access.ask(scenario_board))
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
        _keep(board, put_aside)


def _listed(board: ScenarioBoard) -> tuple[ScenarioBoard, list[str]]:
    """What of it is listed, and the names of what is set aside: looked up each time, since that changes nothing of the mill."""
    out = aside(access.context())
    lines = [line for line in board.lines if line.made_at is None or line.name not in out]
    return replace(board, lines=tuple(lines)), [line.name for line in board.lines if line not in lines]


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
        *((f"· {term_word(field)}", term(field)) for field in CostTerms.__slots__ if field not in BESIDE),
        (f"· {say('chart-left-over')}", lambda line: money(line.left_over_cost, cash)),
        (say("scenarios-moves"), lambda line: money(line.cost.moves, cash)),
        (say("scenarios-surviving"), lambda line: money(line.cost.surviving, cash)),
        (say("scenarios-booked"), lambda line: count(len(line.plan.bookings), "so-many-looms")),
        (say("scenarios-left-over"), lambda line: count(len(line.plan.left_over), "so-many-looms")),
        (say("scenarios-ends"), lambda line: day(line.finish_on) or say("scenarios-none")),
        (say("scenarios-stopped"), lambda line: number(line.stopped_h, "h")),
        (say("scenarios-gap"), lambda line: share(line.plan.gap)),
    ]


# ---- a new one


def _make(board: ScenarioBoard) -> None:
    st.header(say("scenarios-new"))
    st.caption(say("scenarios-new-about"))
    scenario_form.gather(board)
    with Form("scenario") as form:
        name = st.text_input(say("scenarios-name"), placeholder=say("scenarios-name-such-as"), max_chars=LONGEST_NAME,
                             key=form.key("name"))  # fmt: skip
        form.beside("scenario-unnamed", "scenario-name-taken")
        seconds = st.number_input(say("scenarios-seconds"), 5, LONGEST_S, 60, 5, key=form.key("seconds"))
        form.act(say("scenarios-plan"), lambda: _begin(name.strip(), float(seconds), board))
        st.caption(say("scenarios-plan-help"))


def _begin(name: str, seconds: float, board: ScenarioBoard) -> Message:
    """Start planning it. UsageError for a name that it cannot have."""
    if not name:
        raise UsageError("scenario-unnamed")
    for line in board.lines:
        if fold(line.name) == fold(name):
            raise UsageError("scenario-name-taken", name=line.name)
    text, as_of = scenario_text(name, scenario_form.draft()), access.state().as_of.isoformat()
    return job_parts.begin(JobKind.SCENARIO, {"text": text, "time_limit_s": seconds, "as_of": as_of})


# ---- what becomes of one


def _keep(board: ScenarioBoard, put_aside: list[str]) -> None:
    listed = [line.name for line in board.lines if line.made_at is not None]
    if listed:
        in_force_part(listed)
    if listed or put_aside:
        st.header(say("scenarios-aside"))
        st.caption(say("scenarios-aside-about"))
    _one_of(listed, say("scenarios-set-aside"), set_aside)
    _one_of(put_aside, say("scenarios-list-again"), list_again)


def _one_of(names: Sequence[str], label: str, do: Callable[[Context, str], Message]) -> None:
    if names:
        with Form(label) as form:
            name = st.selectbox(say("scenarios-which"), names, key=form.key("name"))
            form.act(label, lambda: do(access.context(), name), primary=False)
