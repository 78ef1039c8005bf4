"""A form that acts: what is refused stands beside its field with what was typed, what is done is said once, what cannot be undone
is asked in a sentence first, and nobody finds a form whose service would refuse them."""

import pytest
from screen_mill import put, small_mill
from streamlit.testing.v1 import AppTest

from dashboards import access
from dashboards.navigation import lands_on
from tracker.domain.people import EVERY_ROLE, Role
from tracker.services.context import Actor

SCRIPT = """
import streamlit as st
from dashboards import access, forms
from dashboards.forms import Form
from tracker.errors import DataError, UsageError, message
from tracker.services.people.permissions import May

def give(loom, torque):
    if loom != "A-7":
        raise DataError("person-unknown", person=loom)
    if torque == 9:
        raise UsageError("record-lacks", table="Work done", field="torque read")
    st.session_state.setdefault("given", []).append((loom, torque))
    return message("own-value", value=f"{loom} has {torque}")

forms.say_done()
with Form("give") as form:
    loom = st.text_input("Loom")
    form.beside("person-unknown")
    torque = st.number_input("Torque", value=0)
    form.beside("torque read")
    form.act("Give", lambda: give(loom, torque), asks=f"{loom} is gone for good." if torque == 1 else "")
if forms.allowed(May.PLAN, say_why=True):
    forms.button("take", "Take", lambda: message("own-value", value="taken"))
"""


@pytest.fixture
def acting(tmp_path, monkeypatch):
    monkeypatch.setenv("BEAMSLOT_DB", put(tmp_path / "mill.db", small_mill()))
    return AppTest.from_string(SCRIPT, default_timeout=30).run()


def send(app: AppTest, loom: str, torque: int) -> AppTest:
    app.text_input[0].set_value(loom)
    app.number_input[0].set_value(torque)
    app.button[0].click().run()
    assert not app.exception
    return app


def beside(app: AppTest) -> list[str]:
    """Fields, buttons and refusals of the form in the order in which they stand."""
    return [one.type for one in app.main.children[1].children.values()]  # 0: where is said what was done


def test_a_refusal_stands_below_its_field_and_what_was_typed_stays(acting):
    send(acting, "A-8", 5)
    assert beside(acting) == ["text_input", "error", "number_input", "button"]
    assert "A-8" in acting.error[0].value
    assert (acting.text_input[0].value, acting.number_input[0].value) == ("A-8", 5)
    send(acting, "A-7", 9)
    assert beside(acting) == ["text_input", "number_input", "error", "button"]
    assert (acting.text_input[0].value, acting.number_input[0].value) == ("A-7", 9)
    acting.run()
    assert acting.error, "it stays until the form is sent again"


def test_what_was_done_is_said_once_and_the_form_begins_anew(acting):
    send(acting, "A-8", 5)
    send(acting, "A-7", 5)
    assert [one.value for one in acting.success] == ["A-7 has 5"] and not acting.error
    assert (acting.text_input[0].value, acting.number_input[0].value) == ("", 0)
    acting.run()
    assert not acting.success and acting.session_state["given"] == [("A-7", 5)]


def test_what_cannot_be_undone_is_asked_once_in_a_sentence(acting):
    send(acting, "A-7", 1)
    assert acting.warning[0].value == "A-7 is gone for good." and "given" not in acting.session_state
    assert [one.label for one in acting.button][:2] == ["Yes: Give", "No, leave it"]
    acting.button[1].click().run()
    assert not acting.warning and acting.text_input[0].value == "A-7" and "given" not in acting.session_state
    acting.button[0].click().run()
    acting.button[0].click().run()
    assert acting.session_state["given"] == [("A-7", 1)] and not acting.warning


def test_a_yes_to_a_sentence_does_not_hold_for_another(acting):
    send(acting, "A-7", 1)
    acting.text_input[0].set_value("A-9")
    acting.button[0].click().run()
    assert "given" not in acting.session_state and "A-9" in acting.text_input[0].value


def test_who_may_not_finds_no_form_but_whose_it_is(acting, monkeypatch):
    assert "Take" in [one.label for one in acting.button]
    monkeypatch.setattr(access, "screen_actor", lambda *_: Actor("Vera", frozenset({Role.FITTER}), "screen", session=1))
    acting.run()
    assert "Take" not in [one.label for one in acting.button]
    assert acting.caption[0].value == "To plan is for planner."


@pytest.mark.parametrize(("roles", "path"), [
    ({Role.FITTER}, "today"), ({Role.ELECTRICIAN}, "today"), ({Role.PURCHASING}, "needs"), ({Role.VIEWER}, "status"),
    ({Role.PLANNER, Role.ADMINISTRATOR}, "bookings"), ({Role.ADMINISTRATOR}, "people"), (EVERY_ROLE, "status"), (set(), "status"),
])  # fmt: skip
def test_each_role_lands_on_its_own_first_screen(roles, path):
    assert lands_on(Actor("Ann", frozenset(roles))).path == path
