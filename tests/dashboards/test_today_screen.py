"""Today: a crew finds its cards, and tells a conversion from the start to the sign-off by taps, each role what is its work."""

import shutil
from io import BytesIO
from pathlib import Path

import pytest
from card_mill import LOOM, card_mill, now_here
from looking import as_role, look, press, run
from PIL import Image
from screen_mill import put, small_mill
from screen_texts import words
from streamlit.testing.v1 import AppTest
from three_looms import at

from tracker.domain.people import Role
from tracker.services.context import Context
from tracker.services.own_clock import give_own_clock, set_clock
from tracker.services.parts.stockroom import read_stockroom
from tracker.services.people.absences import record_absence


@pytest.fixture(scope="module")
def made(tmp_path_factory) -> Path:
    """Loom 1 is booked on Tuesday 5 January, 08:00 to 14:00 UTC, for crew F1; it is 08:00 on that day."""
    db = card_mill(str(tmp_path_factory.mktemp("made") / "mill.db"))
    give_own_clock(Context(db), at(1, 8))
    return Path(db)


@pytest.fixture
def mill(made, tmp_path, monkeypatch) -> Context:
    db = str(shutil.copy(made, tmp_path / "mill.db"))
    monkeypatch.setenv("BEAMSLOT_DB", db)
    as_role(monkeypatch, Role.FITTER)
    return Context(db)


def opened(part: str | None = None) -> AppTest:
    app = look("today", crew="F1", loom="1", hall="H")
    return show(app, part) if part else app


def show(app: AppTest, part: str) -> AppTest:
    app.segmented_control[0].set_value(part)
    return run(app)


def test_the_crew_is_chosen_once_and_the_address_keeps_it(mill):
    app = look("today")
    assert "Choose your crew" in app.info[0].value and "Loom 1" not in words(app)
    app.pills[0].set_value("F1")
    run(app)
    assert app.query_params["crew"] == "F1"
    assert [one.label for one in app.button] == ["Loom 1 (H) · today"]
    assert "✓ Kit handed out, people and tools there as booked" in words(app)
    press(app, "Loom 1 (H) · today")
    assert app.query_params["loom"] == "1" and "Start: the loom is stopped now" in [one.label for one in app.button]


def test_what_became_of_the_kit_is_told_and_the_rest_goes_back(mill):
    """Of PIN 10 four were handed out: three stay in the loom and one comes back, so that seven are on hand."""
    press(opened(), "Start: the loom is stopped now")
    app = opened("today-tab-parts")
    assert "4 pc of PIN" in words(app) and "1 pc of RAIL" in words(app)
    for field, many in zip(app.number_input[:3], (4, 1, 0), strict=True):
        field.set_value(many)
    press(app, "Note it")
    assert app.error and on_hand(mill) == 6  # five of four
    app.number_input[0].set_value(3)
    press(app, "Note it")
    assert "✓ used 3 pc, left over 1 pc, broken 0 pc" in words(app) and on_hand(mill) == 7


def on_hand(mill: Context) -> float:
    with mill.reading() as uow:
        return read_stockroom(uow).part("PIN").on_hand


@pytest.mark.long
def test_what_is_missing_stands_below_the_loom_and_yesterdays_is_overdue(mill):
    record_absence(now_here(mill.database, at(1, 7)), "F1", at(1, 0).date(), at(1, 0).date(), 1, "ill")
    set_clock(mill, at(2, 8))
    app = look("today", crew="F1")
    assert [one.label for one in app.button] == ["Loom 1 (H) · overdue"]
    assert "■ 1 of F1 away Tue 5 Jan 2027 to Tue 5 Jan 2027" in words(app)


@pytest.mark.long
def test_a_conversion_is_told_from_the_start_to_the_sign_off(mill, monkeypatch):
    app = opened()
    assert "the rail by two people or a rated sling at its lifting points" in words(app)
    press(app, "Start: the loom is stopped now")
    assert "Loom 1 (H): begun." in app.success[0].value
    set_clock(mill, at(1, 8.25))
    press(run(app), "Locked: now")
    assert "✓ Locked Tue 5 Jan 2027 08:15" in words(app)

    show(app, "today-tab-operations").number_input[0].set_value(60.0)
    press(app, "Done")
    assert "60 N·m cannot be: the method asks for 40 N·m, and a bolt bears no more than 53.3 N·m" in app.error[0].value
    assert app.number_input[0].value == 60.0
    app.number_input[0].set_value(41.0)
    press(app, "Done")
    assert "✓ done, M. Berg, 41 N·m" in words(app)
    assert "for the electrician" in words(app), "Electrics is a hold point of another trade"
    as_role(monkeypatch, Role.ELECTRICIAN, name="L. Costa")
    press(run(app), "Done", nth=-1)

    as_role(monkeypatch, Role.FITTER)
    show(app, "today-tab-settings").number_input[0].set_value(320.0)
    press(app, "Set so", 0)
    assert "■ 320 lies outside the limits" in words(app) and "To waive a check or setting is for planner." in words(app)
    press(app, "Set so", 1)
    assert "✓ set 310" in words(app)

    set_clock(mill, at(1, 12))
    press(show(app, "today-tab-checks"), "Yes")
    app.number_input[0].set_value(5.0)
    press(app, "Note the value")
    press(show(app, "today-tab-end"), "The loom is at speed: run-in begins")
    assert "□ setting crossing angle left is 320" in words(app).replace("\\", "")
    press(press(app, "Sign off"), "Yes: Sign off")
    assert "crossing angle" in app.error[0].value, "nothing is signed off with a setting open"

    as_role(monkeypatch, Role.PLANNER, name="A. Planner")
    show(app, "today-tab-settings").text_input[0].set_value("the frame allows no more")
    press(app, "Waive")
    assert "◆ waived by A. Planner: the frame allows no more" in words(app)

    as_role(monkeypatch, Role.FITTER)
    show(app, "today-tab-end")
    assert "✓ Nothing is open." in words(app)
    press(app, "Sign off")
    assert "everything on its card counts as done" in app.warning[0].value
    press(app, "Yes: Sign off")
    with mill.reading() as uow:
        assert uow.stages()[LOOM].stage.value == "signed off"


@pytest.mark.long
def test_a_remark_is_added_to_and_a_conversion_that_fails_is_stopped_with_its_reason(mill):
    app = press(opened(), "Start: the loom is stopped now")
    set_clock(mill, at(1, 9))
    show(app, "today-tab-end").text_area[0].set_value("clamp was loose")
    press(app, "Note the remark")
    app.text_area[0].set_value("and the guard")
    press(app, "Note the remark")
    assert "clamp was loose · and the guard" in words(app)
    press(press(app, "Stop the conversion"), "Yes: Stop the conversion")
    assert "needs its reason" in app.error[0].value
    app.text_input[-1].set_value("the rail is bent")
    press(press(app, "Stop the conversion"), "Yes: Stop the conversion")
    with mill.reading() as uow:
        assert (uow.stages()[LOOM].stage.value, uow.stages()[LOOM].reason) == ("stopped", "the rail is bent")


def test_who_may_only_look_finds_the_card_and_no_button(mill, monkeypatch):
    as_role(monkeypatch, Role.VIEWER)
    app = opened()
    assert "To record work is for" in words(app) and "own lock" in words(app)
    assert [one.label for one in app.button] == ["Loom 1 (H) · today"]


@pytest.mark.long
def test_without_a_plan_the_next_step_is_said(tmp_path, monkeypatch):
    monkeypatch.setenv("BEAMSLOT_DB", put(tmp_path / "unplanned.db", small_mill()))
    assert "No plan is published yet" in look("today").info[0].value


@pytest.mark.long
def test_an_address_with_a_loom_that_there_is_not_says_so(mill):
    app = look("today", crew="F1", loom="77", hall="H")
    assert app.subheader[0].value == "Loom 77 (H)" and "77" in app.info[-1].value


def test_a_photo_stands_beside_its_remark_and_what_is_none_is_refused_beside_its_field(mill):
    app = press(opened(), "Start: the loom is stopped now")
    show(app, "today-tab-end").text_area[0].set_value("the rail is bent")
    app.file_uploader[0].set_value(("rail.png", b"no picture", "image/png"))
    press(app, "Note the remark")
    assert (
        "no picture of a kind that can be read" in app.error[0].value and app.text_area[0].value == "the rail is bent"
    )
    file = BytesIO()
    Image.new("RGB", (40, 30), "red").save(file, "PNG")
    app.file_uploader[0].set_value(("rail.png", file.getvalue(), "image/png"))
    press(app, "Note the remark")
    assert "remark and photo noted" in app.success[0].value and "the rail is bent" in words(app)
    (photo,) = app.get("image")
    assert photo.proto.imgs[0].alt == "the rail is bent" and "M. Berg" in photo.captions[0]


def test_an_electrician_finds_when_a_loom_needs_him_and_the_conversion_stays_the_fitters(mill, monkeypatch):
    """Of the six booked hours the last one needs him: 13:00 to 14:00."""
    as_role(monkeypatch, Role.ELECTRICIAN, name="L. Costa")
    app = look("today", crew="E1", loom="1", hall="H")
    assert list(app.pills[0].options) == ["E1", "F1"]
    assert "Needed: 1 × electrician, Tue 5 Jan 2027 13:00 to 14:00" in words(app)
    assert "no location" in words(app) and "RAIL" in words(app), "the kit, and where it is fetched"
    press(app, "Start: the loom is stopped now")
    with mill.reading() as uow:
        assert [row["crew"] for row in uow.rows("work_done").values()] == ["F1"]
    assert "On the loom" in [one.value for one in show(app, "today-tab-operations").subheader]
    app = show(app, "today-tab-settings")
    next(one for one in app.number_input if one.label == "Grams left, left").set_value(640.0)
    press(app, "Note the value")
    assert "✓ left: 640 g" in words(app)
