"""The line above every screen where bookings of the published plan cannot stay."""

from dataclasses import replace
from datetime import date

import pytest
from screen_mill import TEN, at, put, small_mill, small_plan
from screen_texts import APP
from streamlit.testing.v1 import AppTest


def shown(monkeypatch, path) -> AppTest:
    monkeypatch.setenv("BEAMSLOT_DB", path)
    app = AppTest.from_file(APP, default_timeout=60).run()
    assert not app.exception
    return app


def pilot_plan():
    """A-10 alone, as pilot, its 10 half hours from Thursday 7 January 08:00 to 13:00 within the shift up to 14:00."""
    plan = small_plan(small_mill())
    return replace(plan, bookings=(replace(plan.bookings[1], end=at(7, 12)),))


@pytest.fixture
def protected():
    """The small mill, with A-10 protected until after its booking of 7 January."""
    mill = small_mill()
    looms = dict(mill.looms) | {TEN: replace(mill.looms[TEN], protected_until=date(2027, 1, 7))}
    return replace(mill, looms=looms)


def test_a_plan_that_cannot_be_kept_is_told_with_what_is_in_the_way(tmp_path, monkeypatch, protected):
    app = shown(monkeypatch, put(tmp_path / "m.db", protected, pilot_plan()))
    (line,) = app.warning
    assert line.value.startswith("The published plan cannot be kept as it is: 1 finding. The data changed since")
    (finding,) = app.expander[0].markdown
    assert (
        "loom A-10 (Hall 1) starts Thu 7 Jan 2027 08:00, but is protected until Thu 7 Jan 2027 included"
        in finding.value.replace("\\", "")
    )


def test_a_plan_that_can_be_kept_needs_no_line(tmp_path, monkeypatch):
    assert not shown(monkeypatch, put(tmp_path / "m.db", small_mill(), pilot_plan())).warning


def test_without_a_plan_there_is_no_line(tmp_path, monkeypatch, protected):
    assert not shown(monkeypatch, put(tmp_path / "m.db", protected)).warning
