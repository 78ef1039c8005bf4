"""Plans made, published and verified on the mill of `three_looms`, where every date can be worked out on paper."""

from datetime import date, time

import openpyxl
import pytest
from opened import here
from refusals import refused
from said import texts
from three_looms import MONDAY, at, key, make, reading, write

from tracker.domain.progress import Conversion, Stage, StageChange
from tracker.domain.rows import Change
from tracker.errors import DataError, PlanRefused, UsageError
from tracker.services.plans.made_plans import publish_made
from tracker.services.plans.plan import Firm, PlanRequest, plan
from tracker.services.plans.published import write_plan_workbook
from tracker.services.plans.verify import verify
from tracker.store import open_store


@pytest.fixture
def db(tmp_path):
    """Loom 1 is booked at its beam-out on Tuesday 08:00, loom 2 on Wednesday 16:00."""
    path = make(str(tmp_path / "mill.db"))
    assert starts(plan(here(path), PlanRequest(publish=True, as_of=MONDAY)))["1"] == at(1, 8)
    return path


def starts(report):
    return {booking.key.loom: booking.start for booking in report.plan.bookings}


@pytest.mark.parametrize("firm", [Firm(release=("1",)), Firm(stay=False)])
def test_what_was_published_with_a_firm_booking_released_holds(db, firm):
    # a reading of Monday 06:00 puts the beam-out three hours later, and so the booking follows
    write(db, reading("1", at(0, 6), at(1, 11)))
    moved = plan(here(db), PlanRequest(publish=True, as_of=at(0, 6), firm=firm))
    assert starts(moved)["1"] == at(1, 11)
    assert moved.plan.asked.released == ({key("1")} if firm.release else set())
    assert verify(here(db)).violations == ()


def test_a_saved_plan_with_a_firm_booking_released_is_published_by_its_number(db):
    write(db, reading("1", at(0, 6), at(1, 11)))
    saved = plan(here(db), PlanRequest(as_of=at(0, 6), firm=Firm(release=("1",))))
    assert starts(publish_made(here(db), saved.number, as_of=at(0, 6)))["1"] == at(1, 11)
    assert verify(here(db)).violations == ()


def test_an_earlier_plan_is_put_in_force_again_as_far_as_it_can_be(db):
    # plan 1 has loom 1 on Tuesday 08:00, plan 2 follows a reading to 11:00. 08:00 is less than 4 h before that beam-out: it may be
    write(db, reading("1", at(0, 6), at(1, 11)))
    assert plan(here(db), PlanRequest(publish=True, as_of=at(0, 6), firm=Firm(release=("1",)))).number == 2
    again = publish_made(here(db), 1, as_of=at(0, 6))
    assert (starts(again)["1"], again.number, again.published) == (at(1, 8), 3, True)
    assert [(move.key.loom, move.what) for move in again.moves] == [("1", "earlier")]
    assert verify(here(db)).violations == ()
    # once looms 1 and 2 are protected on their days, plan 2 cannot be had again: both are named
    for loom, until in (("1", date(2027, 1, 5)), ("2", date(2027, 1, 6))):
        write(db, Change("looms", (loom, "H"), "protected_until", None, until))
    with pytest.raises(PlanRefused) as caught:
        publish_made(here(db), 2, as_of=at(0, 6))
    assert texts(caught.value.findings) == (
        "loom 1 (H) cannot stay on Tue 5 Jan 2027 11:00: the loom is protected until Tue 5 Jan 2027 included",
        "loom 2 (H) cannot stay on Wed 6 Jan 2027 16:00: the loom is protected until Wed 6 Jan 2027 included",
    )
    with open_store(db).reading() as uow:
        assert uow.published_number() == 3


def test_a_plan_that_was_overtaken_before_it_was_published_comes_in_the_place_of_the_other(db):
    # plan 2 follows a reading of loom 1 to Tuesday 11:00 and is not published; plan 3 is, with loom 1 held on Tuesday 08:00
    write(db, reading("1", at(0, 6), at(1, 11)))
    assert starts(plan(here(db), PlanRequest(as_of=at(0, 6), firm=Firm(release=("1",)))))["1"] == at(1, 11)
    assert starts(plan(here(db), PlanRequest(publish=True, as_of=at(0, 6), hold=("1",))))["1"] == at(1, 8)
    with refused(PlanRefused, "another plan was published .*, plan 3 by tester; .* it books loom 1 .* otherwise"):
        publish_made(here(db), 2, as_of=at(0, 6), after=1)  # by a screen that still shows plan 1 as the one in force
    done = publish_made(here(db), 2, as_of=at(0, 6), after=3)
    assert (starts(done)["1"], done.number, done.published) == (at(1, 11), 4, True)
    assert [(move.key.loom, move.what) for move in done.moves] == [("1", "later")]
    assert verify(here(db)).violations == ()


def test_of_an_earlier_plan_what_is_in_work_comes_from_the_records(db):
    with open_store(db).unit_of_work() as uow:
        uow.add_stage(StageChange(key("1"), Stage.IN_WORK, at(1, 8), "foreman"))
        uow.commit()
    assert plan(here(db), PlanRequest(publish=True, as_of=at(1, 9), hold=("2",))).number == 2
    again = publish_made(here(db), 1, as_of=at(1, 9))
    # loom 3 was to start on Monday and nothing is recorded: it is planned anew; loom 1 is in work and not booked
    assert (starts(again)["2"], "1" in starts(again)) == (at(2, 16), False)
    assert verify(here(db)).violations == ()


def test_a_plan_made_afresh_holds_though_it_moved_a_firm_booking(db):
    write(db, reading("1", at(0, 6), at(1, 11)))
    afresh = plan(here(db), PlanRequest(publish=True, as_of=at(0, 6), afresh=True))
    assert starts(afresh)["1"] == at(1, 11)
    assert [booking.cost.moves for booking in afresh.plan.bookings] == [0.0] * 3
    assert verify(here(db)).violations == ()


def test_a_sign_off_leaves_the_firm_bookings_as_they_were_published(tmp_path):
    # The electrician is there from 09:00 on. Loom 2 is booked from Wednesday 16:00, its crew until 18:00 and from Thursday
    # 06:00: the electrician comes for the last of 6 h, Thursday 09:00 to 10:00. Loom 1 is signed off: what comes next takes
    # 90 % of the minutes, 324, eleven half hours, and would ask for the electrician after 270 min, at 08:30.
    path = make(str(tmp_path / "mill.db"), {"learning rate (%)": 0.9})
    write(path, *(Change("crews", ("E1", None, time(6), None), "shift_start", time(6), time(9)),))
    first = plan(here(path), PlanRequest(publish=True, as_of=MONDAY))
    assert starts(first)["2"] == at(2, 16)
    with open_store(path).unit_of_work() as uow:
        uow.add_stage(StageChange(key("1"), Stage.SIGNED_OFF, at(1, 14), "foreman"))
        uow.add_conversion(Conversion(key("1"), "AJ", "F1", 1, at(1, 8), at(1, 14), total_min=360.0))
        uow.commit()
    second = plan(here(path), PlanRequest(publish=True, as_of=at(1, 15)))
    kept = next(booking for booking in second.plan.bookings if booking.key == key("2"))
    assert (kept.start, kept.end, kept.slots) == (at(2, 16), at(3, 10), 12)
    told = "The firm booking of loom 2 (H) stays as published, 6 h, though its work takes 5.5 h by now."
    assert told in texts(second.plan.reasons)
    assert verify(here(path)).violations == ()


@pytest.mark.parametrize(("hold", "start"), [((), at(3, 6)), (("2",), at(2, 16))])
def test_a_held_booking_stays_and_what_was_published_with_it_holds(tmp_path, hold, start):
    # 24 h are firm: loom 2, on Wednesday 16:00, is not. A reading of Monday 06:00 puts its beam-out to 18:00, when the shift
    # ends: it goes to Thursday 06:00, or its crew waits two hours
    path = make(str(tmp_path / "mill.db"), {"firm (hours)": 24})
    plan(here(path), PlanRequest(publish=True, as_of=MONDAY))
    write(path, reading("2", at(0, 6), at(2, 18)))
    held = plan(here(path), PlanRequest(publish=True, as_of=at(0, 6), hold=hold))
    assert starts(held)["2"] == start
    assert held.plan.asked.held == {key(loom) for loom in hold}
    assert verify(here(path)).violations == ()


@pytest.mark.parametrize(
    ("request_", "kind", "says"),
    [
        (PlanRequest(hold=("9",)), DataError, "there is no loom 9"),
        (PlanRequest(hold=("3",), firm=Firm(release=("3",))), UsageError, "loom 3 .* cannot be both held and released"),
    ],
)
def test_what_cannot_be_held_is_refused_before_anything_is_planned(db, request_, kind, says):
    with refused(kind, says):
        plan(here(db), request_)


def test_without_a_published_plan_there_is_nothing_to_hold(tmp_path):
    with refused(DataError, "no plan is published, so there is no booking to keep"):
        plan(here(make(str(tmp_path / "mill.db"))), PlanRequest(as_of=MONDAY, hold=("3",)))


def test_a_calm_plan_moves_few_says_so_and_holds_once_published(tmp_path):
    # loom 2's beam-out moves by two hours, as above: one booking would move, and none has to
    path = make(str(tmp_path / "mill.db"), {"firm (hours)": 24})
    plan(here(path), PlanRequest(publish=True, as_of=MONDAY))
    write(path, reading("2", at(0, 6), at(2, 18)))
    calm = plan(here(path), PlanRequest(publish=True, as_of=at(0, 6), calm=0))
    assert starts(calm)["2"] == at(2, 16)
    assert calm.plan.keeping.free.moves == 1
    # the crew waits two hours at 60, and both are done on Thursday at 10:00
    assert calm.plan.keeping.dearer(calm.plan.objective) == pytest.approx(120, abs=3)
    with open_store(path).reading() as uow:
        assert uow.published_plan() == calm.plan
    assert verify(here(path)).violations == ()


def test_calmness_below_0_is_wrong_use(db):
    with refused(UsageError, "-1 more moves than needed: 0 or more are meant"):
        plan(here(db), PlanRequest(calm=-1))


def test_what_is_late_stands_in_the_plan_and_in_its_workbook(db, tmp_path):
    # Tuesday 09:00 and nothing is recorded: loom 3 was to begin on Monday 06:00, loom 1 at its beam-out an hour ago
    made = plan(here(db), PlanRequest(as_of=at(1, 9)))
    late = [(one.what.code, one.key.loom, one.days) for one in made.late]
    assert late == [("late-start", "3", 1), ("late-start", "1", 0), ("late-beam-out", "1", 0)]
    assert [one["code"] for one in made.record()["late"]] == ["late-start", "late-start", "late-beam-out"]
    write_plan_workbook(here(db, clock=lambda: at(1, 9)), tmp_path / "plan.xlsx")
    rows = list(openpyxl.load_workbook(tmp_path / "plan.xlsx")["Late"].values)
    assert [row[:4] for row in rows[1:]] == [
        (at(0, 6).replace(tzinfo=None), 1, "3", "H"), (at(1, 8).replace(tzinfo=None), 0, "1", "H"),
        (at(1, 8).replace(tzinfo=None), 0, "1", "H"),
    ]  # fmt: skip
