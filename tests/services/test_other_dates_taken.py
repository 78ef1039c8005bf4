"""A window ruled out and another date taken: what the planner decides stays decided, and nothing else moves."""

from dataclasses import replace

import pytest
from opened import here
from refusals import refused
from three_looms import at, key, make

from tracker.domain.plan import Placed, RuledOut
from tracker.errors import DataError, PlanRefused
from tracker.services.plans.made_plans import made_plan
from tracker.services.plans.plan import Firm, PlanRequest, plan
from tracker.services.plans.published import other_dates, published_plan
from tracker.services.plans.verify import verify


@pytest.fixture
def db(tmp_path):
    """Loom 1 runs out on Tuesday 08:00, loom 2 on Wednesday 16:00, loom 3 far off; one crew, shifts 06:00 to 18:00. Firm are
    the first 10 hours, so nothing is at first."""
    path = make(str(tmp_path / "mill.db"), {"firm (hours)": 10})
    plan(here(path), PlanRequest(publish=True, as_of=at(0, 6)))
    return path


def starts(db):
    return {booking.key.loom: booking.start for booking in published_plan(here(db))[0].bookings}


def test_another_date_is_taken_and_every_other_booking_stays(db):
    before = starts(db)
    other = next(o for o in other_dates(here(db), "2").dates if o.start.date() != before["2"].date())
    taken = Placed(key("2"), other.start, other.choices)
    report = plan(here(db), PlanRequest(publish=True, as_of=at(0, 6), placed=(taken,)))
    assert [move.key for move in report.moves] == [key("2")]
    assert starts(db) == {**before, "2": other.start}
    # dearer by what was said, and by the move: 60 within 14 days
    (move,) = report.moves
    assert move.dearer == pytest.approx(other.extra_cost + 60, abs=0.01)
    assert verify(here(db)).sound
    # what stays is asked for other dates as before, the one that moved too
    assert {o.key for o in report.plan.other_dates} >= {key("1"), key("2")}
    assert before["2"].date() in {o.start.date() for o in other_dates(here(db), "2").dates}


def test_a_date_that_there_is_not_is_refused_and_nothing_is_written(db):
    before = starts(db)
    with refused(PlanRefused, "2 .H."):
        plan(here(db), PlanRequest(publish=True, as_of=at(0, 6), placed=(Placed(key("2"), at(20, 6), ()),)))
    with refused(DataError, "loom 9|no booking that lies ahead"):
        plan(here(db), PlanRequest(publish=True, as_of=at(0, 6), placed=(Placed(key("9"), at(2, 6), ()),)))
    assert starts(db) == before


def test_a_window_that_is_ruled_out_stays_out_until_it_is_allowed_again(db):
    first = starts(db)["1"]
    out = RuledOut(key("1"), at(1, 0), at(4, 0))
    assert out.holds(key("1"), first)
    report = plan(here(db), PlanRequest(publish=True, as_of=at(0, 6), ruled_out=(out,)))
    moved = next(move for move in report.moves if move.key == key("1"))
    assert "was ruled out" in str_of(moved.why)
    assert not out.holds(key("1"), starts(db)["1"])
    assert made_plan(here(db), report.number)[0].asked.ruled_out == (out,)
    assert verify(here(db)).sound
    # the next plan keeps to it without being told, until it is told otherwise
    plan(here(db), PlanRequest(publish=True, as_of=at(0, 6)))
    assert not out.holds(key("1"), starts(db)["1"])
    plan(here(db), PlanRequest(publish=True, as_of=at(0, 6), ruled_out=()))
    assert starts(db)["1"] == first


def str_of(why):
    from tracker.words import ENGLISH

    return ENGLISH.line(why)


def test_a_booking_cannot_be_held_in_a_window_that_is_ruled_out(db):
    out = RuledOut(key("1"), at(1, 0), at(4, 0))
    with refused(PlanRefused, "its window was ruled out"):
        plan(here(db), PlanRequest(as_of=at(0, 6), ruled_out=(out,), hold=("1",)))


def test_a_firm_booking_gives_way_where_its_window_is_ruled_out(db):
    # at 02:00 on Tuesday the start of loom 1 is less than ten running hours ahead
    out = RuledOut(key("1"), at(1, 0), at(4, 0))
    firm = plan(here(db), PlanRequest(as_of=at(1, 2)))
    assert next(b for b in firm.plan.bookings if b.key == key("1")).firm
    report = plan(here(db), PlanRequest(publish=True, as_of=at(1, 2), ruled_out=(out,)))
    assert not out.holds(key("1"), starts(db)["1"])
    assert any("ruled out" in str_of(reason) for reason in report.plan.reasons)
    assert verify(here(db)).sound
    assert replace(out, until_at=at(1, 1)) not in report.plan.asked.ruled_out


def test_a_firm_booking_takes_another_date_once_it_is_released_by_it(db):
    before = starts(db)
    dates = [o for o in other_dates(here(db), "1").dates if o.start > at(1, 12)]
    taken = Placed(key("1"), dates[0].start, dates[0].choices)
    plan(here(db), PlanRequest(publish=True, as_of=at(1, 2), placed=(taken,), firm=Firm()))
    # the start of loom 3, on Monday, has passed without a record; the others are where they were asked to be
    assert {**starts(db), "3": None} == {**before, "1": dates[0].start, "3": None}
