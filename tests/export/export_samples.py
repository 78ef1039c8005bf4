"""A small mill, plan and needs for the workbooks, with figures that are easy to add up."""

from datetime import UTC, date, datetime

from tracker.domain.mill import Loom, LoomKey, Mill, Part
from tracker.domain.needs import OrderLine, PartWeek, PickLine, Touched
from tracker.domain.plan import Booking, CostTerms, LeftOver, OtherDate, Plan, PlanStatus, ScarcityPrice
from tracker.domain.terms import Terms
from tracker.domain.windows import WindowKind
from tracker.errors import as_it_stands

A2, A10, B1 = LoomKey("Hall 1", "A-2"), LoomKey("Hall 1", "A-10"), LoomKey("Hall 2", "007")

MILL = Mill(
    looms={
        A2: Loom("Hall 1", "A-2", "AJ-190"),
        A10: Loom("Hall 1", "A-10", "AJ-190"),
        B1: Loom("Hall 2", "007", "RP-340"),
    },
    parts={
        "RAIL-190": Part("RAIL-190", 6, "cross rail 190 cm", "pc", 1, 28, 4, 4, 310, "Rail works", "B-04"),
        "CABLE-5": Part("CABLE-5", 30, "motor cable", "m", price=2.5, supplier="Cable works", location="A-01"),
    },
    terms=Terms("Hall renewal", "Europe/Vienna", "EUR", date(2027, 1, 4), target_finish=date(2027, 3, 1)),
)


def at(day: int, hour: int, month: int = 1) -> datetime:
    return datetime(2027, month, day, hour, tzinfo=UTC)


def booking(key: LoomKey, start: datetime, end: datetime, labour_h: float, **more) -> Booking:
    return Booking(
        key, 1, WindowKind.STYLE, (("rail", "new rail"),), start, end, start, 10, labour_h,
        {"RAIL-190": 2.0}, CostTerms(100, 10, 200, 620, 50, 0), **more,
    )  # fmt: skip


PLAN = Plan(
    PlanStatus.OPTIMAL,
    objective=6960.0,
    bound=6956.52,
    seconds=4.25,
    currency="EUR",
    as_of=at(4, 5),
    horizon_end=at(29, 23, 3),
    bookings=(
        booking(A10, at(12, 5), at(12, 13), 6.0),
        booking(A2, at(5, 5), at(5, 13), 8.0, firm=True, pilot=True),
    ),
    left_over=(LeftOver(B1, as_it_stands("=no window: its warp runs past the horizon"), 5000.0),),
    prices=(
        ScarcityPrice(as_it_stands("fitter-hour"), "2027-W02", 12.5),
        ScarcityPrice(as_it_stands("RAIL-190"), "2027-W01", 40.0),
    ),
    other_dates=(OtherDate(A2, 1, WindowKind.MID_WARP, (), at(8, 5), at(8, 13), 75.0),),
    reasons=(as_it_stands("Loom 007 was dropped: no warp is listed."),),
    start=date(2027, 1, 4),
)

NEEDS = (
    PartWeek("RAIL-190", "2027-W02", 2, 0, 0, 2, 0, 0),
    PartWeek("RAIL-190", "2027-W01", 2, 0, 0, 4, 0, 0),
    PartWeek("RAIL-190", "2027-W09", 0, 2, 0, 4, 1, 4, date(2027, 2, 26), date(2026, 12, 30), True, 5,
             (Touched(B1, date(2027, 3, 1), 3),)),
    PartWeek("CABLE-5", "2027-W01", 12.5, 0, 5, 22.5, 0, 0),
    PartWeek("CABLE-5", "2027-W02", 0, 0, 0, 22.5, 0, 0),
)  # fmt: skip

ORDERS = (
    OrderLine("2027W09-RAIL-190", "Rail works", "RAIL-190", "cross rail 190 cm", "pc", 4, date(2026, 12, 30),
              date(2027, 2, 26), date(2027, 3, 4), 310.0, True, 5, (Touched(B1, date(2027, 3, 1), 3),)),
    OrderLine("2027W03-CABLE-5", "Cable works", "CABLE-5", "motor cable", "m", 100, date(2027, 1, 6), date(2027, 1, 15),
              date(2027, 1, 15), 2.5, False, 0),
    OrderLine("2027W03-PIN", "", "PIN", "=pin", "pc", 10, date(2027, 1, 6), date(2027, 1, 15), date(2027, 1, 15), 0.0, False, 0),
)  # fmt: skip

PICKS = (
    PickLine(date(2027, 1, 5), A2, at(5, 5), "B-04", "RAIL-190", "cross rail 190 cm", "pc", 1, 1),
    PickLine(date(2027, 1, 5), A2, at(5, 5), "A-01", "CABLE-5", "motor cable", "m", 12.5, 0),
    PickLine(date(2027, 1, 12), A10, at(12, 5), "", "PIN", "=pin", "pc", 3, 0),
)  # fmt: skip
