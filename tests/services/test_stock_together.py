"""Two people at once: real processes on one database, on SQLite and on PostgreSQL."""

from datetime import date

import pytest
from opened import here
from people import PEOPLE, at_once
from postgres_server import new_database
from stock_room_samples import added, booking, fill, key, plan_of

from tracker.services.looms import LoomName
from tracker.services.parts.reservations import release, reserve, take
from tracker.services.parts.stock import issue, receive
from tracker.services.parts.stockroom import read_stockroom
from tracker.store import open_store

LOOMS = [f"P{i}" for i in range(PEOPLE)]


@pytest.fixture(params=["sqlite", "postgresql"])
def db(request, tmp_path):
    """One rail on hand and none reserved, for four booked looms; the sample's own looms are not booked."""
    url = str(tmp_path / "mill.db")
    if request.param == "postgresql":
        url = new_database(request.getfixturevalue("postgres"))
    looms = [added("looms", loom, "Hall 1", hall="Hall 1", loom=loom, machine_type="AJ-190") for loom in LOOMS]
    one = added("parts", "DRIVE", part="DRIVE", on_hand=1.0)
    fill(
        url,
        plan_of(*(booking(loom, date(2026, 1, 12 + i), {"DRIVE": 1.0}) for i, loom in enumerate(LOOMS))),
        *looms,
        one,
    )
    release(here(url), LOOMS[0])
    return url


def _reserve(db: str, person: int) -> None:
    reserve(here(db), LOOMS[person], part="DRIVE")


def _issue(db: str, person: int) -> None:
    issue(here(db), LOOMS[person], part="DRIVE")


def _receive(db: str, person: int) -> None:
    receive(here(db), order="PO-1", quantity=1)


def _take(db: str, person: int) -> None:
    take(here(db), "DRIVE", LoomName(LOOMS[0]), LoomName(LOOMS[1 + person % 3]), quantity=1)


def room(db):
    with open_store(db).reading() as uow:
        return read_stockroom(uow)


def test_the_last_one_is_reserved_by_exactly_one(people, db):
    answers = at_once(people, _reserve, db)
    refused = [answer for answer in answers if answer != "done"]
    assert len(refused) == PEOPLE - 1, answers
    assert sum(room(db).reserved("DRIVE").values()) == 1
    winner = next(iter(room(db).reserved("DRIVE")))
    assert all(f"0 free of 1 on hand (1 for loom {winner} reserved)" in answer for answer in refused), refused


def test_the_last_one_is_issued_to_exactly_one(people, db):
    answers = at_once(people, _issue, db)
    assert answers.count("done") == 1, answers
    assert room(db).mill.parts["DRIVE"].on_hand == 0


def test_nothing_received_at_once_is_lost(people, db):
    assert at_once(people, _receive, db) == ["done"] * PEOPLE  # the line was open for 4
    assert room(db).mill.parts["RAIL"].on_hand == 6
    assert room(db).mill.receipts == ()


def test_a_reserved_part_is_taken_by_exactly_one(people, db):
    reserve(here(db), LOOMS[0], part="DRIVE")
    answers = at_once(people, _take, db)
    assert answers.count("done") == 1, answers
    holders = room(db).reserved("DRIVE")
    assert sum(holders.values()) == 1
    assert key(LOOMS[0]) not in holders
