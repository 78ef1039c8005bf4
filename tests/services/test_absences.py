"""A sick fitter is one line, refused as the sheet would be, and can be ended."""

from datetime import date

import pytest
from mill_sheets import workbook
from opened import here
from refusals import refused

from tracker.domain.shifts import short_of_heads
from tracker.errors import DataError, UsageError
from tracker.services.loading.load import load
from tracker.services.people.absences import end_absence, record_absence
from tracker.store import open_store
from tracker.words import ENGLISH

CREWS = [["Crew", "Trade", "Heads", "To"], ["Fitters 1", "fitter", 3, None], ["Fitters 2", "fitter", 2, "2027-03-01"]]


@pytest.fixture
def db(tmp_path):
    path = str(tmp_path / "mill.db")
    looms = [["Loom", "Hall", "Machine type", "Speed"], ["1", "Hall 1", "AJ", 600]]
    assert load(here(path).making(), [workbook(tmp_path / "mill.xlsx", {"Crews": CREWS, "Looms": looms})]).written
    return path


def away(db):
    with open_store(db).reading() as uow:
        return [(a.crew, a.from_on.day, a.to_on.day, a.heads, a.reason) for a in uow.mill().absences]


def test_an_absence_is_added_and_ended(db):
    done = record_absence(here(db), "Fitters 1", date(2027, 2, 1), date(2027, 2, 5), 1, "ill")
    assert ENGLISH.line(done.message).startswith(
        "1 head of crew Fitters 1 is away from Mon 1 Feb 2027 to Fri 5 Feb 2027."
    )
    record_absence(here(db), "Fitters 1", date(2027, 2, 8), date(2027, 2, 9))
    end_absence(here(db), "Fitters 1", date(2027, 2, 3))
    assert away(db) == [("Fitters 1", 1, 2, 1, "ill"), ("Fitters 1", 8, 9, None, None)]


def test_an_absence_entered_by_mistake_is_taken_back_and_its_history_stays(db):
    record_absence(here(db), "Fitters 1", date(2027, 2, 1), date(2027, 2, 5), 1, "ill")
    done = end_absence(here(db), "Fitters 1", date(2027, 2, 1))
    assert ENGLISH.line(done.message).startswith(
        "Crew Fitters 1 was never away from Mon 1 Feb 2027 to Fri 5 Feb 2027: taken back."
    )
    assert done.record()["taken_back"] and not done.record()["takes_no_conversion"]
    assert away(db) == [("Fitters 1", 1, 5, 0, "ill")]
    with open_store(db).reading() as uow:
        mill = uow.mill()
        assert not any(short_of_heads(mill, crew, date(2027, 2, 1), date(2027, 2, 5)) for crew in mill.crews)
        heads = [
            (origin.old, origin.new) for origin in uow.origin("absences", ("Fitters 1", date(2027, 2, 1)), "heads")
        ]
    assert heads == [(1, 0), (None, 1)]
    with refused(DataError, "not away on Mon 1 Feb 2027"):
        end_absence(here(db), "Fitters 1", date(2027, 2, 1))
    # it is in nobody's way: another one over its days, then one from its first day
    record_absence(here(db), "Fitters 1", date(2027, 2, 4), date(2027, 2, 8))
    record_absence(here(db), "Fitters 1", date(2027, 2, 1), date(2027, 2, 2))
    assert away(db) == [("Fitters 1", 1, 2, None, None), ("Fitters 1", 4, 8, None, None)]


@pytest.mark.parametrize(
    ("crew", "first", "last", "heads", "said"),
    [
        ("Fitters 1", 3, 4, 4, "has 3 heads, and 4 are to be away"),
        ("Fitters 3", 3, 4, 1, "There is no crew Fitters 3"),
        (
            "Fitters 1",
            5,
            6,
            1,
            "away from Fri 5 Feb 2027 to Sat 6 Feb 2027, and again from Mon 1 Feb 2027 to Fri 5 Feb 2027",
        ),
        ("Fitters 1", 1, 2, 1, "--back DAY ends that"),
    ],
)
def test_what_does_not_fit_is_refused_and_nothing_written(db, crew, first, last, heads, said):
    record_absence(here(db), "Fitters 1", date(2027, 2, 1), date(2027, 2, 5), 1)
    before = away(db)
    with refused(DataError, said):
        record_absence(here(db), crew, date(2027, 2, first), date(2027, 2, last), heads)
    assert away(db) == before


def test_days_outside_the_crews_dates_or_the_wrong_way_round(db):
    with refused(DataError, "Fitters 2 is not there on Tue 2 Mar 2027"):
        record_absence(here(db), "Fitters 2", date(2027, 2, 27), date(2027, 3, 2))
    with refused(UsageError, "is before the first, Sat 27 Feb 2027; exchange them"):
        record_absence(here(db), "Fitters 2", date(2027, 2, 27), date(2027, 2, 26))
    with refused(DataError, "not away on Wed 3 Feb 2027"):
        end_absence(here(db), "Fitters 1", date(2027, 2, 3))
