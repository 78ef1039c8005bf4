"""Net needs by part and week. Expected figures are worked out by hand; Mon 4 Jan 2027 is the first day of W01."""

from dataclasses import replace
from datetime import UTC, date, datetime

from kit_samples import AS_OF, booking, key, mill, plan
from refusals import refused

from tracker.domain.mill import Closure, Part, Receipt
from tracker.domain.needs import Touched
from tracker.errors import DataError
from tracker.kits.needs import LeftOverKits, OnTheFloor, needs


def by_week(rows, part="RAIL"):
    return {row.week: row for row in rows if row.part == part}


def test_gross_falls_in_the_local_week():
    # 00:30 on Mon 11 Jan in Berlin is 23:30 on Sunday in UTC: W02 all the same.
    rows = by_week(needs(plan(booking("1", date(2027, 1, 11), hour=0, RAIL=2)), mill(Part("RAIL", 5)), AS_OF))
    assert {week: row.gross for week, row in rows.items()} == {"2027-W01": 0, "2027-W02": 2}
    assert rows["2027-W02"].on_hand_end == 3
    assert rows["2027-W02"].order_by is None


def test_week_53_and_the_new_year():
    # 1 Jan 2027 is 2026-W53-5 (ISO 8601).
    rows = needs(plan(booking("1", date(2027, 1, 4), RAIL=1)), mill(Part("RAIL", 5)), datetime(2027, 1, 1, tzinfo=UTC))
    assert [row.week for row in rows] == ["2026-W53", "2027-W01"]


def test_order_by_counts_the_lead_time_in_calendar_days_from_the_working_day_before_the_need():
    # Needed Mon 1 Feb, so in by Fri 29 Jan, ordered 14 days before: Fri 15 Jan.
    hall = mill(Part("RAIL", 1, lead_time_days=14))
    (row,) = [r for r in needs(plan(booking("1", date(2027, 2, 1), RAIL=3)), hall, AS_OF) if r.net]
    assert (row.week, row.net, row.order_quantity) == ("2027-W05", 2, 2)
    assert (row.due, row.order_by) == (date(2027, 1, 29), date(2027, 1, 15))
    assert (row.late, row.days_late, row.touched) == (False, 0, ())


def test_delivery_and_order_fall_on_days_that_are_not_closed_for_work():
    # Fri 29 Jan closed: in by Thu 28 Jan; 14 days before is Thu 14 Jan, closed too: Wed 13 Jan.
    # A day closed for weaving only, or for another hall only, stays a working day.
    closures = (
        Closure(date(2027, 1, 29)),
        Closure(date(2027, 1, 14), stops="work"),
        Closure(date(2027, 1, 28), stops="weaving"),
        Closure(date(2027, 1, 13), hall="Hall 2"),
    )
    hall = mill(Part("RAIL", 0, lead_time_days=14), looms=("1",), closures=closures)
    (row,) = [r for r in needs(plan(booking("1", date(2027, 2, 1), RAIL=1)), hall, AS_OF) if r.net]
    assert (row.due, row.order_by) == (date(2027, 1, 28), date(2027, 1, 13))


def test_a_receipt_due_on_the_day_of_the_start_comes_too_late_for_it():
    hall = mill(Part("RAIL", 0), receipts=(Receipt("1", "RAIL", 1, date(2027, 1, 13)),))
    same_day = by_week(needs(plan(booking("1", date(2027, 1, 13), hour=13, RAIL=1)), hall, AS_OF))
    next_day = by_week(needs(plan(booking("1", date(2027, 1, 14), hour=7, RAIL=1)), hall, AS_OF))
    assert (same_day["2027-W02"].net, same_day["2027-W02"].due) == (1, date(2027, 1, 12))
    assert (next_day["2027-W02"].net, next_day["2027-W02"].receipts) == (0, 1)


def test_an_overdue_receipt_counts_as_there_and_one_due_today_comes_no_sooner_by_another_order():
    def today(due):
        hall = mill(Part("RAIL", 0), receipts=(Receipt("1", "RAIL", 1, due),))
        return by_week(needs(plan(booking("1", date(2027, 1, 4), RAIL=1)), hall, AS_OF))["2027-W01"]

    assert (today(date(2027, 1, 3)).receipts, today(date(2027, 1, 3)).net) == (1, 0)
    assert (today(date(2027, 1, 4)).receipts, today(date(2027, 1, 4)).order_quantity) == (1, 0)
    # usable from Tuesday 5 January, and so is what is ordered today, without a lead time
    assert today(date(2027, 1, 4)).touched == (Touched(key("1"), date(2027, 1, 4), 1),)


def test_a_late_order_names_the_looms_and_their_days():
    """Lead time 10 days. Ordered today, Mon 4 Jan, it comes on Thu 14 Jan and is usable on Fri 15 Jan.

    Loom 1 starts on Wed 6 Jan and has the one in stock. Loom 2 starts on Fri 8 Jan: 7 days short. Loom 3 starts on
    Thu 14 Jan: 1 day. Loom 4 starts on Fri 15 Jan: in time. One order of 4 (lot size) for loom 2 covers them all: it
    had to be in on Thu 7 Jan and so was to be placed on Mon 28 Dec: 7 days ago.
    """
    starts = {"1": date(2027, 1, 6), "2": date(2027, 1, 8), "3": date(2027, 1, 14), "4": date(2027, 1, 15)}
    hall = mill(Part("RAIL", 1, lead_time_days=10, lot_size=4))
    rows = by_week(needs(plan(*(booking(loom, day, RAIL=1) for loom, day in starts.items())), hall, AS_OF))
    first, second = rows["2027-W01"], rows["2027-W02"]
    assert (first.net, first.order_quantity, first.on_hand_end) == (1, 4, 3)
    assert (first.due, first.order_by, first.late, first.days_late) == (date(2027, 1, 7), date(2026, 12, 28), True, 7)
    assert first.touched == (Touched(key("2"), starts["2"], 7), Touched(key("3"), starts["3"], 1))
    assert (second.order_quantity, second.late, second.touched) == (0, False, ())


def test_missing_safety_stock_alone_touches_no_loom():
    hall = mill(Part("RAIL", 2, safety_stock=3, lead_time_days=7))
    rows = by_week(needs(plan(), hall, AS_OF))
    assert (rows["2027-W01"].net, rows["2027-W01"].late, rows["2027-W01"].touched) == (1, True, ())


def test_issued_parts_are_no_longer_needed():
    rows = by_week(
        needs(
            plan(booking("1", date(2027, 1, 6), RAIL=3)),
            mill(Part("RAIL", 0)),
            AS_OF,
            OnTheFloor(issued={key("1"): {"RAIL": 2}}),
        )
    )
    assert (rows["2027-W01"].gross, rows["2027-W01"].net) == (1, 1)


def test_what_is_held_for_a_loom_in_work_is_needed_now():
    rows = by_week(
        needs(
            plan(booking("1", date(2027, 1, 12), RAIL=1)),
            mill(Part("RAIL", 1)),
            AS_OF,
            OnTheFloor(held={key("9"): {"RAIL": 1}}),
        )
    )
    assert [(row.gross, row.net) for row in rows.values()] == [(1, 0), (1, 1)]


def test_a_booking_that_should_have_begun_needs_its_parts_now():
    rows = by_week(needs(plan(booking("1", date(2026, 12, 22), RAIL=1)), mill(Part("RAIL", 1)), AS_OF))
    assert {week: row.gross for week, row in rows.items()} == {"2027-W01": 1}


def test_left_over_looms_stand_apart_and_need_their_kits_at_the_horizon_end():
    # The horizon's last day is Sun 28 Mar 2027, in W12; 1 on hand: the booking takes it, the left-over loom lacks 1.
    made = plan(booking("1", date(2027, 1, 6), RAIL=1))
    rows = by_week(needs(made, mill(Part("RAIL", 1)), AS_OF, left_over=LeftOverKits({key("2"): {"RAIL": 1}})))
    assert (rows["2027-W01"].gross, rows["2027-W01"].gross_left_over) == (1, 0)
    last = rows["2027-W12"]
    assert (last.gross, last.gross_left_over, last.net, last.due) == (0, 1, 1, date(2027, 3, 26))


def test_left_over_looms_may_be_wanted_earlier():
    rows = by_week(
        needs(plan(), mill(Part("RAIL", 0)), AS_OF, left_over=LeftOverKits({key("2"): {"RAIL": 1}}, date(2027, 2, 1)))
    )
    assert rows["2027-W05"].gross_left_over == 1


def gauges(*days, **terms):
    """One gauge that takes a week to come, and looms that need it on these days of January and give it back the same day."""
    made = plan(*(booking(str(n), date(2027, 1, d), GAUGE=1) for n, d in enumerate(days)))
    back = {made_of.key: {"GAUGE": 1.0} for made_of in made.bookings}
    hall = mill(Part("GAUGE", 1, lead_time_days=7))
    hall = replace(hall, terms=replace(hall.terms, **terms))
    return by_week(needs(made, hall, AS_OF, OnTheFloor(coming_back=back)), "GAUGE")


def test_what_comes_back_counts_like_an_order_of_that_day():
    # Back on Wed 6 Jan. Plans made until then hold it for used up as far as an order of Thu 7 Jan, the day after, would come
    # too late: it comes on Thu 14 Jan, for conversions from Fri 15 Jan on. So one of Thu 14 Jan wants a second gauge, in on
    # Wed 13 Jan and ordered a week before, and one of Fri 15 Jan does not.
    early, late = gauges(6, 14), gauges(6, 15)
    assert (early["2027-W02"].net, early["2027-W02"].due, early["2027-W02"].order_by) == (
        1,
        date(2027, 1, 13),
        date(2027, 1, 6),
    )
    assert [touched.loom for touched in early["2027-W02"].falls] == ["1"]
    assert [row.net for row in late.values()] == [0, 0]
    # what is there is told as it is: the gauge is back in the week in which it was used
    assert [(row.gross, row.receipts, row.on_hand_end) for row in late.values()] == [(1, 1, 1), (1, 1, 1)]


def test_what_comes_back_serves_from_the_next_day_where_no_plan_relies_on_orders():
    assert gauges(6, 7, plan_with_orders=False)["2027-W01"].net == 0
    assert gauges(6, 6, plan_with_orders=False)["2027-W01"].net == 1


def test_an_unknown_part_is_refused_by_name_and_loom():
    with refused(DataError, r"unknown part NUT in the kit of loom 7 \(Hall 1\)"):
        needs(plan(booking("7", date(2027, 1, 6), NUT=1)), mill(Part("RAIL", 1)), AS_OF)


def test_what_is_on_order_and_comes_as_soon_as_an_order_of_today_is_not_ordered_again():
    """Lead time 28 days: ordered today, Mon 4 Jan, it comes on Mon 1 Feb. Loom 1 lacks one on Mon 18 Jan (W03); the line of
    two that was placed for it comes on Wed 27 Jan (W04), too late for it and no later than any other order. The second of
    it is for loom 2 on Mon 8 Feb (W06). Loom 3 of the same day wants one more: in by Fri 5 Feb, so ordered by Fri 8 Jan.
    """
    starts = (("1", date(2027, 1, 18)), ("2", date(2027, 2, 8)), ("3", date(2027, 2, 8)))
    hall = mill(Part("RAIL", 0, lead_time_days=28), receipts=(Receipt("PO-1", "RAIL", 2, date(2027, 1, 27)),))
    rows = by_week(needs(plan(*(booking(loom, day, RAIL=1) for loom, day in starts)), hall, AS_OF))
    assert {week: row.order_quantity for week, row in rows.items() if row.order_quantity} == {"2027-W06": 1}
    assert rows["2027-W06"].order_by == date(2027, 1, 8)
    assert {week: row.receipts for week, row in rows.items() if row.receipts} == {"2027-W04": 2}
    # on hand 0, −1 of W03, +2 of W04, and in W06 the order comes before both needs
    assert [rows[f"2027-W0{week}"].on_hand_end for week in (2, 3, 4, 6)] == [0, -1, 1, 0]


def test_a_line_that_comes_later_than_an_order_of_today_is_no_reason_to_wait():
    # Lead time 28 days, so by Mon 1 Feb; the line of Tue 2 Feb comes a day later.
    hall = mill(Part("RAIL", 0, lead_time_days=28), receipts=(Receipt("PO-1", "RAIL", 1, date(2027, 2, 2)),))
    rows = by_week(needs(plan(booking("1", date(2027, 1, 18), RAIL=1)), hall, AS_OF))
    assert {week: row.order_quantity for week, row in rows.items() if row.order_quantity} == {"2027-W03": 1}
