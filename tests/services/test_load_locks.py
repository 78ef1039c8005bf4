"""A load reads its files before it locks anything, and one that only tries makes and locks nothing at all."""

from datetime import date

import pytest
from opened import here

from tracker.services.loading import readings
from tracker.services.loading.load import LoadRequest, load
from tracker.store import connecting, open_store

ONE_LOOM = "Loom;Hall;Machine type;Reed width\n1;Hall 1;AJ-190;190\n"
ASKED = "Loom;Hall;Machine type;Protected until\n1;Hall 1;AJ-190;3/4/2027\n"
"""3 April or 4 March."""
TOO_FAST = "Loom;Hall;Machine type;Speed (picks/min)\n1;Hall 1;AJ-190;6000\n"


@pytest.fixture
def db(tmp_path, monkeypatch):
    monkeypatch.setattr(connecting, "WAIT_S", 0)
    return str(tmp_path / "mill.db")


def text_file(folder, text=ONE_LOOM):
    (folder / "looms.csv").write_text(text)
    return folder / "looms.csv"


def add_answer(db, answers):
    with open_store(db).unit_of_work() as uow:
        uow.add_answers(answers)
        uow.commit()


def while_reading(monkeypatch, *acts):
    """Let somebody else do something each time that the files are read; gives the answers each reading went by."""
    read, seen, to_do = readings.read_files, [], list(acts)

    def reading(files, given, remembered, *more):
        seen.append(dict(remembered))
        if to_do:
            to_do.pop(0)()
        return read(files, given, remembered, *more)

    monkeypatch.setattr(readings, "read_files", reading)
    return seen


def test_others_write_while_the_files_are_read(db, tmp_path, monkeypatch):
    open_store(db, make=True)
    while_reading(monkeypatch, lambda: add_answer(db, {"length": "yard"}))
    assert load(here(db), [text_file(tmp_path)]).written


def test_files_are_read_again_where_somebody_answered_meanwhile(db, tmp_path, monkeypatch):
    open_store(db, make=True)
    assert not load(here(db), [text_file(tmp_path, ASKED)]).written
    answer = {"order|protected until": "day first"}
    seen = while_reading(monkeypatch, lambda: add_answer(db, answer))
    assert load(here(db), [text_file(tmp_path, ASKED)]).written
    assert seen == [{}, answer]
    with open_store(db).reading() as uow:
        assert [loom.protected_until for loom in uow.mill().looms.values()] == [date(2027, 4, 3)]


def test_trying_a_load_makes_no_database(db, tmp_path):
    report = load(here(db), [text_file(tmp_path)], LoadRequest(dry_run=True))
    assert [(change.table, change.key) for change in report.changes] == [("looms", ("1", "Hall 1"))]
    assert [file.name for file in tmp_path.iterdir()] == ["looms.csv"]


@pytest.mark.parametrize("text", [TOO_FAST, "nothing to be read"])
def test_a_refused_first_load_makes_no_database(db, tmp_path, text):
    assert load(here(db), [text_file(tmp_path, text)]).refusal
    assert [file.name for file in tmp_path.iterdir()] == ["looms.csv"]


def test_trying_a_load_tells_what_differs_from_what_is_there(db, tmp_path):
    load(here(db), [text_file(tmp_path)])
    report = load(here(db), [text_file(tmp_path, ONE_LOOM.replace("190;190", "190;210"))], LoadRequest(dry_run=True))
    assert [(change.field, change.old, change.new) for change in report.changes] == [("reed_width_cm", 190, 210)]
    with open_store(db).reading() as uow:
        assert [loom.reed_width_cm for loom in uow.mill().looms.values()] == [190]
