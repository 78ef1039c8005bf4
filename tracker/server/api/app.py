"""The interface as an application of its own, mounted at `/api`; it documents itself at `/api/openapi.json`."""

from typing import Any

from fastapi import FastAPI, Request
from fastapi.exceptions import RequestValidationError
from starlette.responses import JSONResponse, Response
from starlette.types import ASGIApp, Receive, Scope, Send

from tracker.domain.messages import kept
from tracker.errors import DataError, Message, NotAllowed, TrackerError, UsageError, message
from tracker.server.api.holders import Held, NoToken
from tracker.server.api.posts import posts
from tracker.server.api.reads import reads
from tracker.services.context import Context
from tracker.words import ENGLISH

STATUS = ((UsageError, 400), (NotAllowed, 403), (DataError, 422))
"""Refusals; others are of the database or the machine, and 503."""
LARGEST_BODY = 4_000_000
"""Bytes: 10,000 rows with room to spare."""
ABOUT = (
    "What the commands of Beamslot write with --json, and readings, set values and stops from what collects data of looms. Every "
    "request shows a token (`beamslot people token`). A refusal is `{code, params, words}`, and nothing was written."
)


def api(context: Context) -> ASGIApp:
    made = FastAPI(
        title="Beamslot", version="1", description=ABOUT, docs_url=None, redoc_url=None, openapi_url=None,
        servers=[{"url": "/api"}],
    )  # fmt: skip
    made.state.context = context
    made.include_router(reads())
    made.include_router(posts())
    made.add_exception_handler(TrackerError, _refused)
    made.add_exception_handler(NoToken, _without_token)
    made.add_exception_handler(RequestValidationError, _not_understood)

    @made.get("/openapi.json", include_in_schema=False)
    def described(_: Held) -> Any:
        return made.openapi()

    return _Bounded(made)


class _Bounded:
    """Reads no body that is larger than any post, or does not say how large it is."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        lengths = [value for name, value in scope.get("headers", ()) if name == b"content-length"]
        chunked = any(name == b"transfer-encoding" for name, _ in scope.get("headers", ()))
        if chunked or any(not value.isdigit() or int(value) > LARGEST_BODY for value in lengths):
            answer = _said(message("post-too-large", bytes=LARGEST_BODY), 413)
            await answer(scope, receive, send)
        else:
            await self.app(scope, receive, send)


def _said(said: Message, status: int, **headers: str) -> Response:
    return JSONResponse(kept(said) | {"words": ENGLISH.line(said)}, status, headers)


async def _refused(_: Request, error: Exception) -> Response:
    assert isinstance(error, TrackerError)
    return _said(error.message, next((status for kind, status in STATUS if isinstance(error, kind)), 503))


async def _without_token(_: Request, __: Exception) -> Response:
    return _said(message("token-needed"), 401, **{"WWW-Authenticate": "Bearer"})


async def _not_understood(_: Request, error: Exception) -> Response:
    assert isinstance(error, RequestValidationError)
    first = error.errors()[0]
    what = " ".join(str(part) for part in first["loc"])
    return _said(message("request-unreadable", what=what, why=str(first["msg"])), 400)
