"""The screens Method and Terms: all of it is seen, changed there, and what it was or what it changes is told."""

from io import BytesIO

import pytest
from looking import as_role, look, press
from opened import here
from openpyxl import load_workbook
from screen_mill import put, small_mill
from screen_texts import words

from tracker.domain.people import Role
from tracker.services.screens.method_board import method_board, method_file
from tracker.services.screens.terms_board import terms_board
from tracker.store import open_store

XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"


@pytest.fixture
def mill(tmp_path, monkeypatch):
    path = put(tmp_path / "mill.db", small_mill())
    monkeypatch.setenv("BEAMSLOT_DB", path)
    return path


def terms(path):
    with open_store(path).reading() as uow:
        return uow.terms()


def test_a_term_is_changed_refused_and_taken_back_and_its_history_told(mill):
    app = look("terms")
    assert "allowance (%) |" in words(app) and "plan: which bookings are moved" in words(app)
    app.selectbox(key="term").set_value("allowance (%)").run()
    app.text_input[0].set_value("5000")
    press(app, "Change it")
    assert "allowance (%)" in app.error[0].value and app.text_input[0].value == "5000"
    app.text_input[0].set_value("20")
    press(app, "Change it")
    assert not app.error and terms(mill).allowance == 0.2
    assert "15 | 20 |" in words(app)  # what it was, in percent
    press(app, "Back to the default")
    press(app, "Yes: Back to the default")
    assert terms(mill).allowance == 0.15
    line = next(line for line in terms_board(here(mill)).lines if line.term == "allowance (%)")
    assert not line.given and [was.new for was in line.was][:2] == [None, 20.0]


def test_a_pilot_is_named_and_one_of_another_type_remarked(mill):
    app = look("terms")
    app.selectbox(key="term").set_value("pilot of AJ-N").run()
    app.text_input[0].set_value("A-9")
    press(app, "Change it")
    assert any(
        "A-9" in one.value and "AJ-N" in one.value for one in app.success
    )  # taken, and said that it is of another type
    app.text_input[0].set_value("A-7")
    press(app, "Change it")
    assert terms(mill).pilots == {"AJ-N": "A-7"}


def test_the_method_is_seen_downloaded_changed_and_what_that_changes_told_before_it_counts(mill):
    app = look("method")
    said = words(app)
    assert "10 | fit the device | 200 |" in said and "RAIL | 1 |" in said
    assert method_board(here(mill)).version == 1
    book = load_workbook(BytesIO(method_file(here(mill))))
    sheet = book["Operations"]
    minutes = next(cell.column for cell in sheet[1] if str(cell.value).startswith("Minutes"))
    row = next(row for row in range(2, sheet.max_row + 1) if sheet.cell(row, minutes).value == 200)
    sheet.cell(row, minutes, 320)
    changed = BytesIO()
    book.save(changed)
    app.file_uploader[0].set_value([("method.xlsx", changed.getvalue(), XLSX)]).run()
    said = words(app)
    # two hours more of two fitters, with the allowance of 15 %: 4.6 h for each loom that can be planned
    assert "minutes 200 → 320" in said and "+4.6 labour hours" in said
    press(app, "Write to the database")
    assert method_board(here(mill)).version == 2 and method_board(here(mill)).versions[0][0] == 2


def test_who_may_only_look_changes_nothing_there(mill, monkeypatch):
    as_role(monkeypatch, Role.VIEWER)
    app = look("terms")
    app.selectbox(key="term").set_value("allowance (%)").run()
    assert (
        "Change it" not in [one.label for one in app.button]
        and "for planner" in app.caption[-2].value + app.caption[-1].value
    )
    assert not look("method").file_uploader
