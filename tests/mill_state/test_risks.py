"""What may go wrong in the fortnight from Mon 4 January 2027, 06:00 in Vienna."""

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

from tracker.domain.mill import Crew, Loom, LoomKey, Mill, Part
from tracker.domain.needs import KitState, OrderLine
from tracker.domain.plan import Booking, CostTerms
from tracker.domain.terms import Terms
from tracker.domain.windows import Window, WindowKind
from tracker.mill_state.risks import RiskSigns, risks
from tracker.words import ENGLISH

NOW = datetime(2027, 1, 4, 5, tzinfo=UTC)
SEVEN, EIGHT = LoomKey("H", "7"), LoomKey("H", "8")
MILL = Mill(
    looms={key: Loom("H", key.loom, "AJ") for key in (SEVEN, EIGHT)}, parts={"RAIL": Part("RAIL", 0.0)},
    crews=(Crew("Fitters 1", "fitter", 2),), terms=Terms(time_zone="Europe/Vienna", start=date(2027, 1, 4)),
)  # fmt: skip


def booked(key: LoomKey, day: int) -> Booking:
    start = datetime(2027, 1, day, 5, tzinfo=UTC)
    return Booking(
        key, 1, WindowKind.REPEAT, (), start, start + timedelta(hours=8), start, 16, 16, {"RAIL": 1}, CostTerms()
    )


def kit(booking: Booking, **expected: date) -> KitState:
    return KitState(booking.key, booking.start, {"RAIL": 1}, {}, {}, {"RAIL": 1}, expected)


def window(booking: Booking, state: str) -> Window:
    at = booking.start
    return Window(booking.key, 1, WindowKind.REPEAT, datetime(2026, 12, 28, 5, tzinfo=UTC), 20.0, 0.0, at, at, at, at, at,
                  None, None, None, 1.0, 0.0, 0.0, 0.0, state=state)  # fmt: skip


LINE = OrderLine("1", "S", "RAIL", "", "pc", 2, date(2027, 1, 13), date(2027, 1, 20), date(2027, 1, 20), 310, late=False,
                 days_late=0, falls=(EIGHT,))  # fmt: skip
SEVEN_STARTS = "Loom 7 (H), to start on Wed 6 Jan 2027 06:00: "


def told(bookings=(), kits=(), orders=(), windows=None, rehearsed=()) -> list[tuple[str, str]]:
    found = risks(MILL, bookings, RiskSigns(kits, orders, windows or {}, rehearsed), NOW)
    return [(one.kind, ENGLISH.say(one.what)) for one in found]


def test_a_kit_that_stays_short_is_one_and_what_comes_in_time_is_none():
    first, last = booked(SEVEN, 6), booked(EIGHT, 19)  # the nineteenth is past the fortnight
    assert told([first, last], [kit(first), kit(last)]) == [
        (
            "kit",
            SEVEN_STARTS + "its kit lacks 1 RAIL, and nothing on order brings that in time.",
        )
    ]
    assert told([first], [kit(first, RAIL=date(2027, 1, 5))]) == []


def test_a_beam_out_told_by_a_stale_reading():
    first = booked(SEVEN, 6)
    assert told([first], windows={SEVEN: (window(first, "stale"),)}) == [
        (
            "reading",
            SEVEN_STARTS + "when its warp runs out is told by a reading of Mon 28 Dec 2026 06:00.",
        )
    ]
    assert told([first], windows={SEVEN: (window(first, "ok"),)}) == []


def test_a_start_that_rehearsal_doubts_and_an_order_to_place_by_the_day_on_which_each_bites():
    of = {"hall": "H", "loom": "7", "on_time": 0.41, "cause": "beam-out"}
    assert told([booked(SEVEN, 15)], orders=[LINE], rehearsed=[of]) == [
        ("order", "2 pc of RAIL are to be ordered by Wed 13 Jan 2027; else a booking falls: 8 (H)."),
        (
            "rehearsed",
            "Loom 7 (H), to start on Fri 15 Jan 2027 06:00: starts as booked in 41 of 100 rehearsed runs "
            "(its beam-out).",
        ),
    ]
    assert told([booked(SEVEN, 15)], rehearsed=[of | {"on_time": 0.8}]) == []
    assert told(orders=[replace(LINE, order_by=date(2027, 1, 19))]) == []
