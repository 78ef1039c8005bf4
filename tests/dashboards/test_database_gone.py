"""Screens of a database that vanishes or may only be read: told in one line, never made anew, never a traceback."""

from pathlib import Path

import pytest
from screen_mill import put, small_mill, small_plan
from screen_texts import APP, words
from streamlit.testing.v1 import AppTest

from tracker.store import place

LOAD = "from dashboards.screens import load\nload.page()\n"


@pytest.fixture
def planned(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    path = put(tmp_path / "mill.db", small_mill(), small_plan(small_mill()))
    monkeypatch.setenv("BEAMSLOT_DB", path)
    return Path(path)


def test_a_vanished_database_is_told_and_not_made_anew(planned):
    app = AppTest.from_file(APP, default_timeout=30).run()
    assert not app.error and "Small programme" in words(app)
    content = planned.read_bytes()
    planned.unlink()
    app.run()
    assert not app.exception
    assert [error.value.replace("\\", "") for error in app.error] == [
        f"the database {planned} is not there any more; put it back, or end the screens in the terminal and start them with another"
    ]
    assert "no loom" not in words(app) and list(planned.parent.iterdir()) == []

    planned.write_bytes(content)
    app.run()
    assert not app.error and "Small programme" in words(app)


def test_the_load_screen_makes_no_database_in_its_place(planned):
    app = AppTest.from_string(LOAD, default_timeout=30).run()
    planned.unlink()
    app.file_uploader[0].set_value([("looms.csv", b"Loom;Hall;Machine type\n1;Hall 1;AJ-1\n", "text/csv")])
    app.run()
    assert app.exception[0].message.startswith("database-gone")  # app.py shows it as a line
    assert list(planned.parent.iterdir()) == []


def test_the_screens_show_a_database_that_may_only_be_read(planned, monkeypatch):
    monkeypatch.setattr(place, "_may_write", lambda file: False)
    app = AppTest.from_file(APP, default_timeout=30).run()
    assert not app.error and not app.exception
    assert "Small programme" in words(app)
    assert [file.name for file in planned.parent.iterdir()] == ["mill.db"]


def test_the_watch_says_why_instead_of_failing_and_goes_on(planned, monkeypatch):
    watch = "from dashboards import access\naccess.watch()\n"
    app = AppTest.from_string(watch, default_timeout=30).run()
    seen = app.session_state["seen"]
    planned.rename(planned.with_name("moved.db"))
    app.run()
    assert not app.exception and app.session_state["seen"].code == "database-gone"
    planned.with_name("moved.db").rename(planned)
    app.run()
    assert app.session_state["seen"] == seen
