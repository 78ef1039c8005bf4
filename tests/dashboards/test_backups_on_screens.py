"""Backups on the screens People and Programme status. The mill of three looms (three_looms.py)."""

from datetime import UTC, datetime, timedelta

import pytest
from opened import here
from screen_texts import words
from streamlit.testing.v1 import AppTest
from three_looms import make

from tracker.services.backups import BackupFolder, keep_backup


@pytest.fixture
def kept(tmp_path, monkeypatch):
    db = make(str(tmp_path / "mill.db"))
    folder = tmp_path / "kept"
    folder.mkdir()
    monkeypatch.setenv("BEAMSLOT_DB", db)
    monkeypatch.setenv("BEAMSLOT_BACKUP_TO", str(folder))
    return db, folder


def screen(name: str) -> AppTest:
    return AppTest.from_string(f"from dashboards.screens import {name}\n{name}.page()\n", default_timeout=30).run()


def button(app: AppTest, label: str):
    return next(one for one in app.button if one.label == label)


def test_one_is_made_when_it_is_asked_for_and_the_last_one_is_named(kept):
    app = screen("people")
    assert "None was made yet." in words(app)
    button(app, "Back up now").click().run()
    (file,) = kept[1].iterdir()
    assert not app.exception and app.success[0].value.startswith("Backed up into mill-")
    assert f"The last one is {file.name}, made" in words(app).replace("\\", "")


def test_a_server_that_keeps_none_says_so(kept, monkeypatch):
    monkeypatch.delenv("BEAMSLOT_BACKUP_TO")
    app = screen("people")
    assert "This server keeps no backups" in words(app)
    assert "Back up now" not in [one.label for one in app.button]


def test_the_programmes_status_says_that_the_last_one_is_old(kept):
    assert screen("status").warning[0].value.startswith("No backup was made yet.")
    at = datetime.now(UTC) - timedelta(days=3)
    keep_backup(here(kept[0], clock=lambda: at), BackupFolder(kept[1]))
    assert screen("status").warning[0].value.startswith("The last backup is of ")
    keep_backup(here(kept[0]), BackupFolder(kept[1]))
    assert [one.value for one in screen("status").warning if "backup" in one.value] == []
