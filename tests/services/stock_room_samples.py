"""A database with three booked looms and four parts, for the tests of kits, needs and stock."""

from datetime import UTC, date, datetime, time, timedelta

from made_once import made_once

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking, CostTerms, LeftOver, Plan, PlanStatus
from tracker.domain.rows import Change, SourceTable, TypedRow
from tracker.domain.windows import WindowKind
from tracker.errors import as_it_stands
from tracker.services.parts.reservations import reserve_plan
from tracker.store import open_store

RUN = {"speed_ppm": 600.0, "efficiency": 0.9, "saving_per_day": 20.0}
AT = datetime(2026, 1, 5, 5, tzinfo=UTC)
"""Mon 5 Jan 2026, the first day of 2026-W02."""
PARTS = {
    "RAIL": {"on_hand": 2.0, "unit": "pc", "location": "B-1", "price": 300.0, "supplier": "A Works", "lead_time_days": 14.0},
    "NUT": {"on_hand": 20.0, "unit": "pc", "location": "A-2", "price": 0.5, "supplier": "B Works", "lead_time_days": 0.0},
    "CABLE": {"on_hand": 10.0, "unit": "m", "safety_stock": 4.0},
    "GAUGE": {"on_hand": 3.0},
}  # fmt: skip
KITS = {
    "1": (date(2026, 1, 12), {"RAIL": 1.0, "NUT": 8.0, "CABLE": 2.5, "GAUGE": 1.0}),
    "2": (date(2026, 1, 19), {"RAIL": 1.0, "NUT": 8.0, "CABLE": 2.5}),
    "10": (date(2026, 1, 26), {"RAIL": 1.0, "NUT": 8.0}),
}
"""Reserved when published: looms 1 and 2 whole (5 m of cable of the 6 usable), loom 10 lacks the rail and 4 nuts."""


def key(loom: str) -> LoomKey:
    return LoomKey("Hall 1", loom)


def added(table: str, *row_key: object, **values: object) -> Change:
    return Change(table, row_key, "", None, values)


def booking(loom: str, day: date, parts: dict[str, float], **more) -> Booking:
    start = datetime(day.year, day.month, day.day, 6, tzinfo=UTC)
    end = start + timedelta(hours=4)
    values = {"kind": WindowKind.REPEAT, "choices": (), "cost": CostTerms()} | more
    return Booking(key(loom), 1, start=start, end=end, beam_out_p50=None, slots=8, labour_h=8, parts=parts, **values)


def plan_of(*bookings: Booking, left_over: tuple[str, ...] = ()) -> Plan:
    left = tuple(LeftOver(key(loom), as_it_stands("no rail in time"), 5000) for loom in left_over)
    return Plan(PlanStatus.OPTIMAL, 0, 0, 0, "EUR", AT, AT + timedelta(weeks=8), bookings, left)


PLAN = plan_of(*(booking(loom, day, parts) for loom, (day, parts) in KITS.items()), left_over=("3",))


def fill_method(db: str, alternatives: tuple[str, ...] = ("new rail", "drill")) -> str:
    """A method with one choice: a new rail (a RAIL and 8 NUT, 60 min) or drilling (8 NUT, 150 min). A GAUGE comes back."""
    operations = [
        {"step": 10, "operation": "mount", "minutes": 60.0, "trade": "fitter", "heads": 2},
        {"step": 20, "operation": "drill", "minutes": 90.0, "trade": "fitter", "heads": 2, "rail": "drill"},
    ]
    lines = [
        {"part": "NUT", "quantity": 8.0},
        {"part": "RAIL", "quantity": 1.0, "rail": "new rail"},
        {"part": "GAUGE", "quantity": 1.0, "comes_back": True},
    ]
    choices = [{"choice": "rail", "alternative": name} for name in alternatives]
    rows = {"operations": operations, "kit_lines": lines, "choices": choices}
    crew = {
        "crew": "F1",
        "trade": "fitter",
        "heads": 2,
        "rate_per_head_h": 30.0,
        "shift_start": time(6),
        "shift_end": time(14),
    }
    with open_store(db).unit_of_work("planner") as uow:
        writer = uow.load_writer(at=AT)
        writer.write([added("crews", "F1", None, time(6), None, **crew)], {})
        typed = {table: [_typed(table, row) for row in found] for table, found in rows.items()}
        writer.write_method(typed, [SourceTable("method.xlsx", "Method", "operations", 1)])
        uow.commit()
    return db


def _typed(table: str, row: dict) -> TypedRow:
    return TypedRow(table, {k: v for k, v in row.items() if k != "rail"}, {k: v for k, v in row.items() if k == "rail"})


@made_once
def fill(db: str, plan: Plan | None = PLAN, *more: Change) -> str:
    """Make the database, publish the plan and reserve for it."""
    looms = [
        added("looms", loom, "Hall 1", hall="Hall 1", loom=loom, machine_type="AJ-190", **RUN)
        for loom in ("1", "2", "3", "10")
    ]
    parts = [added("parts", name, part=name, **values) for name, values in PARTS.items()]
    line = added("receipts", "PO-1", "RAIL", order="PO-1", part="RAIL", quantity=4.0, due=date(2026, 1, 21))
    with open_store(db, make=True).unit_of_work("planner") as uow:
        uow.load_writer(at=AT).write([*looms, *parts, line, *more], {})
        if plan:
            uow.save_plan(plan, published=True)
            uow.session.flush()
            reserve_plan(uow, plan)
        uow.commit()
    return db


@made_once
def fill_with_method(db: str, plan: Plan | None = PLAN) -> str:
    return fill_method(fill(db, plan))
