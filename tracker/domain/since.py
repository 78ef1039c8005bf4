"""What was entered since a plan was made."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Any

from tracker.domain.stock import Movement


@dataclass(frozen=True, slots=True)
class RowChanged:
    """A row of a table that is another now."""

    table: str
    was: Mapping[str, Any]
    """Its fields as the plan had them; nothing where there was no such row."""
    now: Mapping[str, Any]
    """As they are; nothing where it was taken out."""


@dataclass(frozen=True, slots=True)
class EnteredSince:
    rows: tuple[RowChanged, ...] = ()
    """Of people, tools, closures, terms, parts and order lines; what came in of an order line is among the movements."""
    movements: tuple[Movement, ...] = ()
    promised: Mapping[tuple[str, str], date] = field(default_factory=dict)
    """Order and part → the day for which a line was promised last, also of lines that came in."""
    method: int | None = None
    """The version of the method, where it is a newer one."""
