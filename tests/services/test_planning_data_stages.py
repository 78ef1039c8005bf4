"""What the records and the published plans mean for planning, on the mill of `three_looms`.

Published on Monday: loom 3 mid-warp on Monday from 06:00 to 16:00 (20 half hours), loom 1 on Tuesday from 08:00 to 14:00
(12), loom 2 from Wednesday 16:00 to Thursday 10:00 (4 half hours to the end of the shift at 18:00, 8 from 06:00).
"""

from dataclasses import replace
from datetime import datetime

import pytest
from opened import here
from three_looms import MONDAY, at, key, make, reading, write

from tracker.domain.progress import Stage, StageChange
from tracker.domain.stock import Movement, MovementKind, Reservation
from tracker.errors import message
from tracker.mill_state.planning import prepare
from tracker.planning.problem import PlanningProblem
from tracker.services.plans.plan import Firm, PlanRequest, plan
from tracker.services.plans.planning_data import read_planning_data
from tracker.services.plans.verify import verify
from tracker.store import open_store
from tracker.words import ENGLISH


@pytest.fixture
def db(tmp_path) -> str:
    path = make(str(tmp_path / "mill.db"))
    plan(here(path), PlanRequest(publish=True, as_of=MONDAY))
    return path


def record(db: str, loom: str, stage: Stage, moment: datetime, reason: str | None = None) -> None:
    with open_store(db).unit_of_work() as uow:
        uow.add_stage(StageChange(key(loom), stage, moment, "foreman", reason))
        uow.commit()


def problem(db: str, moment: datetime) -> PlanningProblem:
    return prepare(read_planning_data(here(db)), moment).problem


def in_work(db: str, moment: datetime) -> list[tuple[str, int, float | None]]:
    """Loom, half hours left, minutes of its whole work."""
    return [
        (item.key.loom, item.remaining_slots, item.content.on_loom_min if item.content else None)
        for item in problem(db, moment).in_work
    ]


def test_a_plan_that_was_not_published_counts_for_nothing(db):
    published = read_planning_data(here(db)).previous
    write(db, reading("1", at(0, 6), at(1, 11)))
    saved = plan(here(db), PlanRequest(as_of=at(0, 6), firm=Firm(release=("1",))))
    assert saved.plan != published
    assert read_planning_data(here(db)).previous == published
    # the firm booking of the published plan still stays: Tuesday 08:00, not the 11:00 of the saved plan
    again = plan(here(db), PlanRequest(as_of=at(0, 6)))
    assert {b.key.loom: b.start for b in again.plan.bookings}["1"] == at(1, 8)


@pytest.mark.parametrize(("stage", "signed_off"), [(Stage.RUN_IN, set()), (Stage.SIGNED_OFF, {key("1")})])
def test_a_loom_that_runs_again_is_not_planned_again(db, stage, signed_off):
    record(db, "1", stage, at(1, 14))
    found = problem(db, at(1, 15))
    assert (found.converted, found.signed_off) == ({key("1"): at(1, 14)}, signed_off)
    assert key("1") not in found.planned
    made = plan(here(db), PlanRequest(as_of=at(1, 15))).plan
    assert key("1") not in {b.key for b in made.bookings} | {item.key for item in made.left_over}


def test_a_loom_put_off_is_left_over_with_its_reason_and_one_left_out_appears_nowhere(db):
    record(db, "1", Stage.PUT_OFF, at(0, 9), "waits for the order")
    record(db, "2", Stage.LEFT_OUT, at(0, 9), "to be sold")
    found = problem(db, at(0, 10))
    assert (found.put_off, found.left_out) == (
        {key("1"): message("left-put-off", reason="waits for the order")},
        {key("2")},
    )
    made = plan(here(db), PlanRequest(as_of=at(0, 10))).plan
    assert [(item.key.loom, ENGLISH.line(item.why)) for item in made.left_over] == [
        ("1", "put off: waits for the order")
    ]
    assert {b.key.loom for b in made.bookings} <= {"3"}


@pytest.mark.parametrize(
    ("began", "moment", "left"),
    [
        (at(1, 8), at(1, 8), 12),
        # three hours later six of twelve are done
        (at(1, 8), at(1, 11), 6),
        # at 11:10 the next half hour begins at 11:30; it ends at 14:00, five half hours later
        (at(1, 8), at(1, 11 + 1 / 6), 5),
        # begun at 08:10 it ends at 14:10, in the seventh half hour from 11:00 and in the twelfth from 08:30
        (at(1, 8 + 1 / 6), at(1, 11), 7),
        (at(1, 8 + 1 / 6), at(1, 8.5), 12),
        # ten half hours on Tuesday to 18:00 and two on Wednesday from 06:00 on: begun at 13:00, at midnight two are left
        (at(1, 13), at(2, 0), 2),
        # should have been done long ago: one half hour is left as long as nothing else is recorded
        (at(1, 8), at(2, 12), 1),
    ],
)
def test_what_is_left_of_a_conversion_ends_when_the_whole_does(db, began, moment, left):
    record(db, "1", Stage.IN_WORK, began)
    assert in_work(db, moment) == [("1", left, 360.0)]


def test_a_loom_in_work_keeps_its_work_through_a_second_publication(db):
    # begun on Tuesday 08:00; the plan published at 09:00 books the others only. At 10:00, 8 of 12 half hours are left
    record(db, "1", Stage.IN_WORK, at(1, 8))
    second = plan(here(db), PlanRequest(publish=True, as_of=at(1, 9)))
    assert key("1") not in {b.key for b in second.plan.bookings}
    assert in_work(db, at(1, 10)) == [("1", 8, 360.0)]
    assert verify(here(db)).violations == ()


def test_a_loom_in_work_that_was_never_booked_takes_the_longest_it_can(tmp_path):
    # mid-warp: 240 + 300 + 60 min are 20 half hours; two of them are done
    path = make(str(tmp_path / "mill.db"))
    record(path, "2", Stage.IN_WORK, at(1, 8))
    assert in_work(path, at(1, 9)) == [("2", 18, 600.0)]


def test_stock_held_for_a_loom_in_work_is_taken_and_what_was_issued_is_not_needed_again(db):
    record(db, "1", Stage.IN_WORK, at(1, 8))
    record(db, "2", Stage.RUN_IN, at(1, 8))
    data = read_planning_data(here(db))
    held = tuple(Reservation(key(loom), "RAIL", quantity) for loom, quantity in (("1", 2.0), ("2", 1.0), ("3", 4.0)))
    issued = (Movement("NUT", MovementKind.ISSUE, -8.0, at(0, 9), "store", key=key("3")),)
    found = prepare(replace(data, movements=issued, reservations=held), at(1, 9)).problem
    # loom 3 is still to be planned: what is held for it is its own
    assert found.taken == {"RAIL": 3.0}
    assert found.issued == {key("3"): {"NUT": 8.0}}
