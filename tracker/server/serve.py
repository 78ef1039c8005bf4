"""Start the screens on this machine, and end them."""

import os
import signal
import socket
import ssl
import threading
import webbrowser
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from types import FrameType
from typing import NoReturn

import uvicorn
from starlette.types import ASGIApp

from tracker.errors import TrackerError
from tracker.server.application import application
from tracker.server.port import ADDRESS, bound
from tracker.server.reach import LOCAL, Reach, require_people
from tracker.server.scratch import scratch
from tracker.services.context import Context
from tracker.services.jobs.desk import break_off_dead, end_all
from tracker.store import open_store

START_TIMEOUT_S, END_TIMEOUT_S = 60, 5


def serve(
    db: str,
    port: int = 8501,
    open_browser: bool = False,
    ready: Callable[[str], None] | None = None,
    new: bool = False,
    within: Reach = LOCAL,
) -> None:
    """Show the screens of a database on `port` until interrupted, by default for this machine only (http://127.0.0.1); `new`
    makes an empty one if it is not there.

    `ready` is called with the address once the screens answer. TrackerError where the database cannot be opened, the
    port is taken, or the screens do not start.
    """
    before = signal.signal(signal.SIGTERM, _leave)
    try:
        with serving(db, port, new, within) as (url, screens):
            if ready:
                ready(url)
            if open_browser:
                webbrowser.open(url)
            while screens.is_alive():
                screens.join(1)  # without a limit Ctrl-C would not be heard on every system
    except KeyboardInterrupt:
        pass
    finally:
        signal.signal(signal.SIGTERM, before)


@contextmanager
def serving(db: str, port: int, new: bool = False, within: Reach = LOCAL) -> Iterator[tuple[str, threading.Thread]]:
    """The screens in a thread of this process until the end: their address, and the thread.

    The screen library keeps one set of screens for a process, so this works once in each.
    """
    if within.address != ADDRESS and not within.provider:
        require_people(Context(db))
    with bound(port, within.address) as held, scratch(port):
        open_store(db, make=new)
        database = db if "://" in db else str(Path(db).resolve())
        break_off_dead(Context(database))
        with _environment("BEAMSLOT_DB", database):
            up = threading.Event()
            server = uvicorn.Server(options(application(database, port, up.set, within), within))
            screens = threading.Thread(target=server.run, args=([held],), name="screens", daemon=True)
            try:
                _start(screens, up, held)
                yield within.url(port), screens
            finally:
                server.should_exit = True
                end_all(END_TIMEOUT_S)
                screens.join(2 * END_TIMEOUT_S)


def options(app: ASGIApp, within: Reach) -> uvicorn.Config:
    """How the screens are served within `within`: by TLS from 1.2 on where there is a certificate."""
    return uvicorn.Config(
        app, log_level="warning", access_log=False, server_header=False, lifespan="on",
        timeout_graceful_shutdown=END_TIMEOUT_S, proxy_headers=within.proxy is not None,
        forwarded_allow_ips=within.proxy or "", ssl_certfile=within.certificate, ssl_keyfile=within.key,
        ssl_context_factory=_tls_1_2 if within.certificate else None,
    )  # fmt: skip


def _tls_1_2(_config: uvicorn.Config, made: Callable[[], ssl.SSLContext]) -> ssl.SSLContext:
    """TLS 1.2 at least (RFC 9325, 3.1.1): what Python allows by itself depends on how it was built."""
    context = made()
    context.minimum_version = ssl.TLSVersion.TLSv1_2
    return context


def _start(screens: threading.Thread, up: threading.Event, held: socket.socket) -> None:
    """Return once a browser that connects is answered: the port listens, and the screens can be shown."""
    held.listen(128)
    screens.start()
    for _ in range(START_TIMEOUT_S * 5):
        if up.wait(0.2):
            return
        if not screens.is_alive():
            raise TrackerError("screens-ended")
    raise TrackerError("screens-slow", seconds=START_TIMEOUT_S)


@contextmanager
def _environment(name: str, value: str) -> Iterator[None]:
    """The screens are scripts of their own: they learn by the environment what they show."""
    before = os.environ.get(name)
    os.environ[name] = value
    try:
        yield
    finally:
        if before is None:
            del os.environ[name]
        else:
            os.environ[name] = before


def _leave(_signal: int, _frame: FrameType | None) -> NoReturn:
    raise KeyboardInterrupt
