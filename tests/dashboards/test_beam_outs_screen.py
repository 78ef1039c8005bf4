"""The screen Beam-outs: what cannot be trusted first, and what is done about it there."""

from datetime import date, datetime, timedelta

import pandas as pd
import pytest
from looking import as_role, look
from opened import here
from screen_mill import AS_OF, NINE, SEVEN, TEN, put, small_mill, small_plan
from screen_texts import words
from streamlit.testing.v1 import AppTest

from dashboards.beam_out_charts import beam_out_frame
from dashboards.beam_out_forms import readings_to_fill
from dashboards.screens import beam_outs as beam_outs_screen
from tracker.domain.people import Role
from tracker.domain.progress import Stage
from tracker.services.loading.by_hand import type_in
from tracker.services.screens.beam_outs import beam_outs
from tracker.store import open_store

PAGE = "from dashboards.screens import beam_outs\nbeam_outs.page()\n"


@pytest.fixture
def planned(tmp_path, monkeypatch):
    """A-7 runs out on 5 January 22:00 (40 h at 17.496 m/h), A-10 after 80 h, A-9 after 114; A-7 and A-10 are booked."""
    path = put(tmp_path / "planned.db", small_mill(), small_plan(small_mill()))
    monkeypatch.setenv("BEAMSLOT_DB", path)
    return path


@pytest.fixture
def no_figures(monkeypatch):
    """Half of a run goes into them; what acts does not need them."""
    monkeypatch.setattr(beam_outs_screen, "_hall", lambda *_: None)


def button(app: AppTest, label: str):
    return next(one for one in app.button if one.label == label)


def test_the_list_has_each_loom_with_its_reading_metres_booking_and_stage(planned):
    said = words(look("beam_outs"))
    # 699.84 m at 06:00, and the board looks at 06:00
    assert "A-7 | Hall 1 | fresh | Mon 4 Jan 2027 06:00 | 700 m |" in said
    assert "Wed 6 Jan 2027 06:00 |" in said and "A-9 | Hall 2 |" in said and "not booked" in said
    assert "1 of all shown have no booking" in said


def test_overdue_readings_stand_first_in_list_and_form(planned):
    late = AS_OF + timedelta(hours=60)  # A-7 should have run out 20 hours before
    board = beam_outs(here(planned), late)
    assert [(line.key, line.window.state) for line in board.lines][:2] == [(SEVEN, "overdue"), (TEN, "ok")]
    frame = readings_to_fill(board, board.lines)
    assert list(frame["loom"]) == ["A-7", "A-10", "A-9"] and frame["warp_left_m"].isna().all()
    # 1399.68 m less 60 h at 17.496 m/h
    assert frame["expected"][1] == pytest.approx(1399.68 - 60 * 17.496)
    drawn = beam_out_frame(board.lines, board.zone)
    assert drawn["says"][0] == "repeat, overdue"
    # A-10's booking was made for the beam-out of the 7th at 14:00, its first; A-9 has none, nor has any second beam-out
    assert set(drawn["row"][drawn["start_ms"].notna()]) == {"A-7", "A-10"} and drawn["start_ms"].notna().sum() == 2


def test_readings_that_do_not_fit_are_refused_by_loom_and_those_that_fit_are_written(planned, monkeypatch):
    # as the form hands it over: the editor's cells cannot be typed into by this test, so its frame is filled in
    app = AppTest.from_string(
        "import streamlit as st\nfrom dashboards import access, forms\nfrom dashboards import beam_out_forms as own\n"
        "from dashboards.forms import Form\nfrom tracker.services.screens.beam_outs import beam_outs\n"
        "board = access.ask_now(beam_outs)\nframe = own.readings_to_fill(board, board.lines)\n"
        "frame.loc[0, 'warp_left_m'] = st.number_input('left', value=99999.0)\nframe.loc[2, 'warp_left_m'] = 100.0\n"
        "forms.say_done()\nwith Form('r') as form:\n    form.act('Enter', lambda: own.enter_readings(frame))\n",
        default_timeout=30,
    ).run()
    app.button[0].click().run()
    assert [one.value for one in app.error] == [
        "Loom A-7 (Hall 1): Warp left (m) '99999.0' is not possible; give a number from 0 to 60,000 m",
        "1 row does not fit; nothing was written; mend or empty what is named",
    ]
    app.number_input[0].set_value(350.0).run()
    app.button[0].click().run()
    assert not app.error and "2 rows added" in app.success[0].value
    with open_store(planned).reading() as uow:
        readings = uow.mill().readings
    assert [reading.warp_left_m for reading in readings[SEVEN]] == [350.0] and len(readings[NINE]) == 1


def test_a_loom_is_protected_put_off_and_told_early_in_its_tabs(no_figures, planned):
    app = look("beam_outs")
    app.selectbox(key="protect a loom loom 0").set_value(NINE)
    app.date_input[0].set_value(date(2027, 1, 20))
    button(app, "Protect it").click().run()
    assert not app.exception and "A-9" in app.success[0].value
    assert "Wed 20 Jan 2027" in words(app)

    app.selectbox(key="put off loom 0").set_value(TEN)
    button(app, "Record it").click().run()
    assert "put off needs a reason" in app.error[0].value or "reason" in app.error[0].value
    assert app.selectbox(key="put off loom 0").value == TEN
    app.text_input(key="put off why 0").set_value("no rail")
    button(app, "Record it").click().run()
    assert not app.error
    with open_store(planned).reading() as uow:
        assert uow.stages()[TEN].stage is Stage.PUT_OFF

    button(app, "Enter this beam-out").click().run()
    assert "no loom is chosen yet" in app.error[0].value


def test_a_standing_span_is_entered_and_taken_out_after_a_question(no_figures, planned):
    local = datetime(2027, 1, 7, 6)
    span = {"loom": "A-9", "hall": "Hall 2", "from_at": local, "to_at": local + timedelta(days=1), "reason": "no order"}
    assert type_in(here(planned), "standing", [span]).written
    app = look("beam_outs")
    assert any("no order" in one.value for one in app.markdown)
    button(app, "Take it out").click().run()
    assert "taken out; bookings in it may move" in app.warning[0].value
    button(app, "Yes: Take it out").click().run()
    assert not any("no order" in one.value for one in app.markdown) and not app.exception


def test_without_looms_it_says_what_to_do_and_without_a_reading_why(tmp_path, monkeypatch):
    path = tmp_path / "empty.db"
    open_store(path, make=True)
    monkeypatch.setenv("BEAMSLOT_DB", str(path))
    assert "**Load**" in look("beam_outs").info[0].value


def test_who_may_not_finds_the_list_and_no_form(no_figures, planned, monkeypatch):
    as_role(monkeypatch, Role.VIEWER)
    app = look("beam_outs")
    assert "A-7 |" in words(app) and not app.button and "for planner" in app.caption[-1].value


def test_filters_stand_in_the_address(no_figures, planned):
    app = AppTest.from_string(PAGE, default_timeout=30)
    app.query_params["hall"] = ["Hall 2"]
    app.run()
    assert app.multiselect[0].value == ["Hall 2"] and "A-7 |" not in words(app)
    app.multiselect[0].set_value([]).run()
    assert "A-7 |" in words(app) and "hall" not in app.query_params


def test_the_editor_begins_with_moments_of_the_mill(planned):
    board = beam_outs(here(planned), AS_OF)
    assert list(readings_to_fill(board, board.lines)["read_at"]) == [pd.Timestamp(2027, 1, 4, 6)] * 3
