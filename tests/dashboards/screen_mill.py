"""Databases for the screens: a mill put straight into the store, and plans made by hand."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from itertools import chain
from pathlib import Path
from typing import Any

from made_once import made_once

from tracker.domain.method import KitLine, Method, Operation
from tracker.domain.mill import Article, Crew, Loom, LoomKey, Mill, OrdinaryChange, Part, Receipt, Warp
from tracker.domain.plan import Booking, CostTerms, LeftOver, OtherDate, Plan, PlanStatus
from tracker.domain.record_tables import RECORDS
from tracker.domain.rows import Change, SourceColumn, SourceTable, TypedRow
from tracker.domain.tables import TABLES, TERM_HEADINGS, Kind, Table
from tracker.domain.terms import Terms
from tracker.domain.windows import WindowKind
from tracker.errors import message
from tracker.store import open_store
from tracker.store.loads import RowPlace

AS_OF = datetime(2027, 1, 4, 5, tzinfo=UTC)
"""Monday, 06:00 in Vienna."""
ZONE = "Europe/Vienna"
SEVEN, TEN, NINE = LoomKey("Hall 1", "A-7"), LoomKey("Hall 1", "A-10"), LoomKey("Hall 2", "A-9")


def small_mill() -> Mill:
    """Three looms in two halls; A-7 and A-10 weave, A-9 has an attribute that the method asks for and is not known.

    Warp rate: 600 picks/min, 20/cm, 90 %, crimp 8 % → 600·60·0.9/2000·1.08 = 17.496 m/h, all hours of the week; the
    warp of A-7 has 699.84 m left at 06:00 on 4 January, 40 h, so it runs out on 5 January at 22:00.
    """
    looms = {
        SEVEN: Loom(
            "Hall 1", "A-7", "AJ-N", speed_ppm=600, efficiency=0.9, reed_width_cm=190, attributes={"rail": "drilled"}
        ),
        TEN: Loom("Hall 1", "A-10", "AJ-N", speed_ppm=600, efficiency=0.9, attributes={"rail": "undrilled"}),
        NINE: Loom("Hall 2", "A-9", "RP-W", speed_ppm=600, efficiency=0.9, attributes={"rail": None}),
    }
    warps = {
        key: (Warp(key.hall, key.loom, 0, "Twill", 3000, left, AS_OF, change="style"),)
        for key, left in ((SEVEN, 699.84), (TEN, 1399.68), (NINE, 2000.0))
    }
    return Mill(
        looms=looms,
        warps=warps,
        articles={"Twill": Article("Twill", 20, 0.08, "crimp", 0.5, 2.0)},
        changes=(OrdinaryChange("repeat", 2), OrdinaryChange("style", 4)),
        parts={"RAIL": Part("RAIL", 2, "cross rail", "pc", lead_time_days=28, price=310, supplier="Supplier A")},
        receipts=(Receipt("PO-1", "RAIL", 1, date(2027, 1, 8)),),
        crews=(Crew("Fitters", "fitter", 2, frozenset(range(5)), time(6), time(14), 34),),
        method=Method(
            1,
            (
                Operation(10, "fit the device", 200, "fitter", 2),
                Operation(20, "drill the rail", 60, "fitter", 2, conditions={"rail": "undrilled"}),
            ),
            (KitLine("RAIL", 1),),
        ),
        terms=Terms("Small programme", ZONE, "EUR", date(2027, 1, 4), target_finish=date(2027, 1, 10)),
    )


def small_plan(mill: Mill) -> Plan:
    """A-7 booked firm on Wednesday 6 January 06:00 to 10:00, A-10 as pilot on Thursday 7 January 08:00 to Friday 10:00,
    A-9 left over. Cost 1,000 + 500, left over 6,000; bound 7,450, so the gap is 50/7,500 = 0.67 %."""
    return Plan(
        PlanStatus.OPTIMAL, 7500, 7450, 1.25, "EUR", AS_OF, AS_OF + timedelta(days=84),
        (
            Booking(SEVEN, 1, WindowKind.STYLE, (("rail", "old rail"),), at(6, 5), at(6, 9), at(5, 21), 8, 7.7,
                    {"RAIL": 1}, CostTerms(400, 40, 250, 310), firm=True),
            Booking(TEN, 1, WindowKind.REPEAT, (), at(7, 7), at(8, 9), at(7, 13), 10, 10, {"RAIL": 1},
                    CostTerms(labour=190, parts=310), pilot=True),
        ),
        (LeftOver(NINE, message("to-survey", unknown="rail unknown"), 6000),),
        other_dates=(OtherDate(SEVEN, 1, WindowKind.STYLE, (), at(6, 7), at(6, 11), 55.0),),
        start=date(2027, 1, 4),
    )  # fmt: skip


def at(day: int, hour: int) -> datetime:
    """A moment of January 2027, UTC; Vienna is one hour ahead."""
    return datetime(2027, 1, day, hour, tzinfo=UTC)


@made_once
def put(db: Path, mill: Mill, plan: Plan | None = None) -> str:
    """Write a mill, and publish a plan, in a new database; gives its path."""
    with open_store(db, make=True).unit_of_work("planner") as uow:
        _write(uow, [row for row in _changes(mill) if row.table == "terms"], ())
        uow.commit()
    with open_store(db).unit_of_work("planner") as uow:
        _write(uow, [row for row in _changes(mill) if row.table != "terms"], tuple(_method_rows(mill.method)))
        if plan:
            uow.save_plan(plan, published=True)
        uow.commit()
    return str(db)


def _write(uow: Any, changes: list[Change], method: tuple[TypedRow, ...]) -> None:
    writer = uow.load_writer(at=AS_OF)
    names = ["loom", "machine_type", "speed_ppm", "efficiency", "reed_width_cm", "rail"]
    columns = [SourceColumn(name, f"{chr(65 + i)}1", name if name != "rail" else "") for i, name in enumerate(names)]
    source = SourceTable("mill.xlsx", "Looms", "looms", 1, tuple(columns))
    writer.begin(["mill.xlsx"], [source])
    writer.write(changes, {(c.table, c.key): RowPlace(0, i + 2) for i, c in enumerate(changes) if c.table == "looms"})
    if method:
        tables = {row.table for row in method}
        writer.write_method({name: [row for row in method if row.table == name] for name in tables}, [source])


def _changes(mill: Mill) -> Iterator[Change]:
    for heading, field in TERM_HEADINGS.items():
        value = getattr(mill.terms, field)
        if value is not None:
            plain = value.isoformat() if isinstance(value, date) else value
            yield Change("terms", (heading,), "", None, {"term": heading, "value": plain})
    for table in TABLES.values():
        if not table.whole and table.name not in ("terms", *RECORDS):
            for item in _items(getattr(mill, table.name)):
                yield _change(table, item, mill)


def _items(found: Any) -> Iterable[Any]:
    values = found.values() if isinstance(found, dict) else found
    return chain.from_iterable(value if isinstance(value, tuple) else (value,) for value in values)


def _change(table: Table, item: Any, mill: Mill) -> Change:
    values = {column.field: getattr(item, column.field) for column in table.columns}
    for column in table.columns:
        if column.kind is Kind.MOMENT and values[column.field] is not None:
            values[column.field] = values[column.field].astimezone(mill.terms.zone).replace(tzinfo=None)
    values |= getattr(item, "attributes", {})
    return Change(table.name, tuple(values[field] for field in table.key), "", None, values)


def _method_rows(method: Method) -> Iterator[TypedRow]:
    fields = {"operations": method.operations, "kit_lines": method.kit_lines, "choices": method.alternatives,
              "setpoints": method.setpoints, "checks": method.checks}  # fmt: skip
    for name, rows in fields.items():
        for number, row in enumerate(rows, 2):
            values = {column.field: getattr(row, column.field) for column in TABLES[name].columns}
            yield TypedRow(name, values, dict(row.conditions), 0, number)


def busy_plan(mill: Mill, as_of: datetime, weeks: int) -> Plan:
    """A plan with every loom booked, spread evenly over the weeks, four hours each from 06:00 UTC on working days."""
    kinds = list(WindowKind)
    days = [
        as_of.date() + timedelta(days=i) for i in range(7 * weeks) if (as_of.date() + timedelta(days=i)).weekday() < 5
    ]
    looms = list(mill.looms)
    bookings = []
    for i, key in enumerate(looms):
        start = datetime.combine(days[i * len(days) // len(looms)], time(6), UTC) + timedelta(hours=i % 4)
        kind = kinds[i % len(kinds)]
        out = None if kind in (WindowKind.STANDING, WindowKind.MID_WARP) else start - timedelta(hours=3)
        bookings.append(
            Booking(key, 1, kind, (), start, start + timedelta(hours=4 + 20 * (i % 7 == 0)), out, 8, 9.5 + i % 3, {},
                    CostTerms(300, 20, 250, 400, 30), firm=i < 4, pilot=i == 1)
        )  # fmt: skip
    total = sum(booking.cost.total for booking in bookings)
    return replace(small_plan(mill), bookings=tuple(bookings), left_over=(), objective=total, bound=total - 10,
                   horizon_end=as_of + timedelta(days=7 * weeks), other_dates=())  # fmt: skip
