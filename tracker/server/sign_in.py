"""The pages for signing in and out, with the look of the screens and without a script."""

import secrets
from collections.abc import Mapping
from html import escape
from urllib.parse import parse_qs, quote

from starlette.requests import ClientDisconnect, Request
from starlette.responses import HTMLResponse, PlainTextResponse, RedirectResponse, Response
from starlette.routing import Route

from tracker.errors import Message, TrackerError, message
from tracker.server.gate import PROVIDER, SIGN_IN, SIGNED_IN
from tracker.server.keeper import Keeper, address_of, is_secure
from tracker.server.speaking import keep, speaker_of
from tracker.words import Speaker
from tracker.words.choosing import ASKED, SPOKEN

SIGN_OUT = "/sign-out"
LONGEST_FORM = 8_000
"""Bytes."""
STYLE = """
body { margin: 0; background: #fbf9f4; color: #232b31; font: 16px/1.5 system-ui, sans-serif; }
main { max-width: 24rem; margin: 12vh auto; padding: 0 1rem; }
h1 { font: 600 1.6rem/1.3 Georgia, serif; border-top: 3px solid #1d5c73; padding-top: .8rem; }
label { display: block; margin: 1rem 0 .2rem; }
input { width: 100%; box-sizing: border-box; padding: .6rem; font: inherit; color: inherit; background: #fff;
  border: 1px solid #6d757b; border-radius: 4px; }
button, a.button { display: inline-block; margin-top: 1.4rem; padding: .6rem 1.4rem; min-height: 44px; font: inherit;
  box-sizing: border-box; color: #fff; background: #1d5c73; border: 0; border-radius: 4px; cursor: pointer; text-decoration: none; }
:focus-visible { outline: 3px solid #c8921c; outline-offset: 1px; }
p.wrong { border-left: 4px solid #a2392f; background: #f1ece1; padding: .5rem .8rem; }
a:not(.button) { color: #1d5c73; }
p.others { margin-top: 2rem; }
"""


def routes(pages: "Pages") -> list[Route]:
    return [
        Route(SIGN_IN, pages.sign_in, methods=["GET", "POST"]),
        Route(SIGN_OUT, pages.sign_out, methods=["GET", "POST"]),
        Route(SIGNED_IN, pages.signed_in, methods=["GET"]),
    ]


class Pages:
    def __init__(self, keeper: Keeper, provider: bool = False) -> None:
        """`provider`: whether there is the other way in, by the mill's identity provider."""
        self.keeper, self.provider = keeper, provider

    async def sign_in(self, request: Request) -> Response:
        onward = own(request.query_params.get("next", ""))
        if request.method != "POST":
            door = await self.keeper.door(self.keeper.token(request))
            return RedirectResponse(onward, 303) if door.is_open else self.form(request, onward)
        given = await _form_of(request)
        if not self._is_ours(request, given):
            return self.form(request, onward, message("form-not-ours"), 403)
        name, address = given.get("name", ""), address_of(request)
        try:
            token, wait = await self.keeper.try_password(name, given.get("password", ""), address)
        except TrackerError as error:  # somebody writes for long
            return self.form(request, onward, error.message, 503, name)
        if token is None:
            said = message("sign-in-wait", seconds=wait) if wait else message("sign-in-wrong")
            return self.form(request, onward, said, 429 if wait else 401, name)
        await self.end(request)
        answer = RedirectResponse(onward, 303)
        self.keeper.give(answer, token, is_secure(request))
        return answer

    async def sign_out(self, request: Request) -> Response:
        if request.method != "POST":
            return self._page(request, _SIGN_OUT, 200, "sign-out-title", "sign-out-button", "sign-out-back")
        if not self._is_ours(request, await _form_of(request)):
            return PlainTextResponse(speaker_of(request).line(message("form-not-ours")), 403)
        await self.end(request)
        answer = RedirectResponse(SIGN_IN, 303)
        self.keeper.take(answer, is_secure(request))
        return answer

    async def signed_in(self, request: Request) -> Response:
        """The gate lets nobody come here who is not."""
        return self._page(request, _SIGNED_IN, 200, "signed-in-again")

    async def end(self, request: Request) -> None:
        """The session that this browser has."""
        if old := self.keeper.token(request):
            await self.keeper.sign_out(old, address_of(request))

    def form(
        self, request: Request, onward: str, wrong: Message | None = None, status: int = 200, name: str = ""
    ) -> Response:
        codes = ("sign-in-title", "sign-in-name", "sign-in-password", "sign-in-button")
        speaker = speaker_of(request)
        told = f'<p class="wrong" role="alert">{escape(speaker.line(wrong))}</p>' if wrong else ""
        action = f"{SIGN_IN}?next={quote(onward, safe='')}"
        filled = {"wrong": told, "action": escape(action), "given": escape(name), "others": _others(speaker, action)}
        filled["other_way"] = _other_way(speaker, onward) if self.provider else ""
        return self._page(request, _SIGN_IN, status, *codes, **filled)

    def _page(self, request: Request, body: str, status: int, *codes: str, **filled: str) -> Response:
        """A page with a form; its token stands in the form and in a cookie, which no other site can read or set. `codes`: the
        words that it says."""
        speaker = speaker_of(request)
        words = {code.replace("-", "_"): escape(speaker.say(Message(code))) for code in codes}
        token = self.keeper.form_token(request) or secrets.token_urlsafe(32)
        text = _PAGE.format(
            style=STYLE, language=speaker.language, body=body.format(token=escape(token), **words, **filled)
        )
        answer = HTMLResponse(text, status, {"Cache-Control": "no-store"})
        self.keeper.give_form(answer, token, is_secure(request))
        keep(request, answer, is_secure(request))
        return answer

    def _is_ours(self, request: Request, given: Mapping[str, str]) -> bool:
        kept = self.keeper.form_token(request)
        return bool(kept) and secrets.compare_digest(kept.encode(), given.get("token", "").encode())


async def _form_of(request: Request) -> dict[str, str]:
    """The fields of a form that was sent; none of one that is too long or is none."""
    sent = b""
    try:
        async for piece in request.stream():
            sent += piece
            if len(sent) > LONGEST_FORM:
                return {}
    except ClientDisconnect:
        return {}
    try:
        return {name: values[0] for name, values in parse_qs(sent.decode(), max_num_fields=10).items()}
    except ValueError:
        return {}


def own(address: str) -> str:
    """Where to go on: a path of this server; the first screen for anything that could lead elsewhere."""
    return address if address.startswith("/") and address[1:2] not in ("/", "\\") and address.isprintable() else "/"


def _other_way(speaker: Speaker, onward: str) -> str:
    """The link to the mill's identity provider."""
    there, says = f"{PROVIDER}?next={quote(onward, safe='')}", speaker.say(message("provider-button"))
    return f'<p><a class="button" href="{escape(there)}">{escape(says)}</a></p>'


def _others(speaker: Speaker, action: str) -> str:
    """Links to the same page in the other languages, each named in itself."""
    named = ((code, Speaker(code).say(message("language-name"))) for code in SPOKEN if code != speaker.language)
    return " ".join(
        f'<a href="{escape(f"{action}&{ASKED}={code}")}" lang="{code}" hreflang="{code}">{escape(name)}</a>'
        for code, name in named
    )


_PAGE = """<!doctype html>
<html lang="{language}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>Beamslot</title><style>{style}</style></head><body><main>{body}</main></body></html>
"""
_TOKEN = '<input type="hidden" name="token" value="{token}">'
_SIGN_IN = f"""<h1>{{sign_in_title}}</h1>{{wrong}}{{other_way}}
<form method="post" action="{{action}}">{_TOKEN}
<label for="name">{{sign_in_name}}</label>
<input id="name" name="name" value="{{given}}" autocomplete="username" autocapitalize="none" required autofocus maxlength="60">
<label for="password">{{sign_in_password}}</label>
<input id="password" name="password" type="password" autocomplete="current-password" required maxlength="200">
<button>{{sign_in_button}}</button></form>
<p class="others">{{others}}</p>"""
_SIGNED_IN = "<p>{signed_in_again}</p>"
_SIGN_OUT = f"""<h1>{{sign_out_title}}</h1>
<form method="post" action="{SIGN_OUT}">{_TOKEN}<button>{{sign_out_button}}</button></form>
<p><a href="/">{{sign_out_back}}</a></p>"""
