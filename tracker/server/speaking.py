"""In which language a page of our own answers: that of whoever asks."""

from starlette.requests import HTTPConnection
from starlette.responses import Response

from tracker.words import Edge, Speaker
from tracker.words.choosing import ASKED, KEPT, KEPT_S, SPOKEN, chosen


def speaker_of(connection: HTTPConnection) -> Speaker:
    asked, kept = connection.query_params.get(ASKED), connection.cookies.get(KEPT)
    return Speaker(chosen(asked, kept, accepts=connection.headers.get("accept-language", "")), edge=Edge.SCREEN)


def keep(connection: HTTPConnection, answer: Response, secure: bool) -> None:
    """Keep the language that the address asks for. The screens themselves set the same cookie by a script."""
    if (asked := connection.query_params.get(ASKED)) in SPOKEN and asked:
        answer.set_cookie(KEPT, asked, max_age=KEPT_S, path="/", secure=secure, samesite="lax")
