"""A mill of 42 looms whose shelves are empty, through the front door: its workbook, a plan for all, an order list; what is
ordered by it comes in on time, and nothing falls. A fitter who falls ill is one line, and a foreman has his sheets.

All looms run out of their warps every nine to ten days, night and day, spread evenly; a conversion takes two hours of a crew
and one of the electrician, so that two crews could do it six times over. Rails take three weeks to come, screws one;
clamps take two and come back from each loom as it is done.
"""

from datetime import UTC, date, datetime, timedelta

import pytest
from mill_sheets import workbook
from opened import here
from python_calamine import CalamineWorkbook

from tracker.services.loading.load import load
from tracker.services.parts.needs import net_needs
from tracker.services.parts.stock import issue_kit, receive, recover
from tracker.services.parts.stock_entry import Told
from tracker.services.people.absences import record_absence
from tracker.services.plans.plan import PlanRequest, plan
from tracker.services.plans.published import published_plan, write_plan_workbook
from tracker.services.plans.verify import verify
from tracker.services.work.record import StageTold, record_stage

MONDAY = datetime(2026, 1, 5, tzinfo=UTC)
READ = datetime(2026, 1, 4, 12)
LOOMS = [f"{n:03d}" for n in range(1, 43)]
SHEETS = {
    "Looms": [
        ["Loom", "Hall", "Machine type", "Speed (picks/min)", "Efficiency (%)", "Saving per day"],
        *([loom, "Hall 1", "AJ", 600, 90, 4] for loom in LOOMS),
    ],
    "Articles": [["Article", "Pick density (picks/cm)", "Take-up (%)", "Contribution per metre", "Warp value per metre"],
                 ["A-1", 20, 5, 0.5, 0.6]],
    # 17.01 m of warp an hour, 408 a day: the first 42 beam-outs lie five and a half hours apart
    "Warps": [
        ["Loom", "Sequence", "Article", "Set length (m)", "Warp left (m)", "Read at"],
        *([loom, 0, "A-1", 4000, 100 + 92 * i, READ] for i, loom in enumerate(LOOMS)),
    ],
    "Changes": [["Change", "Hours"], ["repeat", 2], ["style", 5]],
    "Parts": [["Part", "Unit", "On hand", "Price", "Lead time (days)"], ["RAIL", "pc", 0, 400, 21], ["SCREW", "pc", 0, 0.4, 7],
              ["CLAMP", "pc", 0, 30, 14]],
    "Crews": [
        ["Crew", "Trade", "Heads", "Weekdays", "Shift start", "Shift end", "Rate per head and hour"],
        ["Fitters 1", "fitter", 2, "Mon-Fri", "06:00", "14:00", 30], ["Fitters 2", "fitter", 2, "Mon-Fri", "09:00", "17:00", 30],
        ["Electrician", "electrician", 1, "Mon-Fri", "06:00", "17:00", 40],
    ],
    "Operations": [
        ["Step", "Operation", "Minutes", "Trade", "Heads"],
        [10, "Fit the rail", 60, "fitter", 2], [20, "Connect it", 60, "electrician", 1],
    ],
    "Kit lines": [["Part", "Quantity", "Comes back"], ["RAIL", 1, "no"], ["SCREW", 8, "no"], ["CLAMP", 2, "yes"]],
    "Terms": [
        ["Term", "Value"], ["start", date(2026, 1, 5)], ["horizon (days)", 56], ["allowance (%)", 0],
        ["learning rate (%)", 100], ["soak (days)", 7],
    ],
}  # fmt: skip


@pytest.fixture(scope="module")
def mill(tmp_path_factory):
    folder = tmp_path_factory.mktemp("mill")
    assert load(here(folder / "mill.db"), [workbook(folder / "mill.xlsx", SHEETS)]).written
    return folder


def at(days, hour=0):
    return MONDAY + timedelta(days=days, hours=hour)


def test_ordered_by_the_list_and_received_on_time_nothing_falls(mill, tmp_path):
    db = str(mill / "mill.db")
    first = plan(here(db), PlanRequest(publish=True, as_of=MONDAY))
    assert (len(first.plan.bookings), first.plan.left_over) == (42, ())
    assert verify(here(db)).sound
    assert not [b for b in first.plan.bookings if _open_over_sunday(b)]
    # no kit is on hand and none is ordered, so nobody starts before screws ordered on Tuesday, and rails, can be there
    lines = net_needs(here(db), MONDAY).orders
    assert {line.order for line in lines} == {line.order for line in first.orders}
    assert sum(line.quantity for line in lines if line.part == "RAIL") >= 42
    # clamps serve again: nowhere near the 84 of all looms
    assert 2 <= sum(line.quantity for line in lines if line.part == "CLAMP") < 84
    assert not any(line.late for line in lines)

    receipts = [["Order", "Part", "Quantity", "Due"], *([ln.order, ln.part, ln.quantity, ln.due] for ln in lines)]
    assert load(here(db), [workbook(tmp_path / "orders.xlsx", {"Receipts": receipts})]).written
    assert net_needs(here(db), MONDAY).orders == ()

    # five weeks on: what was due has come in, what was to start by then is done, in the order in which it happened
    until = at(37)
    events = [(datetime(*ln.due.timetuple()[:3], 12, tzinfo=UTC), _received(db, ln.order)) for ln in lines]
    events += [(b.start, _converted(db, b)) for b in first.plan.bookings]
    for moment, happen in sorted(events, key=lambda event: event[0]):
        if moment < until:
            happen(moment)
    done = sum(b.start < until for b in first.plan.bookings)
    assert 0 < done < 42
    second = plan(here(db), PlanRequest(publish=True, as_of=until))
    assert (len(second.plan.bookings), second.plan.left_over, second.broken) == (42 - done, (), ())

    # a fitter falls ill on the day of the next booking: one line, and all are booked still
    soon = min(second.plan.bookings, key=lambda b: b.start)
    record_absence(here(db), soon.crews[0].crew, soon.start.date(), soon.start.date(), 1, "ill")
    third = plan(here(db), PlanRequest(publish=True, as_of=until))
    assert (len(third.plan.bookings), third.plan.left_over) == (42 - done, ())
    away = [b for b in third.plan.bookings for turn in b.crews
            if turn.crew == soon.crews[0].crew and turn.start.date() == soon.start.date()]  # fmt: skip
    assert away == [] and verify(here(db)).sound

    write_plan_workbook(here(db), tmp_path / "plan.xlsx")
    sheets = CalamineWorkbook.from_path(str(tmp_path / "plan.xlsx")).sheet_names
    assert {"Crew Fitters 1", "Crew Fitters 2", "Days electrician", "Stops to come"} <= set(sheets)
    assert published_plan(here(db))[0].bookings == third.plan.bookings


def _open_over_sunday(booking):
    """Whether the loom stands from before a Sunday until after it; days are UTC days here."""
    days = (booking.end.date() - booking.start.date()).days
    return any((booking.start.date() + timedelta(days=i)).weekday() == 6 for i in range(1, days))


def _received(db, order):
    return lambda moment: receive(here(db), order=order, told=Told(at=moment))


def _converted(db, booking):
    def happen(moment):
        loom = booking.key.loom
        issue_kit(here(db), loom, told=Told(at=moment))
        record_stage(here(db), loom, "in work", told=StageTold(at=moment))
        record_stage(here(db), loom, "run-in", told=StageTold(at=booking.end))
        record_stage(here(db), loom, "signed off", told=StageTold(at=booking.end + timedelta(hours=1)))
        recover(here(db), loom, told=Told(at=booking.end + timedelta(hours=1)))

    return happen
