"""Planning on the screen Bookings: make a plan as a job, see what it moves and why and at what cost, publish it."""

from collections.abc import Sequence

import streamlit as st

from dashboards import access, forms, job_parts, wishes
from dashboards.forms import Form
from dashboards.parts import figures, heads, literal, table
from dashboards.speaking import SPEAKER, count, moment, money, say
from dashboards.tables import Cell, loom_cell
from tracker.domain.jobs import JobKind
from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, RuledOut
from tracker.errors import Message, message
from tracker.services.jobs.kinds import plan_arguments
from tracker.services.plans.kept import keeping_told
from tracker.services.plans.made_plans import in_force, made_plans, publish_made
from tracker.services.plans.moves import Move
from tracker.services.plans.plan import Firm, PlanReport, PlanRequest
from tracker.services.screens.proposed import LookedAt, ToldPlan, looked_at, proposed

LONGEST_S, USUAL_S = 3600, 60
MOST_SAID = 12
"""Remarks on a plan that are said; the others stand behind a click."""
MOST_PLANS = 20
SHOWN = "proposed-plan-shown"
"""The number of the plan, made and not published, that this session looks at, or went to."""


def show_proposed(publishes: bool) -> bool:
    """A plan that is made and not published, beside the one in force, with what overtook it; False where there is none. What is
    looked at stays until who looks makes a newer one, publishes, or goes to another."""
    seen = access.ask(looked_at, access.context().actor.name, st.session_state.get(SHOWN))
    with st.container():  # in one place, also while it is empty: what stands below keeps what is being typed
        if seen.plan is None:
            return False
        number = seen.plan.number
        st.session_state[SHOWN] = number
        _others(seen, seen.plan)
        report = access.ask(proposed, number)
        with st.container(border=True):
            st.header(say("proposed-plan", number=str(number)))
            figures(_figures(report))
            if report.moves:
                st.subheader(say("proposed-moves"))
                _moves(report, number)
            elif report.previous:
                st.write(say("proposed-moves-none"))
            _said(report)
            if publishes:
                _publish(report, seen)
    return True


def _others(seen: LookedAt, plan: ToldPlan) -> None:
    """What overtook the plan looked at, and the own one that was left for it."""
    for code, other, tells in (
        ("proposed-overtaken", seen.published, st.warning), ("proposed-newer", seen.newer, st.info),
        ("proposed-own", seen.own, st.caption),
    ):  # fmt: skip
        if other:
            tells(literal(say(code, other=_named(other), plan=_named(plan), number=str(plan.number))))
            st.button(
                say("proposed-go", number=str(other.number)),
                key=f"go to plan {other.number}",
                on_click=_go,
                args=(other.number,),
            )


def _named(plan: ToldPlan) -> Message:
    return message(
        "plan-named", number=str(plan.number), who=plan.who, at=plan.at, cost=plan.cost, currency=plan.currency
    )


def _go(number: int) -> None:
    st.session_state[SHOWN] = number


def _figures(report: PlanReport) -> list[tuple[str, str, str]]:
    plan, before = report.plan, report.previous
    moves, costs = plan.paid - plan.without_moves, plan.without_moves
    against = ""
    if before:
        more = costs - before.without_moves
        against = say("proposed-against", much=abs(more), currency=plan.currency, which="less" if more < 0 else "more")
    gone = [move for move in report.moves if move.before]
    return [
        (say("proposed-costs"), money(costs, plan.currency), against),
        (say("proposed-booked"), count(len(plan.bookings), "so-many-looms"), say("proposed-left", many=len(plan.left_over))),
        (say("proposed-moved"), count(len(gone), "so-many-bookings"),
         say("proposed-move-cost", cost=moves, currency=plan.currency)),
        (say("proposed-proof"), say("proposed-gap", gap=plan.gap * 100), SPEAKER.word(plan.status)),
    ]  # fmt: skip


def _moves(report: PlanReport, number: int) -> None:
    currency = report.plan.currency
    columns = [
        *heads("bookings-loom", "bookings-hall", "moves-before", "moves-now", whole=True), *heads("moves-why"),
        *heads("moves-dearer", "moves-staying", right=True),
    ]  # fmt: skip
    table(columns, [_moved(move, report) for move in report.moves], name=f"moves {number}")
    st.caption(say("moves-about", currency=currency))


def _moved(move: Move, report: PlanReport) -> list[Cell | str]:
    def starts(booking: Booking | None) -> Cell:
        return Cell(moment(booking.start, report.zone), booking.start) if booking else Cell("")

    def costs(amount: float | None) -> Cell:
        return Cell("") if amount is None else Cell(money(amount), amount)

    return [
        loom_cell(move.key), move.key.hall, starts(move.before), starts(move.after), SPEAKER.line(move.why),
        costs(move.dearer), costs(move.price),
    ]  # fmt: skip


def _said(report: PlanReport) -> None:
    """What else there is to know: what keeping cost, what became of firm bookings, orders that it relies on."""
    orders = [
        message("proposed-order", part=line.part, quantity=line.quantity, by=line.order_by) for line in report.orders
    ]
    said: list[Message] = [*keeping_told(report.plan), *report.plan.reasons, *orders]
    for what in said[:MOST_SAID]:
        st.write(f"- {literal(SPEAKER.line(what))}")
    if len(said) > MOST_SAID:
        with st.expander(say("and-so-many-more", many=len(said) - MOST_SAID)):
            for what in said[MOST_SAID:]:
                st.write(f"- {literal(SPEAKER.line(what))}")


def _publish(report: PlanReport, seen: LookedAt) -> None:
    after, number = access.ask(in_force), str(report.number)
    gone = len([move for move in report.moves if move.before])
    asks = say(
        "publish-asks", number=number, booked=_looms(report), moves=gone, overtaken="yes" if seen.published else "no"
    )
    forms.button(
        f"publish {number} after {after}", say("publish-plan", number=number), lambda: publish(int(number), after), asks,
        primary=True,
    )  # fmt: skip


def _looms(report: PlanReport) -> Message:
    return message("so-many-looms", n=len(report.plan.bookings))


def publish(number: int, after: int | None) -> Message:
    """Publish a plan that was made; refused, with what differs, where another was published since."""
    done = publish_made(access.context(), number, after=after)
    return message("plan-now-in-force", number=str(done.number), booked=_looms(done), moves=len(done.moves))


# ---- make one


def plan_form(booked: Sequence[LoomKey], firm: Sequence[LoomKey]) -> None:
    """`booked`: looms with a booking that lies ahead, `firm`: those whose booking is firm."""
    st.write(say("plan-about"))
    with Form("make a plan", framed=False) as form:
        hold = wishes.field(wishes.HOLD, say("plan-hold"), booked, str)
        form.beside("cannot-hold", "hold-and-release", "nothing-to-keep")
        release = wishes.field(wishes.RELEASE, say("plan-release"), firm, str)
        out = wishes.field(wishes.RULE_OUT, say("plan-rule-out"), [], _span_says)
        calm_at, limit_at = st.columns(2)
        calm = calm_at.number_input(
            say("plan-calm"), 0, 500, None, 1, key=form.key("calm"), placeholder=say("plan-calm-none")
        )
        seconds = limit_at.number_input(say("plan-seconds"), 5, LONGEST_S, USUAL_S, 5, key=form.key("seconds"))
        request = PlanRequest(
            as_of=access.state().as_of, firm=Firm(release=tuple(release)), hold=tuple(hold),
            calm=None if calm is None else int(calm), ruled_out=tuple(out),
        )  # fmt: skip
        form.act(
            say("plan-make"),
            lambda: job_parts.begin(JobKind.PLAN, plan_arguments(request, float(seconds))),
            primary=True,
        )
    if hold or release or out:
        st.button(say("wishes-forget"), on_click=wishes.forget)


def _span_says(span: RuledOut) -> str:
    zone = access.ask(made_plans).zone
    return say("span-says", loom=span.key, first=span.from_at.astimezone(zone), last=span.until_at.astimezone(zone))


# ---- earlier ones


def earlier_plans() -> None:
    """All plans that were made; one that was in force, or was made and not published, can be put in force again."""
    made, now = access.ask(made_plans), access.ask(in_force)
    st.write(say("earlier-about"))
    columns = [
        *heads("plans-number", right=True), *heads("plans-made", "plans-who", "plans-what", whole=True),
        *heads("plans-cost", "plans-booked", "plans-left", right=True),
    ]  # fmt: skip
    entries = [entry for entry in made.entries if entry.scenario is None]
    table(columns, [
        [Cell(str(e.number), e.number), Cell(moment(e.made_at, made.zone), e.made_at), e.who,
         say("plans-in-force") if e.number == now else say("plans-published") if e.published else say("plans-only-made"),
         Cell(money(e.objective, e.currency), e.objective), Cell(str(e.bookings), e.bookings),
         Cell(str(e.left_over), e.left_over)]
        for e in entries
    ])  # fmt: skip
    others = [entry.number for entry in entries[:MOST_PLANS] if entry.number != now]
    if not others:
        return
    with Form("publish again") as form:
        number = st.selectbox(say("earlier-which"), others, key=form.key("number"))
        form.act(
            say("earlier-publish"),
            lambda: publish(number, now),
            asks=say("earlier-asks", number=str(number)),
            primary=False,
        )
