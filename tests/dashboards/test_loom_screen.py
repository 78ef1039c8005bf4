"""The screen of one loom: everything about it, and what is done there, by the services that the command calls."""

import shutil
from pathlib import Path

import pytest
from card_mill import LOOM, card_mill
from looking import as_role, look, press, run
from screen_texts import words
from streamlit.testing.v1 import AppTest
from three_looms import at

from tracker.domain.people import Role
from tracker.services.context import Context
from tracker.services.loading.by_hand import type_in
from tracker.services.own_clock import give_own_clock
from tracker.services.work.entering import enter_records
from tracker.services.work.record import StageTold, record_stage


@pytest.fixture(scope="module")
def made(tmp_path_factory) -> Path:
    """Loom 1 is in work since Tuesday 5 January 08:00 UTC, its angle on the left set to 310; it is 12:00."""
    db = card_mill(str(tmp_path_factory.mktemp("made") / "mill.db"))
    here = give_own_clock(Context(db), at(1, 12))
    record_stage(here, "1", "in work", told=StageTold(at(1, 8)))
    row = {"setting": "crossing angle", "side": "left", "value": 310.0, "why": "set"}
    enter_records(here, "1", None, {"set_values": [row]}, {"at": at(1, 9)})
    return Path(db)


@pytest.fixture
def mill(made, tmp_path, monkeypatch) -> Context:
    db = str(shutil.copy(made, tmp_path / "mill.db"))
    monkeypatch.setenv("BEAMSLOT_DB", db)
    return Context(db)


def field(app: AppTest, label: str, nth: int = 0):
    kinds = (app.text_input, app.number_input, app.selectbox, app.date_input)
    return [one for kind in kinds for one in kind if one.label == label][nth]


@pytest.mark.long
def test_a_value_is_set_right_with_its_reason_and_never_over_anothers(mill):
    app = look("looms", loom="1", hall="H")
    field(app, "Value of").set_value("Reed width")
    run(app)
    new = "What it is (cm); empty = not known"
    field(app, new).set_value("192")
    press(app, "Set it right")
    assert "only with a reason" in app.error[0].value and field(app, new).value == "192"
    type_in(mill, "looms", [{"loom": "1", "hall": "H", "reed_width_cm": 191.0}])
    field(app, "Why, or how it is known").set_value("measured")
    press(app, "Set it right")
    assert any("191" in one.value for one in app.error), [one.value for one in app.error]
    with mill.reading() as uow:
        assert uow.mill().looms[LOOM].reed_width_cm == 191.0
    field(app, new).set_value("wide")
    press(app, "Set it right")
    assert "wide" in app.error[0].value
    field(app, new).set_value("192")
    press(app, "Set it right")
    assert "typed in: measured" in words(app)
    with mill.reading() as uow:
        assert uow.mill().looms[LOOM].reed_width_cm == 192.0


@pytest.mark.long
def test_settings_stops_and_stages_are_recorded_and_taken_back_there(mill):
    app = look("looms", loom="1", hall="H")
    assert "crossing angle (deg) | left |  | 310 | 310" in words(app)
    field(app, "Value").set_value(312.0)
    press(app, "Record it", 0)
    assert "crossing angle (deg) | left |  | 310 | 312" in words(app)
    field(app, "Stops").set_value(7)
    field(app, "Picks").set_value(5)
    press(app, "Record it", 2)
    assert app.error, "more stops than picks"
    field(app, "Picks").set_value(90_000)
    press(app, "Record it", 2)
    assert "all causes | 7 | 90,000" in words(app)
    field(app, "Stage").set_value("stopped")
    press(app, "Record it", 1)
    assert "broken off" in app.warning[0].value
    press(app, "Yes: Record it")
    assert "reason" in app.error[0].value
    press(app, "Take it back")
    assert "counts no more" in app.warning[0].value
    press(app, "Yes: Take it back")
    field(app, "Why it was a mistake").set_value("wrong loom")
    press(app, "Take it back")
    press(app, "Yes: Take it back")
    with mill.reading() as uow:
        assert LOOM not in uow.stages()


def test_who_may_only_look_finds_no_form(mill, monkeypatch):
    as_role(monkeypatch, Role.VIEWER)
    app = look("looms", loom="1", hall="H")
    assert not app.button
    assert [one.value for one in app.caption if "is for" in one.value] == [
        "To record work is for fitter, electrician, planner.",
        "To load lists is for planner.",
    ]
    assert "Who did what" in [one.value for one in app.subheader]


@pytest.mark.long
def test_the_list_keeps_its_filters_in_the_address(mill):
    app = look("looms", stage="in work", number="1")
    assert "1 of 3 looms" in words(app)
    assert [one.value for one in app.multiselect] == [[], [], ["in work"]]


def test_waste_and_bobbins_are_told_where_the_loom_is_shown(mill):
    app = look("looms", loom="1", hall="H")
    press(app, "Record it", 3)
    assert "a row of Waste needs its Waste width" in app.error[0].value
    field(app, "Width (mm)").set_value(62.0)
    press(app, "Record it", 3)
    field(app, "Grams left").set_value(640.0)
    press(app, "Record it", 4)
    assert "both sides | 62" in words(app) and "left | 640" in words(app)
