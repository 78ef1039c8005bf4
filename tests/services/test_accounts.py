"""Accounts: who is added, what is refused, and that what was done is told by the right name."""

from getpass import getuser

import pytest
from opened import here
from quick_passwords import OTHER, PASSWORD, quick_passwords  # noqa: F401
from refusals import refused
from sqlalchemy import select

from tracker.domain.people import Role
from tracker.errors import DataError, UsageError
from tracker.services.backup import backup, restore
from tracker.services.context import Context
from tracker.services.people.accounts import add_person, change_password, change_roles, end_person, people
from tracker.services.people.passwords import is_right
from tracker.services.people.permissions import May
from tracker.services.people.sessions import door, sign_in
from tracker.store import open_store
from tracker.store.models import ActRow, PersonRow

pytestmark = pytest.mark.usefixtures("quick_passwords")


@pytest.fixture
def mill(tmp_path):
    open_store(tmp_path / "mill.db", make=True)
    return here(tmp_path / "mill.db", "root")


def kept(context):
    with context.reading() as uow:
        return {row.name: row.password_hash for row in uow.session.scalars(select(PersonRow))}


def acts(context):
    with context.reading() as uow:
        return [(a.who, a.through, a.what, a.details) for a in uow.session.scalars(select(ActRow).order_by(ActRow.id))]


def test_an_account_has_its_roles_in_order_and_keeps_no_password(mill):
    done = add_person(mill, " M.  Berg ", PASSWORD, ["administrator", "Planner"])
    assert (done.person.name, done.person.roles) == ("M. Berg", (Role.PLANNER, Role.ADMINISTRATOR))
    assert people(mill).people == (done.person,)
    (hashed,) = kept(mill).values()
    assert hashed.startswith("$argon2id$") and PASSWORD not in hashed
    assert is_right(hashed, PASSWORD) and not is_right(hashed, OTHER) and not is_right(None, PASSWORD)


def test_a_name_is_the_same_whatever_its_case_and_accents(mill):
    add_person(mill, "José", PASSWORD, ["fitter"])
    with refused(DataError, "José has an account already"):
        add_person(mill, "JOSE", PASSWORD, ["viewer"])
    assert len(people(mill).people) == 1


@pytest.mark.parametrize(("password", "says"), [
    ("eleven-char", "11 characters; it takes 12 to 200"), ("x" * 201, "201 characters"), ("", "0 characters"),
    ("Leavemealone", "tried first"), ("m. berg the b", None), ("M. Berg-Weber", "tried first"),
])  # fmt: skip
def test_which_passwords_are_refused(mill, password, says):
    """`leavemealone` has 12 letters and stands in the list of the commonest; the last is the name itself."""
    if says is None:
        assert add_person(mill, "M. Berg-Weber", password, ["viewer"]).how == "added"
        return
    with refused(DataError, says):
        add_person(mill, "M. Berg-Weber", password, ["viewer"])
    assert people(mill).people == () and acts(mill) == []


@pytest.mark.parametrize(("name", "roles", "says"), [
    ("", ["viewer"], "a name has 1 to 60"), ("x" * 61, ["viewer"], "a name has 1 to 60"), ("a\tb\x07", ["viewer"], "a name"),
    ("Ann", [], "at least one role"), ("Ann", ["viewer", "boss"], "there is no role boss; the roles are viewer, fitter"),
])  # fmt: skip
def test_which_names_and_roles_cannot_be(mill, name, roles, says):
    with refused(UsageError, says):
        add_person(mill, name, PASSWORD, roles)
    assert people(mill).people == ()


def test_roles_and_password_change_and_an_ended_account_opens_again(mill):
    add_person(mill, "Ann", PASSWORD, ["viewer"])
    assert change_roles(mill, "ann", ["purchasing"]).person.roles == (Role.PURCHASING,)
    change_password(mill, "Ann", OTHER)
    assert is_right(kept(mill)["Ann"], OTHER) and not is_right(kept(mill)["Ann"], PASSWORD)
    assert end_person(mill, "Ann").person.ended_at
    for again in (lambda: end_person(mill, "Ann"), lambda: change_roles(mill, "Ann", ["viewer"])):
        with refused(DataError, "nobody has an account under the name Ann"):
            again()
    assert add_person(mill, "Ann", PASSWORD, ["fitter"]).how == "again"
    assert [(p.name, p.roles, p.ended_at) for p in people(mill).people] == [("Ann", (Role.FITTER,), None)]
    assert [(who, through, what, details["how"]) for who, through, what, details in acts(mill)] == [
        ("root", "command", "manage-people", how) for how in ("added", "roles", "password", "ended", "added")
    ]


def test_a_restored_backup_lets_nobody_in_who_was_signed_in_when_it_was_made(mill, tmp_path):
    add_person(mill, "Ann", PASSWORD, ["viewer"])
    token = sign_in(mill, "Ann", PASSWORD, "10.0.0.7")
    assert door(mill, token).is_open
    backup(mill, tmp_path / "mill.zip")
    restore(here(tmp_path / "again.db"), tmp_path / "mill.zip")
    again = here(tmp_path / "again.db")
    assert not door(again, token).is_open and door(mill, token).is_open
    assert sign_in(again, "Ann", PASSWORD, "10.0.0.7")


def test_the_environment_names_nobody_once_there_are_accounts(mill, monkeypatch):
    monkeypatch.setenv("BEAMSLOT_USER", "somebody else")
    mine = Context(mill.database)
    with mine.unit_of_work(May.PLAN) as uow:
        assert uow.who == "somebody else"
    add_person(mill, "Ann", PASSWORD, ["viewer"])
    with mine.unit_of_work(May.PLAN) as uow:
        assert uow.who == getuser()


def test_what_is_written_down_for_another_stays_the_act_of_who_writes(mill):
    with mill.telling("the night shift").unit_of_work(May.STOCK) as uow:
        assert uow.who == "the night shift"
        uow.commit()
    assert acts(mill) == [("root", "command", "book-stock", {})]
