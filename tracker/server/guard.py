"""Middleware before everything else: which hosts, origins and paths are answered, and what a browser may do with a page."""

from starlette.datastructures import Headers, MutableHeaders
from starlette.requests import HTTPConnection
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from tracker.errors import message
from tracker.server.speaking import speaker_of

STREAM = "/_stcore/stream"
OPEN = ("/_stcore/health", "/_stcore/host-config")
OPEN_BELOW = ("/_stcore/upload_file/",)
CLOSED = ("_stcore", "component", "auth", "oauth2callback", "app")
"""First parts of the library's own paths: its metrics, its interface for programs, its sign-in, foreign components and
files beside the script. Only what `OPEN` and `OPEN_BELOW` name is answered there."""
HTTPS_FROM_NOW_ON = "max-age=31536000"
"""A browser that came by https once comes no other way for a year."""
POLICY_VIOLATION = 1008
"""RFC 6455, section 7.4.1."""


class Guard:
    """Pure ASGI middleware, so that it sees websockets as well as requests.

    A foreign origin ends here: the library would look up this machine's own address on the internet to judge it, and takes
    a websocket without an origin or from any port of this machine.
    """

    def __init__(self, app: ASGIApp, hosts: frozenset[str], secure: bool = False) -> None:
        """`secure`: only what came by https is answered, as where a proxy does the encryption."""
        self.app, self.hosts, self.secure = app, hosts, secure

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "websocket":
            if self._host(scope) and _own_origin(scope, required=True) and scope["path"] == STREAM:
                await self.app(scope, receive, send)
            else:
                await send({"type": "websocket.close", "code": POLICY_VIOLATION})
        elif scope["type"] == "http":
            answer = self._refusal(scope) or self.app
            await answer(scope, receive, _with_headers(scope, send))
        else:
            await self.app(scope, receive, send)

    def _refusal(self, scope: Scope) -> ASGIApp | None:
        if not self._host(scope):
            return _said(scope, "not-this-name", 421)
        if not _own_origin(scope, required=False):
            return _said(scope, "from-another-site", 403)
        return None if _is_open(scope["path"]) else _said(scope, "nothing-here", 404)

    def _host(self, scope: Scope) -> bool:
        if self.secure and scope["scheme"] not in ("https", "wss"):
            return False
        said = Headers(scope=scope).getlist("host")
        return len(said) == 1 and said[0].lower() in self.hosts


def _said(scope: Scope, code: str, status: int) -> ASGIApp:
    return PlainTextResponse(speaker_of(HTTPConnection(scope)).say(message(code)), status)


def _own_origin(scope: Scope, required: bool) -> bool:
    """True where the one origin is the host itself, by the same scheme; where none is said, unless it is `required`."""
    headers = Headers(scope=scope)
    origins = headers.getlist("origin")
    if not origins:
        return not required
    scheme = "https" if scope["scheme"] in ("https", "wss") else "http"
    return origins == [f"{scheme}://{headers['host'].lower()}"]


def _is_open(path: str) -> bool:
    return path in OPEN or path.startswith(OPEN_BELOW) or path.lstrip("/").split("/")[0] not in CLOSED


def _with_headers(scope: Scope, send: Send) -> Send:
    """`send` that puts our headers on every answer, in place of what the library says under the same names."""
    said = Headers(scope=scope).get("host", "")

    async def sent(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in _headers(said).items():
                headers[name] = value
            if scope["scheme"] == "https":
                headers["Strict-Transport-Security"] = HTTPS_FROM_NOW_ON
        await send(message)

    return sent


def _headers(host: str) -> dict[str, str]:
    """What a browser may do with an answer; the stream has `host` by name, as older browsers do not take it for 'self'."""
    return {
        "Content-Security-Policy": "; ".join(
            (
                "default-src 'self'",
                # the screen library draws charts by compiled expressions and puts its styles into the page
                "script-src 'self' 'unsafe-inline' 'unsafe-eval'",
                "style-src 'self' 'unsafe-inline'",
                "img-src 'self' data: blob:",
                "font-src 'self' data:",
                f"connect-src 'self' ws://{host} wss://{host}",
                "object-src 'none'",
                "base-uri 'none'",
                "form-action 'self'",
                "frame-ancestors 'none'",
            )
        ),
        "X-Frame-Options": "DENY",
        "X-Content-Type-Options": "nosniff",
        "Referrer-Policy": "same-origin",
        "Cross-Origin-Opener-Policy": "same-origin",
        "Cross-Origin-Resource-Policy": "same-origin",
    }
