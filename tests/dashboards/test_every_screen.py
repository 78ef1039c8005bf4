"""Every screen: full, of an empty mill, of a database that has gone, is broken, unreadable or newer, and for a role whose it is
not. Each says something that a person can use; none fails, and none gives a command as advice."""

import re
import shutil
import sqlite3
from pathlib import Path

import pytest
from looking import as_role, run
from screen_mill import put, small_mill, small_plan
from screen_texts import words
from streamlit.testing.v1 import AppTest

from dashboards.navigation import OWN_PASSWORD, SCREENS
from tracker.domain.people import Role
from tracker.store import open_store

SCREEN = """
from dashboards.navigation import OWN_PASSWORD, SCREENS
from dashboards.run_screen import run_screen
screen = next(one for one in (*SCREENS, OWN_PASSWORD) if one.path == {path!r})
run_screen(screen.page if {mine} else screen.refuse)
"""
EVERY = [*(screen.path for screen in SCREENS), OWN_PASSWORD.path]
NO_LOOM, LOAD_FIRST = "There is no loom yet", "load it on the screen **Load**"
EMPTY = dict.fromkeys(EVERY, NO_LOOM) | dict.fromkeys(("scenarios", "rehearsal", "needs"), LOAD_FIRST) | {
    "settings": "no value of a setting", "method": "No method is loaded yet", "worth": "load the sheets Stops and Waste",
    "load": "Drop the mill's own loom list here", "changes": "Nobody has done anything", "people": "Give the first account",
    "own-password": "Nobody is signed in", "terms": "",
}  # fmt: skip
"""Screen → what it says first of a mill of which nothing is known. The terms have values from the start."""
HARMLESS = {"Change my password"}
"""Buttons of who may only look."""


def some(*always: str) -> list:
    """All screens: these are looked at in every run, the others in the long one."""
    return [one if one in always else pytest.param(one, marks=pytest.mark.long) for one in EVERY]


@pytest.fixture(scope="module")
def states(tmp_path_factory) -> dict[str, Path]:
    """A database of each kind; looking changes none."""
    folder = tmp_path_factory.mktemp("states")
    full = Path(put(folder / "full.db", small_mill(), small_plan(small_mill())))
    made = {name: folder / f"{name}.db" for name in ("empty", "broken", "unreadable", "newer", "gone")} | {"full": full}
    open_store(made["empty"], make=True)
    made["unreadable"].write_bytes(b"no database of any kind " * 500)
    _after("DROP TABLE looms", full, made["broken"])
    _after("UPDATE alembic_version SET version_num = '9999'", full, made["newer"])
    return made


def _after(statement: str, source: Path, target: Path) -> None:
    connection = sqlite3.connect(shutil.copy(source, target))
    connection.execute(statement)
    connection.commit()
    connection.close()


@pytest.fixture
def show(states, monkeypatch):
    """A screen of the database of one kind; `mine` False: led to by an address, where the navigation does not list it."""

    def look(path: str, state: str, mine: bool = True) -> AppTest:
        monkeypatch.setenv("BEAMSLOT_DB", str(states[state]))
        app = run(AppTest.from_string(SCREEN.format(path=path, mine=mine), default_timeout=60))
        said = "\n".join([words(app), *lines(app), *(one.value for one in app.warning)])
        assert not re.search(r"Traceback|`beamslot|--[a-z]+ |sqlalchemy", said), said
        return app

    return look


def lines(app: AppTest) -> list[str]:
    return [one.value.replace("\\", "") for one in app.error]


@pytest.mark.parametrize("path", some())
def test_a_full_one_has_its_title_and_no_error(show, path):
    app = show(path, "full")
    assert app.title[0].value and not lines(app)


@pytest.mark.parametrize("path", some("hall", "needs"))
def test_of_an_empty_mill_each_says_so_and_what_comes_first(show, path):
    app = show(path, "empty")
    assert app.title[0].value and not lines(app)
    assert EMPTY[path] in "\n".join(one.value for one in app.info)


@pytest.mark.parametrize(
    ("state", "why"),
    [
        ("broken", "does not answer: no such table: looms"), ("unreadable", "is no SQLite database"),
        ("newer", "was made by a newer version of Beamslot"), ("gone", "is not there any more"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("path", some("today"))
def test_where_the_database_cannot_be_used_one_line_says_why(show, states, path, state, why):
    there = sorted(states["full"].parent.iterdir())
    (line,) = lines(show(path, state))
    assert why in line
    assert sorted(states["full"].parent.iterdir()) == there, "no database is made in the place of one that has gone"


@pytest.mark.parametrize("path", [screen.path for screen in SCREENS if screen.takes])
def test_for_whom_it_is_not_one_line_says_whose_it_is(show, path, monkeypatch):
    as_role(monkeypatch, Role.VIEWER, name="Vera")
    (line,) = lines(show(path, "full", mine=False))
    assert re.match("Vera may not .*: that is for ", line)


@pytest.mark.parametrize("path", some())
def test_who_may_only_look_finds_no_button_that_writes(show, path, monkeypatch):
    as_role(monkeypatch, Role.VIEWER, name="Vera")
    assert {one.label for one in show(path, "full").button} <= HARMLESS
