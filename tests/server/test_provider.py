"""Signing in by the mill's identity provider, against one on 127.0.0.1, and what is refused on the way."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from urllib.parse import parse_qs, urlsplit

import pytest
import requests
from asgi import Browser
from identity_provider import identity_provider, settings_text
from quick_passwords import PASSWORD, quick_passwords  # noqa: F401
from refusals import refused
from sqlalchemy import select
from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import PlainTextResponse
from starlette.routing import Route

from tracker.errors import DataError, UsageError
from tracker.server import provider_pages
from tracker.server.gate import Gate
from tracker.server.guard import Guard
from tracker.server.keeper import Keeper
from tracker.server.provider import Provider, claim
from tracker.server.provider_pages import ProviderPages
from tracker.server.provider_settings import read_settings
from tracker.server.reach import LOCAL
from tracker.server.sign_in import Pages, routes
from tracker.services.context import Context
from tracker.services.people.accounts import (
    add_person,
    change_password,
    change_roles,
    end_person,
    leave_to_provider,
    people,
)
from tracker.services.people.audit import deeds
from tracker.services.people.sessions import sign_in
from tracker.store import open_store
from tracker.store.models import ActRow, PersonRow, SessionRow
from tracker.words import ENGLISH

pytestmark = pytest.mark.usefixtures("quick_passwords")
BACK = "http://127.0.0.1:8501/sign-in/back"


@pytest.fixture(scope="module")
def running():
    with identity_provider(BACK) as found:
        yield found


@pytest.fixture
def provider(running):
    """Ann plans, Will weaves, Otto is in no group that has a role."""
    running.people = {
        "ann": {"preferred_username": "Ann Berg", "groups": ["weaving", "weaving planners", "choir"]},
        "will": {"preferred_username": "Will", "groups": ["weaving"]},
        "otto": {"preferred_username": "Otto", "groups": ["choir"]},
    }
    running.beside, running.code_lasts_s = {}, 60
    running.signs_with = running.shows[0]
    return running


@pytest.fixture
def settings(provider, tmp_path):
    file = tmp_path / "provider.toml"
    file.write_text(settings_text(provider.issuer))
    file.chmod(0o600)
    return read_settings(file)


@pytest.fixture
def mill(tmp_path):
    open_store(tmp_path / "mill.db", make=True).engine.dispose()
    return Context(str(tmp_path / "mill.db"))


async def _shown(_: Request) -> PlainTextResponse:
    return PlainTextResponse("the screens")


@pytest.fixture
def screens(mill, settings):
    keeper = Keeper(mill, 8501, patience_s=60, closed=True)
    pages = Pages(keeper, provider=True)
    return Starlette(
        routes=[
            *routes(pages),
            *ProviderPages(pages, Provider(settings)).routes(),
            Route("/", _shown),
            Route("/load", _shown),
        ],
        middleware=[Middleware(Guard, hosts=LOCAL.hosts(8501)), Middleware(Gate, keeper=keeper)],
    )


def led_away(browser, onward="/"):
    """The address of the provider to which the browser is sent."""
    answer = browser.get(f"/sign-in/provider?next={onward}")
    assert answer.status == 303, answer.body
    return answer.header("location")


def sent_back(address, person):
    """Where the provider sends the browser once somebody typed a name there."""
    answer = requests.post(address, {"person": person}, allow_redirects=False, timeout=10)
    back = urlsplit(answer.headers["location"])
    return f"{back.path}?{back.query}"


def signed_in(browser, person, onward="/"):
    return browser.get(sent_back(led_away(browser, onward), person))


def told(mill):
    """Who signed in or was refused, with what is kept of it."""
    with mill.reading() as uow:
        acts = uow.session.scalars(
            select(ActRow).where(ActRow.what.in_(("signed-in", "sign-in-refused"))).order_by(ActRow.id)
        )
        return [(act.what, act.who, act.details) for act in acts]


def is_empty(mill):
    with mill.reading() as uow:
        return not [*uow.session.scalars(select(PersonRow)), *uow.session.scalars(select(SessionRow))]


def test_with_a_provider_nobody_gets_in_unsigned_although_nobody_has_an_account(screens):
    browser = Browser(screens)
    assert browser.get("/", accept="").status == 401
    assert 'href="/sign-in/provider?next=%2Fload"' in browser.get("/sign-in?next=/load").body


def test_who_comes_by_the_provider_has_an_account_in_the_roles_of_the_groups(screens, mill, provider):
    browser = Browser(screens)
    answer = signed_in(browser, "ann", "/load")
    assert (answer.status, answer.header("location")) == (303, "/load")
    assert browser.get("/load").body == "the screens"
    (ann,) = people(mill).people
    assert (ann.name, ann.roles, ann.by_provider) == ("Ann Berg", ("planner", "viewer"), True) or set(ann.roles) == {
        "planner",
        "viewer",
    }
    kept = {"address": "10.0.0.7", "by": "provider", "roles": ["viewer", "planner"]}
    assert told(mill) == [("signed-in", "Ann Berg", kept)]
    (line,) = [ENGLISH.say(deed.what) for deed in deeds(mill).deeds]
    assert line == "signed in from 10.0.0.7 by the identity provider, as viewer, planner"
    again = Browser(screens)
    provider.people["ann"] |= {"groups": ["weaving"], "preferred_username": "Ann Stone"}  # married, and plans no more
    assert signed_in(again, "ann").status == 303
    (ann,) = people(mill).people
    assert (ann.name, ann.roles) == ("Ann Berg", ("viewer",))
    assert browser.get("/", accept="").status == 401 and again.get("/").status == 200


def test_the_browser_is_sent_with_state_nonce_and_a_challenge(screens):
    asked = {name: values[0] for name, values in parse_qs(urlsplit(led_away(Browser(screens))).query).items()}
    assert asked["code_challenge_method"] == "S256" and len(asked["code_challenge"]) == 43  # 32 bytes in base64
    assert (asked["response_type"], asked["redirect_uri"], asked["client_id"]) == ("code", BACK, "beamslot")
    assert "openid" in asked["scope"].split() and asked["state"] and asked["nonce"]


@pytest.mark.parametrize(("spoil", "status", "code", "says"), [
    (lambda path: path.replace("state=", "state=x"), 400, "provider-state", "was not begun here, or took more than 10 minutes"),
    (lambda path: path.replace("code=", "code=x"), 400, "provider-refused", "did not let you in"),
    (lambda path: path.replace("code=", "error=access_denied&was="), 400, "provider-refused", "did not let you in"),
    (lambda path: path + "&iss=https://other.example", 400, "provider-refused", "did not let you in"),
])  # fmt: skip
def test_what_comes_back_otherwise_signs_nobody_in(screens, mill, spoil, status, code, says):
    browser = Browser(screens)
    answer = browser.get(spoil(sent_back(led_away(browser), "ann")))
    assert answer.status == status and says in answer.body
    assert is_empty(mill) and browser.get("/", accept="").status == 401
    assert told(mill) == [("sign-in-refused", "", {"address": "10.0.0.7", "by": "provider", "why": code})]


def test_another_browser_cannot_use_what_came_back_and_nobody_can_twice(screens, mill):
    browser, thief = Browser(screens), Browser(screens, address="10.0.0.66")
    back = sent_back(led_away(browser), "ann")
    assert thief.get(back).status == 400
    led_away(thief)  # with a sign-in of its own begun, but another
    assert thief.get(back).status == 400
    assert browser.get(back).status == 303
    assert Browser(screens, cookies=dict(browser.cookies)).get(back).status == 400


def test_a_wrong_nonce_signs_nobody_in(screens, mill):
    browser = Browser(screens)
    address = led_away(browser)
    nonce = parse_qs(urlsplit(address).query)["nonce"][0]
    answer = browser.get(sent_back(address.replace(nonce, "of an older sign-in"), "ann"))
    assert answer.status == 400 and "does not hold" in answer.body and is_empty(mill)


def test_an_expired_code_signs_nobody_in(screens, mill, provider):
    browser = Browser(screens)
    back = sent_back(led_away(browser), "ann")
    provider.code_lasts_s = 0
    assert "did not let you in" in browser.get(back).body and is_empty(mill)


@pytest.mark.parametrize("claims", [
    {"iss": "https://other.example"}, {"aud": ["another client"]}, {"aud": ["beamslot", "another"], "azp": "another"},
    {"exp": 1_700_000_000}, {"preferred_username": None}, {"preferred_username": "x" * 61},
])  # fmt: skip
def test_a_token_that_says_what_cannot_be_signs_nobody_in(screens, mill, provider, claims):
    provider.people["ann"] |= claims
    answer = signed_in(Browser(screens), "ann")
    assert answer.status in (400, 403) and "does not hold" in answer.body and is_empty(mill)


def test_a_token_of_another_key_signs_nobody_in_and_a_new_key_of_the_provider_is_found(screens, mill, provider):
    assert signed_in(Browser(screens), "will").status == 303
    before = provider.signs_with
    provider.turn_keys()
    assert signed_in(Browser(screens), "will").status == 303
    provider.signs_with = before
    assert "does not hold" in signed_in(Browser(screens), "ann").body
    assert [person.name for person in people(mill).people] == ["Will"]


def test_without_a_role_nobody_gets_in(screens, mill):
    answer = signed_in(Browser(screens), "otto")
    assert answer.status == 403 and "Otto, your account of the mill has no role here." in answer.body
    assert is_empty(mill) and told(mill)[0][1:] == (
        "Otto",
        {"address": "10.0.0.7", "by": "provider", "why": "provider-role"},
    )


def test_groups_that_the_provider_tells_only_when_asked_count_too(screens, mill, provider):
    provider.people["ann"], provider.beside["ann"] = {"preferred_username": "Ann"}, {"groups": ["weaving"]}
    assert signed_in(Browser(screens), "ann").status == 303
    provider.people["will"], provider.beside["will"] = (
        {"preferred_username": "Will"},
        {"groups": ["weaving"], "sub": "another"},
    )
    assert signed_in(Browser(screens), "will").status == 403


def test_a_provider_that_is_not_there_is_said_and_passwords_still_count(mill, settings):
    add_person(mill, "Bob", PASSWORD, ["viewer"])
    keeper = Keeper(mill, 8501, closed=True)
    pages = Pages(keeper, provider=True)
    gone = Provider(replace(settings, issuer="http://127.0.0.1:9"))
    screens = Starlette(routes=[*routes(pages), *ProviderPages(pages, gone).routes()])
    answer = Browser(screens).get("/sign-in/provider")
    assert answer.status == 503 and "does not answer" in answer.body and "Password" in answer.body
    assert told(mill)[0][2]["why"] == "provider-silent"


def test_a_sign_in_that_took_too_long_is_over(screens, monkeypatch):
    browser = Browser(screens)
    back = sent_back(led_away(browser), "ann")
    late = datetime.now(UTC) + timedelta(minutes=10, seconds=1)
    monkeypatch.setattr(provider_pages, "now", lambda: late)
    assert "took more than 10 minutes" in browser.get(back).body


def test_after_five_wrong_answers_there_is_a_wait_for_that_address_alone(screens, mill):
    stranger = Browser(screens, address="10.0.0.66")
    assert [stranger.get("/sign-in/back?state=x&code=y").status for _ in range(6)] == [400] * 5 + [429]
    assert stranger.get("/sign-in/provider").status == 429 and len(told(mill)) == 5
    assert signed_in(Browser(screens), "ann").status == 303


def test_the_name_of_an_account_with_a_password_is_nobody_elses_until_it_is_left_to_the_provider(screens, mill):
    add_person(mill, "ann berg", PASSWORD, ["administrator"])
    answer = signed_in(Browser(screens), "ann")
    assert answer.status == 403 and "The name Ann Berg belongs to another account here." in answer.body
    leave_to_provider(mill, "Ann Berg")
    assert sign_in(mill, "ann berg", PASSWORD, "") is None and sign_in(mill, "ann berg", "", "") is None
    assert sign_in(mill, "ann berg", "nobody", "") is None  # what takes the time where there is no password
    assert signed_in(Browser(screens), "ann").status == 303
    (ann,) = people(mill).people
    assert (ann.name, set(ann.roles)) == ("ann berg", {"planner", "viewer"})


def test_an_ended_account_stays_ended_until_it_is_left_to_the_provider_again(screens, mill):
    assert signed_in(Browser(screens), "will").status == 303
    with refused(DataError, "the roles of Will come from the mill's identity provider"):
        change_roles(mill, "Will", ["planner"])
    end_person(mill, "Will")
    assert "The account of Will has ended." in signed_in(Browser(screens), "will").body
    leave_to_provider(mill, "Will")
    assert signed_in(Browser(screens), "will").status == 303
    change_password(mill, "Will", PASSWORD)
    assert signed_in(Browser(screens), "will").status == 403 and sign_in(mill, "Will", PASSWORD, "")


def test_a_claim_may_lie_within_another():
    claims = {"realm_access": {"roles": ["planner"]}, "https://mill.example/groups": ["weaving"]}
    assert claim(claims, "realm_access.roles") == ["planner"]
    assert claim(claims, "https://mill.example/groups") == ["weaving"] and claim(claims, "sub.x") is None


ISSUER, REST = 'issuer = "https://sign-in.mill.example"', 'client = "beamslot"'
ROLES = '[roles]\nviewer = ["weaving"]'


@pytest.mark.parametrize(("lines", "says"), [
    (['issuer = "http://sign-in.mill.example"', REST, ROLES], "issuer has to begin with https://"),
    (["issuer = 7", REST, ROLES], "issuer is no text"), ([ISSUER, 'client = ""', ROLES], "client is missing"),
    ([ISSUER, REST, 'colour = "blue"', ROLES], "colour is no setting; there are issuer, client"),
    ([ISSUER, REST], r"\[roles\] is missing"), (["="], "cannot be read as the settings"),
    ([ISSUER, REST, '[roles]\nweaver = ["weaving"]'], "weaver is no role; the roles are viewer"),
    ([ISSUER, REST, '[roles]\nviewer = "weaving"'], "viewer is no list of groups"),
])  # fmt: skip
def test_a_line_of_the_settings_that_cannot_be_is_named(tmp_path, lines, says):
    file = tmp_path / "provider.toml"
    file.write_text("\n".join(lines))
    with refused(UsageError, says):
        read_settings(file)


def test_a_secret_that_everybody_can_read_is_refused(tmp_path):
    file = tmp_path / "provider.toml"
    file.write_text(settings_text("https://sign-in.mill.example"))
    file.chmod(0o644)
    with refused(UsageError, "holds a secret and can be read by everybody on this machine; `chmod o-r FILE`"):
        read_settings(file)
    with refused(UsageError, "cannot be read as the settings"):
        read_settings(tmp_path / "none.toml")
