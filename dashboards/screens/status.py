"""Programme status: are we on time, what does it cost, what is at risk? The solver's proof comes last."""

import streamlit as st

from dashboards import access, sentences
from dashboards.backup_parts import warn_of_old
from dashboards.charts import cost_chart, progress_chart, stage_chart
from dashboards.downloads import download
from dashboards.empty import no_looms, no_plan
from dashboards.frames import cost_frame, progress_frame, stage_frame
from dashboards.look import GREY, WALNUT, WOAD
from dashboards.parts import Figure, facts, figures, legend, literal, pair, table
from dashboards.rehearsed import SPREAD, spread_rows
from dashboards.speaking import SPEAKER, count, day, moment, money, month, number, say, share
from dashboards.tables import KIT_WORDS, Cell, Head, loom_cell
from tracker.commissioning.worth.savings import Savings
from tracker.domain.late import shortened
from tracker.domain.plan import Plan
from tracker.domain.risks import RiskAhead
from tracker.services.plans.rehearsal_says import promised
from tracker.services.screens.status import StatusReport, status
from tracker.services.screens.week_page import week_file, week_file_name, weeks_begun
from tracker.services.work.worth import measured_savings

LEADS = {
    "kit": ("status-to-kits", "needs?show=kits"), "order": ("status-to-orders", "needs?show=orders"),
    "reading": ("status-to-loom", ""), "rehearsed": ("status-to-rehearsal", "rehearsal"),
}  # fmt: skip
"""Kind of risk → where more is known of it; the loom's own screen where no address stands."""


def page() -> None:
    report = access.look_at(status)
    st.title(say("screen-status"))
    looms, at = count(report.looms, "so-many-looms"), moment(report.as_of, report.zone)
    st.caption(literal(say("status-of", programme=report.programme, at=at, looms=looms)))
    warn_of_old()
    if not report.looms:
        no_looms()
        return
    at_the_head = st.empty()
    with at_the_head:
        figures(_figures(report, say("status-worked-out")))
    _report(report)
    _late(report)
    _risks(report)
    left, right = pair("progress")
    with left:
        _progress(report)
    with right:
        _months(report)
    _stages(report)
    if report.plan is None:
        no_plan(say("status-then"))
    else:
        _of_plan(report, report.plan)
    with at_the_head:  # last, since a comparison of many looms and weeks takes seconds
        figures(_figures(report, *_saved(access.ask_now(measured_savings), report)))


def _of_plan(report: StatusReport, plan: Plan) -> None:
    _next_bookings(report)
    _left_over(report, plan)
    _rehearsed(report)
    _cost(report)
    _proof(report, plan)


def _figures(report: StatusReport, saved: str, saved_more: str = "") -> list[Figure]:
    done = report.stages["signed off"]
    today = f"{report.as_of.astimezone(report.zone):%Y-%m}"
    planned = sum(one.planned for one in report.months if one.month <= today)
    committed = sum(one.committed for one in report.months)
    return [
        (say("status-done"), say("of-all", some=done, all=report.looms),
         say("status-done-share", share=share(done / report.looms))),
        (say("status-finish"), day(report.finish_on) or say("status-not-known"), _target(report)),
        (say("status-pace"), day(report.pace.finish_on) or say("status-not-known"), _rehearsed_in_short(report)),
        (say("status-spent"), money(report.cost_so_far, report.currency),
         say("status-spent-more", planned=money(planned, report.currency), committed=money(committed, report.currency))),
        (say("status-saved"), saved, saved_more),
    ]  # fmt: skip


def _target(report: StatusReport) -> str:
    if report.target_finish is None:
        return say("status-no-target")
    days = (report.finish_on - report.target_finish).days if report.finish_on else None
    how = "open" if days is None else "on" if not days else "after" if days > 0 else "before"
    return say("status-target", how=how, days=abs(days or 0), target=report.target_finish)


def _rehearsed_in_short(report: StatusReport) -> str:
    """P50 and P80 where the plan in force was rehearsed, else what the pace rests on."""
    if report.rehearsal and (last := promised(report.rehearsal.result)):
        looms, half, sure = last
        return say("status-rehearsed", looms=looms, half=half, sure=sure)
    return say("status-pace-of", done=report.pace.done, days=report.pace.days)


def _saved(saved: Savings | None, report: StatusReport) -> tuple[str, str]:
    if saved is None or saved.money is None:
        return say("status-not-known"), say("status-saved-not")
    low, high = (money(amount, report.currency) for amount in (saved.money.low, saved.money.high))
    return say("status-a-month", money=money(saved.money.estimate, report.currency)), say(
        "status-between", low=low, high=high
    )


def _report(report: StatusReport) -> None:
    """The one page of a week, to hand on."""
    today = report.as_of.astimezone(report.zone).date()
    with st.container(horizontal=True, vertical_alignment="bottom"):
        week = st.selectbox(say("status-week"), weeks_begun(report.weeks, today), width=180, key="report week")
        download(
            say("status-report"), lambda context: week_file(context, week, context.language), week_file_name(week),
            icon=":material/description:", key=f"report of {week}",
        )  # fmt: skip


def _late(report: StatusReport) -> None:
    """What should have been by now; nothing where all is as it should be."""
    if not report.late:
        return
    st.header(say("status-late"))
    shown, more = shortened(report.late)
    columns = [Head(say("head-since"), whole=True), Head(say("head-days"), right=True), Head(say("head-loom"), whole=True),
               Head(say("head-what")), Head(say("head-follows"))]  # fmt: skip
    rows = [
        [Cell(day(one.due.astimezone(report.zone).date()), one.due), Cell(number(one.days), one.days),
         loom_cell(one.key) if one.key else "", SPEAKER.say(one.what), SPEAKER.say(one.follows)]
        for one in (*shown, *(one for one in report.late if one not in shown))
    ]  # fmt: skip
    table(columns, rows, first=len(shown))
    if more:
        st.caption(SPEAKER.line(more))


def _risks(report: StatusReport) -> None:
    if report.plan is None:
        return
    st.header(say("status-risks"))
    if not report.risks:
        st.caption(say("status-risks-none"))
        return
    columns = [Head(say("head-when"), whole=True), Head(say("head-loom"), whole=True), Head(say("head-risk")),
               Head(say("head-more"), whole=True)]  # fmt: skip
    table(columns, [
        [Cell(day(one.at.astimezone(report.zone).date()), one.at), loom_cell(one.key) if one.key else "",
         SPEAKER.line(one.what), _lead(one)]
        for one in report.risks
    ])  # fmt: skip


def _lead(risk: RiskAhead) -> Cell:
    code, path = LEADS[risk.kind]
    return Cell(say(code), risk.kind, path or (loom_cell(risk.key).href if risk.key else ""))


def _progress(report: StatusReport) -> None:
    st.header(say("status-progress"))
    frame = progress_frame(report.weeks, report.as_of.astimezone(report.zone).date())
    if frame.empty:
        st.caption(say("status-progress-none"))
        return
    totals = frame.groupby("what")["total"].last()
    legend([
        ("- ● -", GREY, say("status-planned", looms=totals[say("chart-planned")])),
        ("─■─", WOAD, say("status-done-so-far", looms=totals.get(say("chart-done"), 0))),
        ("··▲··", WALNUT, say("status-expected", looms=totals.get(say("chart-expected"), 0))),
        ("· · ·", GREY, say("status-all", looms=report.looms)),
    ])  # fmt: skip
    st.altair_chart(progress_chart(frame, report.looms), theme=None, alt=say("status-progress-alt"))
    st.write(literal(SPEAKER.line(report.finish_says)))
    st.write(literal(SPEAKER.say(report.pace_says)))
    if report.reference_says:
        st.caption(literal(SPEAKER.say(report.reference_says)))


def _months(report: StatusReport) -> None:
    st.header(say("status-months"))
    if not report.months:
        st.caption(say("status-months-none"))
        return
    heads = ("head-planned", "head-spent", "head-on-order", "head-planned-by-then", "head-both-by-then")
    columns = [
        Head(say("head-month"), whole=True),
        *(Head(say(head, currency=report.currency), right=True) for head in heads),
    ]
    rows, planned, both = [], 0.0, 0.0
    for one in report.months:
        planned, both = planned + one.planned, both + one.spent + one.committed
        amounts = (one.planned, one.spent, one.committed, planned, both)
        rows.append([Cell(month(one.month), one.month), *(Cell(money(amount), amount) for amount in amounts)])
    table(columns, rows)
    st.caption(say("status-months-help"))


def _stages(report: StatusReport) -> None:
    st.header(say("status-stages"))
    st.altair_chart(stage_chart(stage_frame(report)), theme=None, alt=say("status-stages-alt"))


def _next_bookings(report: StatusReport) -> None:
    st.header(say("status-next"))
    if not report.next_bookings:
        st.caption(say("status-next-none"))
        return
    kits = {kit.key: kit.state for kit in report.kits}
    columns = [
        *(Head(say(head), whole=True) for head in ("head-start", "head-end", "head-loom", "head-hall")),
        *(Head(say(head)) for head in ("head-window", "head-firm", "head-kit")),
        Head(say("head-person-hours"), right=True), Head(say("head-cost", currency=report.currency), right=True),
    ]  # fmt: skip
    table(columns, [
        [Cell(moment(b.start, report.zone), b.start), Cell(moment(b.end, report.zone), b.end), loom_cell(b.key), b.key.hall,
         SPEAKER.word(b.kind) + (f", {say('status-pilot')}" if b.pilot else ""), say("status-firm") if b.firm else "",
         say(KIT_WORDS[kits[b.key]]) if b.key in kits else "", Cell(number(b.labour_h, "", 1), b.labour_h),
         Cell(money(b.cost.total), b.cost.total)]
        for b in report.next_bookings
    ])  # fmt: skip


def _left_over(report: StatusReport, plan: Plan) -> None:
    st.header(say("status-left-over"))
    if since := len(plan.left_over) - len(report.left_over):
        st.caption(say("left-over-since", looms=since))
    if not report.left_over:
        st.caption(say("status-left-over-none"))
        return
    st.write(say("status-left-over-many", looms=len(report.left_over)))
    columns = [Head(say("head-loom"), whole=True), Head(say("head-hall"), whole=True), Head(say("head-why")),
               Head(say("head-left-over-cost", currency=plan.currency), right=True)]  # fmt: skip
    table(columns, [
        [loom_cell(x.key), x.key.hall, SPEAKER.line(x.why), Cell(money(x.cost), x.cost)] for x in report.left_over
    ])  # fmt: skip


def _rehearsed(report: StatusReport) -> None:
    """Finish and cost as the hall will have them; nothing where the plan in force was never rehearsed."""
    if report.rehearsal is None or report.rehearsal_says is None:
        return
    st.header(say("status-as-rehearsed"))
    table([Head(say("head-what")), *SPREAD], spread_rows(report.rehearsal.result), sorts=False)
    st.caption(literal(SPEAKER.say(report.rehearsal_says)) + f" [{say('status-to-rehearsal')}](rehearsal)")


def _cost(report: StatusReport) -> None:
    st.header(say("status-cost"))
    chart = cost_chart(cost_frame(report), report.currency)
    st.altair_chart(chart, theme=None, alt=say("status-cost-alt"))
    so_far = say(
        "status-cost-so-far", parts=report.parts_issued_cost, labour=report.labour_recorded_cost, hours=report.labour_recorded_h,
        currency=report.currency,
    )  # fmt: skip
    untimed = SPEAKER.line(report.untimed_says) if report.untimed_says else ""
    st.caption(literal(" ".join(filter(None, [so_far, untimed, say("status-cost-expected")]))))


def _proof(report: StatusReport, plan: Plan) -> None:
    st.header(say("status-proof"))
    st.write(literal(sentences.proof(plan)))
    st.write(literal(say("status-cost-of", parts=sentences.cost_parts(plan, sum(b.cost.total for b in plan.bookings)))))
    facts([
        (say("status-proof-cost"), money(plan.objective, plan.currency)),
        (say("status-proof-bound"), money(plan.bound, plan.currency)), (say("status-proof-gap"), sentences.share(plan.gap)),
        (say("status-proof-found"), number(plan.seconds, "s", 1)),
        (say("status-proof-made"), moment(plan.as_of, report.zone)),
    ])  # fmt: skip
