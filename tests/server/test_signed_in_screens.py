"""The screens themselves behind the door: whose a page is, and that no page is resumed by anybody else."""

import asyncio
import re
import urllib.parse
import urllib.request
from http.cookiejar import CookieJar

import pytest
from quick_passwords import OTHER, PASSWORD, quick_passwords  # noqa: F401
from served import Served, ask, served, shake
from streamlit.proto.BackMsg_pb2 import BackMsg
from streamlit.proto.ForwardMsg_pb2 import ForwardMsg
from websockets.asyncio.client import connect
from websockets.exceptions import ConnectionClosed

from tracker.services.context import Context
from tracker.services.people.accounts import add_person, end_person


@pytest.fixture(scope="module")
def db(tmp_path_factory, quick_passwords):  # noqa: F811
    mill = Context(str(tmp_path_factory.mktemp("door") / "mill.db"), make=True)
    add_person(mill, "Ann", PASSWORD, ["planner"])
    add_person(mill, "Bob", OTHER, ["viewer"])
    return mill.database


@pytest.fixture(scope="module")
def screens(db):
    with served(db) as running:
        yield running


def cookie_of(screens: Served, name: str, password: str) -> str:
    """Signs in as a browser does; gives the line of its cookies."""
    jar = CookieJar()
    opened = urllib.request.build_opener(urllib.request.HTTPCookieProcessor(jar)).open
    page = opened(f"{screens.url}/sign-in").read().decode()
    token = re.search(r'name="token" value="([^"]+)"', page)
    assert token
    form = urllib.parse.urlencode({"token": token[1], "name": name, "password": password}).encode()
    assert b"<div id=" in opened(f"{screens.url}/sign-in?next=/", form).read()
    return "; ".join(f"{cookie.name}={cookie.value}" for cookie in jar)


def stream(screens: Served, cookie: str, page: str | None = None):
    """A page's own stream; `page` asks to go on with an earlier one."""
    protocols = ["streamlit", "PLACEHOLDER", *([page] if page else [])]
    headers = {"Cookie": cookie}
    return connect(
        f"ws://{screens.host}/_stcore/stream", origin=screens.url, subprotocols=protocols, additional_headers=headers,  # type: ignore[arg-type]
        max_size=None,
    )  # fmt: skip


async def run(socket) -> tuple[str, str]:
    """Runs the screen once: the number of the page, and everything that was sent meanwhile."""
    asked = BackMsg()
    asked.rerun_script.query_string = ""
    await socket.send(asked.SerializeToString())
    page, said = "", ""
    while True:
        heard = ForwardMsg()
        heard.ParseFromString(await asyncio.wait_for(socket.recv(), 60))
        said += str(heard)
        if heard.WhichOneof("type") == "new_session":
            page = heard.new_session.initialize.session_id
        if page and heard.WhichOneof("type") == "script_finished":  # not that of a run before, which is told first
            return page, said


def test_a_page_says_whose_it_is_and_nobody_else_goes_on_with_it(screens):
    ann, bob = cookie_of(screens, "Ann", PASSWORD), cookie_of(screens, "Bob", OTHER)

    async def tried():
        async with stream(screens, ann) as socket:
            first, said = await run(socket)
            assert "Ann (planner)" in said
        async with stream(screens, ann, first) as socket:
            again, _ = await run(socket)
        async with stream(screens, bob, first) as socket:
            others, said = await run(socket)
            assert "Bob (viewer)" in said and "Ann" not in said
        return first, again, others

    first, again, others = asyncio.run(tried())
    assert first == again != others


def test_without_a_session_there_is_no_stream_and_no_page(screens):
    answer = shake(screens.port, f"Host: {screens.host}", f"Origin: {screens.url}")
    assert answer.status == 403
    for path in (
        "/",
        "/bookings",
        "/_stcore/health",
        "/_stcore/host-config",
        "/media/x",
        "/static/js/x.js",
        "/favicon.png",
    ):
        assert ask(screens.port, path, f"Host: {screens.host}").status == 401, path
    assert ask(screens.port, "/health", f"Host: {screens.host}").body == b"ok"


def test_an_identity_that_a_browser_claims_counts_for_nothing(screens):
    claimed = "X-Beamslot-Session: 1"
    assert ask(screens.port, "/", f"Host: {screens.host}", claimed).status == 401
    assert shake(screens.port, f"Host: {screens.host}", f"Origin: {screens.url}", claimed).status == 403


def test_when_the_account_ends_an_open_page_is_closed(screens, db):
    add_person(Context(db), "Eve", PASSWORD, ["viewer"])
    eve = cookie_of(screens, "Eve", PASSWORD)

    async def tried():
        async with stream(screens, eve) as socket:
            await run(socket)
            end_person(Context(db), "Eve")
            with pytest.raises(ConnectionClosed) as closed:
                while True:
                    await asyncio.wait_for(socket.recv(), 60)
        return closed.value

    assert asyncio.run(tried()).rcvd.code == 1008
