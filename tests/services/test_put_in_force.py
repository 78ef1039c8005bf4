"""A scenario put in force: its entries become the mill's own data by one change, which one undo takes back whole."""

from datetime import date

import pytest
from opened import here
from refusals import refused
from sqlalchemy import Engine, event
from three_looms import added, at, make, write

from tracker.domain.people import Role
from tracker.errors import ChangedSince, DataError, InputRefused, NotAllowed, UsageError
from tracker.services.context import Actor
from tracker.services.people.audit import deeds
from tracker.services.plans.plan import PlanRequest, plan, plan_task
from tracker.services.plans.put_in_force import made_scenario, put_in_force, would_put_in_force
from tracker.services.plans.scenario import scenario_of
from tracker.services.undoing.undo import undo
from tracker.words import ENGLISH, Speaker

NAME = "a third crew"
TEXT = """
name = "a third crew"
[terms]
"allowance (%)" = 15
"target finish" = 2027-02-10
[heads]
F1 = 3
[tools]
hoist = 2
[[crew]]
crew = "F3"
trade = "fitter"
heads = 2
weekdays = "Mon-Wed"
from = 2027-01-18
[[absent]]
crew = "F3"
from = 2027-01-25
to = 2027-01-26
[[receipt]]
order = "PO-1"
part = "RAIL"
due = 2027-01-20
[[receipt]]
order = "PO-2"
part = "RAIL"
quantity = 3
due = 2027-01-22
[[closure]]
date = 2027-02-01
stops = "work"
[[protect]]
loom = "1"
until = 2027-01-05
"""
TABLES = ("terms", "crews", "tools", "absences", "receipts", "closures", "looms")


@pytest.fixture
def mill(tmp_path):
    db = make(str(tmp_path / "mill.db"))
    order = {"order": "PO-1", "part": "RAIL", "quantity": 4.0, "due": date(2027, 1, 11)}
    write(db, added("parts", "RAIL", part="RAIL"), added("tools", "hoist", tool="hoist", how_many=1),
          added("receipts", "PO-1", "RAIL", **order))  # fmt: skip
    return here(db, clock=lambda: at(0, 0))


def stands(context):
    with context.reading() as uow:
        return {table: uow.rows(table) for table in TABLES}


def test_every_entry_becomes_the_mills_own_and_one_undo_brings_all_of_it_back(mill):
    before = stands(mill)
    found = would_put_in_force(mill, scenario_of(TEXT), NAME, said=("PO-1", "PO-2"))
    assert stands(mill) == before
    done = put_in_force(mill, found)
    now = stands(mill)
    assert now["terms"]["allowance (%)",]["value"] == 0.15
    assert now["terms"]["target finish",]["value"] == "2027-02-10"
    heads = {row["crew"]: (row["trade"], row["heads"], row["from_on"]) for row in now["crews"].values()}
    assert heads == {"F1": ("fitter", 3, None), "E1": ("electrician", 1, None), "F3": ("fitter", 2, date(2027, 1, 18))}
    assert now["tools"]["hoist",]["how_many"] == 2
    assert now["absences"]["F3", date(2027, 1, 25)]["to_on"] == date(2027, 1, 26)
    lines = {key: (row["quantity"], row["due"]) for key, row in now["receipts"].items()}
    assert lines == {("PO-1", "RAIL"): (4, date(2027, 1, 20)), ("PO-2", "RAIL"): (3, date(2027, 1, 22))}
    assert [row["stops"] for row in now["closures"].values()] == ["work"]
    assert now["looms"]["1", "H"]["protected_until"] == date(2027, 1, 5)
    assert {deed.act for deed in deeds(mill).deeds} == {done.number, None}  # None: the mill as it was put there
    (told,) = [deed.what for deed in deeds(mill).deeds if deed.what.code == "deed-load" and deed.act == done.number]
    assert ENGLISH.say(told) == "put scenario a third crew in force"
    assert Speaker("de").say(told) == "Szenario a third crew in Kraft gesetzt"
    with mill.reading() as uow:
        assert uow.origin("terms", ("allowance (%)",), "value")[0].sheet == "scenario a third crew"
    with refused(DataError, "the mill's data have all of the scenario a third crew already"):
        put_in_force(mill, would_put_in_force(mill, scenario_of(TEXT), NAME, said=()), leave_out=True)
    undo(mill, done.number)
    assert stands(mill) == before


def test_however_many_were_put_in_force_one_statement_names_them(mill):
    for heads in (3, 1):
        put_in_force(mill, would_put_in_force(mill, scenario_of(f"[heads]\nF1 = {heads}"), f"{heads} heads"))
    asked = []

    def hear(_connection, _cursor, statement, *_):
        asked.append(statement)

    event.listen(Engine, "before_cursor_execute", hear)
    try:
        told = [deed.what.params["scenario"] for deed in deeds(mill).deeds if deed.what.code == "deed-load"]
    finally:
        event.remove(Engine, "before_cursor_execute", hear)
    assert told == ["1 heads", "3 heads"]  # the newest first
    assert len([statement for statement in asked if "source_tables" in statement]) == 1


def test_an_order_line_of_which_the_supplier_has_not_said_so_is_named_and_stays_out(mill):
    before = stands(mill)
    found = would_put_in_force(mill, scenario_of(TEXT), NAME, said=("PO-2",))
    assert (found.orders, found.unsaid) == ((("PO-1", "RAIL"), ("PO-2", "RAIL")), (("PO-1", "RAIL"),))
    with refused(InputRefused, "order line PO-1 would stay out") as why:
        put_in_force(mill, found)
    assert "order PO-1 of RAIL" in ENGLISH.line(why.value.findings[0]) and stands(mill) == before
    put_in_force(mill, found, leave_out=True)
    assert stands(mill)["receipts"]["PO-1", "RAIL"]["due"] == date(2027, 1, 11)
    assert ("PO-2", "RAIL") in stands(mill)["receipts"]
    with refused(UsageError, "has no order PO-9; it has PO-1"):
        would_put_in_force(mill, scenario_of(TEXT), NAME, said=("PO-9",))


def test_what_somebody_changed_meanwhile_or_does_not_fit_or_who_may_not_leaves_all_as_it_was(mill):
    text = "[terms]\n'reference plan' = 7\n[heads]\nF1 = 3"
    with refused(InputRefused, "1 row"):
        put_in_force(mill, would_put_in_force(mill, scenario_of(text), "seven"))
    found = would_put_in_force(mill, scenario_of("[heads]\nF1 = 3"), "three")
    with pytest.raises(NotAllowed):
        put_in_force(mill.acting(Actor("Pia", frozenset({Role.PURCHASING}))), found)
    put_in_force(mill, would_put_in_force(mill, scenario_of("[heads]\nF1 = 1"), "one"))
    before = stands(mill)
    with pytest.raises(ChangedSince) as moved:
        put_in_force(mill, found)
    said = ENGLISH.say(moved.value.findings[0])
    assert "F1" in said and "2" in said and "1" in said and stands(mill) == before


def test_what_a_scenario_had_otherwise_is_kept_with_its_plan(mill, tmp_path):
    text = TEXT.replace('crew = "F3"\n', 'crew = "F3"\nshift_end = 15:30:00\n', 1)
    (tmp_path / "third.toml").write_text(text)
    assert made_scenario(mill, NAME) is None
    plan(mill, PlanRequest(scenario=tmp_path / "third.toml"))
    kept = made_scenario(mill, NAME)
    assert kept is not None
    of_file, again = (plan_task(mill, PlanRequest(), scenario).data.mill for scenario in (scenario_of(text), kept))
    assert again == of_file
