"""The bookings of a crew as a calendar for a phone, from the published plans and nothing else.

An entry is a turn of the crew at a conversion: the first, second … of its turns at that loom. It keeps its UID through all plans;
its SEQUENCE is the number of published plans that moved it (RFC 5545, 3.8.7.4).
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from uuid import NAMESPACE_OID, UUID, uuid5

from tracker.domain.mill import LoomKey, Mill
from tracker.domain.plan import CrewTurn
from tracker.domain.progress import NOT_TO_COME, StageChange
from tracker.domain.screen_addresses import loom_screen
from tracker.errors import message
from tracker.export.crew_calendar import CalendarEntry, calendar_file
from tracker.services.context import Context
from tracker.store.turns import PublishedBooking, published_bookings
from tracker.words import LANGUAGES, Speaker


@dataclass(slots=True)
class _Turn:
    """A turn as the plans up to now have it."""

    span: tuple[datetime, datetime]
    changed_at: datetime
    plan: int
    firm: bool
    moved: int = 0


def crew_calendar(context: Context, crew: str) -> bytes:
    """The file (RFC 5545), in the language of the crew's cards. It has no entries while no plan is published, and none of looms
    that are signed off, put off or left out."""
    with context.reading() as uow:
        mill, stages = uow.mill(), uow.stages()
        bookings = list(published_bookings(uow.session))
    newest = max((booking.plan for booking in bookings), default=0)
    first_at = bookings[0].published_at if bookings else None
    names = uuid5(NAMESPACE_OID, f"{mill.terms.programme} {first_at}")
    language = next(
        (row.language for row in mill.crews if row.crew == crew and row.language), mill.terms.language_of_cards
    )
    speaker = Speaker(language if language in LANGUAGES else "en", mill.terms.zone)
    entries = [
        _entry(mill, speaker, _Place(key, number, uuid5(names, f"{key.hall}\n{key.loom}\n{crew}\n{number}")), turn)
        for (key, number), turn in _followed(bookings, crew).items()
        if turn.plan == newest and not _is_over(stages, key)
    ]
    return calendar_file(speaker.say(message("calendar-of", crew=crew)), mill.terms.zone, entries)


def _followed(bookings: Iterable[PublishedBooking], crew: str) -> Mapping[tuple[LoomKey, int], _Turn]:
    """(loom, which of the crew's turns there) → that turn, through all plans."""
    found: dict[tuple[LoomKey, int], _Turn] = {}
    for booking in bookings:
        mine = [turn for turn in booking.turns if turn.crew == crew]
        for number, turn in enumerate(mine, 1):
            _follow(found, (booking.key, number), turn, booking)
    return found


def _follow(
    found: dict[tuple[LoomKey, int], _Turn], which: tuple[LoomKey, int], turn: CrewTurn, booking: PublishedBooking
) -> None:
    span = (turn.start, turn.end)
    known = found.get(which)
    if known is None:
        found[which] = _Turn(span, booking.published_at, booking.plan, booking.firm)
        return
    if known.span != span:
        known.span, known.changed_at, known.moved = span, booking.published_at, known.moved + 1
    elif known.firm != booking.firm:
        known.changed_at = booking.published_at
    known.plan, known.firm = booking.plan, booking.firm


def _is_over(stages: Mapping[LoomKey, StageChange], key: LoomKey) -> bool:
    return key in stages and stages[key].stage in NOT_TO_COME


@dataclass(frozen=True, slots=True)
class _Place:
    key: LoomKey
    number: int
    uid: UUID


def _entry(mill: Mill, speaker: Speaker, place: _Place, turn: _Turn) -> CalendarEntry:
    loom = mill.looms.get(place.key)
    address = mill.terms.address_of_screens
    told = message(
        "calendar-about", plan=str(turn.plan), firm="yes" if turn.firm else "no", turn=place.number,
        machine_type=loom.machine_type if loom else None,
    )  # fmt: skip
    return CalendarEntry(
        uid=str(place.uid), sequence=turn.moved, changed_at=turn.changed_at, start=turn.span[0], end=turn.span[1],
        title=speaker.say(message("calendar-title", loom=place.key)), about=speaker.say(told), place=place.key.hall,
        firm=turn.firm, address=loom_screen(address, place.key) if address else None,
    )  # fmt: skip
