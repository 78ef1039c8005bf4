"""The sample's method through the front door: survey, new version, refusals by sheet and cell."""

from contextlib import closing
from pathlib import Path
from sqlite3 import connect

import pytest
from opened import here
from openpyxl import load_workbook
from said import refusal_of

from tracker.services.loading.load import LoadRequest, load
from tracker.services.work.scope import scope, write_survey_list

SAMPLE = Path(__file__).parents[2] / "sample_data"


@pytest.fixture(scope="module")
def loaded(tmp_path_factory):
    db = str(tmp_path_factory.mktemp("sample") / "mill.db")
    report = load(here(db), sorted(SAMPLE.glob("*.xlsx")))
    assert report.written, refusal_of(report)
    return db


@pytest.fixture
def db(loaded, tmp_path):
    copy = str(tmp_path / "mill.db")
    with closing(connect(loaded)) as source, closing(connect(copy)) as target:
        source.backup(target)
    return copy


def edited(tmp_path, change):
    """The sample's method with its Operations changed: `change(sheet, heading → column number, first row)`."""
    book = load_workbook(SAMPLE / "method.xlsx")
    sheet = book["Operations"]
    heads = next(row for row in sheet.iter_rows() if str(row[0].value).lower() == "step")
    columns = {str(cell.value).lower().split(" (")[0]: n for n, cell in enumerate(heads, 1) if cell.value}
    change(sheet, columns, (heads[0].row or 0) + 1)
    book.save(tmp_path / "method.xlsx")
    return tmp_path / "method.xlsx"


def test_the_survey_list_closes_the_gaps(db, tmp_path):
    before = scope(here(db))
    write_survey_list(before, tmp_path / "survey.xlsx")
    book = load_workbook(tmp_path / "survey.xlsx")
    sheet = book["Looms"]
    heads = next(row for row in sheet.iter_rows() if row[0].value == "Loom")
    column = {cell.value: n for n, cell in enumerate(heads, 1)}
    for row in range((heads[0].row or 0) + 1, sheet.max_row + 1):
        for heading, value in (("Rail", "undrilled"), ("Creel", "no creel")):
            if sheet.cell(row, column[heading]).value is None:
                sheet.cell(row, column[heading], value)
    book.save(tmp_path / "filled.xlsx")
    report = load(here(db), [tmp_path / "filled.xlsx"])
    assert len(before.survey.rows) == 2
    assert {(change.key[0], change.new) for change in report.changes} == {("031", "undrilled"), ("R-17", "no creel")}
    assert scope(here(db)).survey.rows == ()


def test_the_same_method_again_is_no_new_version(db):
    report = load(here(db), [SAMPLE / "method.xlsx"])
    assert report.written and report.method_version is None
    assert scope(here(db)).method_version == 1


def test_a_changed_method_is_a_new_version_that_says_whom_it_changes(db, tmp_path):
    def longer(sheet, column, first):
        sheet.cell(first, column["minutes"]).value += 60

    report = load(here(db), [edited(tmp_path, longer)])
    assert report.method_version == 2 and report.method is not None
    (change,) = report.method.looms
    # 60 min more for one person, × (1 + allowance), on every loom that is not to survey
    assert len(change.looms) == 94
    assert change.extra_h == pytest.approx(1.15)
    assert scope(here(db)).method_version == 2


def cell(heading, value, row=1):
    def change(sheet, column, first):
        sheet.cell(first + row, column[heading]).value = value

    return change


@pytest.mark.parametrize(
    ("change", "code", "answerable"),
    [
        (cell("minutes", "ten"), None, False),
        (cell("leno side", "<= 12 cm"), "condition-unreadable", False),
        (cell("leno side", "lefft"), "value-on-no-loom", True),
        (cell("frames", "[16..8]"), "row-never-holds", False),
        (cell("trade", "plumber"), "trade-without-crew", False),
        (cell("heads", 9), "too-many-heads", False),
        (cell("step", 400), "step-repeated", False),
        (lambda sheet, column, first: sheet.delete_rows(first, 500), "method-without-operation", False),
        (cell("leno side", "leno sides", row=-1), "unknown-attribute", True),
    ],
)
def test_a_fault_stops_the_load_and_the_old_version_stays(db, tmp_path, change, code, answerable):
    report = load(here(db), [edited(tmp_path, change)])
    stopping = [one for one in report.findings if one.severity.value != "note"]
    assert not report.written and report.refusal
    assert stopping and all(one.sheet == "Operations" and one.file == "method.xlsx" for one in stopping)
    assert code is None or code in {one.code for one in stopping}
    assert all(one.cell for one in stopping) or code == "method-without-operation"
    assert scope(here(db)).method_version == 1
    assert any(one.severity.value == "doubt" for one in stopping) == answerable


def test_a_doubt_is_answered(db, tmp_path):
    file = edited(tmp_path, cell("leno side", "leno sides", row=-1))
    report = load(here(db), [file], LoadRequest(answers={"leno sides": "as written"}))
    assert report.method_version == 2
    assert any("leno sides" in scope.unknown for scope in scope_of(db).values())


def scope_of(db):
    return scope(here(db)).scopes
