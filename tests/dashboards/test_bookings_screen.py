"""What the planner does on the screen Bookings: first plan, wishes for the next, another date, who is away, earlier plans."""

from dataclasses import replace
from datetime import date

import pytest
from looking import as_role, look, press
from opened import here
from refusals import refused
from screen_mill import NINE, SEVEN, TEN, put, small_mill, small_plan
from screen_texts import words

from dashboards import access, planning_parts
from dashboards.booking_charts import crew_frame
from dashboards.screens import bookings as bookings_screen
from tracker.domain.people import Role
from tracker.domain.plan import CrewTurn, Placed
from tracker.errors import PlanRefused, message
from tracker.services.jobs import kinds
from tracker.services.screens.bookings import BoardRow
from tracker.services.screens.one_booking import one_booking
from tracker.store import open_store


@pytest.fixture
def begun(monkeypatch):
    """The jobs that were begun, as what they were asked for; none is done."""
    found = []

    def begin(kind, arguments):
        found.append(kinds._request({k: v for k, v in arguments.items() if k != "time_limit_s"}))
        return message("jobs-begun")

    monkeypatch.setattr("dashboards.job_parts.begin", begin)
    return found


@pytest.fixture
def planned(tmp_path, monkeypatch):
    """A-7 firm on Wednesday, A-10 pilot on Thursday, A-9 left over; other dates of A-7: Wednesday 08:00, 55 EUR dearer. The figures
    take half of a run, and nothing here looks at them."""
    path = put(tmp_path / "planned.db", small_mill(), small_plan(small_mill()))
    monkeypatch.setenv("BEAMSLOT_DB", path)
    monkeypatch.setattr(bookings_screen, "_hall", lambda *_: None)
    return path


def test_wishes_are_gathered_booking_by_booking_and_count_with_the_next_plan(planned, begun):
    app = look("bookings")
    app.selectbox(key="one booking").set_value(SEVEN).run()
    assert "Loom A-7 (Hall 1): Wed 6 Jan 2027 06:00 to Wed 6 Jan 2027 10:00" in "".join(m.value for m in app.markdown)
    press(app, "Keep it where it is")
    assert app.multiselect(key="wish-hold").value == [SEVEN]
    press(app, "Release it")  # instead of keeping it
    assert app.multiselect(key="wish-hold").value == [] and app.multiselect(key="wish-release").value == [SEVEN]
    press(app, "Rule this window out")
    (out,) = app.multiselect(key="wish-rule-out").value
    assert (
        out.holds(SEVEN, small_plan(small_mill()).bookings[0].start) and out == one_booking(here(planned), SEVEN).window
    )
    app.selectbox(key="one booking").set_value(TEN).run()
    press(app, "Keep it where it is")
    press(app, "Make a plan")
    (asked,) = begun
    assert (asked.firm.release, asked.hold, asked.ruled_out) == (([*SEVEN],), ([*TEN],), (out,)) and not asked.publish


def test_another_date_is_taken_with_one_click(planned, begun):
    app = look("bookings")
    app.selectbox(key="one booking").set_value(SEVEN).run()
    press(app, "Wed 6 Jan 2027 08:00 to Wed 6 Jan 2027 12:00, style: 55 EUR more")
    (asked,) = begun
    other = small_plan(small_mill()).other_dates[0]
    assert asked.publish and asked.placed == (Placed(SEVEN, other.start, ()),)


def test_a_crew_is_away_in_one_line_and_back_again(planned):
    app = look("bookings")
    press(app, "Enter it")
    assert app.error[0].value == "no first day is given"
    app.date_input(key="absence from 0").set_value(date(2027, 1, 6))
    press(app, "Enter it")
    assert "Fitters is away from Wed 6 Jan 2027" in app.success[0].value
    with open_store(planned).reading() as uow:
        assert [(a.crew, a.from_on, a.to_on) for a in uow.mill().absences] == [("Fitters", *[date(2027, 1, 6)] * 2)]


def test_the_first_plan_is_offered_where_all_is_loaded_and_else_what_lacks(tmp_path, monkeypatch):
    monkeypatch.setenv("BEAMSLOT_DB", put(tmp_path / "unplanned.db", small_mill()))
    app = look("bookings")
    assert app.info[0].value == "All that a plan needs is loaded. Make the first one below."
    assert "Make a plan" in [one.label for one in app.button]
    with open_store(tmp_path / "unplanned.db").unit_of_work("planner") as uow:
        uow.save_plan(small_plan(small_mill()), published=False)
        uow.commit()
    app = look("bookings")
    assert "Publish plan 1" in [one.label for one in app.button] and "then publish it" in app.info[0].value


def test_who_published_meanwhile_is_told(planned, monkeypatch):
    plan = small_plan(small_mill())
    with open_store(planned).unit_of_work("planner") as uow:
        mine = uow.save_plan(plan, published=False)
        uow.save_plan(plan, published=True)
        uow.commit()
    monkeypatch.setattr(access, "context", lambda: here(planned))
    with refused(PlanRefused, "plan 3 by planner"):
        planning_parts.publish(mine, 1)


def test_a_plan_is_shown_by_crew(planned):
    first = small_plan(small_mill()).bookings[0]
    turn = CrewTurn("Fitters", first.start, first.end)
    row = BoardRow(replace(first, crews=(turn,)), "AJ-N", "booked", "short", None)
    frame = crew_frame([row], small_mill().terms.zone)
    assert frame[["crew", "loom"]].to_numpy().tolist() == [["Fitters", "A-7"]]
    assert frame["end_ms"][0] - frame["start_ms"][0] == 4 * 3_600_000  # 06:00 to 10:00


def test_who_may_not_plan_finds_the_board_and_no_form(planned, monkeypatch):
    as_role(monkeypatch, Role.VIEWER)
    app = look("bookings")
    assert "A-7 |" in words(app) and "Who from when to when" in words(app) and not app.button
    assert NINE not in [row.key for row in small_plan(small_mill()).bookings]
