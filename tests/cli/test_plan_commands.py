"""The plan as the command shows it: the published one, other dates, the baseline, scenarios side by side.

The plan published here is that of the baseline (see conftest.py), so what planning is worth against it is nothing.
"""

from datetime import UTC, datetime
from zoneinfo import ZoneInfo

import pytest
from python_calamine import CalamineWorkbook

from tracker.cli.planning import _print_prices
from tracker.domain.plan import Plan, PlanStatus, ScarcityPrice
from tracker.errors import as_it_stands
from tracker.planning.baseline import walk
from tracker.store import open_store
from tracker.store.plans import scenario_plans
from tracker.words.formats import span

VIENNA = ZoneInfo("Europe/Vienna")


def published(tmp_path):
    with open_store(tmp_path / "mill.db").reading() as uow:
        plan = uow.published_plan()
    assert plan
    return plan


def test_the_published_plan_is_shown_without_planning(planned, tmp_path):
    ran = planned("plan", "--show")
    plan = published(tmp_path)
    assert ran.code == 0
    rows = ran.out.splitlines()
    assert rows[0] == "Bookings" and len(plan.bookings) == rows.index(f"Left over: {len(plan.left_over)} looms") - 2
    assert "Who from when to when" in rows[1]
    first = min(plan.bookings, key=lambda b: (b.start, b.key.sort_key))
    assert rows[2].split()[2] == first.key.loom and span(first.start, first.end, VIENNA) in rows[2]
    assert planned("plan", "--show", "--json", "-").json["objective"] == plan.objective


def test_another_plans_baseline_is_worth_nothing_against_itself(planned, tmp_path, monkeypatch):
    monkeypatch.setattr(walk.baseline, "__defaults__", ((24.0,),))  # as the published one (conftest.py)
    told = planned("plan", "--baseline", "--as-of", "2027-01-04", "--json", "-").json
    assert told["objective"] == pytest.approx(published(tmp_path).objective)
    assert told["worth"] == pytest.approx(0)
    later = planned("plan", "--baseline", "--as-of", "2027-01-11")
    assert "planning is worth" not in later.out  # of another moment: not comparable


def test_where_a_loom_stands_and_that_no_other_date_is_listed(planned, tmp_path):
    booking = published(tmp_path).bookings[0]
    ran = planned("plan", "--dates", booking.key.loom, "--hall", booking.key.hall)
    choices = ", ".join(alternative for _, alternative in booking.choices)
    assert ran.out.splitlines() == [
        f"Loom {booking.key} is booked {span(booking.start, booking.end, VIENNA)}, window {booking.kind}, {choices}.",
        "The plan lists no other date for it.",
    ]
    assert planned("plan", "--dates", "031").out.startswith(
        "Loom 031 (Hall 1) is left over: to survey: rail unknown.\n"
    )
    assert planned("plan", "--dates", "999").line.startswith("there is no loom 999")


def test_without_a_published_plan_there_is_nothing_to_show(mill):
    for arguments in (("--show",), ("--dates", "007")):
        ran = mill("plan", *arguments)
        assert (ran.code, ran.line) == (1, "no plan is published yet; make one: beamslot plan --publish")
    assert mill("export", "plan.xlsx", "--what", "plan").code == 1


@pytest.mark.parametrize(
    "arguments",
    [("--show", "--publish"), ("--baseline", "--show"), ("--dates", "007", "--scenario", "x.toml"), ("--as-of", "soon"),
     ("--time-limit", "long"), ("--number", "1"), ("--number", "1", "--list"), ("--number", "1", "--show", "--publish")],
)  # fmt: skip
def test_wrong_use_ends_with_2(planned, arguments):
    assert planned("plan", *arguments).code == 2


@pytest.mark.parametrize("arguments", [("--publish",), (), ("--show",), ("--baseline",)])
def test_a_plan_of_one_hall_alone_is_not_made(planned, arguments):
    ran = planned("plan", *arguments, "--hall", "Nowhere")
    assert ran.code == 2
    assert "a plan is of all halls" in " ".join(ran.err.replace("│", " ").split())
    assert planned("plan", "--list", "--json", "-").json[0]["number"] == 1  # nothing was made


def test_prices_are_told_dearest_first(capsys):
    prices = (
        ScarcityPrice(as_it_stands("hoist hour"), "2027-W05", 0.6),
        ScarcityPrice(as_it_stands("RAIL-N"), "2027-W02", 4963.6),
    )
    at = datetime(2027, 1, 4, tzinfo=UTC)
    _print_prices(Plan(PlanStatus.OPTIMAL, 0, 0, 0, "EUR", at, at, prices=prices))
    assert [line.split() for line in capsys.readouterr().out.splitlines()[2:]] == [
        ["RAIL-N", "2027-W02", "4,964"], ["hoist", "hour", "2027-W05", "0.6"]]  # fmt: skip


def test_the_plan_and_the_hours_are_exported_as_reports(planned, tmp_path):
    assert planned("export", "plan.xlsx", "--what", "plan").out.startswith("Wrote plan.xlsx: ")
    sheets = CalamineWorkbook.from_path(str(tmp_path / "plan.xlsx")).sheet_names
    assert sheets[:2] == ["Plan", "Bookings"]
    assert sheets[-3:] == ["Hours per loom by type", "Hours per loom by variant", "Late"]
    assert planned("export", "hours.xlsx", "--what", "hours").code == 0
    grid = (
        CalamineWorkbook.from_path(str(tmp_path / "hours.xlsx")).get_sheet_by_name("Hours per loom by type").to_python()
    )
    told = planned("export", "--what", "hours", "--json", "-").json
    # two kinds of window count differently (the beam is taken out mid-warp), for four machine types
    assert len([row for row in told if not row["variant"]]) == 8 == len(grid) - 4
    assert grid[4][:3] == ["AJ-N", "repeat, style, standing", 35]
    refused = planned("export", "both.xlsx", "--what", "hours", "--what", "looms")
    assert (refused.code, refused.line) == (2, "'hours' is a report of its own; export it alone")


def scenario(tmp_path, name, **terms):
    lines = [f'name = "{name}"', "[terms]", *(f'"{term}" = {value}' for term, value in terms.items())]
    (tmp_path / f"{name}.toml").write_text("\n".join(lines))
    return f"{name}.toml"


def test_scenarios_stand_side_by_side_with_the_published_plan(planned, tmp_path):
    short, shorter = (
        scenario(tmp_path, name, **{"horizon (days)": days}) for name, days in (("a week", 7), ("three days", 3))
    )
    arguments = ("plan", "--as-of", "2027-01-04", "--scenario", short, "--scenario", shorter)
    told = planned(*arguments, "--json", "-").json
    assert [line["name"] for line in told["compared"]] == ["published plan", "a week", "three days"]
    assert [len(plan["bookings"]) for plan in told["plans"]] == [line["bookings"] for line in told["compared"]][1:]
    assert len(published(tmp_path).bookings) == told["compared"][0]["bookings"]


@pytest.mark.long  # it plans the whole sample anew, since the published plan is of the day before
def test_scenarios_of_a_later_day_stand_beside_things_as_they_are_then(planned, tmp_path):
    short, shorter = (
        scenario(tmp_path, name, **{"horizon (days)": days}) for name, days in (("a week", 7), ("three days", 3))
    )
    later = planned("plan", "--as-of", "2027-01-05", "--scenario", short, "--scenario", shorter)
    rows = later.out.splitlines()
    assert rows[0] == "Plans side by side (EUR)" and rows[2].startswith("things as they stand ")
    assert rows[-1] == "The scenarios are saved for comparison; none of them is published."


def test_a_fault_in_any_scenario_stops_before_the_first_is_planned(planned, tmp_path):
    good, bad = scenario(tmp_path, "good", **{"horizon (days)": 7}), scenario(tmp_path, "bad", colour=3)
    ran = planned("plan", "--scenario", good, "--scenario", bad)
    assert (ran.code, ran.line.split(";")[0]) == (2, "scenario bad.toml: [terms]: there is no term 'colour'")
    with open_store(tmp_path / "mill.db").reading() as uow:
        assert scenario_plans(uow.session) == []
    (tmp_path / "again.toml").write_text((tmp_path / good).read_text())
    twice = planned("plan", "--scenario", good, "--scenario", "again.toml")
    assert "another one is called 'good', too" in twice.line
    assert planned("plan", "--scenario", good, "--publish").line.startswith("a scenario is not published")
    assert planned("plan", "--scenario", good, "--scenario", "again.toml", "--publish").line.startswith(
        "a scenario is not"
    )


def test_plans_made_are_listed_and_shown_by_their_number(planned, tmp_path):
    (entry,) = planned("plan", "--list", "--json", "-").json
    plan = published(tmp_path)
    assert (entry["number"], entry["published"], entry["bookings"]) == (1, True, len(plan.bookings))
    assert planned("plan", "--list").out.splitlines()[2].split()[-1] == str(len(plan.left_over))
    assert planned("plan", "--show", "--number", "1", "--json", "-").json["objective"] == plan.objective
    assert planned("plan", "--show", "--number", "7").line == "there is no plan 7; `beamslot plan --list` lists them"
    assert planned("plan", "--publish", "--number", "1").line == "plan 1 is in force already"


def test_before_the_first_plan_the_list_says_how_to_make_one(mill):
    assert mill("plan", "--list").out == "No plan was made yet; `beamslot plan` makes one.\n"
