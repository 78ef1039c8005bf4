"""The ASGI application: the screens, and our own routes beside them."""

import json
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import streamlit as st
from starlette.concurrency import run_in_threadpool
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import Mount, Route
from starlette.types import Receive, Scope, Send
from streamlit import config

from tracker.errors import TrackerError
from tracker.server.calendar import calendar_route
from tracker.server.gate import IDENTITY, Gate
from tracker.server.guard import Guard
from tracker.server.keeper import Keeper
from tracker.server.provider import Provider
from tracker.server.provider_pages import ProviderPages
from tracker.server.reach import LOCAL, Reach
from tracker.server.sign_in import Pages, routes
from tracker.services.context import Context
from tracker.services.screens.state import database_state, require_there

OPTIONS: dict[str, Any] = {
    "server.headless": True,
    "server.fileWatcherType": "none",
    "server.baseUrlPath": "",
    "server.enableCORS": True,
    "server.enableXsrfProtection": True,
    "server.enableStaticServing": False,
    "server.enableAgentApi": False,
    "server.scriptHealthCheckEnabled": False,
    "server.trustedUserHeaders": json.dumps({IDENTITY: "session"}),
    "global.developmentMode": False,
    "browser.gatherUsageStats": False,
    "logger.level": "warning",
}
"""Options of the screen library on which the guard and the mill's privacy rest, whatever this machine's own files say; the
look of the screens stands in `dashboards/.streamlit`."""


def application(db: str, port: int, started: Callable[[], None], reach: Reach = LOCAL) -> st.App:
    """The screens of the database `db` for a server on `port`; `started` is called once they can be shown."""

    @asynccontextmanager
    async def running(_: st.App) -> AsyncIterator[dict[str, Any]]:
        started()
        yield {}

    here = Context(db)
    keeper = Keeper(here, port, closed=reach.provider is not None)
    pages = Pages(keeper, provider=reach.provider is not None)
    by_provider = ProviderPages(pages, Provider(reach.provider)).routes() if reach.provider else []
    made = st.App(
        _script(),
        lifespan=running,
        routes=[
            Route("/health", _health(db)),
            *routes(pages),
            *by_provider,
            calendar_route(here),
            Mount("/api", WhenAsked(here)),
        ],
        middleware=[Middleware(Guard, hosts=reach.hosts(port), secure=reach.secure), Middleware(Gate, keeper=keeper)],
    )
    config.get_config_options(force_reparse=True, options_from_flags=OPTIONS)
    return made


class WhenAsked:
    """The interface for programs, whose library is loaded with the first request: most servers never see one."""

    def __init__(self, context: Context) -> None:
        self.context, self.app = context, None

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if self.app is None:
            from tracker.server.api.app import api

            self.app = api(self.context)
        await self.app(scope, receive, send)


def _script() -> Path:
    spec = find_spec("dashboards")
    if spec is None or spec.origin is None:
        raise TrackerError("screens-missing")
    return Path(spec.origin).with_name("app.py")


def _health(db: str) -> Callable[[Request], Any]:
    """Whether the database can be read, and no more."""

    def read() -> None:
        here = Context(db)
        require_there(here)
        database_state(here)

    async def answer(_: Request) -> Response:
        try:
            await run_in_threadpool(read)
        except Exception:  # whatever it is, it is no business of who asks
            return PlainTextResponse("not ok", 503)
        return PlainTextResponse("ok")

    return answer
