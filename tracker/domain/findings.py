"""What a reader or a review found in a file, cell by cell: codes and parameters; the words stand in the catalogue."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from tracker.errors import Message


class Severity(StrEnum):
    NOTE = "note"
    DOUBT = "doubt"
    REFUSED = "refused"


@dataclass(frozen=True, slots=True)
class Choice:
    """An answer that settles a question, or that sets right what a note says."""

    about: str
    """The heading or sheet that the answer must name."""
    answer: str
    """`inch`, `day first`, `speed`, `ignore`."""
    meaning: str | Message = ""
    """What the value in question would be then: `3 Apr 2026`."""


RowPlace = tuple[int, int]
"""(index of the source table among those of the load, row number): `TypedRow.source`, `TypedRow.number`."""


@dataclass(frozen=True, slots=True)
class Finding:
    code: str
    """Stable, kebab-case, declared in the catalogue: `unit-doubt`, `impossible-value`."""
    severity: Severity
    file: str = ""
    sheet: str = ""
    cell: str = ""
    """As a spreadsheet names it: `C7`, `C7:C40`."""
    heading: str = ""
    raw: str = ""
    understood: str | Message = ""
    params: Mapping[str, object] = field(default_factory=dict)
    """What the words of the code need beyond file, sheet, cell, heading, raw and understood."""
    choices: tuple[Choice, ...] = ()
    rows: tuple[RowPlace, ...] = ()
    """Rows of the load that it refuses, where they had been read; empty where the reading itself left them out."""
