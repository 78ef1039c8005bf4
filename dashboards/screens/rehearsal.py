"""Rehearsal: the published plan played many times: by when, at what cost, what breaks it, what that is worth."""

from typing import Any

import streamlit as st

from dashboards import access, job_parts
from dashboards.charts import spread_chart
from dashboards.empty import no_plan
from dashboards.forms import Form, say_done
from dashboards.parts import figures, literal, table
from dashboards.rehearsed import (
    POLICIES,
    SPREAD,
    cost_frame,
    done_rows,
    figures_of,
    policy_rows,
    policy_word,
    risk_rows,
    worry_rows,
)
from dashboards.speaking import SPEAKER, count, moment, say
from dashboards.tables import Head
from tracker.domain.jobs import JobKind
from tracker.services.people.permissions import May
from tracker.services.plans.rehearsal_book import NAME, rehearsal_file
from tracker.services.plans.rehearsal_says import said
from tracker.services.plans.rehearse import RehearsalRequest
from tracker.services.screens.rehearsal_board import RehearsalBoard, rehearsal_board

MOST_RUNS = 10_000
"""As many as a screen asks for."""
RISKS_SHOWN = 30


def page() -> None:
    st.title("Rehearsal")
    st.caption(
        "The published plan played from today to its horizon, many times, with beam-outs, work, people, deliveries, failures "
        "and orders drawn anew each time. Estimates, not promises."
    )
    board = access.ask(rehearsal_board)
    if board.plan is None:
        no_plan("rehearse it here then")
        return
    say_done()
    job_parts.show(JobKind.REHEARSAL)
    if board.kept is None:
        below = " Say below how often it is to be played." if access.may(May.PLAN) else " A planner can have it played."
        st.info(f"The plan in force was not rehearsed yet.{below}")
    else:
        _shown(board, board.kept.result)
    if access.may(May.PLAN):
        _ask()


# ---- what came of it


def _shown(board: RehearsalBoard, result: Any) -> None:
    assert board.kept
    st.caption(
        f"Rehearsed {moment(board.kept.made_at, board.zone)} by {literal(board.kept.who)}, "
        f"{count(result['runs'], 'so-many-runs')}{', stopped before the end' if result['stopped'] else ''}"
    )
    figures(figures_of(result))
    for line in said(result):
        st.write(literal(SPEAKER.say(line)))
    st.download_button("All of it as a workbook", lambda: rehearsal_file(access.context()), file_name=NAME)
    st.header("When so many looms are done")
    table([Head("Looms", right=True), Head("Reached", right=True), *SPREAD], done_rows(result), sorts=False)
    _costs(result)
    _worries(result)
    _risks(board, result)


def _costs(result: Any) -> None:
    cash = result["currency"]
    st.header("What it costs")
    chart = spread_chart(cost_frame(result), result["plan_says"]["cost"], cash)
    st.altair_chart(chart, theme=None, alt="Lines: cost of each way from P10 to P90; the table says the same")
    st.caption("A line goes from P10 to P90, its dot is P50; the broken line is what the plan itself says.")
    columns = [Head("Played"), Head("Runs", right=True), *SPREAD, Head(f"Mean ({cash})", right=True),
               Head(f"Of lost looms ({cash})", right=True), Head("Crews idle (h)", right=True)]  # fmt: skip
    table(columns, policy_rows(result), sorts=False)


def _worries(result: Any) -> None:
    if not result["worries"]:
        return
    st.header("What each worry is worth")
    columns = [Head("If it were certain"), *(Head(f"{name} ({result['currency']})", right=True)
               for name in ("Saves", "At least", "At most")), Head("95 % sure")]  # fmt: skip
    table(columns, worry_rows(result))


def _risks(board: RehearsalBoard, result: Any) -> None:
    rows = risk_rows(result, board.zone)
    if not rows:
        return
    st.header("Bookings at risk")
    columns = [Head("Loom", whole=True), Head("Hall", whole=True), Head("Start", whole=True), Head("Within a day", right=True),
               Head("Lost", right=True), Head("Held up most by")]  # fmt: skip
    table(columns, rows[:RISKS_SHOWN])
    if len(rows) > RISKS_SHOWN:
        with st.expander(f"The other {len(rows) - RISKS_SHOWN}"):
            table(columns, rows[RISKS_SHOWN:])


# ---- play it


def _ask() -> None:
    st.header(say("rehearsal-play"))
    with Form("rehearsal") as form:
        asked = _asked()
        form.act(say("rehearsal-play"), lambda: job_parts.begin(JobKind.REHEARSAL, asked))
        st.caption(say("rehearsal-play-help"))


def _asked() -> dict[str, Any]:
    """The arguments of the job."""
    usual = RehearsalRequest()
    left, middle, right = st.columns(3)
    runs = left.number_input(say("rehearsal-runs-asked"), 1, MOST_RUNS, usual.runs, 50)
    names = list(POLICIES)
    first = middle.selectbox(say("rehearsal-played"), names, format_func=policy_word)
    others = [name for name in usual.policies if name != first]
    against = right.multiselect(say("rehearsal-held-against"), names, others, format_func=policy_word)
    worries = st.checkbox(say("rehearsal-worries-asked"), usual.worries)
    as_of = access.state().as_of.isoformat()
    return {"runs": int(runs), "policies": [first, *against], "worries": worries, "as_of": as_of}
