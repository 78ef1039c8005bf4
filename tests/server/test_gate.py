"""Once there are accounts, nothing is shown without signing in, by requests and by websockets, and an end is an end at once."""

import asyncio
import shutil
import sqlite3
from contextlib import closing
from datetime import UTC, datetime, timedelta
from urllib.parse import parse_qs

import pytest
from asgi import Browser, Socket
from quick_passwords import OTHER, PASSWORD, quick_passwords  # noqa: F401
from sqlalchemy import select
from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import PlainTextResponse
from starlette.routing import Route, WebSocketRoute
from starlette.websockets import WebSocket
from streamlit.proto.BackMsg_pb2 import BackMsg

from tracker.server import keeper as keeping
from tracker.server.gate import IDENTITY, Gate
from tracker.server.guard import Guard
from tracker.server.keeper import Keeper
from tracker.server.reach import LOCAL
from tracker.server.sign_in import Pages, routes
from tracker.services.context import Context
from tracker.services.people.accounts import add_person, change_password, change_roles, end_person
from tracker.services.people.sessions import IDLE, LONGEST, door
from tracker.store import open_store
from tracker.store.models import ActRow, SessionRow

pytestmark = pytest.mark.usefixtures("quick_passwords")
BEGAN = datetime(2027, 1, 4, 6, tzinfo=UTC)


class Hand:
    """A clock that is set by hand."""

    at = BEGAN

    def __call__(self) -> datetime:
        return self.at


@pytest.fixture
def clock():
    return Hand()


@pytest.fixture(scope="module")
def made(tmp_path_factory, quick_passwords):  # noqa: F811
    """Ann plans and Bob looks."""
    db = tmp_path_factory.mktemp("made") / "mill.db"
    context = Context(str(db), make=True, clock=Hand())
    add_person(context, "Ann", PASSWORD, ["planner"])
    add_person(context, "Bob", OTHER, ["viewer"])
    context.store.engine.dispose()
    return db


@pytest.fixture
def mill(made, tmp_path, clock):
    return Context(str(shutil.copy(made, tmp_path / "mill.db")), clock=clock)


async def _whose(request: Request) -> PlainTextResponse:
    return PlainTextResponse(",".join(request.headers.getlist(IDENTITY)) or "nobody")


async def _stream(socket: WebSocket) -> None:
    """Says whose it is, then answers whatever it is told."""
    await socket.accept()
    await socket.send_text(socket.headers.get(IDENTITY, "nobody"))
    async for _ in socket.iter_bytes():
        await socket.send_text("heard")


@pytest.fixture
def screens(mill):
    """The gate as the server has it, before an application that says whom it takes somebody for."""
    return _screens(mill)


def _screens(mill):
    keeper = Keeper(mill, 8501, patience_s=60)
    shown = [Route("/", _whose), Route("/bookings", _whose), Route("/health", _whose), Route("/_stcore/health", _whose)]
    stream = WebSocketRoute("/_stcore/stream", _stream)
    return Starlette(
        routes=[*routes(Pages(keeper)), *shown, stream],
        middleware=[Middleware(Guard, hosts=LOCAL.hosts(8501)), Middleware(Gate, keeper=keeper, every_s=0.02)],
    )


def signed_in(app, name="Ann", password=PASSWORD, **browser) -> Browser:
    found = Browser(app, **browser)
    answer = attempt(found, name, password)
    assert answer.status == 303
    return found


def attempt(browser, name, password, onward="/", **headers):
    token = form_token(browser)
    form = {"token": token, "name": name, "password": password}
    return browser.post(f"/sign-in?next={onward}", form, **headers)


def form_token(browser):
    return browser.get("/sign-in").body.split('name="token" value="')[1].split('"')[0]


def done(mill, *whats):
    with mill.reading() as uow:
        acts = uow.session.scalars(select(ActRow).order_by(ActRow.id))
        return [(act.what, act.who) for act in acts if act.what in whats]


def test_without_accounts_everything_stays_as_it_is(tmp_path):
    open_store(tmp_path / "mill.db", make=True)
    browser = Browser(_screens(Context(str(tmp_path / "mill.db"))))
    assert browser.get("/", **{IDENTITY: "1"}).body == "nobody"
    assert (browser.get("/sign-in").status, browser.get("/sign-in").header("location")) == (303, "/")


def test_without_a_session_only_the_door_and_health_answer(screens):
    browser = Browser(screens)
    led = browser.get("/bookings?loom=7")
    assert (led.status, led.header("location")) == (303, "/sign-in?next=%2Fbookings%3Floom%3D7")
    assert browser.get("/", accept="*/*").status == 401
    assert browser.post("/", {}).status == 401
    for path in ("/_stcore/health", "/sign-in/", "/health/", "/sign-inx", "/signed-in", "/nowhere"):
        assert browser.get(path, accept="*/*").status == 401, path
    assert browser.get("/health").body == "nobody"
    assert "Sign in" in browser.get("/sign-in").body


def test_the_door_speaks_the_language_of_whoever_stands_before_it(screens):
    browser = Browser(screens)
    asked = browser.get("/sign-in?next=%2Flooms", **{"accept-language": "de-AT,de;q=0.9,en;q=0.8"})
    assert '<html lang="de">' in asked.body and "Passwort" in asked.body and "beamslot-language" not in browser.cookies
    assert 'href="/sign-in?next=%2Flooms&amp;lang=en"' in asked.body
    assert "Password" in browser.get("/sign-in?lang=en", **{"accept-language": "de"}).body
    assert "Password" in browser.get("/sign-in", **{"accept-language": "de"}).body, "the choice is kept"
    assert browser.get("/", accept="*/*", **{"accept-language": "de"}).body == "Sign in first."
    assert Browser(screens).get("/", accept="*/*", **{"accept-language": "de"}).body == "Erst anmelden."
    wrong = Browser(screens)
    assert "Name oder Passwort ist falsch." in attempt(wrong, "Ann", OTHER, **{"accept-language": "de"}).body


def test_who_signs_in_is_led_on_and_known_by_nothing_but_the_session(screens, mill):
    browser = Browser(screens)
    answer = attempt(browser, "ANN", PASSWORD, "/bookings%3Floom%3D7")
    assert (answer.status, answer.header("location")) == (303, "/bookings?loom=7")
    cookie = answer.header("set-cookie")
    assert (
        all(part in cookie for part in ("beamslot-8501=", "HttpOnly", "SameSite=lax", "Path=/"))
        and "Secure" not in cookie
    )
    with mill.reading() as uow:
        (kept,) = uow.session.execute(select(SessionRow.token_hash, SessionRow.address, SessionRow.since))
    token = browser.cookies["beamslot-8501"]
    assert len(token) == 43 and token not in kept.token_hash  # 32 bytes in base64 without its padding
    assert (kept.address, kept.since) == ("10.0.0.7", BEGAN)
    assert browser.get("/").body == browser.get("/", **{IDENTITY: "99"}).body == "1"
    assert done(mill, "signed-in") == [("signed-in", "Ann")]


def test_by_https_the_cookie_is_for_https_only(screens):
    browser = Browser(screens, scheme="https")
    assert "Secure" in attempt(browser, "Ann", PASSWORD).header("set-cookie")


@pytest.mark.parametrize(
    "onward", ["https://mill.example", "//mill.example", "/\\mill.example", "bookings", "/%0d%0aX: y"]
)
def test_nobody_is_led_to_another_site(screens, onward):
    assert attempt(Browser(screens), "Ann", PASSWORD, onward).header("location") == "/"


@pytest.mark.parametrize(("name", "password"), [("Ann", OTHER), ("Nobody", PASSWORD), ("", ""), ("Eve", PASSWORD)])
def test_a_wrong_name_and_a_wrong_password_are_told_alike(screens, mill, name, password):
    add_person(mill, "Eve", PASSWORD, ["planner"])
    end_person(mill, "Eve")
    browser = Browser(screens)
    answer = attempt(browser, name, password)
    assert answer.status == 401 and "Name or password is wrong." in answer.body
    assert "beamslot-8501" not in browser.cookies and browser.get("/", accept="").status == 401
    known = name if name in ("Ann", "Eve") else ""
    assert done(mill, "sign-in-refused") == [("sign-in-refused", known)]


def test_what_was_typed_as_a_name_is_shown_as_text(screens):
    answer = attempt(Browser(screens), '"><script>alert(1)</script>', "x")
    assert "<script>" not in answer.body and "&lt;script&gt;" in answer.body


def test_after_five_wrong_passwords_there_is_a_wait_for_that_name_from_there(screens, mill):
    stranger = Browser(screens, address="10.0.0.66")
    assert [attempt(stranger, "Ann", "wrong").status for _ in range(4)] == [401] * 4
    assert attempt(stranger, "Ann", "wrong").status == 429
    waits = attempt(stranger, "ann", PASSWORD)
    assert waits.status == 429 and "The next try is possible in 15 seconds" in waits.body
    assert attempt(stranger, "Bob", OTHER).status == 303
    assert attempt(Browser(screens), "Ann", PASSWORD).status == 303
    assert len(done(mill, "sign-in-refused")) == 5


@pytest.mark.parametrize("forged", [{}, {"token": ""}, {"token": "x" * 43}])
def test_a_form_without_its_token_is_nobodys(screens, mill, forged):
    browser = Browser(screens)
    form_token(browser)
    answer = browser.post("/sign-in", {"name": "Ann", "password": PASSWORD, **forged})
    assert answer.status == 403 and done(mill, "signed-in") == []
    inside = signed_in(screens)
    assert inside.post("/sign-out", forged).status == 403 and inside.get("/").status == 200


def test_another_site_sends_no_form(screens, mill):
    browser = Browser(screens)
    assert attempt(browser, "Ann", PASSWORD, origin="http://mill.example").status == 403
    assert attempt(browser, "Ann", PASSWORD, origin="http://127.0.0.1:8501").status == 303
    assert done(mill, "signed-in") == [("signed-in", "Ann")]


def test_a_form_that_never_ends_is_not_read(screens):
    browser = Browser(screens)
    token = form_token(browser)
    assert browser.post("/sign-in", {"token": token, "name": "Ann", "password": "x" * 9000}).status == 403


def test_signing_out_ends_the_session_also_for_who_copied_its_cookie(screens, mill):
    browser = signed_in(screens)
    thief = Browser(screens, cookies=dict(browser.cookies))
    assert thief.get("/").status == 200
    assert "Sign out?" in browser.get("/sign-out").body and browser.get("/").status == 200  # looking at it ends nothing
    answer = browser.post("/sign-out", {"token": browser.cookies["beamslot-8501-form"]})
    assert (answer.status, answer.header("location")) == (303, "/sign-in")
    assert "beamslot-8501" not in browser.cookies
    assert thief.get("/").status == 303 and thief.get("/", accept="").status == 401
    assert done(mill, "signed-out") == [("signed-out", "Ann")]


def test_signing_in_again_ends_the_session_before(screens):
    browser = signed_in(screens)
    before = Browser(screens, cookies=dict(browser.cookies))
    signed = browser.post(
        "/sign-in", {"token": browser.cookies["beamslot-8501-form"], "name": "Bob", "password": OTHER}
    )
    assert signed.status == 303
    assert browser.get("/").status == 200 and before.get("/").status == 303


@pytest.mark.parametrize("change", [
    lambda mill: change_roles(mill, "Ann", ["viewer"]), lambda mill: change_password(mill, "Ann", OTHER),
    lambda mill: end_person(mill, "Ann"),
])  # fmt: skip
def test_a_change_of_the_account_ends_its_sessions_and_no_others(screens, mill, change):
    ann, bob = signed_in(screens), signed_in(screens, "Bob", OTHER)
    change(mill)
    assert ann.get("/").status == 303 and bob.get("/").status == 200


@pytest.mark.parametrize(("steps", "ends"), [
    ([IDLE], False), ([IDLE + timedelta(seconds=1)], True), ([IDLE - timedelta(hours=1)] * 2, False),
    ([timedelta(hours=8)] * 21, False), ([timedelta(hours=8)] * 21 + [timedelta(seconds=1)], True),
])  # fmt: skip
def test_a_session_ends_when_nobody_touches_it_and_after_a_week(screens, clock, steps, ends):
    """21 times eight hours are the seven days to the minute."""
    assert timedelta(hours=8) * 21 == LONGEST
    browser = signed_in(screens)
    status = 200
    for step in steps:
        clock.at += step
        status = browser.get("/").status
    assert status == (303 if ends else 200)


def test_what_another_process_ends_has_ended_with_the_next_request(screens, tmp_path):
    """It writes beside everything that this process knows of its own writing."""
    browser = signed_in(screens)
    for _ in range(3):
        assert browser.get("/").status == 200
    with closing(sqlite3.connect(tmp_path / "mill.db")) as other:
        other.execute("UPDATE sessions SET ended_at = since")
        other.commit()
    assert browser.get("/").status == 303


def test_as_long_as_nothing_is_written_a_session_is_looked_up_once_a_second(mill, clock, monkeypatch):
    asked = []
    monkeypatch.setattr(keeping, "door", lambda *of: asked.append(1) or door(*of))
    monkeypatch.setattr(keeping, "written", lambda _: (0,))  # as of a database server that others write to
    monkeypatch.setattr(keeping, "is_seen_at_once", lambda _: False)
    browser = signed_in(_screens(mill))
    asked.clear()
    for _ in range(5):
        assert browser.get("/").status == 200
    assert len(asked) == 1
    end_person(mill, "Ann")
    assert browser.get("/").status == 200
    clock.at += timedelta(seconds=1)
    assert browser.get("/").status == 303


def test_what_an_open_page_asks_by_itself_keeps_no_session(screens, clock):
    browser, answers = signed_in(screens), {}
    for _ in range(3):
        clock.at += timedelta(hours=5)
        answers = {path: browser.get(path, accept="").status for path in ("/signed-in", "/_stcore/health")}
    assert answers == {"/signed-in": 401, "/_stcore/health": 401}


def by_hand(auto=False):
    said = BackMsg()
    said.rerun_script.is_auto_rerun = auto
    said.rerun_script.query_string = "x"
    return said.SerializeToString()


def open_page(screens, browser) -> Socket:
    return Socket.opened(screens, browser.scope("websocket", "/_stcore/stream"))


async def until(says) -> None:
    async with asyncio.timeout(20):
        while not says():
            await asyncio.sleep(0.005)


def test_a_websocket_without_a_session_is_closed(screens):
    async def tried() -> Socket:
        socket = open_page(screens, Browser(screens))
        await socket.task
        return socket

    assert [message["type"] for message in asyncio.run(tried()).heard] == ["websocket.close"]


def test_an_open_page_is_closed_within_moments_of_its_sessions_end(screens, mill):
    browser = signed_in(screens)

    async def tried() -> Socket:
        socket = open_page(screens, browser)
        await until(lambda: len(socket.heard) == 2)
        socket.bring(by_hand())
        await until(lambda: len(socket.heard) == 3)
        assert [message.get("text") for message in socket.heard] == [None, "1", "heard"]
        end_person(mill, "Ann")
        await socket.task  # nobody touched the page
        return socket

    assert asyncio.run(tried()).closed == 1008


def test_a_message_of_an_ended_session_reaches_nothing(mill):
    keeper = Keeper(mill, 8501, patience_s=60)
    heard = []

    async def inside(scope, receive, send):
        await receive()
        await send({"type": "websocket.accept"})
        heard.append((await receive())["type"])

    gate = Gate(inside, keeper, every_s=600)
    browser = signed_in(_screens(mill))

    async def tried() -> Socket:
        socket = Socket.opened(gate, browser.scope("websocket", "/_stcore/stream"))
        await until(lambda: socket.heard)
        await asyncio.sleep(0.05)  # the first look of the watch is over
        end_person(mill, "Ann")
        socket.bring(by_hand())
        await socket.task
        return socket

    assert asyncio.run(tried()).closed == 1008
    assert heard == ["websocket.disconnect"]


@pytest.mark.parametrize(("auto", "touched"), [(False, True), (True, False)])
def test_only_what_somebody_does_keeps_a_session(screens, mill, clock, auto, touched):
    browser = signed_in(screens)

    async def tried() -> None:
        socket = open_page(screens, browser)
        clock.at += timedelta(hours=3)
        socket.bring(by_hand(auto))
        await until(lambda: len(socket.heard) == 3)
        socket.brings.put_nowait({"type": "websocket.disconnect", "code": 1000})
        await socket.task

    asyncio.run(tried())
    with mill.reading() as uow:
        seen_at = uow.session.scalar(select(SessionRow.seen_at))
    assert seen_at == (BEGAN + timedelta(hours=3) if touched else BEGAN)


def test_where_the_database_cannot_be_read_nobody_gets_in(screens, mill, tmp_path):
    browser = signed_in(screens)
    mill.store.engine.dispose()
    (tmp_path / "mill.db").rename(tmp_path / "gone.db")
    assert browser.get("/").status == 503


def test_the_sign_in_form_says_where_it_leads(screens):
    body = Browser(screens).get("/sign-in?next=%2Fbookings%3Floom%3D7").body
    action = body.split('action="')[1].split('"')[0]
    assert parse_qs(action.partition("?")[2]) == {"next": ["/bookings?loom=7"]}
