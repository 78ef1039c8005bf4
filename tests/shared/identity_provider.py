"""An identity provider on 127.0.0.1: OpenID Connect by the server part of Authlib, with discovery, PKCE and RS256 keys.

Whoever types a name on its page is that person, with the claims that `people` gives. A person's claims can also say what no honest
provider would (another `iss`, an `exp` long ago), so that a test can send it."""

import json
import threading
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from types import SimpleNamespace
from typing import Any

import uvicorn
from authlib.oauth2.rfc6749 import AuthorizationServer, OAuth2Payload, OAuth2Request
from authlib.oauth2.rfc6749.grants import AuthorizationCodeGrant
from authlib.oauth2.rfc6750 import BearerTokenGenerator
from authlib.oauth2.rfc7636 import CodeChallenge
from authlib.oidc.core.grants import OpenIDCode
from joserfc.jwk import KeySet, RSAKey
from served import free_port
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, Response
from starlette.routing import Route

CLIENT, SECRET = "beamslot", "between the provider and the screens"


@dataclass
class _Client:
    """Entered at the provider by hand, with the one address to which it may send a browser."""

    back: str

    def get_client_id(self) -> str:
        return CLIENT

    def check_redirect_uri(self, address: str) -> bool:
        return address == self.back

    def check_client_secret(self, secret: str) -> bool:
        return secret == SECRET

    def check_endpoint_auth_method(self, method: str, _endpoint: str) -> bool:
        return method == "client_secret_basic"

    def check_response_type(self, kind: str) -> bool:
        return kind == "code"

    def check_grant_type(self, kind: str) -> bool:
        return kind == "authorization_code"

    def get_allowed_scope(self, scope: str) -> str:
        return scope


class _Payload(OAuth2Payload):
    def __init__(self, data: Mapping[str, str]) -> None:
        self._data = dict(data)

    @property
    def data(self) -> dict[str, str]:
        return self._data

    @property
    def datalist(self) -> dict[str, list[str]]:
        return {name: [value] for name, value in self._data.items()}


class _Asked(OAuth2Request):
    """A request of the web application, with its fields, as the library wants one."""

    def __init__(self, request: Request, fields: Mapping[str, Any]) -> None:
        super().__init__(request.method, str(request.url), headers=request.headers)
        self.fields = {name: str(value) for name, value in fields.items()}
        self.payload = _Payload(self.fields)

    @property
    def args(self) -> dict[str, str]:
        return self.fields

    @property
    def form(self) -> dict[str, str]:
        return self.fields


class _Server(AuthorizationServer):
    def __init__(self, client: _Client) -> None:
        super().__init__(["openid", "profile", "email"])
        self.client = client

    def query_client(self, name: str) -> _Client | None:
        return self.client if name == CLIENT else None

    def save_token(self, token: Any, request: Any) -> None: ...

    def send_signal(self, *_: Any, **__: Any) -> None: ...

    def create_oauth2_request(self, request: Any) -> Any:
        return request

    def handle_response(self, status: int, body: Any, headers: Any) -> Response:
        if isinstance(body, dict):
            return JSONResponse(body, status, dict(headers))
        return Response(body, status, dict(headers))


@dataclass
class IdentityProvider:
    issuer: str
    back: str
    people: dict[str, dict[str, Any]] = field(default_factory=dict)
    """Name typed → claims about that person."""
    beside: dict[str, dict[str, Any]] = field(default_factory=dict)
    """Name typed → claims that only its own page for programs tells (`/userinfo`)."""
    code_lasts_s: float = 60
    codes: dict[str, Any] = field(default_factory=dict)
    signs_with: RSAKey = field(init=False)
    shows: list[RSAKey] = field(init=False)
    """Its key set."""

    def __post_init__(self) -> None:
        self.turn_keys()

    def turn_keys(self) -> None:
        self.signs_with = RSAKey.generate_key(2048, {"kid": f"key {time.monotonic_ns()}", "use": "sig", "alg": "RS256"})
        self.shows = [self.signs_with]

    def application(self) -> Starlette:
        server = _Server(_Client(self.back))
        server.register_token_generator("default", BearerTokenGenerator(lambda **told: f"token of {told['user'].name}"))
        server.register_grant(_grant(self), [CodeChallenge(required=True), _open_id(self)])
        self._server = server
        return Starlette(routes=[
            Route("/.well-known/openid-configuration", self._described), Route("/keys", self._keys),
            Route("/authorize", self._authorize, methods=["GET", "POST"]),
            Route("/token", self._token, methods=["POST"]), Route("/userinfo", self._userinfo),
        ])  # fmt: skip

    async def _described(self, _: Request) -> Response:
        return JSONResponse({
            "issuer": self.issuer, "authorization_endpoint": f"{self.issuer}/authorize",
            "token_endpoint": f"{self.issuer}/token", "jwks_uri": f"{self.issuer}/keys",
            "userinfo_endpoint": f"{self.issuer}/userinfo", "response_types_supported": ["code"],
            "subject_types_supported": ["public"], "id_token_signing_alg_values_supported": ["RS256"],
            "code_challenge_methods_supported": ["S256"],
        })  # fmt: skip

    async def _keys(self, _: Request) -> Response:
        return JSONResponse({"keys": [key.as_dict(private=False) for key in self.shows]})

    async def _authorize(self, request: Request) -> Response:
        asked = _Asked(request, request.query_params)
        grant = self._server.get_consent_grant(asked)
        if request.method == "GET":
            return HTMLResponse(
                '<form method="post"><label>Who <input name="person" autofocus></label><button>Go</button></form>'
            )
        name = str((await request.form())["person"])
        return self._server.create_authorization_response(asked, SimpleNamespace(name=name), grant)

    async def _token(self, request: Request) -> Response:
        return self._server.create_token_response(_Asked(request, await request.form()))

    async def _userinfo(self, request: Request) -> Response:
        name = request.headers.get("authorization", "").removeprefix("Bearer token of ")
        return JSONResponse({"sub": f"number of {name}", **self.beside[name]} if name in self.beside else {}, 200)

    def kept(self, code: str) -> Any:
        """What a code stands for as long as it lasts."""
        found = self.codes.get(code)
        return found if found and time.monotonic() - found.at < self.code_lasts_s else None


def _grant(provider: IdentityProvider) -> type[AuthorizationCodeGrant]:
    class Grant(AuthorizationCodeGrant):
        TOKEN_ENDPOINT_AUTH_METHODS = ["client_secret_basic"]  # noqa: RUF012

        def save_authorization_code(self, code: str, request: Any) -> Any:
            said = request.payload.data
            provider.codes[code] = SimpleNamespace(
                at=time.monotonic(), user=request.user, code_challenge=said["code_challenge"],
                code_challenge_method=said["code_challenge_method"], get_nonce=lambda: said.get("nonce"),
                get_redirect_uri=lambda: said["redirect_uri"], get_scope=lambda: said["scope"],
                get_auth_time=lambda: None, get_acr=lambda: None, get_amr=lambda: None,
            )  # fmt: skip

        def query_authorization_code(self, code: str, client: Any) -> Any:
            return provider.kept(code)

        def delete_authorization_code(self, kept: Any) -> None:
            provider.codes = {code: found for code, found in provider.codes.items() if found is not kept}

        def authenticate_user(self, kept: Any) -> Any:
            return kept.user

    return Grant


def _open_id(provider: IdentityProvider) -> OpenIDCode:
    class OpenID(OpenIDCode):
        def exists_nonce(self, nonce: str, request: Any) -> bool:
            return False

        def get_client_algorithm(self, client: Any) -> str:
            return "RS256"

        def get_encode_header(self, client: Any) -> dict[str, Any]:
            return {"alg": "RS256", "kid": provider.shows[0].kid}

        def get_client_claims(self, client: Any) -> dict[str, Any]:
            return {"iss": provider.issuer, "aud": [CLIENT]}

        def get_compatible_claims(self, request: Any) -> dict[str, Any]:
            at = int(time.time())
            return {"iss": provider.issuer, "aud": [CLIENT], "iat": at, "exp": at + 300}

        def resolve_client_private_key(self, client: Any) -> Any:
            return KeySet([provider.signs_with]) if provider.signs_with in provider.shows else provider.signs_with

        def generate_user_info(self, user: Any, scope: str) -> dict[str, Any]:
            return {"sub": f"number of {user.name}", **provider.people.get(user.name, {})}

    return OpenID()


@contextmanager
def identity_provider(back: str) -> Iterator[IdentityProvider]:
    """Up while the block lasts; browsers are sent back to the address `back`."""
    port = free_port()
    made = IdentityProvider(f"http://127.0.0.1:{port}", back)
    server = uvicorn.Server(uvicorn.Config(made.application(), port=port, log_level="error"))
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    while not server.started:
        time.sleep(0.01)
    try:
        yield made
    finally:
        server.should_exit = True
        thread.join(10)


def settings_text(issuer: str) -> str:
    """The file by which the screens know it: planners are the weaving planners, who only weaves looks."""
    texts = {"issuer": issuer, "client": CLIENT, "secret": SECRET}
    lines = [f"{key} = {json.dumps(value)}" for key, value in texts.items()]
    return "\n".join([*lines, "[roles]", 'planner = ["weaving planners"]', 'viewer = ["weaving"]', ""])
