"""Tokens: what a program, or a phone's calendar, shows in place of a name and a password."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum


class TokenMay(StrEnum):
    """What a token is for."""

    READ = "read"
    """Read by /api what the commands print with --json."""
    POST = "post"
    """The same, and post readings, set values and stops."""
    CALENDAR = "calendar"
    """The bookings of one crew, as a calendar."""


@dataclass(frozen=True, slots=True)
class Token:
    number: int
    name: str
    """What it was given for; who posted is told by it."""
    may: TokenMay
    crew: str | None
    made_at: datetime
    made_by: str
    expires_at: datetime
    ended_at: datetime | None = None
    """When it was withdrawn."""
