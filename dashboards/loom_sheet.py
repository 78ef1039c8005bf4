"""Everything about one loom: stage, booking, kit, alarms, what it needs, what was read of it, where its values came from."""

from datetime import datetime

import streamlit as st

from dashboards import forms
from dashboards.empty import no_plan
from dashboards.frames import booking_marks, term_word
from dashboards.loom_history import history
from dashboards.loom_needs import needs
from dashboards.loom_values import values
from dashboards.parts import Figure, facts, figures, heads, literal, of_part, pair, table
from dashboards.setting_parts import loom_settings
from dashboards.speaking import SPEAKER, moment, money, number, say, span
from dashboards.tables import Cell, stage_word
from tracker.domain.plan import CostTerms
from tracker.domain.progress import Conversion, Stage
from tracker.errors import Message
from tracker.services.screens.loom_sheet import LoomSheet
from tracker.services.screens.status import STAGE_ORDER

MOST_WINDOWS = 6


def loom_sheet_page(sheet: LoomSheet) -> None:
    st.title(literal(say("sheet-title", loom=sheet.key.loom, hall=sheet.key.hall)))
    forms.say_done()
    row, place = (
        say(code, at=at) if at else ""
        for code, at in (("sheet-row", sheet.loom.row), ("sheet-place", sheet.loom.place))
    )
    at = ", ".join(filter(None, [row, place]))
    as_of = say("sheet-as-of", at=moment(sheet.as_of, sheet.zone))
    st.caption(literal(" · ".join(filter(None, [sheet.loom.machine_type, at, as_of]))))
    with st.container(key="touch-loom"):
        figures(_figures(sheet))
        left, right = pair("booking")
        with left:
            _conversion(sheet)
            _booking(sheet)
        with right:
            _windows(sheet)
            _other_dates(sheet)
        loom_settings(sheet.key)
        needs(sheet)
        history(sheet)
        values(sheet)


def _said(why: Message | None) -> str:
    return SPEAKER.line(why) if why else ""


def _figures(sheet: LoomSheet) -> list[Figure]:
    out = next(iter(sheet.beam_outs_ahead), None)
    last = sheet.history[-1] if sheet.history else None
    since = say("sheet-since", at=moment(last.at, sheet.zone), why=last.reason) if last else ""
    return [
        (say("sheet-stage"), stage_word(sheet.stage), since),
        _work_figure(sheet),
        (say("sheet-next-beam-out"), moment(out.p50_at, sheet.zone) if out else say("sheet-not-known"),
         _reading(out.reading_at, out.state, sheet) if out else _said(sheet.no_forecast)),
        (say("sheet-kit"), say("sheet-kit-state", state=sheet.kit.state if sheet.kit else "none"), _lacks(sheet)),
    ]  # fmt: skip


def _work_figure(sheet: LoomSheet) -> Figure:
    """When it was converted and by whom, else when it will be."""
    booking, done = sheet.booking, next(iter(sheet.conversions), None)
    if sheet.converted_at is not None:
        at = done.ended_at if done and done.ended_at else sheet.converted_at
        by = say("sheet-by", crew=done.crew, minutes=_minutes(done)) if done else say("sheet-by-nobody")
        return say("sheet-converted"), moment(at, sheet.zone), by
    if booking is None:
        return say("sheet-starts"), say("sheet-not-booked"), ""
    return say("sheet-starts"), moment(booking.start, sheet.zone), say("sheet-ends", at=moment(booking.end, sheet.zone))


def _minutes(done: Conversion) -> str:
    return number(done.total_min, "min", 1) if done.total_min else say("sheet-minutes-not-taken")


def _reading(at: datetime, state: str, sheet: LoomSheet) -> str:
    before = "yes" if sheet.converted_at and at < sheet.converted_at else "no"
    return say("sheet-reading", at=moment(at, sheet.zone), before=before, state=state)


def _lacks(sheet: LoomSheet) -> str:
    if sheet.kit is None or not sheet.kit.short:
        return ""
    return say("sheet-lacks", parts=[of_part(q, part, sheet.units) for part, q in sheet.kit.short.items()])


def _conversion(sheet: LoomSheet) -> None:
    """What was recorded of the loom's conversions, the newest first."""
    for done in sheet.conversions:
        st.header(say("sheet-conversion"))
        facts(
            [
                (say("sheet-crew"), done.crew),
                (say("sheet-begun"), moment(done.started_at, sheet.zone)),
                (say("sheet-ended"), moment(done.ended_at, sheet.zone) if done.ended_at else say("sheet-not-recorded")),
                (say("sheet-on-loom"), _minutes(done)),
                *((f"· {operation}", number(spent, "min", 1)) for operation, spent in done.operation_minutes.items()),
                (say("sheet-window"), SPEAKER.word(done.kind) if done.kind else say("sheet-not-recorded")),
                *done.choices,
                (say("sheet-by-method"), str(done.method_version)),
            ]
        )


def _booking(sheet: LoomSheet) -> None:
    st.header(say("sheet-booking"))
    booking = sheet.booking
    if booking is None:
        _not_booked(sheet)
        return
    rows = [
        (say("sheet-window"), ", ".join([SPEAKER.word(booking.kind), *booking_marks(booking)])),
        *((choice, taken) for choice, taken in booking.choices),
        (say("sheet-start"), moment(booking.start, sheet.zone)),
        (say("sheet-end"), moment(booking.end, sheet.zone)),
        *((say("sheet-crew-named", crew=turn.crew), span(turn.start, turn.end, sheet.zone)) for turn in booking.crews),
        *((f"{need.amount} × {need.what}", span(need.start, need.end, sheet.zone)) for need in booking.needs),
        (say("sheet-beam-out-then"), moment(booking.beam_out_p50, sheet.zone) or say("sheet-none")),
        (say("sheet-work"), say("sheet-person-hours", hours=number(booking.labour_h, "", 1))),
    ]
    costs = [(term_word(term), money(getattr(booking.cost, term), sheet.currency)) for term in CostTerms.__slots__]
    facts([*rows, *costs, (say("sheet-cost"), money(booking.cost.total, sheet.currency))])


def _not_booked(sheet: LoomSheet) -> None:
    if STAGE_ORDER.index(sheet.stage) >= STAGE_ORDER.index(Stage.IN_WORK):
        st.write(say("sheet-no-booking", stage=stage_word(sheet.stage)))  # the plan's reason is out of date
    elif sheet.left_over:
        st.write(literal(say("sheet-left-over", why=SPEAKER.line(sheet.left_over.why))))
        st.write(literal(say("sheet-left-over-cost", cost=money(sheet.left_over.cost, sheet.currency))))
    elif sheet.planned:
        st.write(say("sheet-not-in-plan"))
    else:
        no_plan(say("sheet-then"))


def _windows(sheet: LoomSheet) -> None:
    windows = sheet.windows if sheet.converted_at is None else sheet.beam_outs_ahead
    st.header(say("sheet-chances" if sheet.converted_at is None else "sheet-beam-outs"))
    if not windows:
        st.caption(literal(_said(sheet.no_forecast)) or say("sheet-no-window"))
        return
    columns = [*heads("sheet-window-head"), *heads("sheet-p10", "sheet-p50", "sheet-p90", whole=True),
               *heads("sheet-runs-out", "sheet-comes-in")]  # fmt: skip
    rows = [
        [
            say("sheet-window-state", kind=window.kind, state=window.state),
            *(Cell(moment(at, sheet.zone), at) for at in (window.p10_at, window.p50_at, window.p90_at)),
            window.article_out or "",
            window.article_in or "",
        ]
        for window in windows
    ]
    table(columns, rows, first=MOST_WINDOWS)
    if len(windows) > MOST_WINDOWS:
        st.caption(say("sheet-more-windows", more=len(windows) - MOST_WINDOWS))


def _other_dates(sheet: LoomSheet) -> None:
    if not sheet.other_dates or sheet.converted_at is not None:
        return
    st.header(say("sheet-other-dates"))
    more = heads("sheet-window-head", "sheet-choices")
    columns = [*heads("sheet-start-head", "sheet-end-head", whole=True), *more]
    columns += [*heads("sheet-more", right=True)]
    rows = [
        [
            Cell(moment(other.start, sheet.zone), other.start),
            Cell(moment(other.end, sheet.zone), other.end),
            SPEAKER.word(other.kind),
            ", ".join(f"{choice}: {taken}" for choice, taken in other.choices),
            Cell(money(other.extra_cost, sheet.currency), other.extra_cost),
        ]
        for other in sheet.other_dates
    ]
    table(columns, rows)
