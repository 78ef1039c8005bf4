"""A mill of two looms, small enough to plan on paper. Zone UTC, Monday 4 January 2027 is the start.

A conversion takes two hours (4 half hours): an hour for the fitters alone, an hour with the electrician and the hoist
beside them. Beam-outs have no spread, so that costs can be worked out by hand.
"""

from collections.abc import Mapping
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from typing import Any

from tracker.domain.mill import Crew, Loom, LoomKey, Mill, Part, Receipt, Tool
from tracker.domain.terms import Terms
from tracker.domain.windows import Window, WindowKind
from tracker.domain.work import StepLoad, WorkContent
from tracker.planning.problem import PlanningProblem

MONDAY = datetime(2027, 1, 4, tzinfo=UTC)
ONE, TWO = LoomKey("Hall 1", "1"), LoomKey("Hall 1", "2")


def at(day: int, hour: float) -> datetime:
    """`hour` o'clock, `day` days after Monday 4 January 2027."""
    return MONDAY + timedelta(days=day, hours=hour)


def content(kind: WindowKind = WindowKind.REPEAT, rail: str = "new") -> WorkContent:
    return WorkContent(
        kind=kind,
        choices=(("rail", rail),),
        operations=(),
        kit_lines=(),
        setpoints=(),
        checks=(),
        steps=(
            StepLoad(10, 60.0, {"fitter": 2}, {}),
            StepLoad(20, 60.0, {"fitter": 2, "electrician": 1}, {"hoist": 1}),
        ),
        on_loom_min=120.0,
        bench_min=0.0,
        after_restart_min=0.0,
        labour_min={"fitter": 240.0, "electrician": 60.0},
        parts={"RAIL": 1.0},
    )


CONTENTS = {kind: (content(kind), content(kind, "drilled")) for kind in WindowKind}


def window(key: LoomKey, mean_at: datetime, number: int = 1) -> Window:
    return Window(
        key=key,
        number=number,
        kind=WindowKind.REPEAT,
        reading_at=MONDAY,
        mean_running_h=(mean_at - MONDAY) / timedelta(hours=1),
        spread_h=0.0,
        mean_at=mean_at,
        p10_at=mean_at,
        p50_at=mean_at,
        p90_at=mean_at,
        starts_at=mean_at,
        ends_at=None,
        article_out="A",
        article_in="A",
        warp_rate_m_per_h=10.0,
        warp_value_per_m=3.0,
        contribution_per_h=5.0,
        ordinary_change_h=2.0,
    )


def still(key: LoomKey, kind: WindowKind, starts_at: datetime, ends_at: datetime, number: int) -> Window:
    """A standing or mid-warp window."""
    return replace(
        window(key, starts_at, number),
        kind=kind,
        mean_running_h=0.0,
        ends_at=ends_at,
        ordinary_change_h=0.0,
    )


FITTERS = Crew("Fitters 1", "fitter", 2, shift_start=time(6), shift_end=time(14), rate_per_head_h=30.0)
ELECTRICIAN = Crew("Electrician", "electrician", 1, shift_start=time(6), shift_end=time(14), rate_per_head_h=40.0)
LOOMS = {key: Loom(key.hall, key.loom, "AJ", saving_per_day=24.0) for key in (ONE, TWO)}
WINDOWS = {ONE: (window(ONE, at(1, 8)),), TWO: (window(TWO, at(10, 10)),)}


def problem(windows: Mapping[LoomKey, tuple[Window, ...]] = WINDOWS, **changes: Any) -> PlanningProblem:
    """The small problem; `changes` are fields of the mill, of its terms or of the problem."""
    of_terms = {k: changes.pop(k) for k in list(changes) if k in Terms.__slots__}
    of_mill = {k: changes.pop(k) for k in list(changes) if k in Mill.__slots__}
    mill = Mill(
        looms=LOOMS,
        parts={"RAIL": Part("RAIL", 1.0, price=100.0)},
        receipts=(Receipt("4500-10", "RAIL", 1.0, date(2027, 1, 8)),),
        crews=(FITTERS, ELECTRICIAN),
        tools={"hoist": Tool("hoist", 1)},
        terms=replace(Terms(start=date(2027, 1, 4), horizon_days=28, pilot_trade="nobody"), **of_terms),
    )
    given: dict[str, Any] = {"contents": dict.fromkeys(LOOMS, CONTENTS), "as_of": MONDAY} | changes
    return PlanningProblem(mill=replace(mill, **of_mill), windows=windows, **given)
