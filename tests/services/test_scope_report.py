"""The scope of a stored mill: looms, variants, hours, learning by the version a conversion was done by."""

import json
from datetime import UTC, datetime, timedelta

import pytest
from opened import here
from openpyxl import load_workbook
from refusals import refused
from said import lines

from tracker.domain.mill import LoomKey
from tracker.domain.progress import Conversion
from tracker.domain.rows import Change, SourceColumn, SourceTable, TypedRow
from tracker.errors import DataError
from tracker.services.work.scope import scope, write_survey_list
from tracker.store import open_store

AT = datetime(2027, 1, 4, 5, tzinfo=UTC)
SOURCES = (
    SourceTable("m.xlsx", "Operations", "operations", 1, (SourceColumn("Step", "A1", "step"), SourceColumn("Rail", "F1", ""))),
    SourceTable("m.xlsx", "Kit lines", "kit_lines", 1, (SourceColumn("Part", "A1", "part"),)),
)  # fmt: skip


def operation(step, name, minutes, rail=None):
    values = {"step": step, "operation": name, "minutes": minutes, "trade": "fitter", "heads": 1}
    return TypedRow("operations", values, {"Rail": rail}, 0, step)


def method(drill_min=60.0):
    """Fit 30 min on every loom, drill on undrilled rails."""
    operations = [operation(10, "Fit", 30.0), operation(20, "Drill", drill_min, "undrilled")]
    return {
        "operations": operations,
        "kit_lines": [TypedRow("kit_lines", {"part": "DEVICE", "quantity": 2.0}, {}, 1, 2)],
    }


def loom(number, rail):
    values = {"hall": "H1", "loom": number, "machine_type": "AJ", "Rail": rail}
    return Change("looms", (number, "H1"), "", None, values)


@pytest.fixture
def db(tmp_path):
    path = str(tmp_path / "mill.db")
    with open_store(path, make=True).unit_of_work("planner") as uow:
        writer = uow.load_writer(at=AT)
        part = Change("parts", ("DEVICE",), "", None, {"part": "DEVICE", "on_hand": 5, "price": 100})
        crew = Change("crews", ("F1", None, None, None), "", None, {"crew": "F1", "trade": "fitter", "heads": 2})
        looms = [loom("1", "drilled"), loom("2", "drilled"), loom("3", "undrilled"), loom("10", None)]
        writer.write([*looms, part, crew], {})
        writer.write_method(method(), list(SOURCES))
        uow.commit()
    return path


def test_all_looms(db):
    report = scope(here(db))
    assert [key.loom for key in report.scopes] == ["1", "2", "3", "10"]
    assert [(v.name, len(v.looms), round(v.labour_h, 3)) for v in report.variants] == [
        ("Rail drilled", 2, 0.575),  # 30 min × 1.15
        ("Rail undrilled", 1, 1.725),  # 90 min × 1.15
        ("to survey", 1, 0.0),
    ]
    assert lines(report)[:2] == [
        "4 looms in 2 variants by method version 1.",
        "1 is to survey (Rail). `beamslot scope --survey survey.xlsx` writes the list.",
    ]


def test_the_record_is_plain_json(db):
    record = json.loads(json.dumps(scope(here(db)).record()))
    assert record["looms"][3] == {
        "hall": "H1", "loom": "10", "machine_type": "AJ", "to_survey": True, "unknown": ["Rail"],
        "obstacle": "to survey: Rail unknown", "variant": "to survey",
    }  # fmt: skip
    assert [variant["count"] for variant in record["variants"]] == [2, 1, 1]
    assert record["hours"][0]["kinds"] == ["repeat", "style", "standing", "mid-warp"]
    assert record["hours"][0]["next_h"] == pytest.approx((0.575 + 0.575 + 1.725) / 3)


def test_one_loom_with_its_reasons(db):
    report = scope(here(db), "3")
    assert report.loom is not None
    (work,) = report.loom.work
    assert [(line.row.operation, line.reason) for line in work.operations] == [  # type: ignore[union-attr]
        ("Fit", "every loom"), ("Drill", "Rail = undrilled"),
    ]  # fmt: skip
    assert [line.planned_min for line in work.operations] == [pytest.approx(34.5), pytest.approx(69)]
    assert (work.labour_h, work.parts_cost, work.trades) == (
        pytest.approx(1.725),
        200,
        {"fitter": pytest.approx(1.725)},
    )
    assert json.loads(json.dumps(report.record()))["work"][0]["operations"][1]["reason"] == "Rail = undrilled"


def test_one_loom_to_survey(db):
    one = scope(here(db), "10").loom
    assert one is not None
    assert (one.unknown, one.work) == (("Rail",), ())


def test_a_loom_that_there_is_not(db):
    with refused(DataError, "there is no loom 77"):
        scope(here(db), "77")


def test_an_empty_database_says_what_to_do(tmp_path):
    open_store(tmp_path / "empty.db", make=True)
    with refused(DataError, "no method yet"):
        scope(here(tmp_path / "empty.db"))


def test_conversions_stay_on_the_version_they_were_done_by(db):
    # Five conversions of loom 3 at 90 × 1.15 = 103.5 min by version 1; version 2 says 150 × 1.15.
    with open_store(db).unit_of_work("planner") as uow:
        for day in range(5):
            at = AT + timedelta(days=day)
            uow.add_conversion(Conversion(LoomKey("H1", "3"), "AJ", "F1", 1, at, at + timedelta(hours=2), {}, 103.5))
        uow.load_writer().write_method(method(drill_min=120.0), list(SOURCES))
        uow.commit()
    report = scope(here(db))
    assert report.method_version == 2
    assert report.learning["AJ"].curve.level == pytest.approx(1)
    assert report.learning["AJ"].curve.source == "fitted"
    assert report.hours[0].source == "fitted"
    assert "AJ: 5 conversions recorded" in lines(report)[-1]


def test_the_survey_list_is_written(db, tmp_path):
    report = scope(here(db))
    write_survey_list(report, tmp_path / "survey.xlsx")
    sheet = load_workbook(tmp_path / "survey.xlsx")["Looms"]
    cells = [[cell for cell in row if cell is not None] for row in sheet.iter_rows(values_only=True)]
    assert ["10", "H1", "AJ"] in cells
    assert any("Rail" in map(str, row) for row in cells)
