"""What a planner decides about one booking (another date, keep it, rule its window out, release it), and who is away."""

from collections.abc import Sequence
from datetime import date

import streamlit as st

from dashboards import access, forms, job_parts, wishes
from dashboards.forms import Form
from dashboards.parts import heads, literal, table
from dashboards.speaking import day, say, typed_day
from dashboards.tables import Cell
from tracker.domain.jobs import JobKind
from tracker.domain.mill import Absence, LoomKey
from tracker.domain.plan import OtherDate, Placed
from tracker.errors import DataError, Message
from tracker.services.jobs.kinds import plan_arguments
from tracker.services.people.absences import AbsenceRecorded, WhoIsAway, crews_and_absences, end_absence, record_absence
from tracker.services.plans.plan import PlanRequest
from tracker.services.screens.one_booking import OneBooking, one_booking

# ---- one booking


def one_booking_part(looms: Sequence[LoomKey]) -> None:
    """`looms`: those of the plan, booked or left over."""
    st.write(say("one-about"))
    asked = st.query_params.get("loom"), st.query_params.get("hall")
    first = next((i for i, key in enumerate(looms) if (key.loom, key.hall) == asked), None)
    key = st.selectbox(say("bookings-loom"), looms, first, str, key="one booking", placeholder=say("choose-a-loom"))
    if key is None:
        return
    found = access.ask_now(one_booking, key)
    _where(found)
    _wishes(found)
    _dates(found)


def _where(found: OneBooking) -> None:
    dates = found.dates
    if dates.left_over:
        st.info(literal(say("one-left-over", loom=dates.key, why=dates.left_over.why)))
    elif dates.booking:
        b, zone = dates.booking, dates.zone
        st.write(literal(say(
            "one-booked", loom=b.key, start=b.start.astimezone(zone), end=b.end.astimezone(zone), kind=b.kind,
            crew=b.crew_names or None, cost=b.cost.total, currency=dates.currency, firm="yes" if b.firm else "no",
        )))  # fmt: skip


def _wishes(found: OneBooking) -> None:
    """Gathered here, they count with the next plan."""
    booking, key = found.dates.booking, found.dates.key
    if booking is None or not found.ahead:
        return
    with st.container(horizontal=True):
        st.button(say("one-keep"), key=f"keep {key}", on_click=wishes.add, args=(wishes.HOLD, key))
        if found.window:
            st.button(
                say("one-rule-out"), key=f"rule out {key}", on_click=wishes.add, args=(wishes.RULE_OUT, found.window)
            )
        if booking.firm:
            st.button(say("one-release"), key=f"release {key}", on_click=wishes.add, args=(wishes.RELEASE, key))
    st.caption(say("one-wishes"))


def _dates(found: OneBooking) -> None:
    st.subheader(say("one-dates"))
    if not found.dates.dates:
        st.caption(say("one-no-dates"))
        return
    st.caption(say("one-dates-about"))
    for other in found.dates.dates:
        forms.button(f"take {other.key} {other.start}", _says(found, other), lambda o=other: _take(o))


def _says(found: OneBooking, other: OtherDate) -> str:
    zone = found.dates.zone
    return say("one-take", start=other.start.astimezone(zone), end=other.end.astimezone(zone), kind=other.kind,
               cost=other.extra_cost, currency=found.dates.currency)  # fmt: skip


def _take(other: OtherDate) -> Message:
    """A plan in which only this booking is another, published as soon as it is made."""
    placed = Placed(other.key, other.start, other.choices)
    request = PlanRequest(publish=True, as_of=access.state().as_of, placed=(placed,))
    return job_parts.begin(JobKind.PLAN, plan_arguments(request))


# ---- who is away


def absence_part() -> None:
    st.write(say("absence-about"))
    found = access.ask(crews_and_absences)
    if not found.crews:
        st.info(say("absence-no-crews"))
        return
    with Form("absence") as form:
        crew_at, first_at, last_at, heads_at, why_at = st.columns([3, 2, 2, 2, 3])
        crew = crew_at.selectbox(say("absence-crew"), list(found.crews), key=form.key("crew"))
        first = first_at.date_input(say("absence-from"), None, key=form.key("from"), format=typed_day())
        last = last_at.date_input(say("absence-to"), None, key=form.key("to"), format=typed_day())
        away = heads_at.number_input(
            say("absence-heads"), 1, 100, None, 1, key=form.key("heads"), placeholder=say("absence-all")
        )
        why = why_at.text_input(say("reason"), key=form.key("why"))
        form.act(say("absence-enter"), lambda: _away(crew, first, last, away, why))
    _known(found)


def _away(crew: str, first: date | None, last: date | None, away: float | None, why: str) -> AbsenceRecorded:
    if first is None:
        raise DataError("absence-no-day")
    return record_absence(access.context(), crew, first, last or first, None if away is None else int(away), why)


def _known(found: WhoIsAway) -> None:
    if not found.absences:
        return
    columns = [
        *heads("absence-crew", "absence-from", "absence-to", whole=True),
        *heads("absence-heads", right=True),
        *heads("reason"),
    ]
    table(columns, [
        [a.crew, Cell(day(a.from_on), a.from_on), Cell(day(a.to_on), a.to_on),
         say("absence-all") if a.heads is None else str(a.heads), a.reason or ""]
        for a in found.absences
    ])  # fmt: skip
    with Form("back again") as form:
        found = form.as_shown(found)
        which_at, on_at = st.columns(2)
        away = which_at.selectbox(
            say("absence-which"), range(len(found.absences)), None, lambda i: _absence_says(found.absences[i]),
            key=form.key("which"), placeholder=say("absence-choose"),
        )  # fmt: skip
        back = on_at.date_input(say("absence-back"), None, key=form.key("back"), format=typed_day())
        form.act(say("absence-end"), lambda: _back(form, found, away, back), primary=False)


def _absence_says(absence: Absence) -> str:
    return say("absence-says", crew=absence.crew, first=absence.from_on, last=absence.to_on)


def _back(form: Form, found: WhoIsAway, away: int | None, back: date | None) -> AbsenceRecorded:
    if away is None or back is None:
        raise DataError("absence-not-chosen")
    one = found.absences[away]
    context = form.having_shown("absences", (one.crew, one.from_on), to_on=one.to_on, heads=one.heads)
    return end_absence(context, one.crew, back)
