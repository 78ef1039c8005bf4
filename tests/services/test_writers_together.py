"""Four people write at once, each in a process of their own, on SQLite and on PostgreSQL: nothing is done twice,
nothing is lost, and an empty database is made once."""

from datetime import UTC, date, datetime
from functools import partial
from pathlib import Path

import pytest
from opened import here
from people import PEOPLE, at_once
from postgres_server import new_database
from sqlalchemy import select
from stock_room_samples import PLAN, booking, fill, fill_method, plan_of

from tracker.services.loading.load import LoadRequest, load
from tracker.services.parts.stock import count
from tracker.services.plans.plan import save
from tracker.services.work.record import StageTold, record_stage
from tracker.services.work.taken import Taken
from tracker.store import open_store
from tracker.store.models import LoadRow, RowChangeRow

STARTED, ENDED = datetime(2026, 1, 5, 6, tzinfo=UTC), datetime(2026, 1, 5, 12, tzinfo=UTC)


@pytest.fixture(params=["sqlite", "postgresql"])
def empty(request, tmp_path):
    return str(tmp_path / "mill.db") if request.param == "sqlite" else new_database(request.getfixturevalue("postgres"))


@pytest.fixture
def db(empty):
    """Three booked looms with their kits, a method, a crew; 20 nuts on hand."""
    fill(empty, PLAN)
    return fill_method(empty)


def _record(db: str, person: int) -> None:
    record_stage(
        here(db, f"fitter {person}"),
        "1",
        "signed off",
        told=StageTold(at=ENDED, taken=Taken("F1", STARTED), why="told later"),
    )


def test_a_conversion_is_recorded_once(people, db):
    answers = at_once(people, _record, db)
    assert answers.count("done") == 1, answers
    assert sum("is recorded already" in answer for answer in answers) == PEOPLE - 1, answers
    with open_store(db).reading() as uow:
        assert len(uow.conversions()) == 1


def _publish(db: str, person: int) -> None:
    save(here(db), plan_of(booking("1", date(2026, 1, 12 + person), {})), True, None, PLAN)


def test_of_four_who_publish_after_the_same_plan_one_does(people, db):
    answers = at_once(people, _publish, db)
    assert answers.count("done") == 1, answers
    assert sum("another plan was published" in answer for answer in answers) == PEOPLE - 1, answers


def _load(file: Path, db: str, person: int) -> None:
    assert load(here(db), [file]).written


def _count(db: str, person: int) -> None:
    count(here(db), "NUT", 700)


def test_counts_and_loads_that_count_leave_what_one_of_them_found(people, db, tmp_path):
    (tmp_path / "parts.csv").write_text("Part;On hand;Unit\nNUT;800;pc\n")
    loads = partial(_load, tmp_path / "parts.csv")
    assert at_once(people, [loads, _count, loads, _count], db) == ["done"] * PEOPLE
    with open_store(db).reading() as uow:
        assert uow.mill().parts["NUT"].on_hand in (700, 800)


def test_four_first_loads_into_an_empty_database_make_it_once(people, empty, tmp_path):
    (tmp_path / "looms.csv").write_text("Loom;Hall;Machine type\n1;Hall 1;AJ-190\n2;Hall 1;AJ-190\n")
    assert at_once(people, partial(_load, tmp_path / "looms.csv"), empty) == ["done"] * PEOPLE
    with open_store(empty).reading() as uow:
        assert [key.loom for key in uow.mill().looms] == ["1", "2"]
        assert len(uow.session.scalars(select(LoadRow)).all()) == PEOPLE
        added = select(RowChangeRow.key).where(RowChangeRow.kind == "added")
        assert sorted(uow.session.scalars(added)) == ["1 | Hall 1", "2 | Hall 1"]


def test_trying_a_load_waits_for_nobody_who_writes(db, tmp_path):
    (tmp_path / "parts.csv").write_text("Part;On hand;Unit\nNUT;800;pc\n")
    with open_store(db).unit_of_work() as uow:
        uow.add_answers({"length": "yard"})
        report = load(here(db), [tmp_path / "parts.csv"], LoadRequest(dry_run=True))
    assert [(change.field, change.old, change.new) for change in report.changes] == [("on_hand", 20, 800)]
