"""Who asks by the interface: the token in the header `Authorization: Bearer TOKEN`."""

from dataclasses import dataclass
from typing import Annotated

from fastapi import Depends, Request
from fastapi.security import HTTPAuthorizationCredentials, HTTPBearer

from tracker.domain.tokens import Token, TokenMay
from tracker.services.context import Context
from tracker.services.people.tokens import actor_of, shown

bearer = HTTPBearer(auto_error=False, description="A token that `beamslot people token` gave.")


class NoToken(Exception):
    """None was shown, or one that opens nothing here."""


@dataclass(frozen=True, slots=True)
class Holder:
    token: Token
    context: Context


def _held(request: Request, given: Annotated[HTTPAuthorizationCredentials | None, Depends(bearer)]) -> Holder:
    here: Context = request.app.state.context
    token = shown(here, given.credentials, {TokenMay.READ, TokenMay.POST}) if given else None
    if token is None:
        raise NoToken
    return Holder(token, here.acting(actor_of(token)))


def _here(holder: Annotated[Holder, Depends(_held)]) -> Context:
    return holder.context


Held = Annotated[Holder, Depends(_held)]
Here = Annotated[Context, Depends(_here)]
