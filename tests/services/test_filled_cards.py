"""Cards filled in by hand and loaded: what they say is seen in stages, hours, settings and the stockroom, and can be corrected."""

import shutil

import pytest
from card_mill import LOOM, card_mill, clock, fill_cards, now_here, well_done
from openpyxl import load_workbook
from refusals import refused
from three_looms import at

from tracker.domain.progress import Stage
from tracker.domain.windows import WindowKind
from tracker.errors import DataError
from tracker.scope.content import scope_looms
from tracker.services.loading.load import LoadRequest, load
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.plans.plan import PlanRequest, plan
from tracker.services.work.cards import cards
from tracker.services.work.entering import HowTold, enter_records
from tracker.services.work.record import StageTold, record_stage
from tracker.store import open_store
from tracker.words.findings import refusal_line


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    return card_mill(str(tmp_path_factory.mktemp("made") / "mill.db"))


@pytest.fixture
def db(made, tmp_path):
    return shutil.copy(made, tmp_path / "mill.db")


def record(db, path, correct=None):
    return load(now_here(db), [path], LoadRequest(records_only=True, correct=correct))


def said(report):
    return refusal_line(report.refusal, report.quoted)


def stock(db):
    with open_store(db).reading() as uow:
        room = read_stockroom(uow)
        return {part: room.part(part).on_hand for part in ("RAIL", "PIN")}


def stored(db):
    """Stages with their hour of 5 January, minutes by operation, all values set, stock."""
    with open_store(db).reading() as uow:
        stages = [(change.stage, (change.at - at(1, 0)).total_seconds() / 3600) for change in uow.stage_history()]
        (done,) = uow.conversions()
        values = {(row["side"], row["why"]): row["value"] for row in uow.rows("set_values").values()}
    return stages, (done.total_min, dict(done.operation_minutes)), values, stock(db)


def mend(path, sheet, of, to):
    """Write other values into the one row of a sheet that has these."""
    book = load_workbook(path)
    page = book[sheet]
    at_column = {cell.value: cell.column for cell in page[1]}
    (number,) = (
        n for n in range(2, page.max_row + 1) if all(page.cell(n, at_column[h]).value == v for h, v in of.items())
    )
    for heading, value in to.items():
        page.cell(number, at_column[heading]).value = value
    book.save(path)


def test_a_filled_card_is_seen_in_stages_hours_settings_and_stock(db, tmp_path):
    """Three hours for a work of 300 + 60 min: all took half. Of PIN 10 four were issued, one came back whole."""
    path = fill_cards(db, tmp_path / "card.xlsx", well_done)
    assert stock(db) == {"RAIL": 1, "PIN": 6}
    report = record(db, path)
    assert report.written, said(report)
    stages, minutes, values, left = stored(db)
    assert stages == [(Stage.IN_WORK, 8), (Stage.RUN_IN, 11), (Stage.SIGNED_OFF, 12)]
    assert minutes == (180, {"Mount": 150, "Wire": 30, "Electrics": 30})
    assert values == {(side, why): value for side in ("left", "right") for why, value in (("found", 300), ("set", 311))}
    assert left == {"RAIL": 1, "PIN": 7}
    again = record(db, path)
    assert again.written and not again.changes and stored(db)[3] == left
    with open_store(db).reading() as uow:
        assert len(uow.rows("work_done")) == 4 and len(uow.rows("bobbins")) == 2
        assert {row["torque_nm"] for row in uow.rows("work_done").values()} == {None, 41}


def test_a_torque_out_of_limits_is_refused_in_its_cell_and_nothing_is_written(db, tmp_path):
    """The method asks for 40 N·m, so that no more than 53.3 can have been."""

    def too_tight(sheet, row):
        return well_done(sheet, row) | ({"Torque read (N·m)": 60} if row.get("Operation") == "Mount" else {})

    report = record(db, fill_cards(db, tmp_path / "card.xlsx", too_tight))
    assert not report.written and "Work done" in said(report) and "60 N·m cannot be" in said(report)
    assert "53.3 N·m" in said(report) and "--partial" not in said(report)
    with open_store(db).reading() as uow:
        assert not uow.rows("work_done") and not uow.stages()


def test_a_wrong_first_line_is_told_once_and_not_for_each_operation(db, tmp_path):
    def without_start(sheet, row):
        told = dict(well_done(sheet, row))
        told.pop("Started", None)
        return told

    report = record(db, fill_cards(db, tmp_path / "card.xlsx", without_start))
    assert [finding.code for finding in report.refused] == ["missing-value", "record-not-in-work"]
    # two more operations, and the two values set
    assert report.refused[1].params["more"] == 4 and len(report.refused[1].rows) == 5


def test_a_correction_says_what_it_replaces_and_hours_and_stock_follow(db, tmp_path):
    """Mount took 160 min, not a share; of the other 20 the half hours take alike. No PIN was left over after all."""
    path = fill_cards(db, tmp_path / "card.xlsx", well_done)
    assert record(db, path).written
    mend(path, "Work done", {"Operation": "Mount"}, {"Minutes (min)": 160, "Torque read (N·m)": 42})
    mend(path, "Parts used", {"Part": "PIN"}, {"Used": 3, "Left over": 0})
    mend(path, "Set values", {"Side": "left", "Why": "set"}, {"Value": 312})
    refusal = record(db, path)
    assert not refusal.written and "record-differs" in {finding.code for finding in refusal.refused}
    assert stock(db)["PIN"] == 7

    report = record(db, path, correct="misread")
    assert report.written, said(report)
    notes = {
        finding.params["heading"]: finding.params for finding in report.findings if finding.code == "record-corrected"
    }
    assert {heading: (p["stored"], p["why"]) for heading, p in notes.items()} == {
        "Torque read": ("41", "misread"), "Used": ("2", "misread"), "Left over": ("1", "misread"),
        "Value": ("311", "misread"),
    }  # fmt: skip
    _, minutes, now, left = stored(db)
    assert minutes == (180, {"Mount": 160, "Wire": 20, "Electrics": 20})
    assert now["left", "set"] == 312 and now["right", "set"] == 311
    assert left == {"RAIL": 1, "PIN": 6}


def test_a_loom_in_words_is_corrected_like_a_file(db):
    rows, told = (
        {"set_values": [{"setting": "crossing angle", "value": "300", "why": "read out"}]},
        {"side": "left", "at": at(1, 9)},
    )
    assert enter_records(now_here(db), "1", None, rows, told).written
    mended = {"set_values": [{**rows["set_values"][0], "value": "301"}]}
    refusal = enter_records(now_here(db), "1", None, mended, told)
    assert "--correct WHY" in said(refusal)
    assert enter_records(now_here(db), "1", None, mended, told, HowTold("misread")).written
    with open_store(db).reading() as uow:
        assert [row["value"] for row in uow.rows("set_values").values()] == [301]


def test_nothing_is_stopped_that_has_not_begun(db):
    with refused(
        DataError,
        'loom 1 .H. is booked: no conversion of it is under way that could be stopped. Put it off .*--stage "put off"',
    ):
        record_stage(now_here(db), "1", "stopped", told=StageTold(at=at(1, 9), why="rail does not fit"))
    record_stage(now_here(db), "1", "in work", told=StageTold(at=at(1, 8)))
    told = {"work_done": [{"operation": "Mount", "done_by": "M. Berg"}]}
    assert enter_records(now_here(db), "1", None, told, {}).written
    record_stage(now_here(db), "1", "stopped", told=StageTold(at=at(1, 9), why="rail does not fit"))
    with open_store(db).reading() as uow:
        assert uow.stages()[LOOM].stage is Stage.STOPPED
        assert uow.mill().left_done == {LOOM: {"mount"}}


def broken_off(sheet, row):
    """Stopped at eleven with the rail mounted; no PIN was used. The electrics are held, so that they are done again."""
    match sheet:
        case "Work done" if not row["Operation"]:
            return {"Started": clock(8), "Ended": clock(11), "Stage reached": "stopped", "Remark": "cable too short"}
        case "Work done" if row["Operation"] in ("Mount", "Electrics"):
            return {"Done by": "M. Berg"}
        case "Parts used" if row["Part"] == "PIN":
            return {"Used": 0, "Left over": 4}
    return {}


def test_a_stopped_conversion_comes_again_with_less_to_do_and_its_parts_back(db, tmp_path):
    """Of 300 + 60 min the mounting is done: wire and electrics side by side are 60 min, two half hours of the next plan."""
    report = record(db, fill_cards(db, tmp_path / "card.xlsx", broken_off))
    assert report.written, said(report)
    with open_store(db).reading() as uow:
        mill, change = uow.mill(), uow.stages()[LOOM]
    assert (change.stage, change.reason) == (Stage.STOPPED, "cable too short")
    (content,) = scope_looms(mill)[LOOM].contents[WindowKind.REPEAT]
    assert [row.operation for row in content.operations] == ["Wire", "Electrics"] and content.on_loom_min == 60
    assert stock(db) == {"RAIL": 1, "PIN": 10}

    planned = plan(now_here(db), PlanRequest(publish=True, as_of=at(1, 12)))
    assert {booking.key: booking.slots for booking in planned.plan.bookings}[LOOM] == 2
    assert "passed-unrecorded" not in {reason.code for reason in planned.plan.reasons}, (
        "it is recorded what became of it"
    )
    assert [operation.row.operation for operation in cards(now_here(db), "1").cards[0].operations] == [
        "Wire",
        "Electrics",
    ]

    record_stage(now_here(db), "1", "scoped", told=StageTold(at=at(1, 13), why="all of it was taken off again"))
    with open_store(db).reading() as uow:
        assert uow.mill().left_done == {}


def test_what_a_load_would_do_is_told_by_the_programmes_clock(db, tmp_path):
    """The card tells of eight to twelve on Tuesday: at seven that lies ahead, a day later it does not, whatever today is."""
    path = fill_cards(db, tmp_path / "card.xlsx", well_done)
    tried = LoadRequest(records_only=True, dry_run=True)
    early, later = (load(now_here(db, clock=moment), [path], tried) for moment in (at(1, 7), at(2, 6)))
    assert "record-ahead" in {finding.code for finding in early.refused}
    assert later.refusal is None
