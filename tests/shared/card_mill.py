"""The mill of three looms with a method that has hold points, torques, settings, checks and parts, and a published plan that
books loom 1 on Tuesday 5 January 2027, 08:00 to 14:00 UTC, for crew F1. On the loom: Mount 300 min, then Wire and Electrics
60 min side by side. Its kit (RAIL 1, PIN 4) is handed out of RAIL 2, PIN 10."""

from collections.abc import Callable, Mapping
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

from made_once import made_once
from opened import here
from openpyxl import load_workbook
from three_looms import OPERATIONS, added, at, key, make, write

from tracker.domain.plan import Booking, CostTerms, CrewTurn, Need, Plan, PlanStatus
from tracker.domain.rows import SourceColumn, SourceTable, TypedRow
from tracker.domain.windows import WindowKind
from tracker.services.context import Context
from tracker.services.parts.reservations import reserve_plan
from tracker.services.parts.stock import issue_kit
from tracker.services.work.cards import cards, write_cards
from tracker.store import open_store

LOOM = key("1")
START, END = at(1, 8), at(1, 14)
NOW = at(2, 6)
RAIL_NM = 40.0
SETPOINTS = [
    {"setting": "crossing angle", "side": side, "unit": "deg", "target": 310.0, "low": 305.0, "high": 315.0}
    for side in ("left", "right")
]
CHECKS = [
    {"check": "Guards are refitted", "safety": True},
    {"check": "Fringe", "kind": "number", "low": 3.0, "high": 8.0},
]
KIT = [{"part": "RAIL", "quantity": 1.0}, {"part": "PIN", "quantity": 4.0}]
HELD = {"Electrics": {"waivable": False}, "Mount": {"torque_nm": RAIL_NM}}


def now_here(db: str, clock: datetime = NOW) -> Context:
    return here(db, clock=lambda: clock)


@made_once
def card_mill(db: str) -> str:
    make(db)
    stock = {"RAIL": 2.0, "PIN": 10.0}
    write(
        db,
        *(added("parts", part, part=part, on_hand=many, unit="pc", lead_time_days=7.0) for part, many in stock.items()),
    )
    tables = {"operations": [row | HELD.get(row["operation"], {}) for row in OPERATIONS[1:]], "setpoints": SETPOINTS,
              "checks": CHECKS, "kit_lines": KIT}  # fmt: skip
    first = {"operations": "step", "setpoints": "setting", "checks": "check", "kit_lines": "part"}
    sources = [
        SourceTable("method.xlsx", name, name, 1, (SourceColumn(field, "A1", field),)) for name, field in first.items()
    ]
    typed = {
        name: [TypedRow(name, row, {}, list(tables).index(name), number) for number, row in enumerate(rows, 2)]
        for name, rows in tables.items()
    }
    booking = Booking(
        LOOM, 1, WindowKind.REPEAT, (), START, END, START, 12, 11.0, {"RAIL": 1.0, "PIN": 4.0}, CostTerms(),
        crews=(CrewTurn("F1", START, END),), needs=(Need("electrician", "trade", 1, at(1, 13), END),),
    )  # fmt: skip
    plan = Plan(PlanStatus.OPTIMAL, 0, 0, 0, "EUR", at(0, 6), at(30, 0), (booking,))
    with open_store(db).unit_of_work("planner") as uow:
        uow.load_writer(at=at(0, 1)).write_method(typed, sources)
        uow.save_plan(plan, published=True)
        reserve_plan(uow, plan)
        uow.commit()
    issue_kit(now_here(db), "1")
    return db


Answers = Callable[[str, Mapping[str, Any]], Mapping[str, Any]]
"""Sheet, row by heading → what is written into it."""


def fill_cards(db: str, path: Path, answers: Answers) -> Path:
    """Write the card of loom 1 as a workbook, and fill it in as a person does."""
    write_cards(cards(now_here(db), "1"), None, path)
    book = load_workbook(path)
    for page in book.worksheets[1:]:
        headings = {str(cell.value): cell.column for cell in page[1]}
        for number in range(2, page.max_row + 1):
            row = {heading: page.cell(number, column).value for heading, column in headings.items()}
            if row["Loom"] is not None:
                for heading, value in answers(page.title, row).items():
                    page.cell(number, headings[heading]).value = value
    book.save(path)
    return path


def clock(hour: float) -> datetime:
    """That hour of the day of the conversion, as a cell has it."""
    return (at(1, 0) + timedelta(hours=hour)).replace(tzinfo=None)


def well_done(sheet: str, row: Mapping[str, Any]) -> Mapping[str, Any]:
    """Begun at eight, at speed at eleven, all as the method wants it; one PIN of four broke and one is left over."""
    match sheet:
        case "Work done" if not row["Operation"]:
            return {"Started": clock(8), "Ended": clock(12), "Stage reached": "signed off", "Locked": clock(8.25),
                    "Unlocked": clock(10.5), "First pick": clock(10.75), "At speed": clock(11)}  # fmt: skip
        case "Work done":
            return {"Done by": "M. Berg"} | ({"Torque read (N·m)": 41} if row["Operation"] == "Mount" else {})
        case "Set values":
            return {
                "Value": 300 if row["Why"] == "found" else 311,
                "At": clock(8.5 if row["Why"] == "found" else 11.5),
                "Who": "M. Berg",
            }
        case "Check results":
            return {
                "Result": "yes" if row["Check"] == "Guards are refitted" else 5,
                "At": clock(11.6),
                "Who": "M. Berg",
            }
        case "Parts used":
            return {"Used": 1} if row["Part"] == "RAIL" else {"Used": 2, "Left over": 1, "Broken": 1}
        case "Bobbins":
            return {"At": clock(11.9), "Grams left (g)": 640}
    return {}
