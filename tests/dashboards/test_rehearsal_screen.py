"""The screen Rehearsal: what it says before there is one, that it plays in the background, and what it shows then.

Three looms (three_looms.py); where nothing varies every run is the plan.
"""

from typing import Any

import pytest
from held_work import Waiting
from looking import press
from opened import here
from quick_jobs import quick_jobs  # noqa: F401
from screen_texts import words
from streamlit.testing.v1 import AppTest
from three_looms import MONDAY, make

from dashboards.rehearsed import figures_of, risk_rows, spread_rows
from tracker.domain.jobs import JobKind
from tracker.rehearsal.sources import Source
from tracker.services.jobs import desk, kinds
from tracker.services.people.permissions import May
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
    press(app, "Play it")
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
    press(app, "Play it")
    press(other, "Play it")
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


def test_what_lets_the_plan_survive_is_shown_and_taken_over(published):
    """By what was kept of a tuning: five days more for deliveries cost 40 on paper and save 300 in the hall."""
    context = here(published)
    with context.reading() as uow:
        made = uow.published_plan()
        assert made
        cost = made.objective  # nothing is to come in, so that the days change nothing

    def tried(days: int, paper: float, kept: float) -> dict[str, Any]:
        more = {"mean": kept - 900.0, "low": kept - 950.0, "high": kept - 850.0}
        terms = {
            "room": 0,
            "no_second_chance": 0,
            "usual_absence": 0,
            "receipts_later_days": days,
            "pilots_for_type": False,
        }
        return {
            "terms": terms,
            "variant": 0,
            "paper": paper,
            "kept": kept,
            "kept_elsewhere": kept,
            "booked": 3,
            "more": more,
        }

    found = {"kind": "tuning", "as_of": MONDAY.isoformat(), "currency": "EUR", "tune_on": 30, "runs": 100, "stopped": False,
             "helps": True, "without": tried(0, cost - 40.0, 900.0), "best": tried(5, cost, 600.0),
             "tried": [tried(0, 700.0, 900.0), tried(5, 740.0, 600.0)],
             "judged": {"mean": -300.0, "low": -400.0, "high": -200.0}}  # fmt: skip
    with context.unit_of_work(May.PLAN) as uow:
        uow.save_rehearsal(1, found)
        uow.commit()
    app = screen().run()
    assert not app.exception
    said = words(app)
    assert "Planned with receipts later 5 days, it costs 40 EUR more on paper and saves 300 EUR in the hall" in said
    assert "nothing | 700 | 900 |" in said and "receipts later 5 days | 740 | 600 |" in said
    press(app, "Take it over")
    assert app.warning[0].value.startswith("The terms become receipts later 5 days, and the plan by them is made")
    press(app, "Yes: Take it over")
    assert app.success[0].value.startswith("The terms are set. Plan 2 is made by them: 3 looms booked")
    with context.reading() as uow:
        assert uow.terms().receipts_later_days == 5


def test_it_says_from_where_each_figure_comes(published):
    """Nothing was recorded in this mill but readings, one of each warp; its terms say that warps are used evenly."""
    ask = RehearsalRequest(
        runs=2, policies=("kept",), spreads=(("away share", 0.06),), worries=False, jobs=1, as_of=MONDAY
    )
    rehearse(here(published), ask)
    app = screen().run()
    assert not app.exception
    said = words(app)
    assert "What it rests on" in said
    assert (
        "use of warp varying by 0 % from day to day where a loom has too few daily readings | the mill | as asked for"
        in said
    )
    assert "6 % of days away unforeseen | the mill | as asked for, or by the terms |" in said
    assert "20 % of deliveries late | all suppliers | usual |" in said
