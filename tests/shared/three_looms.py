"""A mill of three looms in a database, small enough to plan on paper. Zone UTC, Monday 4 January 2027 is the start.

Cloth and warp run at 600 · 60 · 0.9 / (100 · 20) = 16.2 m/h. A conversion is 300 min of two fitters, then 60 min of an
electrician with them: 12 half hours. Nobody learns and nothing varies, unless a test says so: beam-outs have no spread.
"""

from collections.abc import Mapping
from datetime import UTC, datetime, time, timedelta
from typing import Any

from made_once import made_once

from tracker.domain.mill import LoomKey
from tracker.domain.rows import Change, SourceTable, TypedRow
from tracker.store import open_store

MONDAY = datetime(2027, 1, 4, tzinfo=UTC)
WARP_M_PER_H = 16.2
OUT_H = {"1": 32.0, "2": 64.0, "3": 800.0}
"""Beam-out of each loom, hours after Monday 00:00: Tuesday 08:00, Wednesday 16:00, and far off."""
TERMS: dict[str, object] = {
    "start": "2027-01-04", "horizon (days)": 42, "soak (days)": 0, "allowance (%)": 0.0, "learning rate (%)": 1.0,
    "day-to-day variation (%)": 0.0,
}  # fmt: skip
FITTERS = {
    "crew": "F1",
    "trade": "fitter",
    "heads": 2,
    "rate_per_head_h": 30.0,
    "shift_start": time(6),
    "shift_end": time(18),
}
ELECTRICIAN = {
    "crew": "E1",
    "trade": "electrician",
    "heads": 1,
    "rate_per_head_h": 40.0,
    "shift_start": time(6),
    "shift_end": time(18),
}
OPERATIONS = (
    {
        "step": 5,
        "operation": "Take the beam out",
        "minutes": 240.0,
        "trade": "fitter",
        "heads": 2,
        "window": "mid-warp",
    },
    {"step": 10, "operation": "Mount", "minutes": 300.0, "trade": "fitter", "heads": 2},
    {"step": 20, "operation": "Wire", "minutes": 60.0, "trade": "fitter", "heads": 2},
    {"step": 20, "operation": "Electrics", "minutes": 60.0, "trade": "electrician", "heads": 1},
)


def at(day: int, hour: float) -> datetime:
    """`hour` o'clock, `day` days after Monday 4 January 2027."""
    return MONDAY + timedelta(days=day, hours=hour)


def key(loom: str) -> LoomKey:
    return LoomKey("H", loom)


def added(table: str, *row_key: object, **values: object) -> Change:
    return Change(table, row_key, "", None, values)


def write(db: str, *changes: Change) -> None:
    """As a load would do."""
    with open_store(db).unit_of_work("planner") as uow:
        uow.load_writer(at=MONDAY).write(list(changes), {})
        uow.commit()


def crew(row: Mapping[str, Any]) -> Change:
    return added("crews", row["crew"], row.get("weekdays"), row["shift_start"], row.get("from_on"), **row)


def reading(loom: str, read_at: datetime, out_at: datetime) -> Change:
    """A reading by which the warp of a loom runs out at a moment."""
    left = (out_at - read_at) / timedelta(hours=1) * WARP_M_PER_H
    local = read_at.replace(tzinfo=None)
    return added("readings", loom, "H", local, loom=loom, hall="H", read_at=local, warp_left_m=left)


@made_once
def make(db: str, terms: Mapping[str, object] | None = None) -> str:
    """Write the mill, with these terms (by their headings) changed."""
    open_store(db, make=True)
    said = TERMS | (terms or {})
    run = {"speed_ppm": 600.0, "efficiency": 0.9, "saving_per_day": 2.4}
    values = {"article": "A", "set_length_m": 20000.0, "hall": "H"}
    first = {"sequence": 0, "read_at": MONDAY.replace(tzinfo=None)}
    write(
        db,
        *(added("terms", term, term=term, value=value) for term, value in said.items()),
        *(added("looms", loom, "H", loom=loom, hall="H", machine_type="AJ", **run) for loom in OUT_H),
        added("articles", "A", article="A", pick_density_per_cm=20.0, take_up=0.0, contribution_per_m=0.5),
        added("changes", "repeat", None, kind="repeat", hours_h=2.0),
        *(
            added("warps", loom, "H", 0, loom=loom, warp_left_m=hours * WARP_M_PER_H, **values, **first)
            for loom, hours in OUT_H.items()
        ),
        crew(FITTERS),
        crew(ELECTRICIAN),
    )
    method(db, OPERATIONS)
    return db


def method(db: str, operations: tuple[Mapping[str, Any], ...]) -> None:
    """Put a method in force that has these operations and no parts."""
    typed = {"operations": [_operation(row) for row in operations]}
    with open_store(db).unit_of_work("planner") as uow:
        writer = uow.load_writer(at=MONDAY)
        writer.write_method(typed, [SourceTable("method.xlsx", "Operations", "operations", 1)])
        uow.commit()


def _operation(row: Mapping[str, Any]) -> TypedRow:
    values = {name: value for name, value in row.items() if name != "window"}
    return TypedRow("operations", values, {"window": row["window"]} if "window" in row else {}, 0, int(row["step"]))
