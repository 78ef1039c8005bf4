"""Of what there is too little by a limit, so that what happened can be held beside it."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

from tracker.domain.mill import Mill
from tracker.domain.plan import Booking
from tracker.domain.words import fold
from tracker.errors import Message
from tracker.mill_state.happened import CLOSED, LENGTH, PART, PEOPLE, SECTION, STOPPED, TOOL, WATCH, Happened

SLOT = timedelta(minutes=30)


@dataclass(frozen=True, slots=True)
class Lack:
    of: tuple[str, ...]
    """As of `Happened`."""
    name: str = ""
    """Which trade, part or tool, folded; empty = whichever."""
    days: tuple[date, ...] = ()
    """On which; none = those of the booking."""
    span: tuple[datetime, datetime] | None = None
    """Where a limit on several bookings says from when to when."""
    hall: str | None = None

    def by(self, one: Happened, days: Sequence[date], hall: str) -> bool:
        """Whether there is less since something happened, on one of the days in a hall."""
        if one.of not in self.of or (one.hall or hall) != hall:
            return False
        named = not one.name or not self.name or one.name == self.name
        return named and (one.of == PART or not days or any(one.on(day) for day in days))

    def takes(self, old: Booking, zone: ZoneInfo) -> bool:
        """Whether a booking is one of those that ask for too much together."""
        if self.of == (PART,):
            on = old.start.astimezone(zone).date()
            return self.name in {fold(part) for part in old.parts} and all(on <= day for day in self.days)
        in_hall = self.hall is None or self.hall == old.key.hall
        return in_hall and self.span is not None and old.start < self.span[1] and self.span[0] < old.end


_PEOPLE = ("starts-without-crew", "hold-no-crew", "firm-no-crew", "ends-otherwise", "hold-hours-end", "firm-hours-end")
_WATCHED = ("restart-unwatched", "hold-unwatched")
_CLOSED = ("open-over-closed-day", "hold-closed")
_KINDS = {
    "crews": (PEOPLE,),
    "heads": (PEOPLE,),
    "tool": (TOOL,),
    "stopped": (STOPPED,),
    "section": (SECTION,),
    "part": (PART,),
}


def lack_of(what: Message, mill: Mill) -> Lack | None:
    """Of a finding of the check, of what limits a booking, or of why a loom is left over; None for others."""
    given, code = what.params, what.code
    if code == "hold-short" and isinstance(given["short"], Message):
        return lack_of(given["short"], mill)
    if code in ("too-little", "left-taken"):
        at = given.get("at")
        kind = str(given.get("kind") or given.get("limit"))
        return Lack(_KINDS[kind], _name(what, "what"), (at.date(),) if isinstance(at, datetime) else ())
    if code in ("part-short", "firm-part", "left-no-kit"):
        day = given.get("day")
        return Lack((PART,), _name(what, "part"), (day,) if isinstance(day, date) else ())
    if code in _PEOPLE:
        return Lack((PEOPLE,), fold(mill.terms.lead_trade))
    if code in _WATCHED:
        return Lack((PEOPLE, WATCH), _name(what, "trade"))
    if code in _CLOSED:
        return Lack((CLOSED, PEOPLE))
    if code == "other-length":
        return Lack((LENGTH,))
    return _of_several(what)


def _of_several(what: Message) -> Lack | None:
    """A limit that several bookings break together."""
    given = what.params
    start, end, at = given.get("start"), given.get("end"), given.get("at")
    if isinstance(start, datetime) and isinstance(end, datetime):
        of = {"too-few-crews": PEOPLE, "too-few-heads": PEOPLE, "too-few-tools": TOOL}.get(what.code)
        return Lack((of,), _name(what, "trade", "tool"), (start.date(),), (start, end)) if of else None
    if isinstance(at, datetime) and what.code in ("too-many-stopped", "too-many-stopped-in-section"):
        of = STOPPED if what.code == "too-many-stopped" else SECTION
        return Lack((of,), span=(at, at + SLOT), hall=str(given["hall"]))
    return None


def _name(what: Message, *params: str) -> str:
    return next((fold(str(what.params[name])) for name in params if what.params.get(name)), "")
