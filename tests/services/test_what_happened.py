"""What has happened since the plan in force was made, in the words that a planner reads beside a moved booking.

The mill of `three_looms` on a clock that stands: what was entered before the plan is told apart from what came after it all the
same. Parts lie beside the method; the plan books loom 1 with a kit of them.
"""

from datetime import date, datetime, time

import pytest
from opened import here
from said import said
from three_looms import MONDAY, OPERATIONS, added, at, key, make, method

from tracker.domain.plan import Booking, CostTerms, Plan, PlanStatus
from tracker.domain.rows import Change
from tracker.domain.windows import WindowKind
from tracker.mill_state.happened import OTHER, WATCH
from tracker.services.context import Context
from tracker.services.parts import stock
from tracker.services.parts.stock_entry import Told
from tracker.services.people.absences import end_absence, record_absence
from tracker.services.plans.planning_data import read_happened, read_planning_data
from tracker.store import open_store

PLAN = Plan(
    PlanStatus.OPTIMAL, 0, 0, 0, "EUR", MONDAY, at(42, 0),
    (Booking(key("1"), 1, WindowKind.REPEAT, (), at(1, 8), at(1, 14), at(1, 8), 12, 13, {"KIT": 1.0, "YARN": 1.0}, CostTerms()),),
)  # fmt: skip


def part(name: str, on_hand: float, lead_time_days: float) -> Change:
    return added("parts", name, part=name, on_hand=on_hand, lead_time_days=lead_time_days, unit="pc")


def line(order: str, quantity: float, due: date) -> Change:
    return added("receipts", order, "KIT", order=order, part="KIT", quantity=quantity, due=due)


def closed(on: date, **more: object) -> Change:
    return added("closures", on, more.get("hall"), None, on=on, **more)


def load(context: Context, *changes: Change) -> None:
    with open_store(context.database).unit_of_work("planner", lambda: MONDAY) as uow:
        uow.load_writer().write(list(changes), {})
        uow.commit()


@pytest.fixture
def mill(tmp_path) -> Context:
    context = here(make(str(tmp_path / "mill.db")), clock=lambda: MONDAY)
    extra = added(
        "overtime", "F1", date(2027, 1, 9), time(6), crew="F1", on=date(2027, 1, 9), start=time(6), end=time(12)
    )
    load(
        context, part("KIT", 3.0, 20.0), part("YARN", 5.0, 30.0), line("PO-1", 4.0, date(2027, 1, 12)),
        line("PO-2", 2.0, date(2027, 1, 15)), line("PO-3", 5.0, date(2027, 2, 1)), extra, closed(date(2027, 1, 6)),
    )  # fmt: skip
    record_absence(context, "F1", date(2027, 1, 7), date(2027, 1, 7))
    with open_store(context.database).unit_of_work("planner", lambda: MONDAY) as uow:
        uow.save_plan(PLAN, published=True)
        uow.commit()
    return context


def told(context: Context, as_of: datetime) -> list[str]:
    return [said(one.says) for one in read_happened(context, read_planning_data(context), as_of)]


def test_nothing_has_happened_on_the_day_of_the_plan(mill: Context) -> None:
    assert told(mill, MONDAY) == []


def test_who_is_away_and_what_was_changed(mill: Context) -> None:
    record_absence(mill, "F1", date(2027, 1, 21), date(2027, 1, 22), reason="flu")
    record_absence(mill, "E1", date(2027, 1, 21), date(2027, 1, 21), 1)
    end_absence(mill, "F1", date(2027, 1, 7))
    load(
        mill,
        Change("overtime", ("F1", date(2027, 1, 9), time(6)), "end", time(12), time(10)),
        closed(date(2027, 1, 8), hall="H", stops="work", reason="stocktaking"),
        Change("crews", ("F1", None, time(6), None), "shift_end", time(18), time(16)),
        added("tools", "hoist", tool="hoist", how_many=1),
        Change("terms", ("soak (days)",), "value", 0, 3),
        Change("terms", ("allowance (%)",), "value", 0.0, 0.15),
        added("terms", "looms stopped at once", term="looms stopped at once", value=1),
        Change("receipts", ("PO-3", "KIT"), "due", date(2027, 2, 1), date(2027, 2, 15)),
        line("PO-4", 1.0, date(2027, 1, 20)),
        Change("parts", ("KIT",), "safety_stock", None, 2.0),
    )  # fmt: skip
    method(mill.database, OPERATIONS)
    assert told(mill, MONDAY) == [
        "F1 is away from Thu 21 Jan 2027 to Fri 22 Jan 2027: flu",
        "E1 is away on Thu 21 Jan 2027, 1 of it",
        "F1 is there after all on Thu 7 Jan 2027",
        "the overtime of F1 on Sat 9 Jan 2027, 06:00 to 10:00, was changed",
        "H has no conversions on Fri 8 Jan 2027: stocktaking",
        "Shift end of F1 was changed from 18:00 to 16:00",
        "hoist is new in Tools",
        "the term looms stopped at once was changed from empty to 1",
        "the term soak (days) was changed from 0 to 3",
        "the term allowance (%) was changed from 0 to 15",
        "a receipt of 1 pc KIT is promised for Wed 20 Jan 2027 (order PO-4)",
        "the receipt of 5 pc KIT promised for Mon 1 Feb 2027 is promised for Mon 15 Feb 2027 now (order PO-3)",
        "Safety stock of KIT was changed from empty to 2",
        "the method is version 2 now",
    ]


def test_what_came_late_or_not_at_all_and_what_is_missing(mill: Context) -> None:
    def booked(day: int) -> Told:
        return Told(at=at(day, 10), why="wet")

    later = here(mill.database, clock=lambda: at(22, 12))
    stock.receive(later, order="PO-1", told=booked(22))
    stock.adjust(later, "KIT", -1.0, told=booked(22))
    stock.count(later, "KIT", 5.0, told=booked(22))
    stock.issue(later, "2", part="KIT", quantity=1.0, told=booked(22))
    # 20 days from the day after Monday 4 January are Monday 25 January, from Wednesday 27 January Tuesday 16 February; those
    # of YARN, 30 days: Thursday 4 and Friday 26 February
    assert told(later, at(22, 12)) == [
        "the receipt of 4 pc KIT promised for Tue 12 Jan 2027 came on Tue 26 Jan 2027",
        "1 pc KIT fewer: wet",
        "1 pc KIT fewer: by a count",
        "1 pc KIT handed out for loom 2 (H)",
        "the receipt of 2 pc KIT promised for Fri 15 Jan 2027 has not come (order PO-2)",
        "no more KIT was ordered: an order placed now comes on Tue 16 Feb 2027, "
        "one placed when the plan was made on Mon 25 Jan 2027",
        "no more YARN was ordered: an order placed now comes on Fri 26 Feb 2027, "
        "one placed when the plan was made on Thu 4 Feb 2027",
    ]


def test_what_gives_more_room_is_never_told_as_the_cause_of_a_lack(mill: Context) -> None:
    people = ("F1", None, time(6), None)
    load(mill, Change("crews", people, "heads", 2, 3), added("tools", "hoist", tool="hoist", how_many=1),
         Change("parts", ("KIT",), "lead_time_days", 20.0, 10.0),
         added("terms", "watch (h)", term="watch (h)", value=2),
         Change("receipts", ("PO-3", "KIT"), "due", date(2027, 2, 1), date(2027, 1, 20)))  # fmt: skip
    found = read_happened(mill, read_planning_data(mill), MONDAY)
    assert {one.says.code for one in found if one.of == OTHER} >= {"happened-field", "happened-row", "happened-order"}
    # without the term there is no watch: two hours of it alone leave less room
    assert [one.of for one in found if one.of != OTHER] == [WATCH]


def test_what_was_changed_back_is_not_told(mill: Context) -> None:
    load(mill, Change("terms", ("soak (days)",), "value", 0, 3))
    load(mill, Change("terms", ("soak (days)",), "value", 3, 0))
    assert told(mill, MONDAY) == []
