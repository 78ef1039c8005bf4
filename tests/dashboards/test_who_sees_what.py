"""Each role finds the screens and forms that it may use, and no others; what is asked for anyway is refused in plain words."""

import pytest
from quick_passwords import PASSWORD, quick_passwords  # noqa: F401
from refusals import refused
from screen_mill import put, small_mill, small_plan
from screen_texts import APP, words
from streamlit.testing.v1 import AppTest

from dashboards import access
from dashboards.navigation import SCREENS
from tracker.domain.people import EVERY_ROLE, Role
from tracker.domain.tokens import TokenMay
from tracker.errors import NotAllowed
from tracker.services.context import Actor, Context
from tracker.services.loading.by_hand import type_in
from tracker.services.parts.stock import count
from tracker.services.people.accounts import add_person, change_roles, people
from tracker.services.people.audit import Which, deeds
from tracker.services.people.sessions import door, screen_actor, sign_in
from tracker.services.people.tokens import shown, tokens
from tracker.words import ENGLISH

SEEN = {
    "Today",
    "Hall",
    "Settings",
    "Programme status",
    "Bookings",
    "Beam-outs",
    "Looms",
    "Kits and needs",
    "Worth",
    "Rehearsal",
    "Scenarios",
    "Method",
    "Terms",
    "Changes",
}


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    return put(tmp_path_factory.mktemp("seen") / "mill.db", small_mill(), small_plan(small_mill()))


@pytest.fixture
def looks_as(made, monkeypatch):
    """Lets a screen be looked at in some roles."""
    monkeypatch.setenv("BEAMSLOT_DB", made)

    def look(name: str, *roles: Role) -> AppTest:
        monkeypatch.setattr(access, "screen_actor", lambda *_: Actor("Vera", frozenset(roles), "screen", session=1))
        return AppTest.from_string(f"from dashboards.screens import {name}\n{name}.page()\n", default_timeout=30).run()

    return look


@pytest.mark.parametrize(("roles", "more"), [
    ({Role.VIEWER}, set()), ({Role.FITTER}, {"Load"}), ({Role.ELECTRICIAN}, {"Load"}), ({Role.PURCHASING}, {"Load"}),
    ({Role.PLANNER}, {"Load"}), ({Role.ADMINISTRATOR}, {"People"}), (EVERY_ROLE, {"Load", "People"}), (set(), set()),
])  # fmt: skip
def test_which_screens_a_role_finds(roles, more):
    titles = {screen.title for screen in SCREENS if screen.is_for(Actor("Ann", frozenset(roles)))}
    assert titles == SEEN | more


@pytest.mark.parametrize(("name", "button"), [("scenarios", "Plan it"), ("rehearsal", "Play it")])
def test_what_only_planners_do_is_not_offered_to_others(looks_as, name, button):
    assert button in [one.label for one in looks_as(name, Role.PLANNER).button]
    others = looks_as(name, Role.VIEWER, Role.FITTER, Role.PURCHASING)
    assert button not in [one.label for one in others.button] and not others.exception


def test_an_address_that_leads_to_anothers_screen_is_refused_in_words(looks_as, monkeypatch):
    assert not looks_as("people", Role.ADMINISTRATOR).exception
    looks_as("status", Role.PLANNER)
    app = AppTest.from_file(APP, default_timeout=30).run()
    assert not app.error
    (screen,) = [one for one in SCREENS if one.title == "People"]
    with refused(NotAllowed, "Vera may not manage people: that is for administrator"):
        screen.refuse()


def test_who_did_what_stands_on_its_screen(looks_as):
    app = looks_as("changes", Role.VIEWER)
    assert not app.exception and "plan 1 published" in words(app)
    app.text_input(key="changes who").set_value("nobody at all").run()
    assert app.info[0].value == "Nobody has done anything that fits."


def test_what_was_done_is_undone_from_its_line_after_one_question(tmp_path, looks_as, monkeypatch):
    """Counted were 5 RAIL where the book had 2: undone, it has 2 again. Who may not undo finds no way to it."""
    monkeypatch.setenv("BEAMSLOT_DB", db := put(tmp_path / "mill.db", small_mill()))
    count(Context(db, Actor("Ann", frozenset({Role.PURCHASING}))), "RAIL", 5)
    assert "Undo" not in words(looks_as("changes", Role.PURCHASING))
    app = looks_as("changes", Role.PLANNER)
    assert 'href="changes?undo=1"' in "".join(item.proto.body for item in app.get("html"))
    app.query_params["undo"] = "1"
    app.run()
    assert (
        "Undo 1, by Ann on" in app.warning[0].value
        and "one counter entry in the stockroom (RAIL)?" in app.warning[0].value
    )
    next(one for one in app.button if one.label == "Undo").click().run()
    assert "1 is undone: one counter entry in the stockroom (RAIL)." in app.success[0].value and not app.warning
    with Context(db).reading() as uow:
        assert uow.mill().parts["RAIL"].on_hand == 2
    app.query_params["undo"] = "1"
    app.run()
    assert "1 was undone already: by Vera" in app.error[0].value


def test_an_administrator_ends_a_session(tmp_path, looks_as, monkeypatch, quick_passwords):  # noqa: F811
    monkeypatch.setenv("BEAMSLOT_DB", db := put(tmp_path / "mill.db", small_mill()))
    add_person(Context(db), "Ann", PASSWORD, ["planner"])
    token = sign_in(Context(db), "Ann", PASSWORD, "10.0.0.7")
    app = looks_as("people", Role.ADMINISTRATOR)
    assert "10.0.0.7" in words(app)
    next(one for one in app.button if one.label == "End the session").click().run()
    assert "from 10.0.0.7 close" in app.warning[0].value and door(Context(db), token).signed_in
    next(one for one in app.button if one.label == "Yes: End the session").click().run()
    assert "The session of Ann has ended" in app.success[0].value and "Nobody is signed in." in app.info[0].value
    assert door(Context(db), token).signed_in is None
    (newest,) = deeds(Context(db), Which(who="vera")).deeds
    assert (newest.who, ENGLISH.say(newest.what)) == ("Vera", "session of Ann ended")


def test_of_two_who_change_an_account_one_reads_of_the_other(tmp_path, looks_as, monkeypatch, quick_passwords):  # noqa: F811
    monkeypatch.setenv("BEAMSLOT_DB", db := put(tmp_path / "mill.db", small_mill()))
    add_person(Context(db), "Ann", PASSWORD, ["viewer"])
    app = looks_as("people", Role.ADMINISTRATOR)
    change_roles(Context(db, Actor("Root", EVERY_ROLE)), "Ann", ["fitter"])

    def send():
        next(one for one in app.button if one.label == "Change the roles").click().run()

    app.multiselect[1].set_value([Role.PLANNER])
    send()
    assert "roles of Ann: viewer then, fitter now (by Root on" in app.error[0].value
    assert app.multiselect[1].value == [Role.PLANNER]
    send()
    assert not app.error and people(Context(db)).people[0].roles == (Role.PLANNER,)


def test_of_two_who_change_a_term_one_reads_of_the_other(tmp_path, looks_as, monkeypatch):
    """Both see an allowance of 20 %; Ann makes it 15 while Vera types 30, who reads that and then has her way."""
    monkeypatch.setenv("BEAMSLOT_DB", db := put(tmp_path / "mill.db", small_mill()))
    ann = Context(db, Actor("Ann", EVERY_ROLE))
    assert type_in(ann, "terms", [{"term": "allowance (%)", "value": "20 %"}]).written
    app = looks_as("terms", Role.PLANNER)
    app.selectbox(key="term").set_value("allowance (%)").run()
    assert type_in(ann, "terms", [{"term": "allowance (%)", "value": "15 %"}]).written

    def send():
        next(one for one in app.button if one.label == "Change it").click().run()

    app.text_input[0].set_value("30")
    send()
    assert "20 then, 15 now (by Ann on" in app.error[0].value and app.text_input[0].value == "30"
    send()
    with ann.reading() as uow:
        assert not app.error and uow.rows("terms")["allowance (%)",]["value"] == 0.3


def test_an_account_is_added_on_the_screen(tmp_path, looks_as, monkeypatch, quick_passwords):  # noqa: F811
    monkeypatch.setenv("BEAMSLOT_DB", db := put(tmp_path / "mill.db", small_mill()))
    app = looks_as("people", Role.ADMINISTRATOR)
    assert "first account" in app.info[0].value
    app.text_input[0].set_value("Ann")
    app.text_input[1].set_value("short")
    app.multiselect[0].set_value([Role.PLANNER])
    app.button[0].click().run()
    assert "5 characters; it takes 12 to 200" in app.error[0].value
    app.text_input[1].set_value(PASSWORD)
    app.button[0].click().run()
    assert "Ann has an account now, as planner." in app.success[0].value
    assert [person.name for person in people(Context(db)).people] == ["Ann"]


def test_a_page_whose_session_is_over_offers_to_sign_in(tmp_path, monkeypatch, quick_passwords):  # noqa: F811
    monkeypatch.setenv("BEAMSLOT_DB", db := put(tmp_path / "mill.db", small_mill()))
    add_person(Context(db), "Ann", PASSWORD, ["planner"])
    with pytest.raises(NotAllowed):
        screen_actor(Context(db), None)
    app = AppTest.from_file(APP, default_timeout=30).run()
    assert "this session has ended" in app.error[0].value
    assert "Sign in again" in words(app)


def test_whoever_is_signed_in_is_asked_for_the_password_before_a_new_one(looks_as):
    assert [field.label for field in looks_as("own_password", Role.VIEWER).text_input] == [
        "Password until now",
        "New password, at least 12 characters",
    ]


def test_an_administrator_gives_a_token_that_is_shown_until_it_was_copied_and_withdraws_it(
    tmp_path, looks_as, monkeypatch
):
    monkeypatch.setenv("BEAMSLOT_DB", db := put(tmp_path / "mill.db", small_mill()))
    app = looks_as("people", Role.ADMINISTRATOR)
    assert "No token was given yet." in [one.value for one in app.info] and not app.code
    pressed(app, "Give it")
    assert app.error and not tokens(Context(db)).tokens  # it has no name
    field(app, "What for").set_value("looms' own program")
    pressed(app, "Give it")
    assert "looms' own program has a token: read" in app.success[0].value.replace("\\", "")
    text = app.code[0].value
    assert shown(Context(db), text, list(TokenMay)).name == "looms' own program"
    app.run()
    assert app.code[0].value == text and not app.success  # a page shown anew does not take it away
    pressed(app, "It is copied: hide it")
    assert not app.code and "looms' own program" in words(app)
    pressed(app, "Withdraw it")
    assert "is refused from then on" in app.warning[0].value and shown(Context(db), text, list(TokenMay))
    pressed(app, "Yes: Withdraw it")
    assert "opens nothing any more" in app.success[0].value and not shown(Context(db), text, list(TokenMay))


def pressed(app: AppTest, label: str) -> None:
    next(one for one in app.button if one.label == label).click().run()
    assert not app.exception


def field(app: AppTest, label: str):
    return next(one for one in app.text_input if one.label.startswith(label))
