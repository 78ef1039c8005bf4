"""What the mill's own records say of the past, for whoever learns how much things vary."""

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True)
class PastLine:
    """An order line as it was first told, and what became of it. Days are local."""

    part: str
    supplier: str | None
    promised: date
    """For which it was promised first."""
    told_on: date
    """When it was written down."""
    came_on: date | None = None
    """When the first of it came; None = nothing yet."""
    short: bool = False
    """Whether less came that day than was still to come of it."""
    open: bool = False
    """Whether it is still waited for."""


@dataclass(frozen=True, slots=True)
class PastAbsence:
    """An absence that was not taken back, both days included."""

    crew: str
    from_on: date
    to_on: date
    heads: int | None
    """How many were away; None = all."""
    told_on: date
    """When it was first written down."""


@dataclass(frozen=True, slots=True)
class Notice:
    """That a loom was protected from a day on, until another, both included."""

    on: date
    until: date


@dataclass(frozen=True, slots=True)
class Past:
    """All that is read of it; the conversions are with what a plan rests on."""

    lines: tuple[PastLine, ...] = ()
    absences: tuple[PastAbsence, ...] = ()
    notices: tuple[Notice, ...] = ()
    listed_on: date | None = None
    """When the first loom was listed."""
