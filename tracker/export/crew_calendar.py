"""Bookings as a calendar file, RFC 5545: lines folded at 75 octets, local times with their zone."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

OFTEN = timedelta(hours=1)
"""How often a phone is asked to look again (RFC 7986, 5.7)."""


AROUND = timedelta(days=366)
"""The zone is told for the time of the entries and so much beside it."""


@dataclass(frozen=True, slots=True)
class CalendarEntry:
    """Moments aware."""

    uid: str
    sequence: int
    changed_at: datetime
    start: datetime
    end: datetime
    title: str
    about: str
    place: str
    firm: bool
    """Else it is tentative: the next plan may move it."""
    address: str | None
    """Of the loom's screen."""


def calendar_file(name: str, zone: ZoneInfo, entries: Sequence[CalendarEntry]) -> bytes:
    """The file; the same entries give the same bytes."""
    from icalendar import Calendar

    calendar = Calendar()
    calendar.add("PRODID", "-//Beamslot//bookings of a crew//EN")
    calendar.add("VERSION", "2.0")
    calendar.add("METHOD", "PUBLISH")
    calendar.add("NAME", name)
    calendar.add("X-WR-CALNAME", name)  # what phones read that do not know NAME yet
    calendar.add("REFRESH-INTERVAL", OFTEN, parameters={"VALUE": "DURATION"})
    for entry in sorted(entries, key=lambda entry: (entry.start, entry.uid)):
        calendar.add_component(_event(entry, zone))
    if entries:
        first, last = min(entry.start for entry in entries), max(entry.end for entry in entries)
        calendar.add_missing_timezones((first - AROUND).date(), (last + AROUND).date())
    return calendar.to_ical()


def _event(entry: CalendarEntry, zone: ZoneInfo):
    from icalendar import Event

    event = Event()
    event.add("UID", entry.uid)
    event.add("SEQUENCE", entry.sequence)
    event.add("DTSTAMP", entry.changed_at)
    event.add("LAST-MODIFIED", entry.changed_at)
    event.add("DTSTART", entry.start.astimezone(zone))
    event.add("DTEND", entry.end.astimezone(zone))
    event.add("SUMMARY", entry.title)
    event.add("DESCRIPTION", entry.about)
    event.add("LOCATION", entry.place)
    event.add("STATUS", "CONFIRMED" if entry.firm else "TENTATIVE")
    if entry.address:
        event.add("URL", entry.address)
    return event
