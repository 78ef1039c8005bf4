"""The screen Rehearsal: what it says before there is one, that it plays in the background, and what it shows then.

Three looms (three_looms.py); where nothing varies every run is the plan.
"""

import pytest
from opened import here
from screen_texts import words
from streamlit.testing.v1 import AppTest
from three_looms import MONDAY, make

from dashboards import long_work
from dashboards.rehearsed import figures_of, risk_rows, spread_rows
from tracker.errors import DataError
from tracker.rehearsal.rehearsing import InThisProcess
from tracker.rehearsal.sources import Source
from tracker.services.plans.plan import PlanRequest, plan
from tracker.services.plans.rehearse import RehearsalRequest, rehearse
from tracker.services.screens.rehearsal_board import rehearsal_board

STILL = tuple(source.value for source in Source)


def screen(name: str = "rehearsal") -> AppTest:
    return AppTest.from_string(f"from dashboards.screens import {name}\n{name}.page()\n", default_timeout=30)


@pytest.fixture
def published(tmp_path, monkeypatch):
    db = make(str(tmp_path / "mill.db"))
    plan(here(db), PlanRequest(publish=True, as_of=MONDAY))
    monkeypatch.setenv("BEAMSLOT_DB", db)
    monkeypatch.setattr("tracker.services.plans.rehearse.players", lambda _jobs: InThisProcess())
    return db


def test_it_plays_in_the_background_and_shows_what_came_of_it(published):
    app = screen().run()
    assert "not rehearsed yet" in app.info[0].value
    app.number_input[0].set_value(4)
    app.checkbox[0].set_value(False)
    app.button[-1].click().run()
    if work := long_work.going(published):
        work.wait()
    app.run()
    assert not app.exception
    assert app.success[0].value == "Played 4 times; kept with the plan."
    said = words(app)
    assert "4 runs" in said and "Bookings at risk" in said
    # two of them are played by the rule of thumb
    assert "the plan, kept | 4 |" in said and "no plan, beam-outs as they come | 2 |" in said
    assert "What each worry is worth" not in said
    kept = rehearsal_board(here(published)).kept
    assert kept and kept.result["runs"] == 4
    status = screen("status").run()
    assert not status.exception and "| cost |" in words(status).replace("\n", "| ")


def test_what_is_refused_is_said_and_nothing_goes_on_after(published, monkeypatch):
    def refuse(*_):
        raise DataError("nothing-to-rehearse")

    monkeypatch.setattr("dashboards.screens.rehearsal.rehearse", refuse)
    app = screen().run()
    app.button[-1].click().run()
    if work := long_work.going(published):
        work.wait()
    app.run()
    assert "no booking of the published plan is still to come" in app.error[0].value
    assert long_work.going(published) is None


def test_a_stop_is_passed_on_and_one_goes_on_alone(published):
    seen = []

    def play(_progress, stop):
        while not stop():
            pass
        seen.append("stopped")
        return "said"

    work = long_work.begin(published, play)
    assert long_work.begin(published, lambda *_: "another") is work
    work.stop()
    work.wait()
    assert (seen, work.says, work.failed) == (["stopped"], "said", False)
    long_work.forget(published)
    assert long_work.going(published) is None


def test_where_nothing_varies_all_shares_are_the_plan(published):
    """Loom 2 is the last: it runs out on Wednesday at 16:00 and is done on Thursday 7 January at 10:00."""
    ask = RehearsalRequest(runs=2, policies=("kept",), off=STILL, worries=False, jobs=1, as_of=MONDAY)
    result = rehearse(here(published), ask).result
    finish, cost = spread_rows(result)
    assert finish[0] == "3 looms done by"
    assert finish[1:] == ["Thu 7 Jan 2027"] * 4
    assert len(set(cost[1:])) == 1
    assert figures_of(result)[0][1] == "3 of 3"
    zone = rehearsal_board(here(published)).zone
    assert {(row[3].text, row[4].text, row[5]) for row in risk_rows(result, zone)} == {
        ("100%", "0%", "nothing in particular")
    }
