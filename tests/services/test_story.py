"""Two days of a small mill, from its workbook to a second and a third plan; every figure is worked out by hand.

Three looms stand without an order from Mon 5 to Fri 16 Jan 2026, so that stopping them costs nothing. One crew of two,
Monday to Friday 06:00 to 14:00, at 30 a head and hour; a conversion takes 120 min of both: 4 person-hours, 120. Its kit is
a rail (100), which stays, and a clamp (50), which comes back: 150. 2 rails and 2 clamps are there, one rail more comes on
Thu 8 Jan and serves from Friday. The savings, 30, 20 and 10 a day, order the looms: 1, 2, 3.
"""

from datetime import UTC, date, datetime, timedelta

import pytest
from opened import here
from openpyxl import Workbook

from tracker.services.loading.load import load
from tracker.services.parts.kits import kits
from tracker.services.parts.needs import net_needs
from tracker.services.parts.stock import give_back, issue_kit, recover
from tracker.services.parts.stock_entry import Told
from tracker.services.plans.plan import PlanRequest, plan
from tracker.services.plans.verify import verify
from tracker.services.screens.status import status
from tracker.services.work.record import StageTold, record_stage
from tracker.services.work.taken import Taken

MONDAY = datetime(2026, 1, 5, tzinfo=UTC)
FROM, TO = datetime(2026, 1, 5), datetime(2026, 1, 17)
SHEETS = {
    "Looms": [
        ["Loom", "Hall", "Machine type", "Speed (picks/min)", "Efficiency (%)", "Saving per day"],
        *([loom, "Hall 1", "AJ", 600, 90, saving] for loom, saving in (("1", 30), ("2", 20), ("3", 10))),
    ],
    "Articles": [["Article", "Pick density (picks/cm)", "Take-up (%)"], ["A-1", 20, 5]],
    "Warps": [
        ["Loom", "Sequence", "Article", "Set length (m)", "Warp left (m)", "Read at"],
        *([loom, 0, "A-1", 60000, 59000, FROM] for loom in "123"),
    ],
    "Standing": [["Loom", "From", "To", "Reason"], *([loom, FROM, TO, "no order"] for loom in "123")],
    "Parts": [["Part", "Unit", "On hand", "Price"], ["RAIL", "pc", 2, 100], ["CLAMP", "pc", 2, 50]],
    "Receipts": [["Order", "Part", "Quantity", "Due"], ["PO-1", "RAIL", 1, date(2026, 1, 8)]],
    "Crews": [
        ["Crew", "Trade", "Heads", "Weekdays", "Shift start", "Shift end", "Rate per head and hour"],
        ["Fitters", "fitter", 2, "Mon-Fri", "06:00", "14:00", 30],
    ],
    "Operations": [["Step", "Operation", "Minutes", "Trade", "Heads"], [10, "Fit the rail", 120, "fitter", 2]],
    "Kit lines": [["Part", "Quantity", "Comes back"], ["RAIL", 1, "no"], ["CLAMP", 1, "yes"]],
    "Terms": [
        ["Term", "Value"], ["start", date(2026, 1, 5)], ["horizon (days)", 12], ["allowance (%)", 0],
        ["learning rate (%)", 100], ["soak (days)", 0],
    ],
}  # fmt: skip
LEFT_OVER_3 = 10 * 12 + 5000 + 120 + 150
"""Loom 3 not converted: its saving over the horizon, the penalty, and what its conversion would have cost."""


def at(hour, days=0):
    return MONDAY + timedelta(days=days, hours=hour)


@pytest.fixture
def db(tmp_path):
    book = Workbook()
    book.remove(book.active)
    for name, rows in SHEETS.items():
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(row)
    book.save(tmp_path / "mill.xlsx")
    assert load(here(tmp_path / "mill.db"), [tmp_path / "mill.xlsx"]).written
    return str(tmp_path / "mill.db")


def booked(report):
    return [(b.key.loom, b.start, b.end) for b in sorted(report.plan.bookings, key=lambda b: b.start)]


def test_from_the_workbook_to_the_third_plan(db):
    # There are clamps for two looms only, as long as none has come back.
    first = plan(here(db), PlanRequest(publish=True, as_of=at(6)))
    assert booked(first) == [("1", at(6), at(8)), ("2", at(8), at(10))]
    assert [(left.key.loom, left.cost) for left in first.plan.left_over] == [("3", LEFT_OVER_3)]
    # saving forgone from the start of the programme: 8 h of 30 a day and 10 h of 20 a day
    first_cost = (120 + 150 + 8 / 24 * 30) + (120 + 150 + 10 / 24 * 20) + LEFT_OVER_3
    assert first.plan.objective == pytest.approx(first_cost)
    assert [(kit.key.loom, kit.state) for kit in kits(here(db)).kits] == [("1", "complete"), ("2", "complete")]

    issue_kit(here(db), "1", told=Told(at=at(6)))
    record_stage(here(db), "1", "in work", told=StageTold(at=at(6)))
    record_stage(here(db), "1", "run-in", told=StageTold(at=at(8), taken=Taken("Fitters", at(6), total_min=120)))
    so_far = status(here(db), at(8))
    assert (so_far.labour_recorded_h, so_far.labour_recorded_cost, so_far.parts_issued_cost) == (4, 120, 150)

    # Loom 1 is done and still has its clamp: one rail and one clamp are there, held for loom 2.
    second = plan(here(db), PlanRequest(publish=True, as_of=at(8)))
    assert booked(second) == [("2", at(8), at(10))]
    assert second.plan.objective == pytest.approx(120 + 150 + 10 / 24 * 20 + LEFT_OVER_3)
    assert [(move.key.loom, move.what) for move in second.moves] == [("1", "dropped")]
    assert verify(here(db)).sound
    # without loom 3 nothing is to be ordered; with it neither, since a rail comes and a clamp comes back
    assert [net_needs(here(db), at(8), left_over).orders for left_over in (False, True)] == [(), ()]

    back = recover(here(db), "1", told=Told(at=at(8)))
    assert [(m.part, m.quantity) for m in back.movements] == [("CLAMP", 1)]
    assert status(here(db), at(8)).parts_issued_cost == 100

    # Now there is a clamp for loom 3; its rail comes on Thursday and serves on Friday from 06:00, 4 days and 8 h on.
    third = plan(here(db), PlanRequest(publish=True, as_of=at(8)))
    assert booked(third) == [("2", at(8), at(10)), ("3", at(6, days=4), at(8, days=4))]
    assert third.plan.left_over == ()
    assert third.plan.objective == pytest.approx(2 * (120 + 150) + 10 / 24 * 20 + (4 + 8 / 24) * 10)
    assert [(move.key.loom, move.what) for move in third.moves] == [("3", "new")]
    assert [(kit.key.loom, kit.state, kit.expected) for kit in kits(here(db), as_of=at(8)).kits] == [
        ("2", "complete", {}),
        ("3", "reserved", {"RAIL": date(2026, 1, 8)}),
    ]
    assert verify(here(db)).sound

    # Loom 2 is begun and broken off: its kit goes back, and it is planned again, after its crew has nothing else to do.
    issue_kit(here(db), "2", told=Told(at=at(8)))
    record_stage(here(db), "2", "in work", told=StageTold(at=at(8)))
    assert booked(plan(here(db), PlanRequest(as_of=at(9)))) == [("3", at(6, days=4), at(8, days=4))]
    assert {m.part: m.quantity for m in give_back(here(db), "2", told=Told(at=at(9))).movements} == {
        "RAIL": 1,
        "CLAMP": 1,
    }
    record_stage(here(db), "2", "scoped", told=StageTold(at=at(9), why="the rail does not fit"))
    fourth = plan(here(db), PlanRequest(publish=True, as_of=at(10)))
    assert booked(fourth) == [("2", at(10), at(12)), ("3", at(6, days=4), at(8, days=4))]
    assert [(kit.key.loom, kit.state) for kit in kits(here(db), as_of=at(10)).kits] == [
        ("2", "complete"),
        ("3", "reserved"),
    ]
