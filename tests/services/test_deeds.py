"""Who did what: each row of history by its act, of one loom, of one person, and whether it reads as it was written."""

from datetime import UTC, date, datetime, time, timedelta

import pytest
from openpyxl import load_workbook
from quick_passwords import PASSWORD, quick_passwords  # noqa: F401
from refusals import refused
from sqlalchemy import text
from stock_room_samples import PLAN, added, fill, fill_method

from tracker.domain.people import Role
from tracker.domain.progress import Stage, StageChange
from tracker.errors import DataError
from tracker.services.backup import backup
from tracker.services.context import Actor, Context
from tracker.services.parts.reservations import release
from tracker.services.parts.stock import count
from tracker.services.people.accounts import add_person
from tracker.services.people.audit import Which, check_history, deeds, write_deeds
from tracker.services.people.permissions import May
from tracker.services.people.sessions import sign_in
from tracker.services.work.record import StageTold, record_stage
from tracker.store import open_store
from tracker.store.base import AppendOnly, Base
from tracker.store.deeds import SOURCES
from tracker.store.models import CheckResultRow, SetValueRow
from tracker.words import ENGLISH

NOON = datetime(2090, 1, 12, 12, tzinfo=UTC)
"""Later than the moment at which the stockroom of the test is filled."""


@pytest.fixture
def mill(tmp_path):
    """A filled stockroom of before there were acts."""
    return fill(str(tmp_path / "mill.db"), PLAN)


def by(mill, name, *roles, at=NOON):
    return Context(mill, Actor(name, frozenset(roles), "screen"), clock=lambda: at)


def said(found):
    return [(d.who, d.told, d.roles, d.through, ENGLISH.say(d.what)) for d in found.deeds]


def test_each_line_says_who_in_which_role_by_what(mill):
    count(by(mill, "Ann", Role.PURCHASING), "NUT", 7)
    count(by(mill, "Pat", Role.PLANNER, at=NOON + timedelta(hours=1)).telling("Bo"), "NUT", 9)
    found = said(deeds(by(mill, "Vera", Role.VIEWER), Which(since=NOON)))
    counts = [line for line in found if line[4].startswith("stock: count")]
    assert counts[0] == ("Pat", "Bo", ("planner",), "screen", "stock: count of 2 NUT")
    assert counts[1][:4] == ("Ann", "", ("purchasing",), "screen")
    assert {line[:4] for line in found} == {
        counts[0][:4],
        counts[1][:4],
    }  # what follows from a count is its counter's too


def test_what_was_there_before_is_told_as_far_as_it_is_known(mill):
    older = deeds(by(mill, "Vera", Role.VIEWER)).deeds
    assert older and {(d.roles, d.through) for d in older} == {((), "")}
    with open_store(mill).unit_of_work("night") as uow:  # as no service of ours does it: without an act
        uow.add_stage(StageChange(PLAN.bookings[0].key, Stage.IN_WORK, NOON, "night"))
        uow.commit()
    count(by(mill, "Ann", Role.PURCHASING), "NUT", 7)
    found = deeds(by(mill, "Vera", Role.VIEWER), Which(who="NIGHT"))
    assert [(d.who, d.roles, d.table) for d in found.deeds] == [("night", (), "stage_changes")]


def test_every_table_of_history_that_says_who_is_told():
    """`who` of a reading is who read it; that it was entered stands in the change log, as do all rows of records."""
    said_by = {m.class_ for m in Base.registry.mappers if issubclass(m.class_, AppendOnly) and "who" in m.columns}
    assert said_by - set(SOURCES) == {SetValueRow, CheckResultRow}
    assert set(SOURCES) <= said_by


def test_what_is_held_for_a_loom_is_told_in_words(mill):
    """Its kit is 1 RAIL, 8 NUT, 2.5 CABLE and 1 GAUGE (KITS)."""
    release(by(mill, "Ann", Role.PURCHASING), "1")
    (line,) = said(deeds(by(mill, "Vera", Role.VIEWER), Which(since=NOON)))
    assert line[4] == ("parts held for loom Hall 1, 1: RAIL 1 → none, NUT 8 → none, CABLE 2.5 → none, GAUGE 1 → none")


def test_rows_are_named_as_their_sheet_names_them(mill):
    fill_method(mill)
    late = {"crew": "F2", "trade": "fitter", "heads": 1, "weekdays": frozenset({0, 1, 2}), "shift_start": time(14),
            "from_on": date(2027, 2, 1)}  # fmt: skip
    with by(mill, "Pat", Role.PLANNER).unit_of_work(May.LOAD) as uow:
        row = added("crews", "F2", late["weekdays"], time(14), late["from_on"], **late)
        uow.load_writer().write([row], {})
        uow.commit()
    (line,) = said(deeds(by(mill, "Vera", Role.VIEWER), Which(since=NOON)))
    assert line[4].startswith("Crews F2, Mon-Wed, 14:00, Mon 1 Feb 2027 added: ")


def test_of_one_loom_only_its_own(mill):
    record_stage(by(mill, "Ann", Role.FITTER), "1", "in work", told=StageTold(why="before its kit"))
    count(by(mill, "Ann", Role.PURCHASING), "NUT", 7)
    (line, *_) = said(deeds(by(mill, "Vera", Role.VIEWER), Which(loom="1", since=NOON)))
    assert line[4] == "loom 1 (Hall 1) in work from Thu 12 Jan 2090 12:00 on: before its kit"
    with refused(DataError, "99"):
        deeds(by(mill, "Vera", Role.VIEWER), Which(loom="99"))


def test_signing_in_and_accounts_stand_there_too(mill, quick_passwords):  # noqa: F811
    add_person(by(mill, "Root", Role.ADMINISTRATOR), "Ann", PASSWORD, ["planner"])
    assert sign_in(by(mill, "", at=NOON + timedelta(minutes=1)), "ann", "wrong", "10.0.0.7") is None
    assert sign_in(by(mill, "", at=NOON + timedelta(minutes=2)), "ann", PASSWORD, "10.0.0.7")
    found = said(deeds(by(mill, "Vera", Role.VIEWER), Which(since=NOON)))
    assert [(line[0], line[4]) for line in found] == [
        ("Ann", "signed in from 10.0.0.7"),
        ("Ann", "wrong name or password from 10.0.0.7"),
        ("Root", "account of Ann added, as planner"),
    ]
    assert PASSWORD not in str(found)


def test_the_workbook_has_what_the_list_has(mill, tmp_path):
    count(by(mill, "Ann", Role.PURCHASING), "NUT", 7)
    found = write_deeds(by(mill, "Vera", Role.VIEWER), tmp_path / "changes.xlsx")
    page = load_workbook(tmp_path / "changes.xlsx")["Changes"]
    rows = [[cell.value for cell in row] for row in page.iter_rows()]
    head = next(i for i, row in enumerate(rows) if row[0] == "When")
    assert len(rows) - head - 1 == len(found.deeds)
    assert (rows[head + 1][1], rows[head + 1][3]) == ("Ann", "purchasing")


def test_the_newest_are_shown_and_the_rest_is_told_of(mill):
    for number in range(3):
        count(by(mill, "Ann", Role.PURCHASING), "NUT", number)
    found = deeds(by(mill, "Vera", Role.VIEWER), most=2)
    assert len(found.deeds) == 2 and found.more


def test_the_last_hash_of_a_backup_says_whether_what_stood_then_still_does(mill, tmp_path):
    manifest = backup(Context(mill), tmp_path / "mill.zip").manifest
    assert check_history(Context(mill)).known_at is None
    count(by(mill, "Ann", Role.PURCHASING), "NUT", 7)
    done = check_history(Context(mill), manifest.last_hash.upper())
    assert done.known_at and done.last_hash != manifest.last_hash
    with refused(DataError, "none of the seals of this history"):
        check_history(Context(mill), "0" * 64)


@pytest.mark.parametrize("statement", [
    "UPDATE acts SET who = 'nobody'", "DELETE FROM acts WHERE id = 1", "UPDATE stock_movements SET quantity = 1 WHERE id = 1",
])  # fmt: skip
def test_a_chain_broken_by_hand_is_found(mill, statement):
    count(by(mill, "Ann", Role.PURCHASING), "NUT", 7)
    count(by(mill, "Ann", Role.PURCHASING), "NUT", 8)
    table = statement.split()[2 if statement.startswith("DELETE") else 1]
    with open_store(mill).engine.begin() as connection:
        for when in ("insert", "update", "delete"):
            connection.execute(text(f"DROP TRIGGER {table}_{when}"))
        connection.execute(text(statement))
    with refused(DataError, f"what was written to {table} on"):
        check_history(Context(mill))
