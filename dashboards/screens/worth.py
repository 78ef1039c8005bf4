"""Worth: did it pay? The verdicts, what is saved with its range, in how many months it pays back."""

from collections.abc import Iterable, Sequence
from datetime import date, datetime, timedelta
from math import isinf
from typing import Any

import streamlit as st

from dashboards import access, forms
from dashboards.forms import Form
from dashboards.look import WALNUT, WOAD
from dashboards.parts import Figure, figures, legend, literal, table
from dashboards.speaking import SPEAKER, language, moment, money, number, say, typed_day
from dashboards.tables import Cell, Head, loom_cell
from dashboards.worth_chart import change_chart, change_frame
from tracker.errors import DataError, Message, TrackerError
from tracker.services.people.permissions import May
from tracker.services.terms import local_moment
from tracker.services.work.taking_over import take_over, would_take_over
from tracker.services.work.worth import Measure, WorthChoices, WorthReport, worth, worth_choices
from tracker.services.work.worth_report import report_file
from tracker.services.work.worth_says import (
    beside,
    changes_of,
    loom_change,
    loom_figures,
    savings_messages,
    verdicts,
    what_of,
)

REPORT = "worth.pdf"


def page() -> None:
    st.title(say("screen-worth"))
    forms.say_done()
    narrowed = _narrowed(access.ask_now(worth_choices))
    try:
        report = access.ask(worth, *narrowed, access.state().as_of)
    except DataError as error:
        st.info(literal(SPEAKER.line(error)))
        return
    st.caption(say("as-of", at=moment(report.as_of, report.terms.zone)))
    if not any(narrowed):  # what is saved rests on all stops of all looms
        figures(_figures(report))
    st.header(say("worth-verdicts"))
    _sentences(verdicts(report))
    _changes(report)
    _savings(report)
    _beside(report)
    _looms(report.measures[0])
    spoken = language()
    st.download_button(
        say("worth-report"), lambda: report_file(report, spoken), file_name=REPORT, icon=":material/description:"
    )
    if not any(narrowed):
        _take_over(report)


def _narrowed(choices: WorthChoices) -> tuple[str | None, str | None, datetime | None, datetime | None]:
    """Cause, article, from and to; they stand in the address."""
    cause_at, article_at, from_at, to_at = st.columns(4)
    cause = _one_of(cause_at, say("worth-cause"), choices.causes, say("worth-all-causes"), "cause")
    article = _one_of(article_at, say("head-article"), choices.articles, say("worth-all-articles"), "article")
    first, last = _day(from_at, say("worth-from"), "from"), _day(to_at, say("worth-to"), "to")
    return cause, article, _begin(first), _begin(last + timedelta(days=1)) if last else None


def _begin(on: date | None) -> datetime | None:
    """Of a day, in the mill's time."""
    return local_moment(access.context(), on.isoformat()) if on else None


def _one_of(at: Any, label: str, names: Sequence[str], none: str, asked: str) -> str | None:
    before = st.query_params.get(asked)
    chosen = at.selectbox(
        label, names, names.index(before) if before in names else None, placeholder=none, key=f"worth {asked}"
    )
    return _kept(asked, chosen)


def _day(at: Any, label: str, asked: str) -> date | None:
    try:
        before = date.fromisoformat(st.query_params.get(asked, ""))
    except ValueError:
        before = None
    chosen = at.date_input(label, before, key=f"worth {asked}", format=typed_day())
    _kept(asked, chosen.isoformat() if chosen else None)
    return chosen


def _kept(asked: str, chosen: str | None) -> str | None:
    """In the address, as long as something is chosen."""
    if chosen:
        st.query_params[asked] = chosen
    else:
        st.query_params.pop(asked, None)
    return chosen


def _figures(report: WorthReport) -> list[Figure]:
    saved, currency = report.savings, report.terms.currency
    unknown = say("status-not-known")
    if saved is None:
        return [(say("worth-saved"), unknown, say("status-saved-not"))]
    measured, back = saved.money, saved.payback
    return [
        (say("worth-saved"), money(measured.estimate, currency) if measured else unknown,
         say("status-between", low=money(measured.low, currency), high=money(measured.high, currency)) if measured
         else say("status-saved-not")),
        (say("worth-claimed-figure"), money(saved.claimed, currency), say("worth-of-looms", looms=saved.looms)),
        (say("worth-pays-back"), say("worth-months", months=number(back.estimate, "", 1)) if back else unknown,
         say("status-between", low=_months(back.low), high=_months(back.high)) if back else ""),
        (say("worth-counted-on"), say("worth-share", percent=number(100 * report.terms.share_of_saving, "", 1)),
         say("worth-counted-on-help")),
    ]  # fmt: skip


def _months(months: float) -> str:
    return say("worth-never") if isinf(months) else number(months, "", 1)


def _changes(report: WorthReport) -> None:
    st.header(say("worth-changes"))
    frame = change_frame(report.measures)
    if not frame.empty:
        legend([("●", WOAD, say("worth-stepped")), ("▲", WALNUT, say("worth-plain-figure"))])
        st.altair_chart(change_chart(frame), theme=None, alt=say("worth-changes-alt"))
    heads = ("head-figure", "head-stepped", "head-by-loom", "head-plain")
    table([Head(say(head)) for head in heads], [
        [SPEAKER.say(cell) if cell else "" for cell in changes_of(one)] for one in report.measures
    ], sorts=False)  # fmt: skip


def _savings(report: WorthReport) -> None:
    if report.savings:
        st.header(say("worth-savings"))
        _sentences(savings_messages(report))


def _beside(report: WorthReport) -> None:
    if lines := list(beside(report)):
        st.header(say("worth-believe"))
        _sentences(lines)


def _sentences(messages: Iterable[Message]) -> None:
    """Each on a line of its own, beginning with a capital."""
    for said in map(SPEAKER.line, messages):
        st.write(literal(said[:1].upper() + said[1:]))


def _looms(measure: Measure) -> None:
    with st.expander(say("worth-loom-by-loom", what=what_of(measure))):
        columns = [*(Head(say(head), whole=True) for head in ("head-loom", "head-hall")), Head(say("head-article")),
                   *(Head(say(head), right=True) for head in ("head-before", "head-after")), Head(say("head-change"))]  # fmt: skip
        rows = []
        for one in measure.looms:
            before, after = loom_figures(measure, one, language())
            rows.append([loom_cell(one.key), one.key.hall, one.article, Cell(before, one.before), Cell(after, one.after),
                         SPEAKER.say(loom_change(measure, one))])  # fmt: skip
        table(columns, rows)


def _take_over(report: WorthReport) -> None:
    """Plans count on the measured saving from then on; where it cannot be taken over, why."""
    st.header(say("worth-take-over"))
    try:
        will = would_take_over(report)
    except TrackerError as error:
        st.caption(literal(SPEAKER.line(error)))
        return
    st.write(
        literal(say("worth-would-take-over", before=round(100 * will.before, 1), share=round(100 * will.share, 1)))
    )
    if forms.allowed(May.PLAN, say_why=True):
        with Form("take over the saving", framed=False) as form:
            sure = say("worth-take-over-sure", share=round(100 * will.share, 1))
            form.act(say("worth-take-over-act"), lambda: take_over(access.context()), asks=sure)
