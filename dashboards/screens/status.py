"""Programme status: where the looms stand, when it will be finished, what it costs."""

import streamlit as st

from dashboards import access, sentences
from dashboards.charts import cost_chart, progress_chart, stage_chart
from dashboards.empty import no_looms, no_plan
from dashboards.frames import cost_frame, progress_frame, stage_frame
from dashboards.look import GREY, WALNUT, WOAD
from dashboards.parts import Figure, facts, figures, legend, literal, pair, table
from dashboards.rehearsed import SPREAD, spread_rows
from dashboards.speaking import SPEAKER, count, day, moment, money, number
from dashboards.tables import Cell, Head, loom_cell
from tracker.domain.late import shortened
from tracker.domain.plan import Plan
from tracker.errors import message
from tracker.services.screens.status import StatusReport, status


def page() -> None:
    report = access.ask_now(status)
    st.title("Programme status")
    st.caption(
        f"{literal(report.programme)} · as of {moment(report.as_of, report.zone)} · {count(report.looms, 'so-many-looms')}"
    )
    if not report.looms:
        no_looms()
        return
    figures(_figures(report))
    _late(report)
    left, right = pair("progress")
    with left:
        _stages(report)
    with right:
        _progress(report)
    if report.plan is None:
        no_plan("it shows here at once")
        return
    _rehearsed(report)
    left, right = pair("cost")
    with left:
        _cost(report)
    with right:
        _months(report)
    _next_bookings(report)
    _left_over(report, report.plan)
    _proof(report, report.plan)


def _figures(report: StatusReport) -> list[Figure]:
    done = report.stages["signed off"]
    booked = len(report.plan.bookings) if report.plan else 0
    short = sum(kit.state == "short" for kit in report.kits)
    return [
        ("Signed off", f"{done:,} of {report.looms:,}", f"{done / report.looms:.0%} of the looms"),
        ("In the plan", count(booked, "so-many-looms"), f"{count(short, 'so-many-kits')} short" if booked else "no plan published"),
        ("Last conversion ends", day(report.finish_on) or "not known", _target(report)),
        ("Cost expected", money(report.expected_cost.total, report.currency),
         f"planned {money(report.planned_cost.total, report.currency)}, so far {money(report.cost_so_far, report.currency)}"),
    ]  # fmt: skip


def _target(report: StatusReport) -> str:
    if report.target_finish is None:
        return "no target is set"
    if report.finish_on is None:
        return f"target {day(report.target_finish)}"
    days = (report.finish_on - report.target_finish).days
    against = (
        f"{count(abs(days), 'so-many-days')} {'after' if days > 0 else 'before'} the target"
        if days
        else "on the target"
    )
    return f"{against} {day(report.target_finish)}"


def _late(report: StatusReport) -> None:
    """What should have been by now; nothing where all is as it should be."""
    if not report.late:
        return
    st.header("Late")
    shown, more = shortened(report.late)
    columns = [Head("Since", whole=True), Head("Days", right=True), Head("Loom", whole=True), Head("What"),
               Head("What follows")]  # fmt: skip
    rows = [
        [Cell(day(one.due.astimezone(report.zone).date()), one.due), Cell(f"{one.days:,}", one.days),
         loom_cell(one.key) if one.key else "", SPEAKER.say(one.what), SPEAKER.say(one.follows)]
        for one in shown
    ]  # fmt: skip
    table(columns, rows)
    if more:
        st.caption(SPEAKER.line(more))


def _months(report: StatusReport) -> None:
    st.header("Parts and labour by month")
    if not report.months:
        st.caption("Nothing is planned, spent or ordered yet.")
        return
    columns = [Head("Month", whole=True), *(Head(f"{name} ({report.currency})", right=True)
               for name in ("Planned", "Spent", "Still on order"))]  # fmt: skip
    rows = [
        [m.month, *(Cell(money(amount), amount) for amount in (m.planned, m.spent, m.committed))] for m in report.months
    ]
    table(columns, rows)
    st.caption(
        "Planned by the reference plan, in the month in which each booking ends; on order in the month of its due day."
    )


def _stages(report: StatusReport) -> None:
    st.header("Looms by stage")
    st.altair_chart(stage_chart(stage_frame(report)), theme=None, alt="Bars: looms in each stage of the programme")


def _progress(report: StatusReport) -> None:
    st.header("Planned and done")
    frame = progress_frame(report.weeks, report.as_of.astimezone(report.zone).date())
    if frame.empty:
        st.caption("Nothing is booked or done yet.")
        return
    totals = frame.groupby("what")["total"].last()
    legend([
        ("- ● -", GREY, f"planned: {totals['planned']:,}"), ("─■─", WOAD, f"done: {totals.get('done', 0):,}"),
        ("··▲··", WALNUT, f"expected: {totals.get('expected', 0):,}"),
        ("· · ·", GREY, f"all {count(report.looms, 'so-many-looms')}"),
    ])  # fmt: skip
    st.altair_chart(
        progress_chart(frame, report.looms),
        theme=None,
        alt="Lines: looms planned, done and expected, added up by ISO week",
    )
    st.write(literal(SPEAKER.line(report.finish_says)))
    st.write(literal(SPEAKER.say(report.pace_says)))
    if report.reference_says:
        st.caption(literal(SPEAKER.say(report.reference_says)))


def _rehearsed(report: StatusReport) -> None:
    """Finish and cost as the hall will have them; nothing where the plan in force was never rehearsed."""
    if report.rehearsal is None or report.rehearsal_says is None:
        return
    st.header("As rehearsed")
    table([Head("What"), *SPREAD], spread_rows(report.rehearsal.result), sorts=False)
    st.caption(literal(SPEAKER.say(report.rehearsal_says)) + " [More](rehearsal)")


def _cost(report: StatusReport) -> None:
    untimed = f"{SPEAKER.line(report.untimed_says)} " if report.untimed_says else ""
    st.header("Cost by term")
    chart = cost_chart(cost_frame(report), report.currency)
    st.altair_chart(chart, theme=None, alt="Bars: planned and expected cost by term")
    st.caption(
        literal(
            f"So far: parts issued {money(report.parts_issued_cost, report.currency)}, labour recorded "
            f"{money(report.labour_recorded_cost, report.currency)} "
            f"({number(report.labour_recorded_h, 'person-hours', 1)}). {untimed}"
            "Expected is what was recorded and what the plan in force estimates for the rest."
        )
    )


def _proof(report: StatusReport, plan: Plan) -> None:
    st.header("How good the plan is")
    st.write(literal(sentences.proof(plan)))
    st.write(literal("Its cost is " + sentences.cost_parts(plan, report.planned_cost.total)))
    facts(
        [
            ("cost of the plan", money(plan.objective, plan.currency)),
            ("no plan can cost less than", money(plan.bound, plan.currency)),
            ("gap", sentences.share(plan.gap)),
            ("found in", number(plan.seconds, "s", 1)),
            ("made for", moment(plan.as_of, report.zone)),
        ]
    )


def _next_bookings(report: StatusReport) -> None:
    st.header("The next seven days")
    if not report.next_bookings:
        st.caption("No conversion starts or runs in the seven days from now.")
        return
    kits = {kit.key: kit.state for kit in report.kits}
    columns = [Head("Start", whole=True), Head("End", whole=True), Head("Loom", whole=True), Head("Hall", whole=True),
               Head("Window"), Head("Firm"), Head("Kit"), Head("Person-hours", right=True),
               Head(f"Cost ({report.currency})", right=True)]  # fmt: skip
    rows = [
        [
            Cell(moment(b.start, report.zone), b.start),
            Cell(moment(b.end, report.zone), b.end),
            loom_cell(b.key),
            b.key.hall,
            b.kind.value + (", pilot" if b.pilot else ""),
            "firm" if b.firm else "",
            kits.get(b.key, ""),
            Cell(f"{b.labour_h:,.1f}", b.labour_h),
            Cell(money(b.cost.total), b.cost.total),
        ]
        for b in report.next_bookings
    ]
    table(columns, rows)


def _left_over(report: StatusReport, plan: Plan) -> None:
    st.header("Left over")
    since = len(plan.left_over) - len(report.left_over)
    if since:
        st.caption(SPEAKER.say(message("left-over-since", looms=since)))
    if not report.left_over:
        st.caption("No loom waits without a booking.")
        return
    st.write(f"{count(len(report.left_over), 'so-many-looms')} not in this plan:")
    columns = [
        Head("Loom", whole=True),
        Head("Hall", whole=True),
        Head("Why"),
        Head(f"Cost of leaving it ({plan.currency})", right=True),
    ]
    table(
        columns,
        [[loom_cell(x.key), x.key.hall, SPEAKER.line(x.why), Cell(money(x.cost), x.cost)] for x in report.left_over],
    )
