"""Plans made, published and verified on the mill of `three_looms`, where every date can be worked out on paper."""

import pytest
from three_looms import MONDAY, at, key, make, reading, write

from tracker.services.made_plans import publish_made
from tracker.services.plan import Firm, plan
from tracker.services.verify import verify


@pytest.fixture
def db(tmp_path):
    """Loom 1 is booked at its beam-out on Tuesday 08:00, loom 2 on Wednesday 16:00."""
    path = make(str(tmp_path / "mill.db"))
    assert starts(plan(path, publish=True, as_of=MONDAY))["1"] == at(1, 8)
    return path


def starts(report):
    return {booking.key.loom: booking.start for booking in report.plan.bookings}


@pytest.mark.parametrize("firm", [Firm(release=("1",)), Firm(stay=False)])
def test_what_was_published_with_a_firm_booking_released_holds(db, firm):
    # a reading of Monday 06:00 puts the beam-out three hours later, and so the booking follows
    write(db, reading("1", at(0, 6), at(1, 11)))
    moved = plan(db, publish=True, as_of=at(0, 6), firm=firm)
    assert starts(moved)["1"] == at(1, 11)
    assert moved.plan.asked.released == ({key("1")} if firm.release else set())
    assert verify(db).violations == ()


def test_a_saved_plan_with_a_firm_booking_released_is_published_by_its_number(db):
    write(db, reading("1", at(0, 6), at(1, 11)))
    saved = plan(db, as_of=at(0, 6), firm=Firm(release=("1",)))
    assert starts(publish_made(db, saved.number, as_of=at(0, 6)))["1"] == at(1, 11)
    assert verify(db).violations == ()


def test_a_plan_made_afresh_holds_though_it_moved_a_firm_booking(db):
    write(db, reading("1", at(0, 6), at(1, 11)))
    afresh = plan(db, publish=True, as_of=at(0, 6), afresh=True)
    assert starts(afresh)["1"] == at(1, 11)
    assert [booking.cost.moves for booking in afresh.plan.bookings] == [0.0] * 3
    assert verify(db).violations == ()
