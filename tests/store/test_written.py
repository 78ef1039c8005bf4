"""What is known of a database holds while nothing is written to it, whoever writes."""

import os
import shutil
import sqlite3
import time
from contextlib import closing

import pytest

from tracker.store import open_store
from tracker.store.written import TICK_S, WhileUnwritten, note_written, written


@pytest.fixture
def db(tmp_path):
    open_store(tmp_path / "mill.db", make=True).engine.dispose()
    return str(tmp_path / "mill.db")


def old(*files):
    """As if nobody had written for an hour."""
    for file in files:
        os.utime(file, (time.time() - 3600,) * 2)


def test_as_long_as_nobody_writes_it_is_looked_for_once(db):
    old(db)
    looks, answers = [], WhileUnwritten()
    for _ in range(3):
        assert answers.of(db, "loom 1", lambda: looks.append(1) or "as it is") == "as it is"
    answers.of(db, "loom 2", lambda: looks.append(2))
    assert looks == [1, 2]


@pytest.mark.parametrize("write", ["here", "elsewhere", "by this process to a server"])
def test_whoever_writes_it_is_looked_for_again(db, write):
    old(db)
    answers, looks = WhileUnwritten(), []
    place = db if write != "by this process to a server" else "postgresql+psycopg://mill"
    answers.of(place, None, lambda: looks.append(1))
    if write == "here":
        with open_store(db).unit_of_work("planner") as uow:
            uow.commit()
    elif write == "elsewhere":
        with closing(sqlite3.connect(db)) as other:
            other.execute("CREATE TABLE other (x)")
            other.commit()
    else:
        note_written()
    answers.of(place, None, lambda: looks.append(2))
    assert looks == [1, 2]


def test_a_file_that_was_written_a_moment_ago_tells_nothing(db):
    os.utime(db, (time.time() + TICK_S,) * 2)
    assert written(db) is None
    old(db)
    assert written(db) == written(db) is not None


def test_another_file_of_the_same_name_time_and_length_is_another(db, tmp_path):
    old(db)
    before = written(db)
    shutil.copy2(db, tmp_path / "copy.db")
    os.replace(tmp_path / "copy.db", db)
    assert written(db) not in (before, None)


def test_what_fails_is_asked_again(db):
    old(db)
    answers = WhileUnwritten()
    with pytest.raises(ZeroDivisionError):
        answers.of(db, None, lambda: 1 / 0)
    assert answers.of(db, None, lambda: 1) == 1
