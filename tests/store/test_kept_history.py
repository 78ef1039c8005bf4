"""History is only ever added to, by whoever opens the database, and what was touched all the same is found."""

import re
from datetime import UTC, datetime

import pytest
from postgres_server import new_database
from said import texts
from sqlalchemy import text
from sqlalchemy.exc import DBAPIError

from tracker.domain.mill import LoomKey
from tracker.domain.progress import Stage, StageChange
from tracker.domain.rows import Change
from tracker.domain.stock import Movement, MovementKind
from tracker.services.backup import backup, restore
from tracker.services.context import Context
from tracker.store import open_store
from tracker.store.base import AppendOnly, Base
from tracker.store.connecting import connect
from tracker.store.history import HISTORY, last_hash, touched
from tracker.store.place import find

LOOM = LoomKey("H1", "007")
AT = datetime(2027, 1, 4, 5, tzinfo=UTC)


@pytest.fixture(params=["sqlite", "postgresql"])
def db(request, tmp_path):
    url = str(tmp_path / "mill.db") if request.param == "sqlite" else new_database(request.getfixturevalue("postgres"))
    part = Change("parts", ("RAIL",), "", None, {"part": "RAIL", "on_hand": 6.0})
    loom = Change("looms", LOOM, "", None, {"hall": "H1", "loom": "007", "machine_type": "AJ-190"})
    with open_store(url, make=True).unit_of_work() as uow:
        writer = uow.load_writer(at=AT)
        writer.begin(["list.xlsx"], [])
        writer.write([part, loom], {})
        uow.commit()
    issue(url, 1)
    issue(url, 2)
    with open_store(url).unit_of_work() as uow:
        uow.add_stage(StageChange(LOOM, Stage.IN_WORK, AT, "fitter"))
        uow.commit()
    return url


def issue(db, quantity):
    with open_store(db).unit_of_work() as uow:
        uow.add_movements([Movement("RAIL", MovementKind.ISSUE, -quantity, AT, "store", "kit")])
        uow.commit()


def run(db, *statements):
    """As another program would that opens the database."""
    with connect(find(db)).begin() as connection:
        for statement in statements:
            connection.execute(text(statement))


def unguarded(db, table, *statements):
    """The same by somebody who first takes the guards away."""
    sqlite = db.endswith("mill.db")
    away = [f"DROP TRIGGER {table}_{when}" for when in ("insert", "update", "delete")]
    run(db, *(away if sqlite else [f"ALTER TABLE {table} DISABLE TRIGGER USER"]), *statements)


def found(db):
    with open_store(db).reading() as uow:
        return [*texts(touched(uow.session.connection()))]


def test_every_table_of_history_is_guarded():
    """Those that a load, an entry or a plan only adds to; what is in force now (looms, receipts, reservations) is not."""
    names = {mapper.local_table.name for mapper in Base.registry.mappers if issubclass(mapper.class_, AppendOnly)}
    assert {table.name for table in HISTORY} == names
    assert {"row_changes", "stock_movements", "stage_changes", "conversions", "plans", "history_seals"} <= names
    assert not names & {"looms", "parts", "receipts", "reservations", "terms"}


@pytest.mark.parametrize("db", ["sqlite"], indirect=True)
def test_each_has_its_guards(db):
    with connect(find(db)).connect() as connection:
        for table in (table.name for table in HISTORY):
            names = connection.scalars(
                text("SELECT name FROM sqlite_master WHERE type = 'trigger' AND tbl_name = :t"), {"t": table}
            )
            assert set(names) == {f"{table}_{when}" for when in ("insert", "update", "delete")}


def test_another_program_cannot_change_or_remove_history(db):
    for statement in (
        "UPDATE stock_movements SET quantity = 5 WHERE id = 1",
        "DELETE FROM stock_movements WHERE id = 2",
        "DELETE FROM stage_changes",
        "UPDATE row_changes SET who = 'somebody'",
        "DELETE FROM history_seals",
    ):
        table = re.findall("stock_movements|stage_changes|row_changes|history_seals", statement)[0]
        with pytest.raises(DBAPIError, match=f"{table} is history, which is only ever added to"):
            run(db, statement)
    assert found(db) == []


def test_nor_by_replacing_or_emptying(db):
    statement = (
        "REPLACE INTO stock_movements SELECT * FROM stock_movements WHERE id = 1"
        if db.endswith("mill.db")
        else "TRUNCATE stock_movements"
    )
    with pytest.raises(DBAPIError, match="stock_movements is history, which is only ever added to"):
        run(db, statement)


def test_untouched_history_is_found_so(db):
    assert found(db) == []
    issue(db, 1)
    assert found(db) == []


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE stock_movements SET quantity = -3 WHERE id = 3",
        "UPDATE stock_movements SET at = '2027-01-04 05:00:00.000001' WHERE id = 3",
        "DELETE FROM stock_movements WHERE id = 3",
    ],
)
def test_what_was_touched_without_the_guards_is_named_with_its_moment(db, statement):
    issue(db, 1)
    unguarded(db, "stock_movements", statement)
    without_guard, rows = found(db)
    assert without_guard == "the database no longer guards stock_movements against changes"
    assert re.fullmatch(r"what was written to stock_movements on \d{4}-.* UTC does not read as it was written", rows)


def test_a_row_put_in_by_another_program_is_found(db):
    run(
        db, "INSERT INTO stage_changes (id, hall, loom, stage, at, who) VALUES (9, 'H1', '007', 'x', '2027-01-04', 'y')"
    )
    assert found(db) == ["1 row of stage_changes was put in by another program"]


def test_a_row_put_in_between_is_found(db):
    columns = "(id, part, kind, quantity, at, who, why)"
    run(db, f"INSERT INTO stock_movements {columns} VALUES (-1, 'RAIL', 'opening', 1, '2027-01-04', 'y', '')")
    assert [line for line in found(db) if "stock_movements" in line]


def test_a_seal_taken_out_is_found(db):
    unguarded(db, "history_seals", "DELETE FROM history_seals WHERE id = 2")
    assert any("does not read as it was written" in line for line in found(db))


def test_the_last_hash_goes_out_with_a_backup_and_comes_back(db, tmp_path):
    manifest = backup(Context(db), tmp_path / "mill.zip").manifest
    restore(Context(str(tmp_path / "again.db")), tmp_path / "mill.zip")
    with open_store(tmp_path / "again.db").reading() as uow:
        assert last_hash(uow.session.connection()) == manifest.last_hash != ""
    assert found(str(tmp_path / "again.db")) == []
    with pytest.raises(DBAPIError, match="history"):
        run(str(tmp_path / "again.db"), "DELETE FROM stock_movements")
