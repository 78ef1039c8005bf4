"""The mill's identity provider: where a browser is sent, and what the provider says of who comes back.

OpenID Connect Core 1.0, section 3.1 (the flow by a code), RFC 7636 (PKCE), RFC 9207 (who answers); its own description as of
OpenID Connect Discovery 1.0. Every call goes to the network and belongs into a thread.
"""

import secrets
import time
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from tracker.errors import TrackerError
from tracker.server.provider_settings import ProviderSettings, is_protected
from tracker.services.people.by_provider import Vouched

TIMEOUT_S, KEPT_S = 5, 3600
"""An answer is waited for so long; the provider's description counts so long."""
SIGNED_BY = ["RS256", "PS256", "ES256", "EdDSA"]
"""Signatures that only the provider can make; one by a shared secret, or none, is not taken."""
LEEWAY_S = 60
"""Between its clock and ours."""


@dataclass(frozen=True, slots=True)
class Begun:
    """A sign-in that a browser was sent away with."""

    back: str
    """The address to which the provider sends the browser."""
    state: str = field(default_factory=lambda: secrets.token_urlsafe(32))
    nonce: str = field(default_factory=lambda: secrets.token_urlsafe(32))
    verifier: str = field(default_factory=lambda: secrets.token_urlsafe(48))
    """Of PKCE: only who began can use the code."""


class Provider:
    def __init__(self, settings: ProviderSettings) -> None:
        """TrackerError where the library for it is not installed."""
        try:
            import authlib  # noqa: F401
        except ImportError:
            raise TrackerError("provider-library") from None
        self.settings = settings
        self._described: tuple[float, Mapping[str, Any]] | None = None
        self._keys: Mapping[str, Any] | None = None

    def address(self, begun: Begun) -> str:
        """Where the browser goes. TrackerError where the provider does not answer."""
        endpoint = self._description()["authorization_endpoint"]
        with self._session(begun) as session:
            address, _ = session.create_authorization_url(
                endpoint, state=begun.state, nonce=begun.nonce, code_verifier=begun.verifier
            )
        return address

    def vouched(self, begun: Begun, said: Mapping[str, str]) -> Vouched:
        """Whom it vouches for, by what the browser brought back (`code`, `iss`, `error`). TrackerError for what does not hold."""
        from authlib.integrations.base_client import OAuthError
        from joserfc.errors import JoseError
        from requests import RequestException

        described = self._description()
        if said.get("error") or not said.get("code") or said.get("iss", self.settings.issuer) != self.settings.issuer:
            raise TrackerError("provider-refused")
        try:
            with self._session(begun) as session:
                token = session.fetch_token(
                    described["token_endpoint"], grant_type="authorization_code", code=said["code"],
                    code_verifier=begun.verifier, timeout=TIMEOUT_S,
                )  # fmt: skip
                claims = self._claims(token, begun.nonce)
                return self._who(claims, lambda: self._more(session, described, claims["sub"]))
        except OAuthError as error:
            raise TrackerError("provider-refused") from error
        except RequestException as error:
            raise TrackerError("provider-silent") from error
        except (JoseError, ValueError, KeyError) as error:
            raise TrackerError("provider-token") from error

    def _session(self, begun: Begun) -> Any:
        from authlib.integrations.requests_client import OAuth2Session

        known = self.settings
        return OAuth2Session(
            known.client, known.secret or None, scope=known.scopes, redirect_uri=begun.back, code_challenge_method="S256",
            token_endpoint_auth_method=None if known.secret else "none",
        )  # fmt: skip

    def _description(self) -> Mapping[str, Any]:
        if self._described is None or time.monotonic() - self._described[0] > KEPT_S:
            found = self._fetched(f"{self.settings.issuer.rstrip('/')}/.well-known/openid-configuration")
            needed = [found.get(name) for name in ("authorization_endpoint", "token_endpoint", "jwks_uri")]
            if found.get("issuer") != self.settings.issuer or not all(map(is_protected, map(str, needed))):
                raise TrackerError("provider-silent")
            self._described, self._keys = (time.monotonic(), found), None
        return self._described[1]

    def _fetched(self, address: str) -> Mapping[str, Any]:
        import requests

        try:
            answer = requests.get(address, timeout=TIMEOUT_S, allow_redirects=False)
            answer.raise_for_status()
            found = answer.json()
        except (requests.RequestException, ValueError) as error:
            raise TrackerError("provider-silent") from error
        if not isinstance(found, dict):
            raise TrackerError("provider-silent")
        return found

    def _claims(self, token: Mapping[str, Any], nonce: str) -> Mapping[str, Any]:
        """What its signed token says. JoseError or KeyError for one that does not hold."""
        from authlib.oidc.core import CodeIDToken
        from joserfc import jwt
        from joserfc.errors import InvalidKeyIdError
        from joserfc.jwk import KeySet

        def decoded() -> Any:
            return jwt.decode(token["id_token"], KeySet.import_key_set(self._key_set()), algorithms=SIGNED_BY)  # type: ignore[arg-type]

        try:
            found = decoded()
        except InvalidKeyIdError:  # the provider has changed its keys
            self._keys = None
            found = decoded()
        rules = {"iss": {"essential": True, "value": self.settings.issuer},
                 "aud": {"essential": True, "value": self.settings.client}}  # fmt: skip
        told = {"nonce": nonce, "client_id": self.settings.client, "access_token": token.get("access_token")}
        CodeIDToken(found.claims, found.header, rules, told).validate(leeway=LEEWAY_S)
        return found.claims

    def _key_set(self) -> Mapping[str, Any]:
        if self._keys is None:
            self._keys = self._fetched(self._description()["jwks_uri"])
        return self._keys

    def _more(self, session: Any, described: Mapping[str, Any], subject: str) -> Mapping[str, Any]:
        """What the provider says beside its token, of the same person."""
        address = described.get("userinfo_endpoint")
        if not address or not is_protected(address):
            return {}
        answer = session.get(address, timeout=TIMEOUT_S, allow_redirects=False)
        found = answer.json() if answer.ok else {}
        return found if isinstance(found, dict) and found.get("sub") == subject else {}

    def _who(self, claims: Mapping[str, Any], more: Any) -> Vouched:
        """KeyError where the provider tells no name."""
        known = self.settings
        if claim(claims, known.name) is None or claim(claims, known.groups) is None:
            claims = {**more(), **claims}
        name, groups = claim(claims, known.name), claim(claims, known.groups)
        if not isinstance(name, str):
            raise KeyError(known.name)
        theirs = groups if isinstance(groups, list) else [groups]
        roles = known.roles_of([group for group in theirs if isinstance(group, str)])
        return Vouched(f"{known.issuer} {claims['sub']}", name, roles)


def claim(claims: Mapping[str, Any], name: str) -> Any:
    """The value of a claim; `realm_access.roles` is `roles` within `realm_access`, unless a claim has that very name."""
    if name in claims:
        return claims[name]
    outer, dot, inner = name.partition(".")
    found = claims.get(outer)
    return claim(found, inner) if dot and isinstance(found, dict) else None
