"""Backups that a server keeps: one a night, the newest few, with the last hash of history, and a line once the last is old."""

from datetime import UTC, datetime, timedelta

import pytest
from opened import here
from refusals import refused
from three_looms import make

from tracker.domain.people import Role
from tracker.errors import TrackerError
from tracker.server.nightly import look
from tracker.services.backups import BackupFolder, is_due, keep_backup, last_backup, old_backup
from tracker.services.context import Actor, Context
from tracker.services.people.audit import Which, check_history, deeds
from tracker.store.restore import read_backup
from tracker.words import ENGLISH

NIGHT = datetime(2027, 1, 5, 2, tzinfo=UTC)
"""The mill's zone is UTC."""


@pytest.fixture
def db(tmp_path):
    return make(str(tmp_path / "mill.db"))


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "kept").mkdir()
    return BackupFolder(tmp_path / "kept", keep=2)


def root(db, at):
    return Context(db, Actor("Root", frozenset({Role.ADMINISTRATOR}), "screen"), clock=lambda: at)


def names(folder):
    return sorted(file.name for file in folder.path.iterdir())


def test_the_newest_are_kept_and_nothing_else_is_removed(db, folder):
    others = ("mill-2026-01-01-020000.zip.part", "mill-2026-01-01.zip", "other-2026-01-01-020000.zip")
    for name in others:
        (folder.path / name).write_text("not ours")
    for days in range(3):
        keep_backup(root(db, NIGHT + timedelta(days=days)), folder)
    assert names(folder) == sorted((*others, "mill-2027-01-06-020000.zip", "mill-2027-01-07-020000.zip"))
    read_backup(folder.path / "mill-2027-01-07-020000.zip")


def test_the_last_one_is_told_with_its_hash_by_which_history_can_be_checked(db, folder):
    assert last_backup(here(db)) is None
    made = keep_backup(root(db, NIGHT), folder)
    last = last_backup(here(db))
    assert last == made and (last.file, last.at, last.who) == ("mill-2027-01-05-020000.zip", NIGHT, "Root")
    assert last.last_hash == read_backup(folder.path / last.file).manifest.last_hash != ""
    assert check_history(here(db), last.last_hash).known_at
    (line,) = deeds(here(db), Which(who="Root")).deeds
    assert ENGLISH.say(line.what) == "backed up into mill-2027-01-05-020000.zip"


def test_once_it_is_older_than_two_days_a_line_says_so(db, folder, monkeypatch):
    assert old_backup(here(db)) is None  # a mill that keeps none is not told every day
    monkeypatch.setenv("BEAMSLOT_BACKUP_TO", str(folder.path))
    assert ENGLISH.say(old_backup(here(db))) == "No backup was made yet."
    keep_backup(root(db, NIGHT), folder)
    two_days = NIGHT + timedelta(days=2)
    assert old_backup(root(db, two_days)) is None
    said = old_backup(root(db, two_days + timedelta(minutes=1)))
    assert ENGLISH.say(said) == "The last backup is of Tue 5 Jan 2027 02:00."


@pytest.mark.parametrize(("made", "asked", "due"), [
    (None, datetime(2027, 1, 5, 14, tzinfo=UTC), True),
    (NIGHT, datetime(2027, 1, 5, 23, 59, tzinfo=UTC), False),
    (NIGHT, datetime(2027, 1, 6, 1, 59, tzinfo=UTC), False),
    (NIGHT, datetime(2027, 1, 6, 2, 0, tzinfo=UTC), True),
    (NIGHT, datetime(2027, 1, 9, 8, 0, tzinfo=UTC), True),  # the server was off for some nights
    (datetime(2027, 1, 5, 14, tzinfo=UTC), datetime(2027, 1, 6, 1, 0, tzinfo=UTC), False),
])  # fmt: skip
def test_one_is_due_once_a_night(db, folder, made, asked, due):
    if made:
        keep_backup(root(db, made), folder)
    assert is_due(root(db, asked), folder) == due
    assert look(root(db, asked), folder)
    assert not is_due(root(db, asked), folder)


def test_what_cannot_be_written_is_told_and_removes_nothing(db, folder, tmp_path, caplog):
    keep_backup(root(db, NIGHT), folder)
    folder.path.rename(tmp_path / "away")
    assert not look(root(db, NIGHT + timedelta(days=1)), folder)
    assert "no backup:" in caplog.text
    assert last_backup(here(db)).at == NIGHT
    with refused(TrackerError, "kept is no folder in which backups can be written; make it, or name another"):
        BackupFolder(folder.path)
    with refused(TrackerError, "mill.db is no folder"):
        BackupFolder(tmp_path / "mill.db")
