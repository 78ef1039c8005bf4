"""The screen Rehearsal: what it says before there is one, that it plays in the background, and what it shows then.

Three looms (three_looms.py); where nothing varies every run is the plan.
"""

import pytest
from held_work import Waiting
from opened import here
from quick_jobs import quick_jobs  # noqa: F401
from screen_texts import words
from streamlit.testing.v1 import AppTest
from three_looms import MONDAY, make

from dashboards.rehearsed import figures_of, risk_rows, spread_rows
from tracker.domain.jobs import JobKind
from tracker.rehearsal.sources import Source
from tracker.services.jobs import desk, kinds
from tracker.services.plans.plan import PlanRequest, plan
from tracker.services.plans.rehearse import RehearsalRequest, rehearse
from tracker.services.screens.rehearsal_board import rehearsal_board

STILL = tuple(source.value for source in Source)


def screen(name: str = "rehearsal") -> AppTest:
    return AppTest.from_string(f"from dashboards.screens import {name}\n{name}.page()\n", default_timeout=30)


@pytest.fixture
def published(tmp_path, monkeypatch, quick_jobs):  # noqa: F811
    db = make(str(tmp_path / "mill.db"))
    plan(here(db), PlanRequest(publish=True, as_of=MONDAY))
    monkeypatch.setenv("BEAMSLOT_DB", db)
    return db


def test_it_plays_in_the_background_and_shows_what_came_of_it(published):
    app = screen().run()
    assert "not rehearsed yet" in app.info[0].value
    app.number_input[0].set_value(4)
    app.checkbox[0].set_value(False)
    app.button[-1].click().run()
    assert app.success[0].value.startswith("It has begun.")
    assert desk.wait(here(published), 1, 60)
    app.run()
    assert not app.exception
    assert app.success[0].value == "Plan 1 was played 4 times; kept with the plan."
    said = words(app)
    assert "4 runs" in said and "Bookings at risk" in said
    # two of them are played by the rule of thumb
    assert "the plan, kept | 4 |" in said and "no plan, beam-outs as they come | 2 |" in said
    assert "What each worry is worth" not in said
    kept = rehearsal_board(here(published)).kept
    assert kept and kept.result["runs"] == 4
    status = screen("status").run()
    assert not status.exception and "| cost |" in words(status).replace("\n", "| ")


def test_what_runs_is_seen_and_stopped_by_another_and_a_second_is_refused(published, monkeypatch):
    monkeypatch.setitem(kinds.KINDS, JobKind.REHEARSAL, lambda *_, **given: Waiting())
    app, other = screen().run(), screen().run()
    app.button[-1].click().run()
    other.button[-1].click().run()
    assert "a rehearsal is being played already, begun by" in other.error[0].value
    assert "Begun by" in words(other)
    next(button for button in other.button if button.label == "Stop").click().run()
    assert desk.wait(here(published), 1, 60)
    app.run()
    assert not app.exception and app.warning[0].value == "it begins"
    assert "stopped by" in words(app)


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
        ("100 %", "0 %", "nothing in particular")
    }
