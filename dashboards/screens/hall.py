"""Hall: rows and places as they stand, with the number, stage, kit and alarms of each loom."""

from collections.abc import Mapping, Sequence
from html import escape
from urllib.parse import urlencode

import streamlit as st

from dashboards import access, filters
from dashboards.empty import no_looms
from dashboards.look import INK
from dashboards.parts import heads, legend, table
from dashboards.speaking import say
from dashboards.tables import STAGE_SIGNS, loom_cell, stage_cell, stage_word
from tracker.domain.mill import LoomKey
from tracker.domain.words import natural_key
from tracker.errors import DataError
from tracker.services.parts.kits import STATES, kits
from tracker.services.screens.loom_sheet import LoomLine, loom_list
from tracker.services.screens.status import STAGE_ORDER
from tracker.services.work.settings import settings

NO_KIT = "none"


def page() -> None:
    st.title(say("screen-hall"))
    lines = access.ask(loom_list).looms
    if not lines:
        no_looms()
        return
    kit, alarms = _kits(), _alarms()
    fitting = _fitting(lines, kit, alarms)
    st.caption(say("hall-shown", shown=len(fitting), all=len(lines)))
    known = [stage for stage in STAGE_ORDER if any(line.stage == stage for line in lines)]
    legend([(STAGE_SIGNS[stage], INK, stage_word(stage)) for stage in known])
    for hall in dict.fromkeys(line.key.hall for line in lines):
        _hall(hall, [line for line in lines if line.key.hall == hall], fitting, alarms)
    with st.expander(say("hall-as-table")):
        columns = heads("looms-hall", "looms-row", "looms-place", "looms-loom", "looms-type", "looms-stage")
        columns += heads("hall-kit", "hall-alarms")
        table(columns, [[line.key.hall, line.row or "", line.place or "", loom_cell(line.key), line.machine_type,
                         stage_cell(line.stage), _kit_says(kit.get(line.key, NO_KIT)), str(alarms.get(line.key, ""))]
                        for line in lines if line.key in fitting], name="hall")  # fmt: skip


def _kits() -> Mapping[LoomKey, str]:
    """Loom → the state of its kit; empty where nothing is planned."""
    try:
        return {one.key: one.state for one in access.ask_now(kits).kits}
    except DataError:
        return {}


def _alarms() -> Mapping[LoomKey, int]:
    """Loom → alarms of its settings that nobody has seen."""
    found: dict[LoomKey, int] = {}
    for alarm in access.ask_now(settings).review.alarms:
        found[alarm.series.key] = found.get(alarm.series.key, 0) + 1
    return found


def _fitting(lines: Sequence[LoomLine], kit: Mapping[LoomKey, str], alarms: Mapping[LoomKey, int]) -> set[LoomKey]:
    """Looms that the filters leave; the filters stand in the address."""
    stages_at, types_at, kits_at, alarms_at = st.columns(4, vertical_alignment="bottom")
    known = [stage for stage in STAGE_ORDER if any(line.stage == stage for line in lines)]
    stages = filters.several(stages_at, "stage", say("looms-stage"), known, say("looms-all-stages"), stage_word)
    every = sorted({line.machine_type for line in lines}, key=natural_key)
    types = filters.several(types_at, "type", say("looms-type"), every, say("looms-all-types"))
    states = filters.several(kits_at, "kit", say("hall-kit"), [*STATES, NO_KIT], say("hall-all-kits"), _kit_says)
    alarmed = filters.yes(alarms_at, "alarm", say("hall-only-alarms"))
    return {
        line.key
        for line in lines
        if (not stages or line.stage in stages)
        and (not types or line.machine_type in types)
        and (not states or kit.get(line.key, NO_KIT) in states)
        and (not alarmed or line.key in alarms)
    }


def _kit_says(state: str) -> str:
    return say("sheet-kit-state", state=state)


def _hall(hall: str, lines: Sequence[LoomLine], fitting: set[LoomKey], alarms: Mapping[LoomKey, int]) -> None:
    """Row by row; looms without a row stand below them. What does not fit the filters keeps its place and is faint."""
    st.header(hall or say("looms-no-hall"))
    rows: dict[str, list[LoomLine]] = {}
    for line in sorted(lines, key=_place):
        rows.setdefault(line.row or "", []).append(line)
    html = "".join(_row(row, of_row, fitting, alarms) for row, of_row in rows.items())
    st.html(f'<div class="hall">{html}</div>')


def _place(line: LoomLine) -> tuple[object, ...]:
    return not line.row, natural_key(line.row or ""), natural_key(line.place or line.key.loom)


def _row(row: str, lines: Sequence[LoomLine], fitting: set[LoomKey], alarms: Mapping[LoomKey, int]) -> str:
    name = say("hall-row", row=row) if row else say("hall-no-row")
    looms = "".join(_loom(line, line.key in fitting, alarms.get(line.key, 0)) for line in lines)
    return f'<div class="hall-row"><div class="hall-name">{escape(name)}</div>{looms}</div>'


def _loom(line: LoomLine, fits: bool, alarms: int) -> str:
    there = "looms?" + urlencode({"loom": line.key.loom, "hall": line.key.hall})
    word = stage_word(line.stage)
    alarm = f' <span class="alarm">▲ {alarms}</span>' if alarms else ""
    place = say("hall-place", place=line.place) if line.place else ""
    return (
        f'<a class="hall-loom{"" if fits else " faint"}" href="{escape(there)}" target="_self" title="{escape(place)}">'
        f"<b>{escape(line.key.loom)}</b>{alarm}<br>{STAGE_SIGNS[line.stage]} {escape(word)}</a>"
    )
