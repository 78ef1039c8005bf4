"""Settings: alarms, visits and what was read, with what is done about them. Hall: every loom at its place."""

import shutil
from dataclasses import replace
from pathlib import Path

import pytest
from card_mill import LOOM, card_mill, fill_cards, now_here, well_done
from looking import as_role, look, press
from screen_mill import put, small_mill
from screen_texts import words
from three_looms import at

from dashboards.screens import settings as screen
from tracker.commissioning.settings.alarms import AlarmKind
from tracker.commissioning.settings.taught import Taught
from tracker.domain.people import Role
from tracker.services.context import Context
from tracker.services.loading.load import LoadRequest, load
from tracker.services.own_clock import give_own_clock
from tracker.services.work.entering import enter_records
from tracker.services.work.proposed_setpoint import take_over_setpoint
from tracker.services.work.settings import settings


@pytest.fixture(scope="module")
def made(tmp_path_factory) -> Path:
    """Loom 1 was signed off on Tuesday 5 January with both crossing angles at 311; it is Friday, 06:00."""
    folder = tmp_path_factory.mktemp("made")
    db = card_mill(str(folder / "mill.db"))
    assert load(now_here(db), [fill_cards(db, folder / "card.xlsx", well_done)], LoadRequest(records_only=True)).written
    give_own_clock(Context(db), at(4, 6))
    return Path(db)


@pytest.fixture
def mill(made, tmp_path, monkeypatch) -> Context:
    db = str(shutil.copy(made, tmp_path / "mill.db"))
    monkeypatch.setenv("BEAMSLOT_DB", db)
    return Context(db)


@pytest.mark.long
def test_a_value_out_of_its_limits_is_an_alarm_until_it_is_seen(mill):
    app = look("settings")
    assert "Visits due | 1 | 1 overdue" in words(app) and "■ overdue" in words(app) and "✓ No alarm." in words(app)
    app.number_input[0].set_value(320.0)
    press(app, "Record it")
    assert "1 on 1 loom" in words(app).replace(" | ", " ") and "320" in app.warning[0].value
    assert "■ overdue" not in words(app), "the visit of the first day is done"
    press(app, "They were seen")
    assert "said" in app.error[0].value or "why" in app.error[0].value
    app.text_input[-1].set_value("the frame was bent")
    press(app, "They were seen")
    assert not app.warning and "the frame was bent" in words(app)


def test_alarms_of_two_kinds_of_one_loom_are_seen_by_one_form(mill, monkeypatch):
    enter_records(mill, "1", None, {"set_values": [{"setting": "crossing angle", "side": "left", "value": 320.0}]}, {})

    def two_kinds(context, as_of=None):
        report = settings(context, as_of=as_of)
        (outside,) = report.review.alarms
        rising = replace(
            outside, kind=AlarmKind.RISING_OR_FALLING, figures={"readings": 5, "size": 9.0, "value": 320.0}
        )
        return replace(report, review=replace(report.review, alarms=(outside, rising)))

    monkeypatch.setattr(screen, "settings", two_kinds)
    app = look("settings")
    assert [one.value for one in app.subheader] == ["outside: 1", "rising or falling: 1"] and len(app.warning) == 2
    assert [one.label for one in app.button].count("They were seen") == 1


@pytest.mark.long
def test_who_may_only_look_records_nothing(mill, monkeypatch):
    as_role(monkeypatch, Role.VIEWER)
    app = look("settings")
    assert not app.button and "To record work is for" in words(app)


def test_a_proposed_setpoint_becomes_the_methods_and_its_limits_move_with_it(mill):
    """310 in 305 to 315 becomes 312 in 307 to 317."""
    report = settings(mill)
    with mill.reading() as uow:
        machine_type, before = uow.mill().looms[LOOM].machine_type, uow.method().version
    take_over_setpoint(
        mill, report, Taught("crossing angle", "left", "deg", machine_type, None, 5, 312, 1, 310.0, 312.0)
    )
    with mill.reading() as uow:
        method = uow.method()
    (left,) = [one for one in method.setpoints if one.side == "left"]
    assert (method.version, left.target, left.low, left.high) == (before + 1, 312, 307, 317)


@pytest.mark.long
def test_without_a_value_the_screen_says_so(tmp_path, monkeypatch):
    monkeypatch.setenv("BEAMSLOT_DB", put(tmp_path / "empty.db", small_mill()))
    assert "no value of a setting is recorded yet" in look("settings").info[0].value


def test_every_loom_stands_at_its_place_and_what_the_filters_leave_out_is_faint(mill):
    app = look("hall", stage="signed off")
    html = next(str(one.proto.body) for one in app.get("html") if 'class="hall"' in str(one.proto.body))
    assert "● signed off" in html and html.count("hall-loom") == 3 and html.count("faint") == 2
    assert 'href="looms?loom=1&amp;hall=H"' in html
    assert "1 of 3 looms" in words(app)


@pytest.mark.long
def test_a_hall_without_looms_says_what_to_load(tmp_path, monkeypatch):
    from tracker.store import open_store

    open_store(tmp_path / "empty.db", make=True)
    monkeypatch.setenv("BEAMSLOT_DB", str(tmp_path / "empty.db"))
    assert "There is no loom yet" in look("hall").info[0].value
