"""What was recorded by mistake is withdrawn: it stays in the history, and all that hung on it is as if it had not been."""

import shutil

import pytest
from card_mill import LOOM, card_mill, clock, fill_cards, now_here, well_done
from refusals import refused
from three_looms import at

from tracker.domain.progress import Stage
from tracker.errors import DataError, UsageError
from tracker.services.loading.load import LoadRequest, load
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.work.entering import enter_records
from tracker.services.work.record import StageTold, record_stage
from tracker.services.work.withdrawing import RowMeant, withdraw_reading, withdraw_stage
from tracker.store import open_store
from tracker.store.withdrawals import read_withdrawals

SHEETS = ("work_done", "set_values", "check_results", "parts_used")

CARDS = LoadRequest(records_only=True)


@pytest.fixture(scope="module")
def signed(tmp_path_factory):
    """Loom 1 converted on Tuesday and signed off by its card; one PIN of four came back, one broke. And its card."""
    folder = tmp_path_factory.mktemp("signed")
    db = card_mill(str(folder / "mill.db"))
    card = fill_cards(db, folder / "card.xlsx", well_done)
    assert load(now_here(db), [card], CARDS).written
    return db, card


@pytest.fixture
def db(signed, tmp_path):
    return str(shutil.copy(signed[0], tmp_path / "mill.db"))


def stands(db):
    """Stages, minutes in all of each conversion, rows of the sheets, stock of PIN and what is handed out of it to the loom."""
    with open_store(db).reading() as uow:
        room = read_stockroom(uow)
        return (
            [change.stage for change in uow.stage_history()], [done.total_min for done in uow.conversions()],
            {name: len(uow.rows(name)) for name in SHEETS}, room.part("PIN").on_hand, room.holds(LOOM).get("PIN", 0.0),
        )  # fmt: skip


def back_to_nothing(db):
    for _ in range(3):
        withdraw_stage(now_here(db), "1", "it was loom 2")


def test_stages_go_back_one_by_one_and_the_conversion_goes_with_its_beginning(db):
    """Of PIN 10 four were handed out. By the card one came back whole and one is scrapped, so that 7 are there and the loom has 2;
    as if it had not been, 6 are there and the loom has 4. The card has a row for the whole and three operations, but the bench is
    not listed; two sides found and set; two checks; two parts."""
    rows = {"work_done": 4, "set_values": 4, "check_results": 2, "parts_used": 2}
    assert stands(db) == ([Stage.IN_WORK, Stage.RUN_IN, Stage.SIGNED_OFF], [180], rows, 7, 2)
    assert withdraw_stage(now_here(db), "1", "no, it still runs in", stage="Signed off").stage is Stage.RUN_IN
    stages, minutes, left, *_ = stands(db)
    # the one first row of the card told the sign-off, and goes with it; its conversion was recorded with the run-in
    assert (stages, minutes) == ([Stage.IN_WORK, Stage.RUN_IN], [180])
    assert left == rows | {"work_done": 3}
    assert withdraw_stage(now_here(db), "1", "it does not run").stage is Stage.IN_WORK
    assert stands(db)[:2] == ([Stage.IN_WORK], [])
    assert withdraw_stage(now_here(db), "1", "it was loom 2").stage is None
    assert stands(db)[3:] == (6, 4)


def test_nothing_is_lost_by_it_and_the_card_can_be_loaded_again(db, signed):
    before = stands(db)
    back_to_nothing(db)
    assert stands(db)[2] == dict.fromkeys(SHEETS, 0)
    with open_store(db).reading() as uow:
        gone = read_withdrawals(uow.session, LOOM)
        assert {one.why for one in gone} == {"it was loom 2"} and {one.who for one in gone} == {"tester"}
        tables = [one.table for one in gone]
    # three stages, one conversion, and the rows of the four sheets
    assert (tables.count("stage_changes"), tables.count("conversions"), len(tables)) == (3, 1, 16)
    assert load(now_here(db), [signed[1]], CARDS).written
    assert stands(db) == before


def test_a_stage_under_others_is_refused_until_they_are_withdrawn(db):
    with refused(DataError, r"loom 1 \(H\) is signed off since .* which builds on in work: withdraw signed off first"):
        withdraw_stage(now_here(db), "1", "wrong loom", stage="in work")
    with refused(DataError, "nothing is recorded of loom 2"):
        withdraw_stage(now_here(db), "2", "wrong loom")
    with refused(DataError, r"never recorded as put off; recorded are: in work, run-in, signed off"):
        withdraw_stage(now_here(db), "1", "wrong loom", stage="put off")
    with refused(UsageError, "only with a reason"):
        withdraw_stage(now_here(db), "1", " ")


def test_what_a_sign_off_builds_on_stays_and_other_readings_go(db):
    before = stands(db)
    guards = RowMeant("check_results", {"check": "guards are refitted"})
    with refused(DataError, r"the sign-off of loom 1 \(H\) builds on it: withdraw the stage signed off first"):
        withdraw_reading(now_here(db), "1", "not looked at", guards)
    assert stands(db) == before
    rows = {"set_values": [{"setting": "crossing angle", "value": "300", "why": "read out"}]}
    assert enter_records(now_here(db), "1", None, rows, {"side": "left", "at": at(1, 15)}).written
    angle = {"setting": "crossing angle", "side": "left"}
    with refused(DataError, r"several rows of loom 1 .*: \(left, crossing angle, 2027-01-05 08:30, found\)"):
        withdraw_reading(now_here(db), "1", "of loom 2", RowMeant("set_values", angle))
    withdraw_reading(now_here(db), "1", "of loom 2", RowMeant("set_values", angle | {"at": at(1, 15)}))
    assert stands(db) == before
    with refused(DataError, r"there is no such row of loom 1 \(H\) in Set values"):
        withdraw_reading(now_here(db), "1", "of loom 2", RowMeant("set_values", angle | {"at": at(1, 15)}))


def test_what_came_back_and_was_handed_on_is_not_taken_from_where_it_is(db):
    """All seven PIN are gone from the stockroom since: the one that had come back cannot be handed out again to loom 1."""
    from tracker.services.parts.stock import Told, adjust

    adjust(now_here(db), "PIN", -7, Told("used elsewhere"))
    before = stands(db)
    with refused(DataError, "PIN"):
        withdraw_reading(now_here(db), "1", "miscounted", RowMeant("parts_used", {"part": "PIN"}))
    assert stands(db) == before


def test_a_stop_that_was_recorded_of_the_wrong_loom_leaves_it_in_work(db):
    back_to_nothing(db)
    record_stage(now_here(db), "1", "in work", told=StageTold(at=at(1, 8)))
    record_stage(now_here(db), "1", "stopped", told=StageTold(at=at(1, 9), why="rail does not fit"))
    assert withdraw_stage(now_here(db), "1", "that was loom 2", stage="stopped").stage is Stage.IN_WORK
    assert stands(db)[0] == [Stage.IN_WORK]


def test_work_that_began_at_another_moment_is_recorded_anew(db, tmp_path):
    """The start is part of what tells a conversion from another: it cannot be corrected, but withdrawn and told again."""
    back_to_nothing(db)

    def an_hour_later(sheet, row):
        return well_done(sheet, row) | (
            {"Started": clock(9), "Locked": clock(9.25)} if row.get("Operation", "") is None else {}
        )

    card = fill_cards(db, tmp_path / "again.xlsx", an_hour_later)
    assert load(now_here(db), [card], CARDS).written
    assert stands(db)[1] == [120]  # nine to eleven
