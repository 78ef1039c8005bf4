"""The line above every screen where the published plan does not hold any more. The hand-made plan of `screen_mill` does not:
its costs are round figures that no data give."""

import pytest
from screen_mill import put, small_mill, small_plan
from screen_texts import APP
from streamlit.testing.v1 import AppTest

from tracker.services import verify


@pytest.fixture
def planned(tmp_path, monkeypatch):
    monkeypatch.setenv("BEAMSLOT_DB", put(tmp_path / "planned.db", small_mill(), small_plan(small_mill())))


def test_a_plan_that_does_not_hold_is_told_with_what_does_not(planned):
    app = AppTest.from_file(APP, default_timeout=60).run()
    assert not app.exception
    (line,) = app.warning
    assert line.value.startswith("The data changed since this plan was published: ") and "finding" in line.value
    assert any("booked, the data give" in said.value for said in app.expander[0].markdown)


def test_a_plan_that_holds_needs_no_line(planned, monkeypatch):
    monkeypatch.setattr("dashboards.standing.faults", _none)
    assert not AppTest.from_file(APP, default_timeout=60).run().warning


def test_without_a_plan_there_is_no_line(tmp_path, monkeypatch):
    monkeypatch.setenv("BEAMSLOT_DB", put(tmp_path / "unplanned.db", small_mill()))
    assert not AppTest.from_file(APP, default_timeout=60).run().warning


def _none(db):
    return verify.faults(db)[:0]
