"""Worth: a made programme of 24 looms over 26 weeks whose truth is known (tests/shared/worth_mill): fewer stops, and 12 mm less
waste on both sides together."""

import pytest
from looking import as_role, look
from opened import here
from screen_mill import put, small_mill
from screen_texts import words
from worth_mill import NOW, make_worth_mill

from tracker.domain.people import Role
from tracker.services.own_clock import give_own_clock


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    path = str(tmp_path_factory.mktemp("worth") / "mill.db")
    make_worth_mill(path, seed_of={"overdispersion": 1.0})
    give_own_clock(here(path), NOW)
    return path


def test_a_manager_sees_what_it_saves_chooses_a_cause_and_finds_nothing_to_take_over(made, monkeypatch):
    monkeypatch.setenv("BEAMSLOT_DB", made)
    as_role(monkeypatch, Role.VIEWER)
    app = look("worth")
    said = words(app)
    assert "Stops: fewer, surely" in said and "Waste width: narrower, surely" in said
    assert "Saved a month, as measured" in said and "Pays back in" in said
    assert "Plans count on 100 % of the claimed saving" in said and not app.button
    app.selectbox(key="worth cause").set_value("warp").run()
    said = words(app)
    assert "Stops by warp" in said and "Waste width" not in said and "Saved a month" not in said
    assert app.query_params["cause"] in ("warp", ["warp"])


def test_a_planner_takes_the_saving_over_after_one_question(made, monkeypatch):
    monkeypatch.setenv("BEAMSLOT_DB", made)
    app = look("worth")
    app.button[0].click().run()
    assert "every plan from then on reckons with it" in app.warning[0].value
    with here(made).reading() as uow:
        assert uow.terms().share_of_saving == 1
    next(button for button in app.button if button.label.startswith("Yes")).click().run()
    assert not app.exception and "plans count on" in app.success[0].value
    with here(made).reading() as uow:
        assert uow.terms().share_of_saving != 1


def test_where_nothing_is_loaded_the_screen_says_what_to_load(tmp_path, monkeypatch):
    monkeypatch.setenv("BEAMSLOT_DB", put(tmp_path / "mill.db", small_mill()))
    assert "Stops" in look("worth").info[0].value
