"""Hours of each trade by week, counted by hand on three looms: a conversion takes 6 h of two fitters, the last hour of them an
electrician with them; each crew works 12 h a day, Monday to Friday."""

from datetime import date

import pytest
from opened import here
from three_looms import at, make

from tracker.services.people.absences import record_absence
from tracker.services.plans.plan import PlanRequest, plan
from tracker.services.screens.week_hours import week_hours


@pytest.fixture
def db(tmp_path):
    path = make(str(tmp_path / "mill.db"))
    plan(here(path), PlanRequest(publish=True, as_of=at(0, 6)))
    return path


def test_what_is_booked_stands_beside_what_there_is(db):
    found = {(row.trade, row.week): (row.booked_h, row.there_h) for row in week_hours(here(db))}
    # fitters: two heads × 12 h × 5 days = 120; electrician 60. Looms 1 and 2: 2 × 6 h each, and 1 h of the electrician each;
    # loom 3 stops mid-warp, with 4 h more to take the beam out: 2 × 10 h, and 1 h
    fitters, electrician = found["fitter", "2027-W01"], found["electrician", "2027-W01"]
    assert fitters == pytest.approx((2 * 6 + 2 * 6 + 2 * 10, 120.0))
    assert electrician == pytest.approx((3.0, 60.0))


def test_who_is_away_is_not_there(db):
    record_absence(here(db), "F1", date(2027, 1, 7), date(2027, 1, 8), 1)
    found = {row.trade: row.there_h for row in week_hours(here(db))}
    assert found == {"fitter": 120.0 - 2 * 12, "electrician": 60.0}


def test_without_a_plan_there_is_nothing_to_count(tmp_path):
    assert week_hours(here(make(str(tmp_path / "none.db")))) == ()
