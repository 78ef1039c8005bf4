"""What one loom needs and why: operations, parts, settings, checks."""

from collections.abc import Callable, Iterable, Sequence
from typing import Any

import streamlit as st

from dashboards.parts import heads, literal, table
from dashboards.speaking import SPEAKER, money, number, say, shown
from dashboards.tables import Cell
from tracker.domain.columns import word_named
from tracker.services.screens.loom_sheet import LoomSheet
from tracker.services.work.scope import Line, WorkReport


def needs(sheet: LoomSheet) -> None:
    st.header(say("sheet-needs"))
    if sheet.scope is None:
        st.info(literal(SPEAKER.line(sheet.no_scope) if sheet.no_scope else ""))
        return
    if sheet.scope.unknown:
        st.warning(literal(say("sheet-to-survey", what=list(sheet.scope.unknown))))
        return
    if sheet.scope.obstacle:
        st.warning(literal(SPEAKER.line(sheet.scope.obstacle)))
    work = _chosen(sheet, sheet.scope.work)
    if work is None:
        return
    st.caption(literal(_work_says(sheet, work)))
    tabs = st.tabs([say(code) for code in TABS])
    for tab, show in zip(tabs, TABS.values(), strict=True):
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
        say("sheet-work-for"),
        range(len(works)),
        index=fits[0] if fits else 0,
        format_func=lambda i: _work_name(works[i]),
    )
    return works[index]


def _work_name(work: WorkReport) -> str:
    kinds = ", ".join(map(SPEAKER.word, work.kinds))
    return " · ".join([kinds, *(f"{choice}: {taken}" for choice, taken in work.choices.items())])


def _work_says(sheet: LoomSheet, work: WorkReport) -> str:
    trades = ", ".join(f"{trade} {number(hours, 'h', 1)}" for trade, hours in work.trades.items())
    return say(
        "sheet-work-says", stopped=number(work.on_loom_h, "h", 1), bench=number(work.bench_h, "h", 1),
        after=number(work.after_restart_h, "h", 1),
        later=number(work.bench_after_h, "h", 1) if work.bench_after_h else None, labour=number(work.labour_h, "", 1),
        low=number(work.low_h, "", 1),
        high=number(work.high_h, "", 1), trades=trades, parts=money(work.parts_cost, sheet.currency),
    )  # fmt: skip


def _operations(work: WorkReport, _: LoomSheet) -> None:
    columns = [
        *heads("sheet-step", right=True), *heads("sheet-operation", "sheet-where"), *heads("sheet-minutes", right=True),
        *heads("sheet-who", "sheet-tool"), *heads("sheet-torque", right=True), *heads("sheet-caution", "sheet-why"),
    ]  # fmt: skip
    table(columns, [_operation(line) for line in work.operations])


def _operation(line: Line) -> list[Cell | str]:
    row: Any = line.row
    return [
        Cell(str(row.step), row.step),
        row.operation,
        _word(row.place),
        Cell(number(row.minutes, "", 1), row.minutes),
        f"{row.heads} × {row.trade}",
        row.tool or "",
        number(row.torque_nm, "N·m", 1),
        row.caution or "",
        line.reason,
    ]


def _parts(work: WorkReport, sheet: LoomSheet) -> None:
    columns = [
        *heads("sheet-part", whole=True),
        *heads("sheet-quantity", right=True),
        *heads("sheet-comes-back", "sheet-why"),
    ]
    units = sheet.units
    table(columns, _rows(work.kit_lines, lambda r: [r.part, Cell(number(r.quantity, units.get(r.part, ""), 3), r.quantity),
                                                    say("word-yes") if r.comes_back else ""]))  # fmt: skip


def _settings(work: WorkReport, _: LoomSheet) -> None:
    limits = heads("sheet-target", "sheet-low", "sheet-high", right=True)
    columns = [*heads("sheet-setting", "sheet-side"), *limits, *heads("sheet-unit", "sheet-why")]
    table(columns, _rows(work.setpoints, lambda r: [r.setting, r.side or "", shown(r.target), shown(r.low),
                                                    shown(r.high), r.unit or ""]))  # fmt: skip


def _checks(work: WorkReport, _: LoomSheet) -> None:
    columns = [
        *heads("sheet-check", "sheet-side", "sheet-kind"), *heads("sheet-low", "sheet-high", right=True), *heads("sheet-why"),
    ]  # fmt: skip
    table(columns, _rows(work.checks, lambda r: [r.check, r.side or "", _word(r.kind), shown(r.low), shown(r.high)]))


def _word(word: str) -> str:
    return SPEAKER.say(word_named(word))


def _rows(lines: Iterable[Line], cells: Any) -> list[list[Cell | str]]:
    return [[*cells(line.row), line.reason] for line in lines]


TABS: dict[str, Callable[[WorkReport, LoomSheet], None]] = {
    "sheet-tab-operations": _operations, "sheet-tab-parts": _parts, "sheet-tab-settings": _settings, "sheet-tab-checks": _checks,
}  # fmt: skip
"""Code of the tab → what it shows."""
