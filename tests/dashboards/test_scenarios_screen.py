"""The screen Scenarios: entries gathered one by one, each refused beside its field, planned, and set beside the plan in force."""

from dataclasses import replace
from datetime import date

import pytest
from looking import look, press
from opened import here
from quick_jobs import quick_jobs  # noqa: F401
from refusals import refused
from screen_mill import put, small_mill, small_plan
from screen_texts import words
from streamlit.testing.v1 import AppTest

from dashboards.screens import scenarios as scenarios_screen
from tracker.errors import DataError
from tracker.services.jobs import desk
from tracker.services.people.audit import deeds
from tracker.services.plans.made_plans import made_plans
from tracker.services.plans.scenario_entries import ENTRIES, ONE_TABLE
from tracker.services.plans.setting_aside import aside, set_aside
from tracker.services.undoing.undo import undo
from tracker.store import open_store
from tracker.words import ENGLISH


@pytest.fixture
def planned(tmp_path, monkeypatch):
    """Of the small plan, without the choice that the method of the small mill does not give."""
    plan = small_plan(small_mill())
    possible = tuple(replace(booking, choices=()) for booking in plan.bookings)
    path = put(tmp_path / "planned.db", small_mill(), replace(plan, bookings=possible))
    monkeypatch.setenv("BEAMSLOT_DB", path)
    return path


@pytest.fixture
def no_figures(monkeypatch):
    """They take most of a run, and nothing here looks at them."""
    monkeypatch.setattr(scenarios_screen, "scenario_chart", lambda *_: None)
    monkeypatch.setattr(scenarios_screen.st, "altair_chart", lambda *_, **__: None)


def field(app: AppTest, label: str):
    fields = (*app.text_input, *app.date_input, *app.selectbox, *app.number_input)
    return next(one for one in fields if one.label == label)


def with_heads(app: AppTest, heads: str) -> AppTest:
    """The entry that gives the only crew so many heads."""
    app.selectbox(key="scenario entry").set_value("heads").run()
    app.selectbox(key="scenario heads").set_value("Fitters").run()
    field(app, "Instead").set_value(heads)
    return press(app, "Add it")


def test_every_entry_of_a_scenario_file_has_its_form(planned, no_figures):
    app = look("scenarios")
    for kind, entry in ENTRIES.items():
        app.selectbox(key="scenario entry").set_value(kind).run()
        assert not app.exception, kind
        if kind in ONE_TABLE:
            assert app.selectbox(key=f"scenario {kind}").value is None
            continue
        labels = {one.label.removesuffix(" *") for one in (*app.text_input, *app.date_input, *app.selectbox)}
        assert {column.title for column in entry.fields} <= labels, kind


def test_entries_are_refused_beside_their_field_and_gathered_and_taken_out(planned, no_figures):
    app = with_heads(look("scenarios"), "many")
    assert app.error[0].value.startswith("Fitters: 'many' is not possible")
    assert "a whole number from 0 to 100" in app.error[0].value and field(app, "Instead").value == "many"
    field(app, "Instead").set_value("1")
    assert press(app, "Add it").success[0].value == "Added: Heads of a crew: Fitters 1"
    app.selectbox(key="scenario entry").set_value("absent").run()
    field(app, "Crew *").set_value("Fitters")
    field(app, "From *").set_value(date(2027, 1, 11))
    assert press(app, "Add it").error[0].value.startswith("the entry has no to; give a day of 1970 to 2099")
    field(app, "To *").set_value(date(2027, 1, 8))
    assert "from" in press(app, "Add it").error[0].value and field(app, "From *").value == date(2027, 1, 11)
    field(app, "To *").set_value(date(2027, 1, 15))
    assert not press(app, "Add it").error
    assert "A crew away: Crew Fitters, From Mon 11 Jan 2027, To Fri 15 Jan 2027" in words(app)
    assert press(app, "Take it out").success[0].value == "Taken out: Heads of a crew: Fitters 1"
    assert "Fitters 1" not in words(app)


def test_a_scenario_needs_a_name_of_its_own(planned, no_figures):
    with open_store(planned).unit_of_work("planner") as uow:
        uow.save_plan(small_plan(small_mill()), published=False, scenario="Rails late")
        uow.commit()
    app = look("scenarios")
    assert "7,500 EUR" in words(app)
    assert press(app, "Plan it").error[0].value == "the scenario has no name; give it one"
    field(app, "Name").set_value("rails  LATE")
    assert press(app, "Plan it").error[0].value == "there is a scenario Rails late already; choose another name"
    assert field(app, "Name").proto.max_chars == 40


def test_a_scenario_that_cannot_be_planned_is_one_line(planned, quick_jobs, no_figures):  # noqa: F811
    app = with_heads(look("scenarios"), "0")
    field(app, "Name").set_value("nobody")
    press(app, "Plan it")
    assert desk.wait(here(planned), 1, 60)
    app.run()
    assert not app.exception
    assert app.error[0].value and "\n" not in app.error[0].value


def test_a_scenario_is_planned_and_set_beside_the_published_plan(planned, quick_jobs):  # noqa: F811
    app = with_heads(look("scenarios"), "3")
    field(app, "Name").set_value("a third head")
    field(app, "Stop the search after (s)").set_value(5)
    press(app, "Plan it")
    assert desk.wait(here(planned), 1, 60)
    app.run()
    assert not app.exception and not app.error
    assert any(one.value.startswith("Scenario a third head: ") for one in app.success)
    assert "against published plan" in words(app)
    # put in force: asked once, naming how much; the data have it by one change, and a plan is made from them
    app.selectbox(key="scenario in force").set_value("a third head").run()
    assert (
        press(app, "Put it in force")
        .warning[0]
        .value.startswith("One value of the scenario a third head becomes the mill's own data")
    )
    assert heads(planned) == 2
    done = press(app, "Yes: Put it in force").success
    said = next(one.value for one in done if "in force" in one.value)
    assert said.startswith("The scenario a third head is in force: one value stands in the mill's data, by change ")
    assert heads(planned) == 3
    assert desk.wait(here(planned), 2, 60)
    (made, *_) = made_plans(here(planned)).entries
    assert (made.scenario, made.published) == (None, False)
    written = [deed.act for deed in deeds(here(planned)).deeds if deed.table == "row_changes"]
    undo(here(planned), written[0])
    assert heads(planned) == 2


def test_order_lines_that_nobody_said_are_named_before_and_stay_out(planned, no_figures):
    entries = {"receipt": [{"order": "PO-1", "part": "RAIL", "due": "2027-01-20"}], "heads": {"Fitters": 3}}
    with open_store(planned).unit_of_work("planner") as uow:
        uow.save_plan(small_plan(small_mill()), published=False, scenario="rails late", entries=entries)
        uow.save_plan(small_plan(small_mill()), published=False, scenario="from before")
        uow.commit()
    app = look("scenarios")
    app.selectbox(key="scenario in force").set_value("rails late").run()
    assert "order PO-1 of RAIL stays as it is" in words(app) and "Receipts" not in words(app)
    assert "Order PO-1 stays as it is" in press(app, "Put it in force").warning[0].value
    press(app, "No, leave it")
    app.checkbox[0].check().run()
    assert "order PO-1 of RAIL stays as it is" not in words(app) and "Receipts" in words(app)
    app.selectbox(key="scenario in force").set_value("from before").run()
    assert "was not kept with its plan" in app.info[0].value and "Load, sheet Crews" in words(app)


def heads(db: str) -> int:
    with open_store(db).reading() as uow:
        return uow.mill().crews[0].heads


def test_a_scenario_is_set_aside_and_comes_back_when_it_is_wanted_or_planned_again(planned, no_figures):
    def make() -> None:
        with open_store(planned).unit_of_work("planner") as uow:
            uow.save_plan(replace(small_plan(small_mill()), objective=8000), published=False, scenario="one crew")
            uow.commit()

    make()
    app = look("scenarios")
    assert "becomes the mill's own data, all of it by one change" in words(app)
    assert press(app, "Set it aside").success[0].value == "Scenario one crew is set aside."
    assert aside(here(planned)) == {"one crew"} and "8,000 EUR" not in words(app)
    assert len(made_plans(here(planned)).entries) == 2  # nothing of history has gone
    with refused(DataError, "no scenario one crew is shown"):
        set_aside(here(planned), "one crew")
    assert "8,000 EUR" in words(press(app, "Show it again"))
    press(app, "Set it aside")
    make()
    assert aside(here(planned)) == set()
    told = [ENGLISH.say(deed.what) for deed in deeds(here(planned)).deeds]
    assert told.count("scenario one crew set aside") == 2 and told.count("scenario one crew listed again") == 1
