"""The way to the mill's identity provider and back."""

import secrets
from collections import OrderedDict
from datetime import datetime, timedelta
from typing import NamedTuple

import anyio.to_thread
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from tracker.domain.clock import now
from tracker.errors import NotAllowed, TrackerError, message
from tracker.server.gate import PROVIDER, PROVIDER_BACK
from tracker.server.keeper import address_of, is_secure
from tracker.server.provider import Begun, Provider
from tracker.server.sign_in import Pages, own
from tracker.server.waits import Waits
from tracker.services.people.by_provider import note_refusal, sign_in_vouched

LASTS = timedelta(minutes=10)
MOST = 1_000
"""Sign-ins begun that are kept in mind; the oldest goes first."""


class _Away(NamedTuple):
    begun: Begun
    onward: str
    until: datetime


class ProviderPages:
    def __init__(self, pages: Pages, provider: Provider) -> None:
        self.pages, self.keeper, self.provider = pages, pages.keeper, provider
        self._away: OrderedDict[str, _Away] = OrderedDict()
        self._waits = Waits()

    def routes(self) -> list[Route]:
        return [Route(PROVIDER, self.away, methods=["GET"]), Route(PROVIDER_BACK, self.back, methods=["GET"])]

    async def away(self, request: Request) -> Response:
        """Send the browser to the provider."""
        if wait := self._wait_s(request):
            return self._waiting(request, wait)
        begun = Begun(f"{request.url.scheme}://{request.headers['host']}{PROVIDER_BACK}")
        try:
            address = await anyio.to_thread.run_sync(self.provider.address, begun)
        except TrackerError as error:
            return await self._refused(request, error)
        self._away[begun.state] = _Away(begun, own(request.query_params.get("next", "")), now() + LASTS)
        if len(self._away) > MOST:
            self._away.popitem(last=False)
        answer = RedirectResponse(address, 303, {"Cache-Control": "no-store"})
        self.keeper.give_state(answer, begun.state, is_secure(request), int(LASTS.total_seconds()))
        return answer

    async def back(self, request: Request) -> Response:
        """The provider has sent the browser back."""
        if wait := self._wait_s(request):
            return self._waiting(request, wait)
        try:
            away = self._begun(request)
            who = await anyio.to_thread.run_sync(self.provider.vouched, away.begun, dict(request.query_params))
            token = await anyio.to_thread.run_sync(sign_in_vouched, self.keeper.context, who, address_of(request))
        except TrackerError as error:
            return await self._refused(request, error)
        self._waits.was_right("", address_of(request))
        await self.pages.end(request)
        answer = RedirectResponse(away.onward, 303)
        self.keeper.give(answer, token, is_secure(request))
        self.keeper.take_state(answer, is_secure(request))
        return answer

    def _begun(self, request: Request) -> _Away:
        """The sign-in that this very browser began, once; TrackerError where there is none."""
        state, kept = request.query_params.get("state", ""), self.keeper.state(request)
        away = self._away.pop(state, None) if kept and secrets.compare_digest(kept.encode(), state.encode()) else None
        if away is None or now() > away.until:
            raise TrackerError("provider-state", minutes=LASTS // timedelta(minutes=1))
        return away

    async def _refused(self, request: Request, error: TrackerError) -> Response:
        said, address = error.message, address_of(request)
        self._waits.was_wrong("", address, now())
        person = str(said.params.get("person", ""))
        try:
            await anyio.to_thread.run_sync(note_refusal, self.keeper.context, said.code, person, address)
        except TrackerError as silent:  # somebody writes for long, or the database is gone
            return self.pages.form(request, "/", silent.message, 503)
        status = 403 if isinstance(error, NotAllowed) else 503 if said.code == "provider-silent" else 400
        return self.pages.form(request, "/", said, status)

    def _wait_s(self, request: Request) -> int:
        return self._waits.left_s("", address_of(request), now())

    def _waiting(self, request: Request, wait_s: int) -> Response:
        return self.pages.form(request, "/", message("provider-wait", seconds=wait_s), 429)
