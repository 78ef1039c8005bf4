"""Rehearsal: the published plan played many times: by when, at what cost, what breaks it, what that is worth."""

from typing import Any

import streamlit as st

from dashboards import access, job_parts
from dashboards.charts import spread_chart
from dashboards.downloads import download
from dashboards.empty import no_plan
from dashboards.forms import Form, button, say_done
from dashboards.parts import figures, heads, literal, table
from dashboards.rehearsed import (
    POLICIES,
    SPREAD,
    cost_frame,
    done_rows,
    figures_of,
    ground_rows,
    policy_rows,
    policy_word,
    risk_rows,
    tuned_rows,
    worry_rows,
)
from dashboards.speaking import SPEAKER, moment, say
from dashboards.tables import Head
from tracker.domain.jobs import JobKind
from tracker.rehearsal.rehearsing import REPLANNED_RUNS
from tracker.services.people.permissions import May
from tracker.services.plans.rehearsal_book import NAME, rehearsal_file
from tracker.services.plans.rehearsal_says import said
from tracker.services.plans.rehearse import RehearsalRequest
from tracker.services.plans.tune import TUNE_ON, accept_tuning
from tracker.services.plans.tuning_says import tuning_said, ways_of
from tracker.services.screens.rehearsal_board import RehearsalBoard, rehearsal_board

MOST_RUNS = 10_000
"""As many as a screen asks for."""
RISKS_SHOWN = 30


def page() -> None:
    st.title(say("screen-rehearsal"))
    st.caption(say("rehearsal-about"))
    board = access.ask(rehearsal_board)
    if board.plan is None:
        no_plan(say("rehearsal-then"))
        return
    say_done()
    job_parts.show(JobKind.REHEARSAL)
    if board.kept is None:
        st.info(say("rehearsal-none-yet", may=access.may(May.PLAN)))
    else:
        _shown(board, board.kept.result)
    if access.may(May.PLAN):
        _ask()
    _surviving(board)


# ---- what came of it


def _shown(board: RehearsalBoard, result: Any) -> None:
    assert board.kept
    at, who = moment(board.kept.made_at, board.zone), board.kept.who
    st.caption(literal(say("rehearsal-made", at=at, who=who, runs=result["runs"], stopped=bool(result["stopped"]))))
    figures(figures_of(result))
    for line in said(result):
        st.write(literal(SPEAKER.say(line)))
    download(say("rehearsal-workbook"), rehearsal_file, NAME)
    st.header(say("rehearsal-milestones"))
    table(
        [*heads("rehearsal-head-looms", "rehearsal-head-reached", right=True), *SPREAD], done_rows(result), sorts=False
    )
    _costs(result)
    _worries(result)
    _risks(board, result)
    st.header(say("rehearsal-grounds"))
    _grounds(result, "grounds")


def _costs(result: Any) -> None:
    cash = result["currency"]
    st.header(say("rehearsal-costs"))
    chart = spread_chart(cost_frame(result), result["plan_says"]["cost"], cash)
    st.altair_chart(chart, theme=None, alt=say("rehearsal-costs-alt"))
    st.caption(say("rehearsal-costs-help"))
    columns = [*heads("rehearsal-played"), *heads("rehearsal-runs-asked", right=True), *SPREAD,
               *_in_money(cash, "rehearsal-head-mean", "rehearsal-head-lost-looms"),
               *heads("rehearsal-head-idle", right=True)]  # fmt: skip
    table(columns, policy_rows(result), sorts=False)


def _worries(result: Any) -> None:
    if not result["worries"]:
        return
    st.header(say("rehearsal-worries"))
    amounts = _in_money(result["currency"], "rehearsal-head-saves", "rehearsal-head-least", "rehearsal-head-most")
    table([*heads("rehearsal-head-certain"), *amounts, *heads("rehearsal-head-sure")], worry_rows(result))


def _in_money(currency: str, *codes: str) -> list[Head]:
    return [Head(say(code, currency=currency), right=True) for code in codes]


def _risks(board: RehearsalBoard, result: Any) -> None:
    rows = risk_rows(result, board.zone)
    if not rows:
        return
    st.header(say("rehearsal-risks"))
    columns = [*heads("head-loom", "head-hall", "head-start", whole=True),
               *heads("rehearsal-head-on-time", "rehearsal-head-lost", right=True),
               *heads("rehearsal-head-held-up")]  # fmt: skip
    table(columns, rows, first=RISKS_SHOWN)
    if len(rows) > RISKS_SHOWN:
        with st.expander(say("rehearsal-others", many=len(rows) - RISKS_SHOWN)):
            table(columns, rows[RISKS_SHOWN:], name="other risks", files=False)


def _grounds(result: Any, name: str) -> None:
    codes = ("rehearsal-head-varies", "rehearsal-head-whose", "rehearsal-head-from", "rehearsal-head-records")
    table(heads(*codes), ground_rows(result), sorts=False, name=name)


# ---- play it


def _ask() -> None:
    st.header(say("rehearsal-play"))
    with Form("rehearsal") as form:
        asked = _asked()
        form.act(say("rehearsal-play"), lambda: job_parts.begin(JobKind.REHEARSAL, asked))
        st.caption(say("rehearsal-play-help", most=REPLANNED_RUNS))


def _asked() -> dict[str, Any]:
    """The arguments of the job."""
    usual = RehearsalRequest()
    left, middle, right = st.columns(3)
    runs = left.number_input(say("rehearsal-runs-asked"), 1, MOST_RUNS, usual.runs, 50)
    names = list(POLICIES)
    first = middle.selectbox(say("rehearsal-played"), names, format_func=policy_word)
    others = [name for name in usual.policies if name != first]
    against = right.multiselect(say("rehearsal-held-against"), names, others, format_func=policy_word)
    worries = None if st.checkbox(say("rehearsal-worries-asked"), True) else False
    as_of = access.state().as_of.isoformat()
    return {"runs": int(runs), "policies": [first, *against], "worries": worries, "as_of": as_of}


# ---- so that it survives


def _surviving(board: RehearsalBoard) -> None:
    """What was found to let the plan survive, and the buttons that look for it and take it over."""
    if board.tuning is None and not access.may(May.PLAN):
        return
    st.header(say("surviving"))
    st.caption(say("surviving-about"))
    job_parts.show(JobKind.TUNING)
    if board.tuning:
        _tuned(board, board.tuning.result)
    if access.may(May.PLAN):
        _tune()


def _tuned(board: RehearsalBoard, result: Any) -> None:
    assert board.tuning
    at, who = moment(board.tuning.made_at, board.zone), board.tuning.who
    st.caption(literal(say("surviving-made", at=at, who=who)))
    for line in tuning_said(result):
        st.write(literal(SPEAKER.say(line)))
    columns = [Head(say("surviving-ways"), whole=True),
               *_in_money(result["currency"], "surviving-paper", "surviving-hall", "surviving-more", "surviving-from",
                          "surviving-to")]  # fmt: skip
    table(columns, tuned_rows(result), name="tuned")
    if "rests_on" in result:
        with st.expander(say("rehearsal-grounds")):
            _grounds(result, "tuned grounds")
    if result["helps"] and access.may(May.PLAN):
        button("take over tuning", say("surviving-accept"), lambda: accept_tuning(access.context()).message,
               asks=say("surviving-accept-asks", ways=ways_of(result["best"])))  # fmt: skip


def _tune() -> None:
    usual = RehearsalRequest()
    with Form("tuning") as form:
        left, right = st.columns(2)
        tune_on = left.number_input(say("surviving-tune-on"), 2, MOST_RUNS, TUNE_ON, 10)
        runs = right.number_input(say("surviving-judge"), 2, MOST_RUNS, usual.runs, 50)
        asked = {"tune_on": int(tune_on), "runs": int(runs), "as_of": access.state().as_of.isoformat()}
        form.act(say("surviving-tune"), lambda: job_parts.begin(JobKind.TUNING, asked))
        st.caption(say("surviving-tune-help"))
