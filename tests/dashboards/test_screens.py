"""The screens run on a real database, from empty to published."""

import re
from dataclasses import replace
from datetime import date, timedelta

import pytest
from opened import here
from quick_jobs import quick_jobs  # noqa: F401
from screen_mill import NINE, SEVEN, at, put, small_mill, small_plan
from screen_texts import APP, words
from streamlit.testing.v1 import AppTest

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Asked, Undo
from tracker.domain.progress import Conversion, Stage, StageChange
from tracker.domain.windows import WindowKind
from tracker.errors import as_it_stands, message
from tracker.services.screens.loom_sheet import loom_sheet
from tracker.store import open_store


def screen(name: str) -> AppTest:
    """A screen by itself, as the navigation would run it."""
    return AppTest.from_string(f"from dashboards.screens import {name}\n{name}.page()\n", default_timeout=30)


@pytest.fixture
def unplanned(tmp_path, monkeypatch):
    path = put(tmp_path / "unplanned.db", small_mill())
    monkeypatch.setenv("BEAMSLOT_DB", path)
    return path


@pytest.fixture
def planned(tmp_path, monkeypatch):
    path = put(tmp_path / "planned.db", small_mill(), small_plan(small_mill()))
    monkeypatch.setenv("BEAMSLOT_DB", path)
    return path


@pytest.mark.parametrize("name", ["status", "bookings", "needs", "rehearsal", "scenarios"])
def test_without_a_method_no_screen_says_to_plan(tmp_path, monkeypatch, name):
    mill = small_mill()
    only_looms = replace(
        mill, warps={}, articles={}, crews=(), method=replace(mill.method, operations=(), kit_lines=())
    )
    monkeypatch.setenv("BEAMSLOT_DB", put(tmp_path / "looms.db", only_looms))
    said = screen(name).run().info[0].value
    assert "a method (sheet Operations), articles (sheet Articles), warps (sheet Warps) and crews (sheet Crews)" in said
    assert "**Load**" in said and "Publish one" not in said


@pytest.mark.parametrize("name", ["status", "needs", "rehearsal", "scenarios"])
def test_without_a_plan_the_screen_says_what_to_do(unplanned, name):
    app = screen(name).run()
    assert not app.exception
    assert "makes and publishes one on the screen Bookings" in app.info[0].value.replace("*", "")


def test_status_shows_stages_cost_proof_and_what_is_left_over(planned):
    app = screen("status").run()
    assert not app.exception
    said = words(app)
    assert "Small programme · as of Mon 4 Jan 2027 06:00 · 3 looms" in said
    assert "0 of 3" in said
    # the last booking ends on Friday 8 January, the target is Sunday 10 January
    assert "Fri 8 Jan 2027" in said and "2 days before the target Sun 10 Jan 2027" in said
    # labour 250 + 190 and parts 310 + 310 of the two bookings, both in January
    assert "planned up to this month 1,060 EUR; on order 310 EUR" in said
    assert "at most 50 EUR (0.67 %)" in said and "1,500 EUR for 2 bookings and 6,000 EUR for 1 loom left over" in said
    assert "to survey: rail unknown" in said and "6,000" in said
    assert len(app.get("vega_lite_chart") or app.get("arrow_vega_lite_chart")) == 3


def record(path: str, *stages: tuple[LoomKey, Stage, str | None]) -> None:
    with open_store(path).unit_of_work("planner") as uow:
        for key, stage, reason in stages:
            uow.add_stage(StageChange(key, stage, at(5, 8), "planner", reason))
        uow.commit()


def test_looms_that_are_ready_or_wait_no_more_are_neither_next_nor_left_over(planned):
    before = words(screen("status").run())
    assert "1 loom not in this plan" in before
    record(planned, (SEVEN, Stage.SIGNED_OFF, None), (NINE, Stage.LEFT_OUT, "to be scrapped"))
    said = words(screen("status").run())
    after = said[said.index("The next seven days") :]
    assert "A-10 |" in after and "A-7 |" not in after
    assert "1 loom that the plan left over was taken up, put off or left out since" in said
    assert "rail unknown" not in said and "not in this plan" not in said


@pytest.mark.parametrize("why", [message("left-put-off", reason="no rail"), as_it_stands("put off: no rail")])
def test_a_loom_put_off_stays_left_over_where_the_plan_knew_of_it(tmp_path, monkeypatch, why):
    plan = small_plan(small_mill())
    knew = replace(plan, left_over=(replace(plan.left_over[0], why=why),))
    path = put(tmp_path / "m.db", small_mill(), knew)
    monkeypatch.setenv("BEAMSLOT_DB", path)
    record(path, (NINE, Stage.PUT_OFF, "no rail"))
    assert "1 loom not in this plan" in words(screen("status").run())


def test_a_new_plan_shows_at_once(planned):
    app = screen("status").run()
    assert "1,500 EUR for 2 bookings" in words(app)
    plan = small_plan(small_mill())
    with open_store(planned).unit_of_work("planner") as uow:
        uow.save_plan(replace(plan, bookings=plan.bookings[:1]), published=True)
        uow.commit()
    # what was planned first stays; of the new plan the one booking that it has
    assert "planned up to this month 1,060 EUR" in words(app.run())
    assert "1,000 EUR for 1 booking" in words(app)


def test_the_board_filters_by_hall_type_and_number(planned):
    app = screen("bookings").run()
    assert not app.exception
    assert "Hall 1: 2 bookings" in words(app)
    app.text_input[0].set_value("a-1").run()
    assert "Hall 1: 1 booking" in words(app)
    app.text_input[0].set_value("").run()
    app.multiselect[1].set_value(["RP-W"]).run()
    assert "No booking fits these filters" in app.info[0].value


@pytest.fixture
def two_weeks(tmp_path, monkeypatch):
    """A-7 on Wednesday 6 January, A-10 a fortnight after its date in the small plan: on Thursday 21 January."""
    plan = small_plan(small_mill())
    first, second = plan.bookings
    later = replace(second, start=at(21, 7), end=at(22, 9), beam_out_p50=at(21, 13))
    path = put(tmp_path / "m.db", small_mill(), replace(plan, bookings=(first, later)))
    monkeypatch.setenv("BEAMSLOT_DB", path)
    return path


def test_a_loom_sought_is_found_in_any_week(two_weeks):
    app = screen("bookings").run()
    assert "A-10 |" not in words(app)
    app.text_input[0].set_value("a-10").run()
    # 21 January is in the week of Monday 18 January
    assert app.selectbox[0].value == date(2027, 1, 18) and "A-10 |" in words(app)
    assert app.query_params["loom"] == "a-10"


def test_a_loom_sought_is_still_sought_on_the_way_back(two_weeks):
    app = screen("bookings")
    app.query_params["loom"] = "A-10"
    app.run()
    assert app.text_input[0].value == "A-10" and app.selectbox[0].value == date(2027, 1, 18)


def test_of_a_loom_without_booking_it_is_said_why(two_weeks):
    app = screen("bookings").run()
    app.text_input[0].set_value("A-9").run()
    assert app.info[0].value.splitlines()[-1] == "- Loom A-9 (Hall 2): left over: to survey: rail unknown"
    record(two_weeks, (NINE, Stage.LEFT_OUT, "to be scrapped"))
    assert "Loom A-9 (Hall 2): left out on Tue 5 Jan 2027: to be scrapped" in plainly(app.run().info[0].value)
    app.text_input[0].set_value("77").run()
    assert app.info[0].value == "No loom has 77 in its number."


def plainly(markdown: str) -> str:
    return markdown.replace("\\", "")


def test_the_table_says_what_the_axis_shows(planned):
    said = words(screen("bookings").run())
    assert "style, firm" in said and "repeat, pilot" in said
    assert "Thu 7 Jan 2027 08:00" in said and "Fri 8 Jan 2027 10:00" in said
    assert "rail: old rail" in said


def test_the_list_of_looms_is_in_natural_order_and_filters_by_stage(planned):
    app = screen("looms").run()
    said = words(app)
    # Hall 1 before Hall 2, A-7 before A-10
    assert said.index("A-7 |") < said.index("A-10 |") < said.index("A-9 |")
    app.multiselect[2].set_value(["to survey"]).run()
    assert "1 of 3 looms" in words(app) and "A-7 |" not in words(app)


def test_a_loom_sheet_shows_booking_reasons_and_where_values_came_from(planned):
    app = screen("looms")
    app.query_params["loom"], app.query_params["hall"] = "A-7", "Hall 1"
    app.run()
    assert not app.exception
    said = words(app)
    assert "Loom A-7, Hall 1" in said
    assert "Wed 6 Jan 2027 06:00" in said and "lacks 1 pc of RAIL" in said
    assert "55" in said  # what the other date would cost more
    assert "every loom" in said and "drill the rail" not in said  # its rail is drilled
    # A-7 is the first row below the heading: its machine type stands in B2, its reed width in E2
    assert "190 cm" in said and "| E2 |" in said and "mill.xlsx" in said
    assert "Not known: Row, Place" in said


def test_a_loom_sheet_says_what_to_survey(planned):
    app = screen("looms")
    app.query_params["loom"] = "A-9"
    app.run()
    assert "look up rail at the loom" in app.warning[0].value
    assert "leaves this loom over: to survey: rail unknown" in words(app)


def test_a_loom_sheet_does_not_give_a_reason_that_is_out_of_date(planned):
    record(planned, (NINE, Stage.SIGNED_OFF, None))
    app = screen("looms")
    app.query_params["loom"] = "A-9"
    said = words(app.run())
    assert "No booking in the published plan; the loom is signed off." in said
    assert "leaves this loom over" not in said


def converted(path: str, *done: Conversion) -> None:
    """A-7 is signed off on 6 January 2027 at 10:00 in Vienna."""
    with open_store(path).unit_of_work() as uow:
        uow.add_stage(StageChange(SEVEN, Stage.SIGNED_OFF, at(6, 9), "planner"))
        for one in done:
            uow.add_conversion(one)
        uow.commit()


def sheet_of_a_7() -> str:
    app = screen("looms")
    app.query_params["loom"] = "A-7"
    return words(app.run())


def test_the_sheet_of_a_signed_off_loom_says_who_converted_it_when_and_how_long(planned):
    converted(
        planned,
        Conversion(SEVEN, "AJ-N", "Fitters", 1, at(6, 5), at(6, 9), {"fit the device": 205}, 232, WindowKind.STYLE),
    )
    said = sheet_of_a_7()
    assert "Converted | Wed 6 Jan 2027 10:00 | by Fitters, 232 min | " in said
    for fact in ("crew | Fitters", "begun | Wed 6 Jan 2027 06:00", "ended | Wed 6 Jan 2027 10:00", "on the loom | 232 min",
                 "· fit the device | 205 min", "window | style"):  # fmt: skip
        assert fact in said, fact


def test_the_sheet_of_a_loom_signed_off_without_a_conversion_says_that_nothing_was_recorded(planned):
    converted(planned)
    assert "Converted | Wed 6 Jan 2027 10:00 | crew and minutes were not recorded" in sheet_of_a_7()


def test_after_a_conversion_the_next_beam_out_is_one_that_lies_ahead(planned):
    """By the reading of 4 January the warp of A-7 runs out on 5 January at 22:00; after the style change of 4 h the next
    one of 3,000 m weaves 3,000 / 17.496 = 171.5 h, up to 13 January about 05:30. It was converted on 6 January."""
    assert "Next beam-out, P50 | Tue 5 Jan 2027" in sheet_of_a_7()
    converted(planned)
    said = sheet_of_a_7()
    assert "Next beam-out, P50 | Wed 13 Jan 2027" in said
    assert "reading of Mon 4 Jan 2027 06:00, before the conversion" in said
    assert "Beam-outs ahead" in said and "Chances to convert" not in said and "Other dates" not in said
    ahead = loom_sheet(here(planned), "A-7").beam_outs_ahead
    assert min(window.p50_at for window in ahead) > at(6, 9)


def test_a_link_without_a_hall_asks_for_it_where_the_number_is_in_several(tmp_path, monkeypatch):
    mill = small_mill()
    twin = LoomKey("Hall 2", "A-7")
    looms = {**mill.looms, twin: replace(mill.looms[SEVEN], hall="Hall 2", machine_type="RP-W")}
    monkeypatch.setenv("BEAMSLOT_DB", put(tmp_path / "twins.db", replace(mill, looms=looms), small_plan(mill)))
    app = screen("looms")
    app.query_params["loom"] = "A-7"
    app.run()
    assert not app.info and app.title[0].value == "Loom A-7"
    said = words(app)
    assert "2 looms have this number" in said and "Hall 1 | A-7 | AJ-N" in said and "Hall 2 | A-7 | RP-W" in said
    sheets = "".join(item.proto.body for item in app.get("html"))
    assert 'href="looms?loom=A-7&amp;hall=Hall+1"' in sheets and 'href="looms?loom=A-7&amp;hall=Hall+2"' in sheets


def test_one_loom_is_counted_as_one(tmp_path, monkeypatch):
    mill = small_mill()
    one = replace(mill, looms={SEVEN: mill.looms[SEVEN]}, warps={SEVEN: mill.warps[SEVEN]})
    plan = replace(small_plan(mill), bookings=small_plan(mill).bookings[:1], left_over=())
    monkeypatch.setenv("BEAMSLOT_DB", put(tmp_path / "one.db", one, plan))
    for name in ("status", "bookings", "looms", "needs", "scenarios"):
        said = words(screen(name).run())
        assert not re.search(r"\b1 (looms|bookings|kits|lines|parts)\b", said), name


def test_needs_that_are_covered_ask_for_no_order(planned):
    app = screen("needs").run()
    assert not app.exception
    said = words(app)
    # two rails on hand, one due on Friday 8 January, two bookings: the stock covers both, nothing is to be ordered
    assert "Nothing: stock and open orders cover every need." in said
    assert "0 of 2" in said and "0 waiting for receipts, 2 short" in said


def test_before_a_plan_is_published_the_needs_say_whose_they_are(unplanned):
    said = words(screen("needs").run())
    assert "These are the needs of each beam-out taken as it comes, since no plan is made yet" in said
    assert "What to order, by when" in said


def test_a_late_order_is_said_in_words(tmp_path, monkeypatch):
    mill = small_mill()
    mill = replace(mill, parts={"RAIL": replace(mill.parts["RAIL"], on_hand=0)}, receipts=())
    monkeypatch.setenv("BEAMSLOT_DB", put(tmp_path / "late.db", mill, small_plan(mill)))
    said = words(screen("needs").run())
    # 28 days of lead time before Wednesday 6 January: the order-by day is in December
    assert "late by" in said and "A-7 (Hall 1) by" in said
    assert "Dec 2026" in said


def test_a_database_that_cannot_be_opened_is_one_line(tmp_path, monkeypatch):
    monkeypatch.setenv("BEAMSLOT_DB", str(tmp_path))
    app = AppTest.from_file(APP, default_timeout=30).run()
    assert not app.exception
    assert app.error[0].value.endswith(" is a folder; name the database in it")


def test_stages_stand_in_the_order_of_the_programme(planned):
    record(planned, (SEVEN, Stage.IN_WORK, None))
    app = screen("looms").run()
    # by the alphabet: booked, in work, to survey
    assert app.multiselect[2].options == ["to survey", "booked", "in work"]
    cells = re.findall(r'data-rank="(\d)">(to survey|booked|in work)<', app.get("html")[0].proto.body)
    assert sorted(cells) == [("0", "to survey"), ("1", "booked"), ("2", "in work")]


def test_quantities_and_money_carry_their_units(planned):
    app = screen("looms")
    app.query_params["loom"] = "A-7"
    said = words(app.run())
    assert "RAIL | 1 pc |" in said  # of the parts tab
    needs = words(screen("needs").run())
    assert "1 pc of RAIL" in needs
    scenarios = screen("scenarios").run()
    scenarios.selectbox(key="scenario entry").set_value("receipt").run()
    assert scenarios.selectbox(key="scenario line").options[-1] == "PO-1: 1 pc of RAIL, due Fri 8 Jan 2027"


def test_what_a_conversion_saves_is_money(tmp_path, monkeypatch):
    mill = small_mill()
    mill = replace(mill, looms={**mill.looms, SEVEN: replace(mill.looms[SEVEN], saving_per_day=15.75)})
    monkeypatch.setenv("BEAMSLOT_DB", put(tmp_path / "m.db", mill))
    app = screen("looms")
    app.query_params["loom"] = "A-7"
    assert "Saving per day | 15.75 EUR" in words(app.run())


def test_an_unknown_loom_has_a_title_and_a_way_on(planned):
    app = screen("looms")
    app.query_params["loom"] = "A-99"
    app.run()
    assert app.title[0].value == "Loom A-99"
    assert app.info[0].value.startswith("There is no loom A-99. The list of all looms")
    assert 'href="looms"' in app.get("html")[0].proto.body


def test_the_bookings_name_the_zone_of_their_times(planned):
    assert "local times of the mill (Europe/Vienna)" in words(screen("bookings").run())


def test_what_a_plan_would_move_stands_on_the_bookings_before_it_is_published(planned):
    # A-7 from Wednesday 06:00 to 08:00, 12 dearer than before; A-10, which is held, stays
    before = small_plan(small_mill())
    first, second = before.bookings
    later = replace(first, start=first.start + timedelta(hours=2), end=first.end + timedelta(hours=2),
                    cost=replace(first.cost, saving_foregone=12.0))  # fmt: skip
    made = replace(
        before, bookings=(later, second), undoing=(Undo(first.key, 60.0),), asked=Asked(held=frozenset({second.key}))
    )
    with open_store(planned).unit_of_work("planner") as uow:
        number = uow.save_plan(made, published=False)
        uow.commit()
    app = screen("bookings").run()
    assert not app.exception
    said = words(app)
    assert f"Plan {number}, made and not published" in said and "Nothing of this is in force yet." in said
    body = next(part.proto.body for part in app.get("html") if "Staying would cost" in part.proto.body)
    # A-7 lies before its type's pilot has run for the soak time, which is told before any price
    for cell in ("06:00", "08:00", "to have run 7 days", ">12<", ">60<"):
        assert cell in body, cell
    next(one for one in app.button if one.label == f"Publish plan {number}").click().run()
    asked = f"Plan {number} comes into force: 2 looms booked; of the present bookings 1 would be others; its kits are reserved."
    assert app.warning[0].value == asked
    with open_store(planned).unit_of_work("planner") as uow:
        now = uow.save_plan(made, published=True)
        uow.commit()
    app.run()  # who was looking at the first one hears of it, and goes on looking
    assert app.warning[0].value.startswith(f"Meanwhile another plan is in force: plan {now} by planner of ")
    assert f"Plan {number}, made and not published" in words(app)
    app = screen("bookings").run()
    assert not app.warning and "made and not published" not in " ".join(one.value for one in app.header)
    assert "repeat, pilot, kept" in "".join(part.proto.body for part in app.get("html"))
