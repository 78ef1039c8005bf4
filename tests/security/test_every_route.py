"""Every path and method: without a session, with one that was stolen and has ended, from another site, by a forged form; and what a
browser is told with every answer."""

import asyncio
import shutil

import pytest
from asgi import HOST, Browser, Socket
from quick_passwords import OTHER, PASSWORD, quick_passwords  # noqa: F401
from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.responses import PlainTextResponse
from starlette.routing import Mount, Route
from streamlit.proto.BackMsg_pb2 import BackMsg

from dashboards.navigation import SCREENS
from tracker.domain.people import Role
from tracker.errors import NotAllowed
from tracker.server.application import WhenAsked
from tracker.server.calendar import calendar_route
from tracker.server.gate import Gate
from tracker.server.guard import Guard
from tracker.server.keeper import Keeper
from tracker.server.reach import LOCAL
from tracker.server.sign_in import Pages, routes
from tracker.services.context import Actor, Context
from tracker.services.people.accounts import add_person, people
from tracker.services.people.sessions import door, end_session, open_sessions

pytestmark = pytest.mark.usefixtures("quick_passwords")
BEHIND = (
    *(f"/{screen.path}" for screen in SCREENS), "/", "/start", "/index.html", "/static/js/main.js", "/_stcore/health",
    "/_stcore/host-config", "/_stcore/upload_file/a/b", "/media/x.xlsx", "/sign-out", "/signed-in", "/favicon.png",
    "/.git/config", "/.env", "/tracker/cli/__init__.py", "/sign-in/", "/sign-in/x", "/SIGN-IN", "/health/", "/health/x", "/%2e%2e/",
    "/sign-in;x", "//sign-in", "/calendar/x/crew.ics", "/calendar/", "/api/", "/api/looms/1", "/api/../bookings",
)  # fmt: skip
"""Paths that nobody sees without a session: the screens, what the library serves, ours, and what a stranger tries."""
CLOSED = ("/_stcore/metrics", "/_stcore/message", "/component/x", "/auth/login", "/oauth2callback", "/app/static/x")
METHODS = ("GET", "POST", "HEAD", "PUT", "DELETE", "OPTIONS", "PATCH")


@pytest.fixture(scope="module")
def made(tmp_path_factory, quick_passwords):  # noqa: F811
    db = tmp_path_factory.mktemp("routes") / "mill.db"
    context = Context(str(db), make=True)
    add_person(context, "Ann", PASSWORD, ["planner"])
    add_person(context, "Bob", OTHER, ["viewer"])
    context.store.engine.dispose()
    return db


@pytest.fixture
def mill(made, tmp_path):
    return Context(str(shutil.copy(made, tmp_path / "mill.db")))


@pytest.fixture
def reached():
    return []


@pytest.fixture
def screens(mill, reached):
    """The server with its gate, before screens that write down who reaches them."""

    async def behind(scope, receive, send):
        reached.append(scope["path"])
        if scope["type"] == "http":
            await PlainTextResponse("the mill")(scope, receive, send)
        else:
            await send({"type": "websocket.accept"})
            while (await receive())["type"] != "websocket.disconnect":
                reached.append("told")

    keeper = Keeper(mill, 8501, patience_s=60)
    health = Route("/health", lambda _: PlainTextResponse("ok"))
    ours = [*routes(Pages(keeper)), health, calendar_route(mill), Mount("/api", WhenAsked(mill)), Mount("/", behind)]
    guards = [Middleware(Guard, hosts=LOCAL.hosts(8501)), Middleware(Gate, keeper=keeper, every_s=0.02)]
    return Starlette(routes=ours, middleware=guards)


def ask_all(browser, asked, **headers):
    """The answers to many (method, path), in one loop: a thread for each would take most of the time."""

    async def all_of_them():
        return [await browser._ask(method, path, b"", {"accept": "text/html", **headers}) for method, path in asked]

    return asyncio.run(all_of_them())


def signed_in(app, name="Ann", password=PASSWORD, **browser):
    found = Browser(app, **browser)
    token = found.get("/sign-in").body.split('name="token" value="')[1].split('"')[0]
    assert found.post("/sign-in", {"token": token, "name": name, "password": password}).status == 303
    return found


def test_without_a_session_nothing_but_the_door_answers(screens, reached):
    asked = [("GET", path) for path in BEHIND] + [(method, path) for method in METHODS for path in BEHIND[-3:]]
    asked += [("POST", path) for path in BEHIND[:8]]
    for (method, path), answer in zip(asked, ask_all(Browser(screens), asked), strict=True):
        led = method == "GET" and answer.status == 303 and answer.header("location").startswith("/sign-in?next=")
        assert led or answer.status in (401, 404), f"{method} {path}: {answer.status}"
    closed_ones = [(method, path) for method in METHODS for path in CLOSED]
    assert {answer.status for answer in ask_all(Browser(screens), closed_ones)} == {404}
    assert reached == []


def test_a_websocket_without_a_session_reaches_nothing(screens, reached):
    for path in ("/_stcore/stream", "/", "/api/stream", "/sign-in", "/health"):
        assert closed(screens, Browser(screens), path)
    assert reached == []


def closed(screens, browser, path="/_stcore/stream", **headers) -> bool:
    async def tried() -> bool:
        socket = Socket.opened(screens, browser.scope("websocket", path, headers))
        socket.bring(BackMsg(clear_cache=True).SerializeToString())
        await asyncio.wait({socket.task}, timeout=60)
        return bool(socket.heard) and socket.heard[-1] == {"type": "websocket.close", "code": 1008}

    return asyncio.run(tried())


@pytest.mark.parametrize("name", ["end_session", "sign_out"])
def test_a_cookie_that_was_stolen_opens_nothing_once_its_session_has_ended(screens, mill, reached, name):
    ann = signed_in(screens)
    thief = Browser(screens, address="10.6.6.6", cookies=dict(ann.cookies))
    assert thief.get("/bookings").body == "the mill"
    if name == "end_session":
        (session,) = open_sessions(mill).sessions
        end_session(mill, session.number)
    else:
        ann.post("/sign-out", {"token": ann.cookies["beamslot-8501-form"]})
    reached.clear()
    answers = ask_all(thief, [("GET", path) for path in BEHIND[::6]])
    assert {answer.status for answer in answers} <= {303, 404} and closed(screens, thief) and reached == []


def test_another_site_reaches_nothing_although_the_browser_sends_the_cookie(screens, reached):
    ann = signed_in(screens)
    for origin in ("https://mill.example", "null", "http://127.0.0.1:9999", f"https://{HOST}"):
        asked = [(method, path) for method in METHODS for path in ("/bookings", "/sign-out")]
        assert {answer.status for answer in ask_all(ann, asked, origin=origin)} == {403}
        assert closed(screens, ann, origin=origin)
    assert reached == []


@pytest.mark.parametrize("forged", [{}, {"token": ""}, {"token": "x" * 43}])
def test_a_forged_form_signs_nobody_out(screens, mill, forged):
    ann = signed_in(screens)
    assert ann.post("/sign-out", forged).status == 403
    assert ann.get("/bookings").body == "the mill"


def test_to_look_at_a_page_does_nothing(screens, mill):
    ann = signed_in(screens)
    paths = ("/sign-out", "/sign-in?name=Bob&password=x")
    ask_all(ann, [(method, path) for method in ("GET", "HEAD", "OPTIONS") for path in paths])
    assert len(open_sessions(mill).sessions) == 1 and ann.get("/bookings").body == "the mill"


def test_accounts_and_sessions_are_for_administrators_only(mill):
    for role in Role:
        here = mill.acting(Actor("Vera", frozenset({role}), "screen"))
        for service in (people, open_sessions):
            if role is Role.ADMINISTRATOR:
                service(here)
            else:
                with pytest.raises(NotAllowed):
                    service(here)


def test_each_role_is_let_in_and_known_by_its_session_alone(screens, mill):
    for role in Role:
        add_person(mill, f"a {role}", PASSWORD, [role])
        browser = signed_in(screens, f"a {role}")
        assert browser.get("/bookings").body == "the mill"
        signed = door(mill, browser.cookies["beamslot-8501"]).signed_in
        assert signed and signed.actor().roles == {role}


def test_by_https_a_browser_is_told_to_come_by_https_for_a_year(screens):
    said = "strict-transport-security"
    for path in ("/sign-in", "/health", "/bookings", "/_stcore/metrics"):
        assert Browser(screens, scheme="https").get(path).header(said) == "max-age=31536000"
        assert Browser(screens).get(path).header(said) == ""


def test_every_page_of_ours_says_its_type_and_charset(screens):
    ann = signed_in(screens)
    kinds = {
        "/sign-out": "text/html",
        "/signed-in": "text/html",
        "/health": "text/plain",
        "/_stcore/metrics": "text/plain",
    }
    for path, kind in kinds.items():
        assert ann.get(path).header("content-type") == f"{kind}; charset=utf-8"


def test_signing_out_clears_what_the_browser_kept(screens):
    ann = signed_in(screens)
    answer = ann.post("/sign-out", {"token": ann.cookies["beamslot-8501-form"]})
    assert answer.header("clear-site-data") == '"storage"' and "beamslot-8501" not in ann.cookies
