"""Middleware behind the guard: once there are accounts, nothing but the sign-in page and `/health` answers without a session."""

import asyncio
import re
from collections.abc import Awaitable, Callable
from urllib.parse import quote

from starlette.requests import HTTPConnection
from starlette.responses import PlainTextResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send
from streamlit.proto.BackMsg_pb2 import BackMsg

from tracker.errors import TrackerError, message
from tracker.server.guard import POLICY_VIOLATION
from tracker.server.keeper import Keeper
from tracker.server.speaking import speaker_of
from tracker.services.people.sessions import Door, SignedIn

SIGN_IN, SIGNED_IN = "/sign-in", "/signed-in"
PROVIDER, PROVIDER_BACK = "/sign-in/provider", "/sign-in/back"
ANSWERED = (SIGN_IN, PROVIDER, PROVIDER_BACK, "/health")
"""Paths, whole, that answer without a session; behind `SIGNED_IN` there is only whether there is one."""
BY_TOKEN = re.compile(r"/calendar/[A-Za-z0-9_-]{43}/crew\.ics|/api/[a-z_]+(\.json)?")
"""Paths, whole, that ask for a token of their own instead of a session."""
IDENTITY = "x-beamslot-session"
"""By which the screens hear whose they are, and by which the library resumes a page for nobody else. Whatever a browser says
under this name is taken out."""
EVERY_S = 5.0
"""An open page is asked so often whether its session still lasts."""
UNTOUCHED = (SIGNED_IN, "/_stcore/health", "/_stcore/host-config")
"""What an open page asks by itself: nobody need sit before it."""


class Gate:
    """Pure ASGI, so that it sees websockets as well as requests."""

    def __init__(self, app: ASGIApp, keeper: Keeper, every_s: float = EVERY_S) -> None:
        self.app, self.keeper, self.every_s = app, keeper, every_s

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] not in ("http", "websocket"):
            await self.app(scope, receive, send)
            return
        scope = _naming(scope, None)
        if scope["type"] == "http" and (scope["path"] in ANSWERED or BY_TOKEN.fullmatch(scope["path"])):
            await self.app(scope, receive, send)
            return
        connection = HTTPConnection(scope)
        token = self.keeper.token(connection)
        try:
            door = await self.keeper.door(token)
        except TrackerError:
            await _refuse(
                scope, receive, send, PlainTextResponse(speaker_of(connection).line(message("database-not-read")), 503)
            )
            return
        if not door.is_open:
            await _refuse(scope, receive, send, _to_the_door(connection))
        elif door.signed_in is None:
            await self.app(scope, receive, send)
        else:
            await self._let_in(scope, receive, send, door.signed_in, token)

    async def _let_in(self, scope: Scope, receive: Receive, send: Send, who: SignedIn, token: str | None) -> None:
        scope = _naming(scope, who.number)
        if scope["type"] == "websocket":
            page = _Page(receive, send, lambda: self._lasts(token), self.keeper.touch)
            await page.run(self.app, scope, self.every_s)
            return
        if scope["path"] not in UNTOUCHED:
            await self.keeper.touch(who)
        await self.app(scope, receive, send)

    async def _lasts(self, token: str | None) -> Door:
        """Whether the session goes on; a database that cannot be read for a moment ends nobody's."""
        try:
            return await self.keeper.door(token)
        except TrackerError:
            return Door(False)


class _Page:
    """A websocket that is closed as soon as its session ends: asked with each message that it brings, and every few seconds."""

    def __init__(
        self,
        receive: Receive,
        send: Send,
        door: Callable[[], Awaitable[Door]],
        touch: Callable[[SignedIn], Awaitable[None]],
    ) -> None:
        self.receive, self.send, self.door, self.touch = receive, send, door, touch
        self.over = asyncio.Event()

    async def run(self, app: ASGIApp, scope: Scope, every_s: float) -> None:
        watch = asyncio.create_task(self._watch(every_s))
        try:
            await app(scope, self._received, self._sent)
        finally:
            watch.cancel()

    async def _watch(self, every_s: float) -> None:
        while (await self.door()).is_open:
            await asyncio.sleep(every_s)
        await self._close()

    async def _close(self) -> None:
        if not self.over.is_set():
            self.over.set()
            await self.send({"type": "websocket.close", "code": POLICY_VIOLATION})

    async def _received(self) -> Message:
        """What comes next from the browser, or that it has gone, once the session is over."""
        brought, over = asyncio.ensure_future(self.receive()), asyncio.ensure_future(self.over.wait())
        await asyncio.wait({brought, over}, return_when=asyncio.FIRST_COMPLETED)
        over.cancel()
        if not brought.done():
            brought.cancel()
            return _GONE
        message = brought.result()
        if message["type"] == "websocket.receive":
            door = await self.door()
            if not door.is_open:
                await self._close()
                return _GONE
            if door.signed_in and _by_hand(message):
                await self.touch(door.signed_in)
        return message

    async def _sent(self, message: Message) -> None:
        if not self.over.is_set():
            await self.send(message)


_GONE: Message = {"type": "websocket.disconnect", "code": POLICY_VIOLATION}


def _by_hand(message: Message) -> bool:
    """Whether somebody did something, and not the page by itself, as when it looks for news."""
    said = BackMsg()
    try:
        said.ParseFromString(message.get("bytes") or b"")
    except Exception:  # what is no message of the library ends there
        return False
    kind = said.WhichOneof("type")
    return kind not in (None, "app_heartbeat") and not (kind == "rerun_script" and said.rerun_script.is_auto_rerun)


def _naming(scope: Scope, number: int | None) -> Scope:
    """The same with the identity of a session, and with no other."""
    headers = [(name, value) for name, value in scope["headers"] if name.lower() != IDENTITY.encode()]
    if number is not None:
        headers.append((IDENTITY.encode(), str(number).encode()))
    return {**scope, "headers": headers}


async def _refuse(scope: Scope, receive: Receive, send: Send, answer: Response) -> None:
    if scope["type"] == "websocket":
        await send({"type": "websocket.close", "code": POLICY_VIOLATION})
    else:
        await answer(scope, receive, send)


def _to_the_door(connection: HTTPConnection) -> Response:
    """A person is led to the sign-in page and back from there; a program hears that it has no session."""
    wants_page = "text/html" in connection.headers.get("accept", "")
    if connection.scope.get("method") != "GET" or not wants_page:
        return PlainTextResponse(speaker_of(connection).say(message("sign-in-first")), 401)
    asked = connection.url.path + (f"?{connection.url.query}" if connection.url.query else "")
    return RedirectResponse(f"{SIGN_IN}?next={quote(asked, safe='')}", 303)
