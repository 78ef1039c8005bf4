"""Kits, pick lists and choices, from a database. The sample's stock and kits are in `stock_room_samples`."""

from datetime import date

import pytest
from opened import here
from refusals import refused
from said import lines
from stock_room_samples import AT, PLAN, booking, fill, fill_with_method, key, plan_of

from tracker.domain.progress import Stage, StageChange
from tracker.errors import DataError
from tracker.services.parts.kits import kits, pick_list, prices_of_choices
from tracker.services.parts.stock import issue_kit, recover
from tracker.store import open_store


@pytest.fixture
def db(tmp_path):
    return fill_with_method(str(tmp_path / "mill.db"))


def test_kits_in_booking_order_with_their_state(db):
    # PO-1 is due on Wed 21 Jan, before loom 10's Mon 26 Jan: its rail is on order, its 4 nuts are not.
    report = kits(here(db), as_of=AT)
    assert [(kit.key.loom, kit.state) for kit in report.kits] == [("1", "complete"), ("2", "complete"), ("10", "short")]
    assert lines(report) == ["3 kits: 0 issued, 2 complete, 0 reserved, 1 short."]
    last = report.record()[-1]
    assert (last["short"], last["expected"], last["state"]) == ({"RAIL": 1, "NUT": 4}, {"RAIL": "2026-01-21"}, "short")


def test_one_kit(db):
    assert [kit.key.loom for kit in kits(here(db), "2").kits] == ["2"]
    with refused(DataError, r"loom 3 \(Hall 1\) is not booked"):
        kits(here(db), "3")


def test_a_loom_that_is_signed_off_has_no_open_kit(db):
    with open_store(db).unit_of_work("planner") as uow:
        uow.add_stage(StageChange(key("1"), Stage.SIGNED_OFF, AT, "planner"))
        uow.commit()
    assert [kit.key.loom for kit in kits(here(db)).kits] == ["2", "10"]


def test_the_pick_list_of_a_day_and_of_some_days(db):
    report = pick_list(here(db), date(2026, 1, 26))
    assert [(line.part, line.quantity, line.short) for line in report.picks] == [("NUT", 4, 4), ("RAIL", 0, 1)]
    assert {line.key.loom for line in pick_list(here(db), date(2026, 1, 12), days=8).picks} == {"1", "2"}
    assert pick_list(here(db), date(2026, 1, 13)).picks == ()


def test_the_price_of_the_choice_that_was_not_taken(tmp_path):
    """New rail: rail 300 and 60 min × 2 × 30 = 60. Drilled: no rail, 150 min × 2 × 30 = 150. Allowance 15 %:
    labour 69 and 172.50, so drilling is 300 cheaper in parts, 103.50 dearer in labour and 103.5 min longer."""
    plan = plan_of(
        booking("1", date(2026, 1, 12), {}, choices=(("rail", "new rail"),)),
        booking("2", date(2026, 1, 19), {}, choices=(("rail", "drill"),)),
    )
    first, second = prices_of_choices(here(fill_with_method(str(tmp_path / "mill.db"), plan))).prices
    assert (first.key, first.taken, first.other) == (key("1"), (("rail", "new rail"),), (("rail", "drill"),))
    assert (first.parts, first.labour, first.on_loom_min) == pytest.approx((-300, 103.5, 103.5))
    assert (second.parts, second.labour, second.on_loom_min) == pytest.approx((300, -103.5, -103.5))
    assert first.extra_cost is None


def test_choices_in_words(tmp_path):
    plan = plan_of(*(booking(loom, date(2026, 1, 12), {}, choices=(("rail", "new rail"),)) for loom in ("1", "2")))
    report = prices_of_choices(here(fill_with_method(str(tmp_path / "mill.db"), plan)))
    assert lines(report) == ["new rail taken for 2 looms; drill instead: parts 600 EUR cheaper, labour 207 EUR dearer"]


def test_recovering_what_comes_back_does_not_open_the_kit_again(tmp_path):
    plan = plan_of(booking("1", date(2026, 1, 12), {"NUT": 8.0, "GAUGE": 1.0}, choices=(("rail", "drill"),)))
    db = fill_with_method(str(tmp_path / "mill.db"), plan)
    issue_kit(here(db), "1")
    with refused(DataError, r"part NUT does not come back from loom 1 \(Hall 1\)"):
        recover(here(db), "1", part="NUT")
    with refused(DataError, "2 to be returned from loom 1"):
        recover(here(db), "1", part="GAUGE", quantity=2)
    assert [(m.part, m.quantity, m.kind) for m in recover(here(db), "1").movements] == [("GAUGE", 1, "recovered")]
    assert kits(here(db)).kits[0].state == "issued"
    with refused(DataError, "nothing is out with loom 1"):
        recover(here(db), "1")


def signed_off(uow):
    uow.add_stage(StageChange(key("1"), Stage.SIGNED_OFF, AT, "fitter"))


def dropped_by_a_new_plan(uow):
    uow.add_stage(StageChange(key("1"), Stage.RUN_IN, AT, "fitter"))
    uow.save_plan(plan_of(booking("2", date(2026, 1, 19), {"GAUGE": 3.0}, **DRILLED)), published=True)


DRILLED = {"choices": (("rail", "drill"),)}


@pytest.fixture(params=[signed_off, dropped_by_a_new_plan])
def not_booked_any_more(request, tmp_path):
    """Loom 1 has its kit with one of three gauges and no booking any more; loom 2 is booked and needs three."""
    plan = plan_of(
        booking("1", date(2026, 1, 12), {"NUT": 8.0, "GAUGE": 1.0}, **DRILLED),
        booking("2", date(2026, 1, 19), {"GAUGE": 3.0}, **DRILLED),
    )
    db = fill_with_method(str(tmp_path / "mill.db"), plan)
    issue_kit(here(db), "1")
    with open_store(db).unit_of_work("planner") as uow:
        request.param(uow)
        uow.commit()
    return db


def test_what_comes_back_is_recovered_also_when_the_loom_is_not_booked_any_more(not_booked_any_more):
    db = not_booked_any_more
    with refused(DataError, r"part NUT does not come back from loom 1 \(Hall 1\)"):
        recover(here(db), "1", part="NUT")
    assert [(m.part, m.quantity, m.kind) for m in recover(here(db), "1").movements] == [("GAUGE", 1, "recovered")]
    with refused(DataError, "nothing is out with loom 1"):
        recover(here(db), "1")


def test_what_a_loom_still_has_is_counted_on_until_it_comes_back(not_booked_any_more):
    # Two gauges are there and one is out with loom 1, whose booking ended on Mon 12 Jan: in time for loom 2 on Mon 19 Jan.
    (kit,) = kits(here(not_booked_any_more)).kits
    assert (kit.short, kit.expected, kit.state) == ({"GAUGE": 1}, {"GAUGE": date(2026, 1, 12)}, "reserved")


def test_what_comes_back_by_no_content_that_the_method_still_has_is_what_the_loom_was_given(tmp_path):
    # Booked without a choice, by a method that had none; today's has one, and the gauge comes back either way.
    db = fill_with_method(str(tmp_path / "mill.db"))
    issue_kit(here(db), "1")
    assert [(m.part, m.quantity) for m in recover(here(db), "1").movements] == [("GAUGE", 1)]


def test_a_plan_must_be_published(tmp_path):
    with refused(DataError, "no plan is published"):
        kits(here(fill(str(tmp_path / "mill.db"), None)))


def test_the_sample_plan_is_the_published_one(db):
    assert {kit.key for kit in kits(here(db)).kits} == {b.key for b in PLAN.bookings}
