"""Settings through the store: two looms of one type, read weekly, worked out by hand. Zone UTC; the method's repeatability of
the crossing angle is 1 deg, its target 310, its limits 305 to 330."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from mill_sheets import workbook
from opened import here
from python_calamine import CalamineWorkbook
from refusals import refused
from said import lines, texts

from tracker.commissioning.settings.alarms import AlarmKind
from tracker.domain.mill import LoomKey
from tracker.domain.progress import Stage, StageChange
from tracker.domain.rows import Change, SourceColumn, SourceTable, TypedRow
from tracker.errors import DataError
from tracker.services.loading.load import LoadRequest, load
from tracker.services.work.seen_alarms import mark_seen
from tracker.services.work.settings import settings
from tracker.services.work.settings_files import write_proposal, write_settings
from tracker.store import open_store

SET = datetime(2027, 1, 11, 13, tzinfo=UTC)
NOW = datetime(2027, 2, 1, 18, tzinfo=UTC)
ONE, TWO = LoomKey("H", "1"), LoomKey("H", "2")
SOURCES = (
    SourceTable("m.xlsx", "Operations", "operations", 1, (SourceColumn("Step", "A1", "step"),)),
    SourceTable("m.xlsx", "Setpoints", "setpoints", 1, (SourceColumn("Setting", "A1", "setting"),)),
)
FIT = {"step": 10, "operation": "Fit", "minutes": 30.0, "trade": "fitter", "heads": 1}
METHOD = {
    "operations": [TypedRow("operations", FIT, {}, 0, 2)],
    "setpoints": [
        TypedRow("setpoints", {"setting": "crossing angle", "side": side, "unit": "deg", "target": 310.0, "low": 305.0,
                               "high": 330.0, "repeatability": 1.0}, {}, 1, 2)
        for side in ("left", "right")
    ]
    + [TypedRow("setpoints", {"setting": "offset", "side": "left", "unit": "mm", "target": 310.0}, {}, 1, 3)],
}  # fmt: skip


def now(db):
    """At NOW, since records of moments ahead are refused."""
    return replace(here(db), clock=lambda: NOW)


HEAD = ["Loom", "Side", "Setting", "Value", "At", "Why"]


def weekly(loom, side, *values, why="read out"):
    """The first value set on 11 January 13:00, the others a week apart."""
    return [
        [loom, side, "crossing angle", value, f"{SET + timedelta(weeks=i):%Y-%m-%d %H:%M}", why if i else "set"]
        for i, value in enumerate(values)
    ]


@pytest.fixture
def db(tmp_path):
    path = str(tmp_path / "mill.db")
    with open_store(path, make=True).unit_of_work("planner") as uow:
        writer = uow.load_writer(at=SET)
        looms = [
            Change("looms", (n, "H"), "", None, {"hall": "H", "loom": n, "machine_type": "AJ"}) for n in ("1", "2")
        ]
        terms = [Change("terms", ("zone",), "", None, {"term": "zone", "value": "UTC"})]
        writer.write([*looms, *terms], {})
        writer.write_method(METHOD, list(SOURCES))
        uow.add_stage(StageChange(ONE, Stage.SIGNED_OFF, SET + timedelta(hours=1), "Berg"))
        uow.add_stage(StageChange(TWO, Stage.RUN_IN, SET, "Berg"))
        uow.commit()
    return path


@pytest.fixture
def loaded(db, tmp_path):
    def put(**sheets):
        names = {name.replace("_", " "): rows for name, rows in sheets.items()}
        report = load(now(db), [workbook(tmp_path / "records.xlsx", names)], LoadRequest(today=NOW.date()))
        assert not report.refusal, report.refusal
        return db

    return put


@pytest.fixture
def drifting(loaded):
    """Loom 1 on the left: found 300, set 310, then 2 a week up; on the right it was read at 310 by a visit a week later."""
    found = ["1", "left", "crossing angle", 300, "2027-01-10 09:00", "found"]
    rows = [found, *weekly("1", "left", 310, 312, 314, 316), *weekly("1", "right", 310, 310, why="visit")]
    rows += [row for side in ("left", "right") for row in weekly("2", side, 310, 311, 310, 311)]
    return loaded(Set_values=[HEAD, *rows])


def test_found_set_and_now_stand_beside_the_setpoint(drifting):
    report = settings(here(drifting), as_of=NOW)
    left = next(one for one in report.record()["series"] if (one["loom"], one["side"]) == ("1", "left"))
    assert [left[name]["value"] for name in ("found", "set", "now")] == [300, 310, 316]
    assert (left["target"], left["low"], left["high"], left["unit"]) == (310, 305, 330, "deg")
    assert left["left_less_right"] == 6  # 316 on the left, 310 on the right


def test_the_loom_that_drifts_is_named_with_its_figures_and_no_other(drifting):
    """2 deg a week are 0.29 a day; from 316 to the limit of 330 are 14 deg, at 2/7 a day 49 days."""
    report = settings(here(drifting), as_of=NOW)
    assert [(a.kind, a.series.key, a.series.side) for a in report.review.alarms] == [(AlarmKind.DRIFTING, ONE, "left")]
    assert lines(report)[0] == (
        "loom 1 (H), crossing angle left: drifts by 0.29 deg a day, 6 deg over 4 readings, now 316 deg; "
        "it meets its limit in about 49 days"
    )


def test_what_was_read_later_is_not_known_yet(drifting):
    report = settings(here(drifting), as_of=SET + timedelta(days=8))
    left = next(one for one in report.series if (one.key, one.side) == (ONE, "left"))
    assert [value.value for value in left.values] == [300, 310, 312]


def test_an_alarm_of_another_loom_is_not_told_of_the_one_asked_for(drifting):
    report = settings(here(drifting), "2", as_of=NOW)
    assert {one.key for one in report.series} == {TWO} and not report.review.alarms and not report.visits


def test_a_visit_counts_for_its_day_and_what_was_missed_is_overdue(drifting):
    """Signed off on 11 January: 12 January was missed, 18 January done, 10 February is to come."""
    report = settings(here(drifting), as_of=NOW)
    told = [(v.due_on.isoformat(), v.done_on is not None, v.is_overdue(report.today)) for v in report.visits]
    assert told == [("2027-01-12", False, True), ("2027-01-18", True, False), ("2027-02-10", False, False)]


def test_angle_limits_and_sides_run_through_0(loaded):
    """Left 2 deg, right 358 deg: 4 apart, not 356; both lie outside 305 to 330."""
    db = loaded(Set_values=[HEAD, *weekly("1", "left", 2), *weekly("1", "right", 358)])
    report = settings(here(db), as_of=NOW)
    assert list(report.left_less_right().values()) == [4]
    assert [a.kind for a in report.review.alarms] == [AlarmKind.OUTSIDE, AlarmKind.OUTSIDE]
    assert "2 deg lies outside its limits, 305 to 330 deg" in lines(report)[0]


def test_metres_on_the_bobbins_by_the_last_weighing(loaded):
    """600 g of 12 tex are 50,000 m, 300 g are 25,000 m: cloth to the next change 25,000 / 1.25 = 20,000 m."""
    head = ["Loom", "Side", "At", "Grams left", "Tex"]
    rows = [["1", "left", "2027-01-18 06:00", 700, 12], ["1", "left", "2027-01-25 06:00", 600, 12],
            ["1", "right", "2027-01-25 06:00", 300, 12]]  # fmt: skip
    bobbins = settings(here(loaded(Bobbins=[head, *rows])), as_of=NOW).bobbins[ONE]
    assert (bobbins.left_m, bobbins.right_m, bobbins.left_more_m) == (50_000, 25_000, 25_000)
    assert bobbins.cloth_to_change_m() == 20_000


def test_a_mill_without_values_says_so(db):
    report = settings(here(db), as_of=NOW)
    assert "no value of a setting is recorded yet" in lines(report)[0]


def test_a_setting_whose_repeatability_nobody_gave_is_named(loaded):
    rows = [[*row[:2], name, *row[3:]] for name in ("offset", "crossing angle") for row in weekly("1", "left", 310)]
    (line,) = [
        line
        for line in lines(settings(here(loaded(Set_values=[HEAD, *rows])), as_of=NOW))
        if "repeatability of" in line
    ]
    assert line.startswith("the method gives no repeatability of offset")


def test_no_visit_is_due_where_no_loom_is_signed_off(drifting):
    assert texts(settings(here(drifting), "2", as_of=NOW).visit_messages())[0].startswith("no follow-up visit is due")
    assert settings(here(drifting), "1", as_of=NOW).visit_messages() == []


def test_visits_that_are_no_days_are_refused(db):
    with open_store(db).unit_of_work("planner") as uow:
        change = Change("terms", ("visits (days)",), "", None, {"term": "visits", "value": "1, soon"})
        uow.load_writer(at=SET).write([change], {})
        uow.commit()
    with refused(DataError, "term visits: 1, soon is no list of days after sign-off; write it as 1, 7, 30"):
        settings(here(db), as_of=NOW)


@pytest.fixture
def five_looms(db, tmp_path):
    """Five signed-off looms, all set to 313 on the left where the method says 310: 3 more than a repeatability of 1."""
    names = ["3", "4", "5", "6"]
    with open_store(db).unit_of_work("planner") as uow:
        looms = [Change("looms", (n, "H"), "", None, {"hall": "H", "loom": n, "machine_type": "AJ"}) for n in names]
        uow.load_writer(at=SET).write(looms, {})
        for name in ("2", *names):
            uow.add_stage(StageChange(LoomKey("H", name), Stage.SIGNED_OFF, SET + timedelta(hours=1), "Berg"))
        uow.commit()
    rows = [row for name in ("1", "2", *names) for row in weekly(name, "left", 313)]
    report = load(
        now(db), [workbook(tmp_path / "records.xlsx", {"Set values": [HEAD, *rows]})], LoadRequest(today=NOW.date())
    )
    assert not report.refusal, report.refusal
    return db


def test_a_proposed_change_of_the_method_loads(five_looms, tmp_path):
    """310 becomes 313 on the left, its limits 305 to 330 become 308 to 333; the right stays, the operations too."""
    file = tmp_path / "proposal.xlsx"
    (said,) = texts(write_proposal(here(five_looms), file, settings(here(five_looms), as_of=NOW)))
    assert said.startswith("crossing angle left on AJ: 310 deg becomes 313 deg")
    assert load(now(five_looms), [file], LoadRequest(today=NOW.date())).refusal is None
    with open_store(five_looms).reading() as uow:
        method = uow.mill().method
    points = {p.side: (p.target, p.low, p.high) for p in method.setpoints if p.setting == "crossing angle"}
    assert points == {"left": (313, 308, 333), "right": (310, 305, 330)}
    assert [operation.operation for operation in method.operations] == ["Fit"]


def test_nothing_is_proposed_where_looms_are_set_as_the_method_says(drifting, tmp_path):
    with refused(DataError, "no change of the method is proposed that is clear"):
        write_proposal(here(drifting), tmp_path / "proposal.xlsx", settings(here(drifting), as_of=NOW))
    assert not (tmp_path / "proposal.xlsx").exists()


def test_the_workbook_has_what_the_command_tells(drifting, tmp_path):
    write_settings(tmp_path / "settings.xlsx", settings(here(drifting), as_of=NOW))
    book = CalamineWorkbook.from_path(str(tmp_path / "settings.xlsx"))
    assert book.sheet_names == ["Settings", "Alarms", "Follow-up visits", "Metres on bobbins", "What looms taught"]
    rows = [row for row in book.get_sheet_by_name("Settings").to_python() if row[0] == "1" and row[3] == "left"]
    assert rows[0][:11] == ["1", "H", "crossing angle", "left", "deg", 300, 310, 316, 310, 305, 330]
    (alarm,) = [row for row in book.get_sheet_by_name("Alarms").to_python() if row[0] == "1"]
    assert alarm[5] == "drifting" and alarm[8].startswith("loom 1 (H), crossing angle left: drifts by 0.29 deg a day")
    visits = [row[5] for row in book.get_sheet_by_name("Follow-up visits").to_python() if row[0] == "1"]
    assert visits == ["overdue", "done", "to come"]


def test_the_setpoint_is_that_of_the_method_in_force_at_the_value(loaded):
    """A new version of 25 January wants 320 within 315 to 330. Loom 1 was last read on 18 January: 310 within 305 to 330 hold;
    loom 2 on 1 February, by when the new one does."""
    db = loaded(Set_values=[HEAD, *weekly("1", "left", 310, 310), *weekly("2", "left", 310, 310, 310, 310)])
    changed = {"target": 320.0, "low": 315.0}
    rows = [replace(row, values=dict(row.values) | changed) for row in METHOD["setpoints"][:2]]
    with open_store(db).unit_of_work("planner") as uow:
        uow.load_writer(at=datetime(2027, 1, 25, tzinfo=UTC)).write_method({"setpoints": rows}, list(SOURCES))
        uow.commit()
    found = {one.key: (one.limits.target, one.limits.low) for one in settings(here(db), as_of=NOW).series}
    assert found == {ONE: (310, 305), TWO: (320, 315)}


def test_an_alarm_that_was_seen_stays_quiet_until_its_value_changes(drifting, tmp_path):
    seen = mark_seen(now(drifting), "1", None, "bracket loose, fitter comes on Friday")
    assert [(one.key, one.kind, one.value) for one in seen.alarms] == [(ONE, "drifting", 316)]
    report = settings(now(drifting))
    assert not report.review.alarms and len(report.quiet) == 1
    assert texts(report.quiet_messages())[0].endswith(
        "it meets its limit in about 49 days; seen by tester on Mon 1 Feb 2027 18:00: bracket loose, fitter comes on Friday"
    )
    with refused(DataError, "loom 1 has no alarm that nobody has seen"):
        mark_seen(now(drifting), "1", None, "again")
    later = [HEAD, ["1", "left", "crossing angle", 318, "2027-02-01 17:30", "read out"]]
    assert load(
        now(drifting), [workbook(tmp_path / "later.xlsx", {"Set values": later})], LoadRequest(today=NOW.date())
    ).written
    assert [alarm.value.value for alarm in settings(now(drifting)).review.alarms] == [318]


def test_without_a_word_no_alarm_is_seen(drifting):
    with refused(DataError, "it is not said what there is to the alarm"):
        mark_seen(now(drifting), "1", None, " ")
    assert settings(now(drifting)).review.alarms
