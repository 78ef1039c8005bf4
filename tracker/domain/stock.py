"""The stock ledger: every movement with who, when and why; stock on hand is their sum."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from tracker.domain.mill import LoomKey


class MovementKind(StrEnum):
    OPENING = "opening"
    RECEIPT = "receipt"
    ISSUE = "issue"
    RETURN = "return"
    ADJUSTMENT = "adjustment"
    COUNT = "count"


@dataclass(frozen=True, slots=True)
class Movement:
    """`quantity` is signed: + into stock, − out. A count stores the difference that it found."""

    part: str
    kind: MovementKind
    quantity: float
    at: datetime
    who: str
    why: str = ""
    key: LoomKey | None = None
    """The loom whose kit it was for."""
    order: str | None = None


@dataclass(frozen=True, slots=True)
class Reservation:
    """Quantity of a part held for a named loom; released when issued or given to another kit."""

    key: LoomKey
    part: str
    quantity: float
