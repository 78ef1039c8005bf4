"""A scenario put in force: what it has otherwise is shown value by value, becomes the mill's own data, and is planned from."""

from collections.abc import Sequence

import streamlit as st

from dashboards import access, job_parts, scenario_form
from dashboards.forms import Form
from dashboards.load_parts import value_heads, value_line
from dashboards.parts import literal, table
from dashboards.speaking import SPEAKER, say
from tracker.domain.jobs import JobKind
from tracker.errors import Message, TrackerError, message
from tracker.services.jobs import desk
from tracker.services.jobs.kinds import plan_arguments
from tracker.services.plans.plan import PlanRequest
from tracker.services.plans.put_in_force import InForce, made_in_force, put_in_force

LONGEST_S, USUAL_S = 3600, 60


def in_force_part(names: Sequence[str]) -> None:
    """`names`: of the scenarios that are listed."""
    st.header(say("scenarios-in-force"))
    st.caption(say("scenarios-in-force-about"))
    job_parts.show(JobKind.PLAN)
    name = st.selectbox(say("scenarios-which"), names, None, key="scenario in force", placeholder=say("value-choose"))
    if name is None:
        return
    whole = access.ask(made_in_force, name, ())
    if whole is None:
        st.info(literal(say("scenarios-entries-unknown", name=name)))
        scenario_form.where_to_enter()
        return
    said = tuple(dict.fromkeys(order for order, part in whole.orders if _is_said(name, order, part)))
    found = access.ask(made_in_force, name, said) or whole
    with Form(f"in force {name} {said}") as form:
        found = form.as_shown(found)
        _what(found)
        seconds = st.number_input(say("scenarios-seconds"), 5, LONGEST_S, USUAL_S, 5, key=form.key("seconds"))
        form.act(say("scenarios-put"), lambda: _put(found, float(seconds)), asks=_asks(found))


def _is_said(name: str, order: str, part: str) -> bool:
    return st.checkbox(literal(say("scenarios-said", order=order, part=part)), key=f"said {name} {order} {part}")


def _what(found: InForce) -> None:
    table(value_heads(), [value_line(one) for one in found.lines])
    for order, part in found.unsaid:
        st.write(f"- {literal(SPEAKER.line(message('scenario-order-left', order=order, part=part)))}")


def _asks(found: InForce) -> str:
    left = [order for order, _ in found.unsaid]
    return say("scenarios-put-asks", scenario=found.scenario, values=len(found.changes), left=left or None)


def _put(found: InForce, seconds: float) -> Message:
    """The sentence that was read names what is left out, so that it is accepted here. Where the plan cannot be begun afterwards,
    the data stand, and that is said."""
    context = access.context()
    desk.refuse_second(context, JobKind.PLAN)
    done = put_in_force(context, found, leave_out=True)
    why = None
    try:
        job_parts.begin(JobKind.PLAN, plan_arguments(PlanRequest(as_of=access.state().as_of), seconds))
    except TrackerError as error:
        why = error.message
    return message(
        "scenarios-put-done", scenario=done.scenario, values=len(done.changes), number=str(done.number), why=why
    )
