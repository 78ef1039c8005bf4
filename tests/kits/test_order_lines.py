"""Order lines and money, worked out by hand."""

from datetime import date

from kit_samples import AS_OF, booking, mill, plan

from tracker.domain.mill import Part, Receipt
from tracker.domain.needs import MonthCash
from tracker.kits.needs import needs
from tracker.kits.orders import cash, order_lines


def lines_of(hall, *bookings, taken=()):
    return order_lines(needs(plan(*bookings), hall, AS_OF), hall, AS_OF, taken)


def test_lines_stand_by_supplier_then_order_by_day():
    hall = mill(
        Part("RAIL", 0, supplier="B Works", price=100, lead_time_days=14),
        Part("NUT", 0, supplier="A Works", price=0.5, lot_size=50, lead_time_days=7),
        Part("CLIP", 0),
    )
    lines = lines_of(
        hall, booking("1", date(2027, 3, 3), RAIL=1, NUT=4, CLIP=1), booking("2", date(2027, 2, 17), RAIL=1)
    )
    # Without a supplier last. Wed 17 Feb: in by Tue 16 Feb, ordered by Tue 2 Feb; Wed 3 Mar: Tue 2 Mar, Tue 16 Feb.
    assert [(line.supplier, line.part, line.quantity, line.order_by, line.amount) for line in lines] == [
        ("A Works", "NUT", 50, date(2027, 2, 23), 25),
        ("B Works", "RAIL", 1, date(2027, 2, 2), 100),
        ("B Works", "RAIL", 1, date(2027, 2, 16), 100),
        ("", "CLIP", 1, date(2027, 3, 2), 0),
    ]
    assert [line.order for line in lines] == ["2027W09-NUT", "2027W07-RAIL", "2027W09-RAIL", "2027W09-CLIP"]


def test_a_number_that_is_taken_is_not_used_again():
    hall = mill(Part("RAIL", 0), receipts=(Receipt("2027W05-RAIL", "RAIL", 1, date(2027, 1, 27)),))
    (line,) = lines_of(hall, booking("1", date(2027, 2, 1), RAIL=3), taken={"2027W05-RAIL-2"})
    assert (line.order, line.quantity) == ("2027W05-RAIL-3", 2)


def test_a_late_line_is_wanted_today_and_expected_after_its_lead_time():
    # Needed on Tue 5 Jan, so wanted on Mon 4 Jan, today; 40 days from then is Sat 13 Feb, so it comes on Mon 15 Feb.
    (line,) = lines_of(mill(Part("RAIL", 0, lead_time_days=40)), booking("1", date(2027, 1, 5), RAIL=1))
    assert (line.late, line.due, line.expected) == (True, date(2027, 1, 4), date(2027, 2, 15))
    assert [touched.days for touched in line.touched] == [42]  # usable on Tue 16 Feb, needed on Tue 5 Jan


def test_money_by_month_of_delivery():
    # 2 rails come on Tue 2 Mar, one open order of 3 is overdue and counts in January; February has none.
    hall = mill(Part("RAIL", 0, price=100), receipts=(Receipt("1", "RAIL", 3, date(2026, 12, 1)),))
    money = cash(lines_of(hall, booking("1", date(2027, 3, 3), RAIL=5)), hall, AS_OF)
    assert money.months == (MonthCash("2027-01", 0, 300), MonthCash("2027-02", 0, 0), MonthCash("2027-03", 200, 0))
    assert (money.total, money.peak) == (500, money.months[0])


def test_no_money_no_months():
    money = cash((), mill(), AS_OF)
    assert (money.months, money.total, money.peak) == ((), 0, None)
