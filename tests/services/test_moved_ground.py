"""Two people before one value: who saves on ground that has moved is refused with both values, whatever the service; sent again
after that was read, it is saved."""

from datetime import UTC, date, datetime, timedelta

import pytest
from quick_passwords import PASSWORD, quick_passwords  # noqa: F401
from refusals import refused
from stock_room_samples import PLAN, fill

from tracker.domain.people import EVERY_ROLE, Role
from tracker.domain.progress import Stage
from tracker.errors import ChangedSince
from tracker.services.context import Actor, Context
from tracker.services.ground import OnTheForm
from tracker.services.loading.by_hand import take_out, type_in
from tracker.services.parts.ordering import expect
from tracker.services.parts.stock import count
from tracker.services.people.accounts import add_person, change_roles, people
from tracker.services.plans.plan import save
from tracker.services.work.record import StageTold, record_stage

NOON = datetime(2027, 1, 4, 12, tzinfo=UTC)
SPEED = {"loom": "1", "hall": "Hall 1"}


@pytest.fixture(scope="module")
def room(tmp_path_factory):
    """Loom 1 runs at 600 picks/min; 20 NUT on hand; 4 RAIL of order PO-1 due on 21 January 2026; nothing recorded."""
    return Context(fill(str(tmp_path_factory.mktemp("ground") / "mill.db"), PLAN), Actor("fill"))


def by(room, name, *shown, hours=0):
    here = room.acting(Actor(name, EVERY_ROLE)).having_shown(*shown)
    return here._with(clock=lambda: NOON + timedelta(hours=hours))


def test_a_value_of_a_loom(room):
    """Ann and Bo both read 600. Ann saves 640; Bo, who wants 500, reads both; his second try has seen 640."""
    seen = OnTheForm("looms", ("1", "Hall 1"), {"speed_ppm": 600.0})
    assert type_in(by(room, "Ann", seen), "looms", [SPEED | {"speed_ppm": 640}]).written
    with refused(
        ChangedSince, r"Looms \(1, Hall 1\) Speed: 600 then, 640 now \(by Ann on Mon 4 Jan 2027 12:00\)\. Nothing"
    ):
        type_in(by(room, "Bo", seen, hours=1), "looms", [SPEED | {"speed_ppm": 500}])
    with room.reading() as uow:
        assert uow.mill().looms[PLAN.bookings[0].key].speed_ppm == 640
    read = OnTheForm("looms", ("1", "Hall 1"), {"speed_ppm": 640})
    assert type_in(by(room, "Bo", read, hours=1), "looms", [SPEED | {"speed_ppm": 500}]).written


def test_a_term_that_was_taken_out(room):
    term = {"term": "allowance (%)", "value": 10}
    assert type_in(by(room, "Ann", OnTheForm("terms", ("allowance (%)",), {"value": None})), "terms", [term]).written
    seen = OnTheForm("terms", ("allowance (%)",), {"value": 0.1})
    take_out(by(room, "Ann", seen, hours=1), "terms", ("allowance (%)",))
    with refused(ChangedSince, r"Terms \(allowance \(%\)\) Value: 10 then, empty now \(by Ann on Mon 4 Jan 2027 13:00"):
        type_in(by(room, "Bo", seen), "terms", [term | {"value": 12}])


def test_the_day_of_an_order_and_a_count(room):
    line = OnTheForm("receipts", ("PO-1", "RAIL"), {"due": date(2026, 1, 21), "quantity": 4})
    expect(by(room, "Ann", line), "PO-1", due=date(2027, 2, 1))
    with refused(ChangedSince, r"Due: Wed 21 Jan 2026 then, Mon 1 Feb 2027 now \(by Ann"):
        expect(by(room, "Bo", line), "PO-1", due=date(2027, 3, 1))
    there = OnTheForm("parts", ("NUT",), {"on_hand": 20.0})
    count(by(room, "Ann", there), "NUT", 18)
    with refused(ChangedSince, r"Parts \(NUT\) On hand: 20 then, 18 now \(by Ann"):
        count(by(room, "Bo", there), "NUT", 19)


def test_a_stage_and_the_published_plan(room):
    nothing = OnTheForm("stage", ("2", "Hall 1"), {"stage": None})
    told = StageTold(why="no order")
    record_stage(by(room, "Ann", nothing), "2", "put off", told=told)
    with refused(ChangedSince, r"stage of loom 2 \(Hall 1\): empty then, put off now \(by Ann"):
        record_stage(by(room, "Bo", nothing), "2", "left out", told=told)
    record_stage(
        by(room, "Bo", OnTheForm("stage", ("2", "Hall 1"), {"stage": Stage.PUT_OFF})), "2", "left out", told=told
    )
    first = OnTheForm("plan", (), {"plan": 1})
    save(by(room, "Ann", first), PLAN, True, None, PLAN)
    with refused(ChangedSince, r"published plan: 1 then, 2 now \(by Ann"):
        save(by(room, "Bo", first), PLAN, True, None, PLAN)


def test_the_roles_of_an_account(room, quick_passwords):  # noqa: F811
    add_person(by(room, "Root"), "Vera", PASSWORD, ["viewer"])
    seen = OnTheForm("roles", ("Vera",), {"roles": (Role.VIEWER,)})
    change_roles(by(room, "Ann", seen), "Vera", ["fitter"])
    with refused(ChangedSince, r"roles of Vera: viewer then, fitter now \(by Ann"):
        change_roles(by(room, "Bo", seen), "Vera", ["planner"])
    assert people(by(room, "Root")).people[0].roles == (Role.FITTER,)
