"""`/calendar/TOKEN/crew.ics`: what a phone subscribes to. It shows nothing but the token in the path,
which opens the bookings of one crew."""

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import Route

from tracker.domain.tokens import TokenMay
from tracker.errors import message
from tracker.server.speaking import speaker_of
from tracker.services.context import Context
from tracker.services.people.tokens import shown
from tracker.services.plans.crew_calendar import crew_calendar


def calendar_route(context: Context) -> Route:
    def read(token: str) -> bytes | None:
        held = shown(context, token, {TokenMay.CALENDAR})
        return crew_calendar(context, held.crew) if held and held.crew else None

    async def answer(request: Request) -> Response:
        found = await run_in_threadpool(read, request.path_params["token"])
        if found is None:
            return PlainTextResponse(speaker_of(request).line(message("calendar-none")), 404)
        return Response(found, media_type="text/calendar", headers={"Cache-Control": "private, no-cache"})

    return Route("/calendar/{token}/crew.ics", answer, methods=["GET"])
