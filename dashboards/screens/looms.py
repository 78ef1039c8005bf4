"""Looms: the list, and the sheet of one loom, which a link with `?loom=007&hall=Hall+1` leads to."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import datetime
from typing import Any

import streamlit as st

from dashboards import access
from dashboards.empty import no_looms, no_plan
from dashboards.frames import booking_marks, term_word
from dashboards.parts import Figure, facts, figures, literal, of_part, pair, table
from dashboards.speaking import SPEAKER, count, day, moment, money, number, shown, span
from dashboards.tables import Cell, Head, loom_cell, stage_cell
from tracker.domain.plan import CostTerms
from tracker.domain.progress import Conversion, Stage
from tracker.domain.words import fold
from tracker.errors import DataError, Message
from tracker.services.screens.loom_sheet import Fact, LoomLine, LoomList, LoomSheet, loom_list, loom_sheet
from tracker.services.screens.status import STAGE_ORDER
from tracker.services.work.scope import Line, WorkReport


def page() -> None:
    asked = st.query_params.get("loom")
    if not asked:
        _list(access.ask(loom_list))
        return
    st.html('<a class="back" href="looms" target="_self">← all looms</a>')
    hall = st.query_params.get("hall")
    meant = [] if hall else [line for line in access.ask(loom_list).looms if line.key.loom == asked]
    if len(meant) > 1:
        _ask_hall(asked, meant)
        return
    try:
        sheet = access.ask_now(loom_sheet, asked, hall)
    except DataError as error:
        st.title(literal(f"Loom {asked}"))
        what = SPEAKER.say(error)
        st.info(literal(f"{what[0].upper()}{what[1:]}. The list of all looms leads to each."))
        return
    _sheet(sheet)


def _ask_hall(asked: str, meant: Sequence[LoomLine]) -> None:
    """The looms of that number, each leading to its sheet."""
    st.title(literal(f"Loom {asked}"))
    st.write(f"{count(len(meant), 'so-many-looms')} have this number. Which one is meant?")
    columns = [Head(heading, whole=True) for heading in ("Hall", "Loom", "Machine type", "Stage")]
    table(columns, [[replace(loom_cell(line.key), text=line.key.hall or "without a name"), line.key.loom, line.machine_type,
                     stage_cell(line.stage)] for line in meant])  # fmt: skip


# ---- the list


def _list(found: LoomList) -> None:
    st.title("Looms")
    if not found.looms:
        no_looms()
        return
    rows = _filtered(found.looms)
    st.caption(
        f"{len(rows):,} of {count(len(found.looms), 'so-many-looms')} · a click on a loom number opens its sheet"
    )
    if not rows:
        st.info("No loom fits these filters.")
        return
    columns = [Head(heading, whole=True) for heading in ("Loom", "Hall", "Row", "Place", "Machine type", "Stage")]
    columns += [Head("Window"), Head("Start", whole=True), Head("End", whole=True)]
    table(columns, [_line(line, found) for line in rows])


def _filtered(lines: Sequence[LoomLine]) -> list[LoomLine]:
    halls_at, types_at, stages_at, loom_at = st.columns(4)
    halls = halls_at.multiselect("Hall", dict.fromkeys(line.key.hall for line in lines), placeholder="all halls")
    types = types_at.multiselect(
        "Machine type", sorted({line.machine_type for line in lines}), placeholder="all machine types"
    )
    stages = stages_at.multiselect(
        "Stage", sorted({line.stage for line in lines}, key=STAGE_ORDER.index), placeholder="all stages"
    )
    text = loom_at.text_input("Loom", placeholder="all looms")
    return [
        line
        for line in lines
        if (not halls or line.key.hall in halls)
        and (not types or line.machine_type in types)
        and (not stages or line.stage in stages)
        and fold(text) in fold(line.key.loom)
    ]


def _line(line: LoomLine, found: LoomList) -> list[Cell | str]:
    booking = line.booking
    return [
        loom_cell(line.key),
        line.key.hall,
        line.row or "",
        line.place or "",
        line.machine_type,
        stage_cell(line.stage),
        ", ".join([booking.kind.value, *booking_marks(booking)]) if booking else "",
        Cell(moment(booking.start, found.zone), booking.start) if booking else "",
        Cell(moment(booking.end, found.zone), booking.end) if booking else "",
    ]


# ---- one loom


def _sheet(sheet: LoomSheet) -> None:
    st.title(literal(f"Loom {sheet.key.loom}, {sheet.key.hall}"))
    place = ", ".join(f"{word} {at}" for word, at in (("row", sheet.loom.row), ("place", sheet.loom.place)) if at)
    st.caption(
        literal(" · ".join(filter(None, [sheet.loom.machine_type, place, f"as of {moment(sheet.as_of, sheet.zone)}"])))
    )
    figures(_figures(sheet))
    left, right = pair("booking")
    with left:
        _conversion(sheet)
        _booking(sheet)
    with right:
        _windows(sheet)
        _other_dates(sheet)
    _needs(sheet)
    _values(sheet)


def _said(why: Message | None) -> str:
    return SPEAKER.line(why) if why else ""


def _figures(sheet: LoomSheet) -> list[Figure]:
    out = next(iter(sheet.beam_outs_ahead), None)
    last = sheet.history[-1] if sheet.history else None
    since = f"since {moment(last.at, sheet.zone)}" if last else ""
    return [
        ("Stage", sheet.stage, (f"{since}: {last.reason}" if last and last.reason else since)),
        _work_figure(sheet),
        ("Next beam-out, P50", moment(out.p50_at, sheet.zone) if out else "not known",
         _reading(out.reading_at, out.state, sheet) if out else _said(sheet.no_forecast)),
        ("Kit", sheet.kit.state if sheet.kit else "none", _lacks(sheet)),
    ]  # fmt: skip


def _work_figure(sheet: LoomSheet) -> Figure:
    """When it was converted and by whom, else when it will be."""
    booking, done = sheet.booking, next(iter(sheet.conversions), None)
    if sheet.converted_at is not None:
        at = done.ended_at if done and done.ended_at else sheet.converted_at
        by = f"by {done.crew}, {_minutes(done)}" if done else "crew and minutes were not recorded"
        return "Converted", moment(at, sheet.zone), by
    if booking is None:
        return "Conversion starts", "not booked", ""
    return "Conversion starts", moment(booking.start, sheet.zone), f"ends {moment(booking.end, sheet.zone)}"


def _minutes(done: Conversion) -> str:
    return number(done.total_min, "min", 1) if done.total_min else "minutes not taken"


def _reading(at: datetime, state: str, sheet: LoomSheet) -> str:
    before = ", before the conversion" if sheet.converted_at and at < sheet.converted_at else ""
    return f"reading of {moment(at, sheet.zone)}{before}" + ("" if state == "ok" else f", {state}")


def _lacks(sheet: LoomSheet) -> str:
    if sheet.kit is None or not sheet.kit.short:
        return ""
    return "lacks " + ", ".join(of_part(q, part, sheet.units) for part, q in sheet.kit.short.items())


def _conversion(sheet: LoomSheet) -> None:
    """What was recorded of the loom's conversions, the newest first."""
    for done in sheet.conversions:
        st.header("Conversion")
        facts(
            [
                ("crew", done.crew),
                ("begun", moment(done.started_at, sheet.zone)),
                ("ended", moment(done.ended_at, sheet.zone) if done.ended_at else "not recorded"),
                ("on the loom", _minutes(done)),
                *((f"· {operation}", number(spent, "min", 1)) for operation, spent in done.operation_minutes.items()),
                ("window", done.kind.value if done.kind else "not recorded"),
                *done.choices,
                ("by method version", str(done.method_version)),
            ]
        )


def _booking(sheet: LoomSheet) -> None:
    st.header("Booking")
    booking = sheet.booking
    if booking is None:
        _not_booked(sheet)
        return
    rows = [
        ("window", ", ".join([booking.kind.value, *booking_marks(booking)])),
        *((choice, taken) for choice, taken in booking.choices),
        ("start", moment(booking.start, sheet.zone)),
        ("end", moment(booking.end, sheet.zone)),
        *((f"crew {turn.crew}", span(turn.start, turn.end, sheet.zone)) for turn in booking.crews),
        *((f"{need.amount} × {need.what}", span(need.start, need.end, sheet.zone)) for need in booking.needs),
        ("beam-out expected when planned", moment(booking.beam_out_p50, sheet.zone) or "none"),
        ("work", number(booking.labour_h, "person-hours", 1)),
    ]
    costs = [(term_word(term), money(getattr(booking.cost, term), sheet.currency)) for term in CostTerms.__slots__]
    facts([*rows, *costs, ("cost of the booking", money(booking.cost.total, sheet.currency))])


def _not_booked(sheet: LoomSheet) -> None:
    if STAGE_ORDER.index(sheet.stage) >= STAGE_ORDER.index(Stage.IN_WORK):
        st.write(f"No booking in the published plan; the loom is {sheet.stage}.")  # the plan's reason is out of date
    elif sheet.left_over:
        st.write(f"The published plan leaves this loom over: {literal(SPEAKER.line(sheet.left_over.why))}.")
        st.write(literal(f"Leaving it costs {money(sheet.left_over.cost, sheet.currency)}."))
    elif sheet.planned:
        st.write("The published plan does not have this loom.")
    else:
        no_plan("this loom's booking shows here then")


def _windows(sheet: LoomSheet) -> None:
    windows = sheet.windows if sheet.converted_at is None else sheet.beam_outs_ahead
    st.header("Chances to convert" if sheet.converted_at is None else "Beam-outs ahead")
    if not windows:
        st.caption(
            literal(_said(sheet.no_forecast)) or "No beam-out and no standing span before the end of the horizon."
        )
        return
    columns = [Head("Window"), Head("P10", whole=True), Head("P50", whole=True), Head("P90", whole=True),
               Head("Runs out"), Head("Comes in")]  # fmt: skip
    rows = [
        [
            window.kind.value + ("" if window.state == "ok" else f", reading {window.state}"),
            *(Cell(moment(at, sheet.zone), at) for at in (window.p10_at, window.p50_at, window.p90_at)),
            window.article_out or "",
            window.article_in or "",
        ]
        for window in windows[:MOST_WINDOWS]
    ]
    table(columns, rows)
    if len(windows) > MOST_WINDOWS:
        st.caption(f"and {len(windows) - MOST_WINDOWS} more up to the end of the horizon")


MOST_WINDOWS = 6


def _other_dates(sheet: LoomSheet) -> None:
    if not sheet.other_dates or sheet.converted_at is not None:
        return
    st.header("Other dates, and what they would cost more")
    columns = [Head("Start", whole=True), Head("End", whole=True), Head("Window"), Head("Choices"),
               Head(f"More ({sheet.currency})", right=True)]  # fmt: skip
    rows = [
        [
            Cell(moment(other.start, sheet.zone), other.start),
            Cell(moment(other.end, sheet.zone), other.end),
            other.kind.value,
            ", ".join(f"{choice}: {taken}" for choice, taken in other.choices),
            Cell(money(other.extra_cost), other.extra_cost),
        ]
        for other in sheet.other_dates
    ]
    table(columns, rows)


# ---- what it needs


def _needs(sheet: LoomSheet) -> None:
    st.header("What it needs, and why")
    if sheet.scope is None:
        st.info(literal(_said(sheet.no_scope)))
        return
    if sheet.scope.unknown:
        st.warning(
            f"To survey: look up {literal(', '.join(sheet.scope.unknown))} at the loom and load it; the work depends on it."
        )
        return
    if sheet.scope.obstacle:
        st.warning(literal(SPEAKER.line(sheet.scope.obstacle)))
    work = _chosen(sheet, sheet.scope.work)
    if work is None:
        return
    st.caption(literal(_work_says(sheet, work)))
    for tab, show in zip(st.tabs(["Operations", "Parts", "Settings", "Checks"]), TABS, strict=True):
        with tab:
            show(work, sheet)


def _chosen(sheet: LoomSheet, works: Sequence[WorkReport]) -> WorkReport | None:
    """The work of the booking where there is one; another can be chosen."""
    if not works:
        return None
    booking = sheet.booking
    fits = [
        i for i, w in enumerate(works) if booking and booking.kind in w.kinds and dict(booking.choices) == w.choices
    ]
    index = st.selectbox(
        "Work for", range(len(works)), index=fits[0] if fits else 0, format_func=lambda i: _work_name(works[i])
    )
    return works[index]


def _work_name(work: WorkReport) -> str:
    kinds = ", ".join(kind.value for kind in work.kinds)
    return " · ".join([kinds, *(f"{choice}: {taken}" for choice, taken in work.choices.items())])


def _work_says(sheet: LoomSheet, work: WorkReport) -> str:
    trades = ", ".join(f"{trade} {number(hours, 'h', 1)}" for trade, hours in work.trades.items())
    return (
        f"Loom stopped {number(work.on_loom_h, 'h', 1)}, bench before {number(work.bench_h, 'h', 1)}, after restart "
        f"{number(work.after_restart_h, 'h', 1)}; {number(work.labour_h, 'person-hours', 1)} (likely "
        f"{number(work.low_h, '', 1)} to {number(work.high_h, '', 1)}): {trades}. "
        f"Parts {money(work.parts_cost, sheet.currency)}."
    )


def _operations(work: WorkReport, _: LoomSheet) -> None:
    columns = [Head("Step", right=True), Head("Operation"), Head("Place"), Head("Minutes", right=True),
               Head("Who"), Head("Tool"), Head("Torque", right=True), Head("Caution"), Head("Why")]  # fmt: skip
    table(columns, [_operation(line) for line in work.operations])


def _operation(line: Line) -> list[Cell | str]:
    row: Any = line.row
    return [
        Cell(str(row.step), row.step),
        row.operation,
        row.place,
        Cell(number(row.minutes, "", 1), row.minutes),
        f"{row.heads} × {row.trade}",
        row.tool or "",
        number(row.torque_nm, "N·m", 1),
        row.caution or "",
        line.reason,
    ]


def _parts(work: WorkReport, sheet: LoomSheet) -> None:
    columns = [Head("Part", whole=True), Head("Quantity", right=True), Head("Comes back"), Head("Why")]
    units = sheet.units
    table(columns, _rows(work.kit_lines, lambda r: [r.part, Cell(number(r.quantity, units.get(r.part, ""), 3), r.quantity),
                                                    "yes" if r.comes_back else ""]))  # fmt: skip


def _settings(work: WorkReport, _: LoomSheet) -> None:
    columns = [Head("Setting"), Head("Side"), Head("Target", right=True), Head("Low", right=True),
               Head("High", right=True), Head("Unit"), Head("Why")]  # fmt: skip
    table(columns, _rows(work.setpoints, lambda r: [r.setting, r.side or "", shown(r.target), shown(r.low),
                                                    shown(r.high), r.unit or ""]))  # fmt: skip


def _checks(work: WorkReport, _: LoomSheet) -> None:
    columns = [Head("Check"), Head("Side"), Head("Kind"), Head("Low", right=True), Head("High", right=True),
               Head("Why")]  # fmt: skip
    table(columns, _rows(work.checks, lambda r: [r.check, r.side or "", r.kind, shown(r.low), shown(r.high)]))


def _rows(lines: Iterable[Line], cells: Any) -> list[list[Cell | str]]:
    return [[*cells(line.row), line.reason] for line in lines]


TABS = (_operations, _parts, _settings, _checks)


# ---- where its values came from


def _values(sheet: LoomSheet) -> None:
    st.header("What is known, and where it came from")
    columns = [Head("Value of"), Head("Value"), Head("File"), Head("Sheet"), Head("Cell", whole=True),
               Head("Entered", whole=True), Head("By")]  # fmt: skip
    known = [fact for fact in sheet.facts if fact.value is not None]
    table(columns, [_fact(fact, sheet) for fact in known])
    missing = [fact.heading for fact in sheet.facts if fact.value is None]
    if missing:
        st.caption(f"Not known: {literal(', '.join(missing))}.")


def _fact(fact: Fact, sheet: LoomSheet) -> list[Cell | str]:
    origin = fact.origin
    text = shown(fact.value * 100 if fact.unit == "%" else fact.value)
    return [
        fact.heading,
        f"{text} {fact.unit}".rstrip(),
        (origin.file or "entered here") if origin else "",
        origin.sheet if origin else "",
        origin.cell if origin else "",
        Cell(day(origin.at.astimezone(sheet.zone).date()), origin.at) if origin else "",
        origin.who if origin else "",
    ]
