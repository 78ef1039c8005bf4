"""Scenarios: what the form asks for becomes a scenario file, and saved plans stand side by side."""

import tomllib
from dataclasses import replace
from datetime import date

import pytest
from opened import here
from screen_mill import SEVEN, put, small_mill, small_plan

from dashboards.frames import scenario_frame
from tracker.services.plans.scenario import apply_scenario
from tracker.services.plans.scenario_draft import DraftEntry, scenario_text, with_entry
from tracker.services.screens.scenario_board import scenario_board
from tracker.store import open_store


@pytest.fixture
def db(tmp_path):
    path = put(tmp_path / "mill.db", small_mill(), small_plan(small_mill()))
    plan = small_plan(small_mill())
    with open_store(path).unit_of_work() as uow:
        uow.save_plan(replace(plan, objective=9000, bookings=plan.bookings[:1]), published=False, scenario="one crew")
        uow.save_plan(replace(plan, objective=8000, bookings=plan.bookings[:1]), published=False, scenario="one crew")
        uow.save_plan(replace(plan, objective=1), published=False)
        uow.commit()
    return path


def test_the_newest_plan_of_each_scenario_stands_beside_the_published_one(db):
    published, scenario = scenario_board(here(db)).lines
    assert (published.name, published.plan.objective) == ("published plan", 7500)
    assert (scenario.name, scenario.plan.objective) == ("one crew", 8000)
    # one booking left, costing 1,000; the rest of the objective is for what is left over
    assert (scenario.cost.total, scenario.left_over_cost) == (1000, 7000)


def test_stopped_hours_are_those_in_which_the_hall_weaves(db):
    # all hours of the week: 4 h of the first booking, 26 h of the second (Thursday 08:00 to Friday 10:00)
    published, scenario = scenario_board(here(db)).lines
    assert (published.stopped_h, scenario.stopped_h) == (30, 4)
    assert published.finish_on == date(2027, 1, 8)


def test_entries_become_a_scenario_file_that_changes_the_mill():
    mill = small_mill()
    draft = (
        DraftEntry("absent", {"Crew": "Night", "From": date(2027, 1, 11), "To": date(2027, 1, 15)}),
        DraftEntry(
            "crew", {"Crew": "Night", "Trade": "fitter", "Heads": "2", "Shift start": "22:00", "Shift end": "06:00"}
        ),
        DraftEntry("heads", {"Fitters": "3"}),
        DraftEntry("terms", {"horizon (days)": "98"}),
        DraftEntry("terms", {"target finish": date(2027, 2, 1)}),
        DraftEntry("terms", {"plan with orders not yet placed": False}),
        DraftEntry("receipt", {"Order": "PO-1", "Part": "RAIL", "Due": date(2027, 1, 22)}),
        DraftEntry("closure", {"Date": date(2027, 1, 7), "Stops": "work"}),
        DraftEntry("protect", {"Loom": "A-7", "Until": date(2027, 1, 10)}),
    )
    scenario = tomllib.loads(scenario_text('a "third" head', draft))
    assert scenario["name"] == 'a "third" head'
    changed = apply_scenario(mill, scenario)
    assert [(crew.crew, crew.heads) for crew in changed.crews] == [("Fitters", 3), ("Night", 2)]
    assert (changed.terms.horizon_days, changed.terms.target_finish) == (98, date(2027, 2, 1))
    assert changed.terms.plan_with_orders is False
    assert changed.receipts[0].due == date(2027, 1, 22) and changed.receipts[0].quantity == 1
    assert (changed.closures[0].on, changed.closures[0].stops) == (date(2027, 1, 7), "work")
    assert changed.absences[0].crew == "Night" and changed.looms[SEVEN].protected_until == date(2027, 1, 10)


def test_another_value_for_a_name_takes_the_place_of_the_first(db):
    draft = with_entry(here(db), (), DraftEntry("heads", {"Fitters": "3"}))
    draft = with_entry(here(db), draft, DraftEntry("heads", {"Fitters": "1"}))
    assert draft == (DraftEntry("heads", {"Fitters": "1"}),)


def test_no_entry_changes_nothing():
    assert apply_scenario(small_mill(), tomllib.loads(scenario_text("as it is", ()))) == small_mill()


def test_the_bars_add_up_to_the_cost(db):
    frame = scenario_frame(scenario_board(here(db)))
    for _, rows in frame.groupby("plan"):
        assert sum(rows["amount"]) == rows["cost"].iloc[0]


def test_plans_are_held_against_each_other_without_the_price_of_moves(db):
    plan = small_plan(small_mill())
    moved = replace(plan.bookings[0], cost=replace(plan.bookings[0].cost, moves=60))
    with open_store(db).unit_of_work() as uow:
        uow.save_plan(replace(plan, objective=7000, bookings=(moved,)), published=False, scenario="another")
        uow.commit()
    another = next(line for line in scenario_board(here(db)).lines if line.name == "another")
    assert (another.plan.objective, another.comparable) == (7000, 6940)
    frame = scenario_frame(scenario_board(here(db)))
    assert frame[frame["plan"] == "another"]["cost"].iloc[0] == 6940
    assert not frame["term"].str.contains("moved").any()
