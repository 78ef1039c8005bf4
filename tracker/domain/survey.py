"""The list to walk the hall with: which looms, which columns, what may stand in them."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from tracker.domain.mill import LoomKey


@dataclass(frozen=True, slots=True)
class SurveyColumn:
    heading: str
    """As the loom list heads it, so that the filled-in list loads back into the same column."""
    allowed: tuple[str, ...] = ()
    """Values for a drop-down, as the method or the loom list writes them; empty where any number, date or word may come."""
    asks: str = ""
    """What the method asks of it, as its conditions stand: `<= 12; > 12`."""


@dataclass(frozen=True, slots=True)
class SurveyRow:
    key: LoomKey
    machine_type: str
    row: str | None
    place: str | None
    values: Mapping[str, Any] = field(default_factory=dict)
    """Heading → what the loom list has (None where empty), for every column of the list."""
    asked: tuple[str, ...] = ()
    """Headings to fill in for this loom; the other columns do not matter for it or are known."""


@dataclass(frozen=True, slots=True)
class SurveyList:
    columns: tuple[SurveyColumn, ...] = ()
    rows: tuple[SurveyRow, ...] = ()
    """In the order of a walk: hall, row, place, loom number, sorted naturally."""
