"""What if: which bookings fall, and the plan that follows."""

from datetime import UTC, date, datetime

import pytest
from opened import here
from refusals import refused
from said import lines
from stock_room_samples import AT, added, fill, fill_method, key

from tracker.domain.needs import Scrap, ShortDelivery, Slip
from tracker.errors import DataError
from tracker.services.plans.plan import PlanRequest, plan
from tracker.services.plans.what_if import what_if
from tracker.store import open_store


@pytest.fixture
def db(tmp_path):
    """The sample's published plan: looms 1 and 2 have a rail each, loom 10 of Mon 26 Jan waits for PO-1 of Wed 21 Jan
    and lacks 4 nuts all the same."""
    return fill(str(tmp_path / "mill.db"))


def test_a_receipt_slips_two_weeks(db):
    # From 21 Jan to 4 Feb: usable on Thu 5 Feb. Loom 10 lacked its nuts before, now its rail, too.
    report = what_if(here(db), [Slip("PO-1", 14)], AT)
    assert [(fall.key, fall.lacks) for fall in report.before] == [(key("10"), {"NUT": 4})]
    assert [(fall.key, fall.lacks, fall.usable_on) for fall in report.fallen] == [
        (key("10"), {"RAIL": 1, "NUT": 4}, None)
    ]
    assert report.replan is None
    assert lines(report) == [
        "Loom 10 (Hall 1), Mon 26 Jan 2026 06:00, falls: it lacks 4 NUT, 1 RAIL; never whole by stock and open orders.",
        "1 booking lacked parts already before the change.",
    ]


def test_a_scrapped_part_and_a_short_delivery(db):
    # One rail left for loom 1; loom 2 of Mon 19 Jan waits for PO-1 of Wed 21 Jan: usable on Thu 22 Jan.
    (fall,) = what_if(here(db), [Scrap("RAIL", 1)], AT).fallen
    assert (fall.key, fall.lacks, fall.usable_on) == (key("2"), {"RAIL": 1}, date(2026, 1, 22))
    # 18 nuts: 16 for looms 1 and 2. That loom 10 lacks 6 instead of 4 is news.
    assert [fall.lacks for fall in what_if(here(db), [Scrap("NUT", 2)], AT).fallen] == [{"NUT": 6}]
    assert lines(what_if(here(db), [ShortDelivery("PO-1", 1)], AT))[0] == "No booking falls."


def test_unknown_order_lines_are_named(db):
    with refused(DataError, "no open order line PO-2; open are PO-1"):
        what_if(here(db), [Slip("PO-2", 14)], AT)


def test_a_plan_must_be_published(tmp_path):
    with refused(DataError, "no plan is published"):
        what_if(here(fill(str(tmp_path / "mill.db"), None)), [], AT)


def weaving() -> list:
    """A warp of 1,000 m on three looms: 600 picks/min at 90 % and 20 picks/cm are 16.2 m of cloth, 17.01 m of warp an
    hour, so it runs out after 58.8 h, and the next one of 3,000 m 176.4 h after the change. Loom 3 weaves nothing."""
    looms = [(loom, sequence) for loom in ("1", "2", "10") for sequence in (0, 1)]
    first = {"warp_left_m": 1000.0, "read_at": datetime(2026, 1, 5, 5)}
    values = {"set_length_m": 3000.0, "article": "A", "change": "repeat", "hall": "Hall 1"}
    terms = {"start": "2026-01-05", "horizon (days)": 42, "soak (days)": 0, "plan with orders not yet placed": False}
    return [
        added("articles", "A", article="A", pick_density_per_cm=20.0, take_up=0.05, contribution_per_m=0.5),
        added("receipts", "PO-2", "NUT", order="PO-2", part="NUT", quantity=8.0, due=date(2026, 1, 12)),
        added("changes", "repeat", None, kind="repeat", hours_h=2.0),
        *(added("terms", term, term=term, value=value) for term, value in terms.items()),
        *(
            added(
                "warps", loom, "Hall 1", sequence, loom=loom, sequence=sequence, **values, **({} if sequence else first)
            )
            for loom, sequence in looms
        ),
    ]


def test_the_replan_moves_what_fell_behind_the_receipt(tmp_path):
    """Each of three looms needs a rail, two are on hand; nuts come in time. The third is booked for Thu 22 Jan, when
    PO-1 is first usable. A fortnight later that is Thu 5 Feb: 14 days of a saving of 20, and the move for 15."""
    db = fill_method(fill(str(tmp_path / "mill.db"), None, *weaving()), ("new rail",))
    published = plan(here(db), PlanRequest(publish=True, as_of=AT)).plan
    third = max(published.bookings, key=lambda booking: booking.start)
    assert (len(published.bookings), third.start) == (3, datetime(2026, 1, 22, 6, tzinfo=UTC))
    report = what_if(here(db), [Slip("PO-1", 14)], AT, replan=True)
    assert [(fall.key, fall.usable_on) for fall in report.fallen] == [(third.key, date(2026, 2, 5))]
    assert report.replan is not None
    assert max(booking.start for booking in report.replan.bookings) == datetime(2026, 2, 5, 6, tzinfo=UTC)
    assert report.replan.objective - published.objective == pytest.approx(14 * 20 + 15)
    assert [move.key for move in report.moves] == [third.key]
    with open_store(db).reading() as uow:
        assert uow.published_plan().bookings == published.bookings
        assert {receipt.order: receipt.due for receipt in uow.mill().receipts}["PO-1"] == date(2026, 1, 21)
