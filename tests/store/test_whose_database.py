"""A database is ours, or nothing is done to it; one of an earlier version is brought up after a backup of it."""

import sqlite3
import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path

import pytest
from alembic.config import Config
from alembic.script import ScriptDirectory
from opened import here
from people import PEOPLE, at_once, four_people
from postgres_server import new_database
from refusals import refused
from sqlalchemy import create_engine, inspect, text

from tracker.domain.mill import LoomKey
from tracker.errors import DataError, TrackerError
from tracker.services.backup import restore
from tracker.store import open_store
from tracker.store.connecting import connect
from tracker.store.migrate import HERE, upgrade, version_of, versions
from tracker.store.place import find
from tracker.store.schema import tables_of

NEWEST = versions()[-1]


def test_the_numbers_of_the_files_are_the_order_in_which_they_are_applied():
    config = Config()
    config.set_main_option("script_location", str(HERE))
    chain = [revision.revision for revision in ScriptDirectory.from_config(config).walk_revisions()]
    assert list(versions()) == chain[::-1]


AT = datetime(2027, 1, 4, 5)
ROWS = {
    "halls": {"hall": "H1"},
    "looms": {"hall": "H1", "loom": "007", "machine_type": "AJ-190", "attributes": {"Rail": "drilled"}},
    "parts": {"part": "RAIL"},
    "stock_movements": {"id": 1, "part": "RAIL", "kind": "opening", "quantity": 2.5, "at": AT, "who": "p", "why": ""},
    "stage_changes": {"id": 1, "hall": "H1", "loom": "007", "stage": "in work", "at": AT, "who": "fitter"},
}


@pytest.fixture(params=["sqlite", "postgresql"])
def new(request, tmp_path, monkeypatch):
    """A database that is to be made; what is laid beside it, or in the folder worked in, stands in `tmp_path`."""
    monkeypatch.chdir(tmp_path)
    return str(tmp_path / "mill.db") if request.param == "sqlite" else new_database(request.getfixturevalue("postgres"))


@pytest.fixture
def first(new):
    """A mill as the first release made it, with a row in each of five tables."""
    engine = connect(find(new, make=True))
    with engine.begin() as connection:
        upgrade(connection, "0001")
        for table in tables_of("0001"):
            if table.name in ROWS:
                connection.execute(table.insert(), dict.fromkeys(table.columns.keys()) | ROWS[table.name])
    return new


def told(db):
    """What the five rows say."""
    with open_store(db).reading() as uow:
        mill, stages = uow.mill(), uow.stages()
    assert list(mill.looms) == [LoomKey("H1", "007")]
    return mill.looms[LoomKey("H1", "007")].attributes, mill.parts["RAIL"].on_hand, stages[LoomKey("H1", "007")].at


SAID = ({"Rail": "drilled"}, 2.5, AT.replace(tzinfo=UTC))


def version(db):
    with connect(find(db)).connect() as connection:
        return version_of(connection)


def the_backup(folder):
    (file,) = folder.glob(f"*.before-{NEWEST}.zip")
    return file


# ---- ours


def test_our_database_is_marked(new):
    with open_store(new, make=True).reading() as uow:
        assert uow.session.execute(text("SELECT what, value FROM about WHERE what = 'program'")).all() == [
            ("program", "beamslot")
        ]
        if new.endswith("mill.db"):
            assert uow.session.scalar(text("PRAGMA application_id")).to_bytes(4, "big") == b"beam"


# ---- not ours


def other_sqlite(file: Path) -> bytes:
    with sqlite3.connect(file) as connection:
        connection.executescript("CREATE TABLE invoices (id INTEGER); INSERT INTO invoices VALUES (1);")
    connection.close()
    return file.read_bytes()


@pytest.mark.parametrize("make", [False, True])
def test_another_programs_database_is_refused_and_not_a_byte_of_it_changes(tmp_path, make):
    before = other_sqlite(tmp_path / "books.db")
    with refused(DataError, r"books\.db is no database of Beamslot: it holds other tables \(invoices\)"):
        open_store(tmp_path / "books.db", make=make)
    assert (tmp_path / "books.db").read_bytes() == before
    assert [file.name for file in tmp_path.iterdir()] == ["books.db"]


def test_nor_is_one_on_postgresql(postgres):
    url = new_database(postgres)
    engine = create_engine(url)
    with engine.begin() as connection:
        connection.execute(text("CREATE TABLE alembic_version (version_num VARCHAR)"))
        connection.execute(text("INSERT INTO alembic_version VALUES ('0001')"))
        connection.execute(text("CREATE TABLE invoices (id INTEGER)"))
    with refused(DataError, r"is no database of Beamslot: it holds other tables \(invoices\)"):
        open_store(url, make=True)
    assert sorted(inspect(engine).get_table_names()) == ["alembic_version", "invoices"]


def test_an_empty_database_is_a_new_mill_only_where_one_is_meant(new):
    if new.endswith("mill.db"):
        Path(new).touch()
    with refused(DataError, r"holds no mill yet; `beamslot load` or `beamslot serve --new` starts one"):
        open_store(new)
    assert open_store(new, make=True) and open_store(new)


@pytest.mark.parametrize("content", [b"\0", b"x", b"Loom;Hall\n1;Hall 1\n", b"SQLite format 3"])
@pytest.mark.parametrize("make", [False, True])
def test_what_is_no_database_is_not_taken_for_an_empty_one(tmp_path, content, make):
    (tmp_path / "mill.db").write_bytes(content)
    with refused(TrackerError, r"mill\.db is no SQLite database"):
        open_store(tmp_path / "mill.db", make=make)
    assert (tmp_path / "mill.db").read_bytes() == content


def set_version(db, statement):
    open_store(db, make=True)
    with connect(find(db)).begin() as connection:
        connection.execute(text(statement))


@pytest.mark.parametrize("make", [False, True])
def test_a_database_of_a_newer_version_is_told_plainly(new, make):
    set_version(new, "UPDATE alembic_version SET version_num = '0999'")
    says = rf"was made by a newer version of Beamslot \(tables 0999\); this one knows them up to {NEWEST}; install"
    with refused(DataError, says):
        open_store(new, make=make)


@pytest.mark.parametrize("statement", ["DROP TABLE alembic_version", "DELETE FROM alembic_version"])
def test_so_is_one_that_does_not_say_its_version(new, statement):
    set_version(new, statement)
    with refused(DataError, "does not say which version its tables have; restore a backup of it"):
        open_store(new, make=True)


# ---- an earlier version


def test_a_mill_of_the_first_release_is_brought_up_after_a_backup_and_nothing_is_lost(first, tmp_path, caplog):
    assert told(first) == SAID
    assert version(first) == NEWEST
    file = the_backup(tmp_path)
    (note,) = caplog.messages
    assert f"from tables 0001 to {NEWEST}; as it was before it stands in {file}" in note
    restore(here(tmp_path / "again.db"), file)
    assert told(str(tmp_path / "again.db")) == SAID
    told(first)
    assert len(caplog.messages) == 1  # it is done once


def _open(db: str, person: int) -> None:
    assert told(db) == SAID


def test_of_four_who_open_it_at_once_one_brings_it_up(first, tmp_path):
    with four_people() as people:
        assert at_once(people, _open, first) == ["done"] * PEOPLE
    assert version(first) == NEWEST and the_backup(tmp_path)


def test_without_its_backup_nothing_is_changed(first, tmp_path, monkeypatch):
    def full(target, content):
        raise TrackerError("cannot write the backup: no space left on device")

    monkeypatch.setattr("tracker.office.files.write", full)
    with refused(TrackerError, "no space left"):
        open_store(first)
    assert version(first) == "0001"


KILLED = """
import os, sys
from tracker.store import opening
whole = opening.upgrade
def upgrade(connection, *more):
    whole(connection, *more)
    os._exit(9)
opening.upgrade = upgrade
opening.open_store(sys.argv[1])
"""


def test_a_kill_before_the_end_leaves_it_as_it_was_and_the_next_opening_does_it(first):
    assert subprocess.run([sys.executable, "-c", KILLED, first], check=False).returncode == 9
    assert version(first) == "0001"
    assert told(first) == SAID
    assert version(first) == NEWEST


def test_tables_from_before_the_first_release_are_not_taken_for_the_first(first):
    with connect(find(first)).begin() as connection:
        connection.execute(text("ALTER TABLE parts DROP COLUMN location"))
    with refused(DataError, r"its table parts is not that of version 0001; load the mill's workbooks"):
        open_store(first)
    assert version(first) == "0001"
