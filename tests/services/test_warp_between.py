"""The new warp between the parts of a conversion, from the method in the database to the plan and back, on the mill of
`three_looms`: five hours with the warp out, the change of two, an hour with it in.

Published on Monday: loom 1 on Tuesday from 08:00 to 13:00 and from 15:00 to 16:00.
"""

import pytest
from opened import here
from three_looms import MONDAY, OPERATIONS, at, key, make, method

from tracker.domain.plan import Booking
from tracker.domain.progress import Stage, StageChange
from tracker.mill_state.planning import prepare
from tracker.services.plans.plan import PlanRequest, plan
from tracker.services.plans.planning_data import read_planning_data
from tracker.services.plans.verify import verify
from tracker.store import open_store

PLACED = (OPERATIONS[0], OPERATIONS[1] | {"warp": "out"}, *(row | {"warp": "in"} for row in OPERATIONS[2:]))
PAUSE = at(1, 13), at(1, 15)


@pytest.fixture
def db(tmp_path) -> str:
    path = make(str(tmp_path / "mill.db"))
    method(path, PLACED)
    plan(here(path), PlanRequest(publish=True, as_of=MONDAY))
    return path


def booked(db: str) -> Booking:
    published = read_planning_data(here(db)).previous
    assert published
    return next(b for b in published.bookings if b.key == key("1"))


def test_a_booking_comes_back_with_its_pause_and_holds(db):
    booking = booked(db)
    assert (booking.start, booking.pause, booking.end, booking.slots) == (at(1, 8), PAUSE, at(1, 16), 12)
    # 600 · 60 · 0.9 / 2000 · 0.5 = 8.1 an hour; stopped for 8 hours, of which the change takes two anyway
    assert booking.cost.lost_production == pytest.approx(6 * 8.1)
    assert [(need.what, need.start, need.end) for need in booking.needs] == [("electrician", at(1, 15), at(1, 16))]
    assert verify(here(db)).sound


def test_it_stays_when_it_is_firm(db):
    again = plan(here(db), PlanRequest(as_of=at(0, 6)))
    kept = next(b for b in again.plan.bookings if b.key == key("1"))
    assert kept.firm
    assert (kept.start, kept.pause, kept.end) == (at(1, 8), PAUSE, at(1, 16))
    assert kept.crews == booked(db).crews


@pytest.mark.parametrize(
    ("begun", "moment", "left", "pause"),
    [
        (at(1, 8), at(1, 12), 4, PAUSE),  # an hour of the first part, and the second
        (at(1, 8), at(1, 14), 2, PAUSE),
        (at(1, 8), at(1, 15.5), 1, PAUSE),
        (at(1, 9), at(1, 15), 2, (at(1, 14), at(1, 16))),  # begun an hour late, so its pause is an hour later
    ],
)
def test_what_is_left_of_it_once_it_is_in_work(db, begun, moment, left, pause):
    with open_store(db).unit_of_work() as uow:
        uow.add_stage(StageChange(key("1"), Stage.IN_WORK, begun, "foreman", None))
        uow.commit()
    (item,) = prepare(read_planning_data(here(db)), moment).problem.in_work
    assert (item.remaining_slots, item.pause, item.crew) == (left, pause, "F1")
    assert plan(here(db), PlanRequest(publish=True, as_of=moment))
    assert verify(here(db)).sound
