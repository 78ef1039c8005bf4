"""Something that may go wrong in the days to come."""

from dataclasses import dataclass
from datetime import datetime

from tracker.domain.mill import LoomKey
from tracker.errors import Message

FORTNIGHT_DAYS = 14
"""How far a manager looks ahead."""
DOUBTFUL = 0.8
"""A booking that starts as booked in fewer of the rehearsed runs is a risk."""


@dataclass(frozen=True, slots=True)
class RiskAhead:
    at: datetime
    """When it bites, UTC: the booked start, or the day by which to act."""
    what: Message
    """With its reason."""
    kind: str
    """`kit`, `order`, `reading` or `rehearsed`: where more is known of it."""
    key: LoomKey | None = None
    """The loom, where it is about one."""
