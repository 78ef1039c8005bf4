"""What is asked often, or of much, reads no more of the mill than it needs."""

from contextlib import contextmanager

import pytest
from opened import here
from stock_room_samples import AT, fill_with_method

from tracker.services.loading.load import load
from tracker.services.screens.state import database_state
from tracker.store import UnitOfWork, open_store, plans


class ReadAllTheSame(Exception):
    pass


@pytest.fixture
def db(tmp_path):
    """Three looms with their method, parts and a published plan."""
    return fill_with_method(str(tmp_path / "mill.db"))


@contextmanager
def nobody_may(monkeypatch, place, *names):
    """Each of the readers `names` fails; that it would be noticed is tried at the end."""
    with monkeypatch.context() as here_only:
        for name in names:
            here_only.setattr(place, name, _refuse)
        yield
        for name in names:
            with pytest.raises(ReadAllTheSame):
                getattr(place, name)()


def _refuse(*_args, **_more):
    raise ReadAllTheSame


def test_the_state_of_the_screens_reads_no_plan(db, monkeypatch):
    with open_store(db).reading() as uow:
        assert uow.published_plan().bookings
    with nobody_may(monkeypatch, plans, "_plan"):
        state = database_state(here(db))
    assert state.as_of >= AT


def test_a_list_of_looms_without_a_finding_reads_neither_stock_nor_plans_nor_the_whole_mill(db, monkeypatch, tmp_path):
    (tmp_path / "looms.csv").write_text("Loom;Hall;Machine type;Speed (picks/min)\n1;H1;AJ;640\n", "utf-8")
    with nobody_may(monkeypatch, UnitOfWork, "mill", "movements", "published_plan"):
        report = load(here(db), [tmp_path / "looms.csv"])
    assert report.written and not report.findings
