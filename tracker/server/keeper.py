"""Asks the services who is signed in, off the event loop, and knows the cookies of this server."""

import asyncio
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from functools import partial
from typing import Any

import anyio.to_thread
from starlette.requests import HTTPConnection
from starlette.responses import Response

from tracker.domain.clock import now
from tracker.errors import TrackerError
from tracker.server.waits import Waits
from tracker.services.context import Context
from tracker.services.people.sessions import (
    LONGEST,
    Door,
    SignedIn,
    door,
    is_due,
    machine_moment,
    sign_in,
    sign_out,
    touch,
)
from tracker.store.written import Written, is_seen_at_once, written

PASSWORDS_AT_ONCE = 2
"""Each takes 64 MiB and a processor."""


HOLDS, HOLDS_ON_A_SERVER = timedelta(seconds=6), timedelta(seconds=1)
"""So long what was looked up counts at most, where nothing was written. Whoever ends a session writes: of an SQLite file that is
seen at once, whichever process it was, and an open page looks every five seconds, so that what is asked from it finds it looked
up; what others write to a database server nobody sees."""
MOST_KNOWN = 1_000


@dataclass(frozen=True, slots=True)
class _Known:
    door: Door
    mark: Written
    """Of the database, from before it was looked up."""
    at: datetime


class Keeper:
    def __init__(self, context: Context, port: int, patience_s: float = 0.5, closed: bool = False) -> None:
        """`port` tells the cookies of two servers of one machine apart: browsers do not. Nobody waits longer than `patience_s`
        for a touch to be written down, as while a load holds the database. `closed`: whoever comes must sign in, also while
        nobody has an account."""
        self.context, self.waits, self.patience_s = context, Waits(), patience_s
        self.cookie, self.form_cookie = f"beamslot-{port}", f"beamslot-{port}-form"
        self.state_cookie = f"beamslot-{port}-provider"
        self._passwords = ThreadPoolExecutor(PASSWORDS_AT_ONCE, "passwords")
        self._closed, self._closed_before = closed, closed
        self._doors: dict[str | None, _Known] = {}
        self._holds = HOLDS if is_seen_at_once(context.database) else HOLDS_ON_A_SERVER

    async def door(self, token: str | None) -> Door:
        """As the database has it, or had it a moment ago and nothing was written since. TrackerError where it cannot be read, but
        where nobody ever had an account: then the screens say it."""
        mark, at = written(self.context.database), machine_moment(self.context)
        known = self._doors.get(token)
        if known and mark is not None and known.mark == mark and timedelta(0) <= at - known.at < self._holds:
            return known.door
        found = await self._looked_up(token)
        self._doors.pop(token, None)
        if found.is_open and mark is not None:
            self._doors[token] = _Known(found, mark, at)
            if len(self._doors) > MOST_KNOWN:
                del self._doors[next(iter(self._doors))]
        return found

    async def _looked_up(self, token: str | None) -> Door:
        try:
            found = await anyio.to_thread.run_sync(door, self.context, token)
        except TrackerError:
            if self._closed_before:
                raise
            return Door(False)
        self._closed_before = self._closed or found.accounts
        return replace(found, accounts=self._closed_before)

    def token(self, connection: HTTPConnection) -> str | None:
        return connection.cookies.get(_prefixed(self.cookie, is_secure(connection)))

    def form_token(self, connection: HTTPConnection) -> str:
        """Which the forms of this browser carry; empty where it has none."""
        return connection.cookies.get(_prefixed(self.form_cookie, is_secure(connection)), "")

    async def touch(self, signed_in: SignedIn) -> None:
        """Write down that somebody did something, where that is due, in a moment when the database is free."""
        if not is_due(self.context, signed_in):
            return
        writing = asyncio.ensure_future(anyio.to_thread.run_sync(self._touched, signed_in.number))
        await asyncio.wait({writing}, timeout=self.patience_s)

    def _touched(self, number: int) -> None:
        with suppress(TrackerError):  # the next touch will do
            touch(self.context, number)

    async def try_password(self, name: str, password: str, address: str) -> tuple[str | None, int]:
        """The token of a new session, or None and the seconds to wait before the next try."""
        if wait := self.waits.left_s(name, address, now()):
            return None, wait
        self.waits.was_wrong(name, address, now())  # before it is known, so that many at once count too
        asked = self._passwords.submit(partial(sign_in, self.context, name, password, address))
        token = await asyncio.wrap_future(asked)
        if token:
            self.waits.was_right(name, address)
        return token, self.waits.left_s(name, address, now())

    async def sign_out(self, token: str, address: str) -> None:
        await anyio.to_thread.run_sync(sign_out, self.context, token, address)

    def give(self, response: Response, token: str, secure: bool) -> None:
        self._set(response, self.cookie, token, secure, "lax", int(LONGEST.total_seconds()))

    def give_form(self, response: Response, token: str, secure: bool) -> None:
        self._set(response, self.form_cookie, token, secure, "strict", None)

    def give_state(self, response: Response, state: str, secure: bool, seconds: int) -> None:
        """What the identity provider has to bring back to the same browser."""
        self._set(response, self.state_cookie, state, secure, "lax", seconds)

    def state(self, connection: HTTPConnection) -> str:
        return connection.cookies.get(_prefixed(self.state_cookie, is_secure(connection)), "")

    def take_state(self, response: Response, secure: bool) -> None:
        response.delete_cookie(_prefixed(self.state_cookie, secure), path="/", secure=secure)

    def take(self, response: Response, secure: bool) -> None:
        """The browser forgets the cookie, and what else the screens kept there."""
        response.delete_cookie(_prefixed(self.cookie, secure), path="/", secure=secure)
        response.headers["Clear-Site-Data"] = '"storage"'

    def _set(
        self, response: Response, name: str, value: str, secure: bool, same_site: Any, seconds: int | None
    ) -> None:
        response.set_cookie(
            _prefixed(name, secure), value, max_age=seconds, path="/", secure=secure, httponly=True, samesite=same_site
        )


def _prefixed(name: str, secure: bool) -> str:
    """By https a browser takes a cookie of this name from this server alone, and for its whole site (RFC 6265bis, 4.1.3.2)."""
    return f"__Host-{name}" if secure else name


def address_of(connection: HTTPConnection) -> str:
    """From where it comes; behind a proxy the server has put the forwarded address in its place."""
    return connection.client.host if connection.client else ""


def is_secure(connection: HTTPConnection) -> bool:
    return connection.scope["scheme"] in ("https", "wss")
