"""People change their own password, with the one before."""

from dataclasses import replace

import pytest
from opened import here
from quick_passwords import OTHER, PASSWORD, quick_passwords  # noqa: F401
from refusals import refused

from tracker.errors import DataError, NotAllowed
from tracker.services.people.accounts import add_person, leave_to_provider
from tracker.services.people.audit import Which, deeds
from tracker.services.people.own_password import change_own_password
from tracker.services.people.sessions import door, sign_in
from tracker.store import open_store
from tracker.words import ENGLISH

pytestmark = pytest.mark.usefixtures("quick_passwords")


@pytest.fixture
def mill(tmp_path):
    open_store(tmp_path / "mill.db", make=True)
    mill = here(tmp_path / "mill.db", "root")
    add_person(mill, "Ann", PASSWORD, ["viewer"])
    return mill


def signed_in(mill):
    token = sign_in(mill, "Ann", PASSWORD, "10.0.0.7")
    return replace(mill, actor=door(mill, token).signed_in.actor()), token


def test_whoever_knows_the_password_before_sets_a_new_one(mill):
    ann, token = signed_in(mill)
    _, elsewhere = signed_in(mill)
    change_own_password(ann, PASSWORD, OTHER)
    assert not door(mill, token).is_open and not door(mill, elsewhere).is_open
    assert sign_in(mill, "Ann", PASSWORD, "10.0.0.7") is None and sign_in(mill, "Ann", OTHER, "10.0.0.7")


def test_a_new_password_that_is_refused_changes_nothing(mill):
    ann, token = signed_in(mill)
    with refused(DataError, "5 characters; it takes 12 to 200"):
        change_own_password(ann, PASSWORD, "short")
    assert door(mill, token).is_open and sign_in(mill, "Ann", PASSWORD, "10.0.0.7")


def test_five_wrong_passwords_end_the_session(mill):
    ann, token = signed_in(mill)
    for wrong in range(5):
        assert door(mill, token).is_open
        with refused(DataError, "this is not your password"):
            change_own_password(ann, f"something else {wrong}", OTHER)
    assert not door(mill, token).is_open
    with pytest.raises(NotAllowed):
        change_own_password(ann, PASSWORD, OTHER)
    assert sign_in(mill, "Ann", PASSWORD, "10.0.0.7")


def test_what_the_identity_provider_keeps_is_changed_there(mill):
    ann, _ = signed_in(mill)
    leave_to_provider(mill, "Ann")
    with pytest.raises(NotAllowed):  # that ended her pages
        change_own_password(ann, PASSWORD, OTHER)


def test_it_stands_in_the_account_of_who_did_what(mill):
    ann, _ = signed_in(mill)
    with refused(DataError, "this is not your password"):
        change_own_password(ann, OTHER, OTHER)
    change_own_password(ann, PASSWORD, OTHER)
    said = [ENGLISH.say(deed.what) for deed in deeds(mill, Which(who="Ann")).deeds]
    assert sorted(said)[:2] == ["changed the own password", "signed in from 10.0.0.7"]
    assert "wanted to change the own password with a wrong one before" in said
