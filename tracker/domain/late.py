"""Something that should have been by now."""

from dataclasses import dataclass
from datetime import datetime

from tracker.domain.mill import LoomKey
from tracker.errors import Message


@dataclass(frozen=True, slots=True)
class Late:
    what: Message
    follows: Message
    """What comes of it, and what to do."""
    due: datetime
    """When it should have been, UTC."""
    days: int
    """Local days since; 0 = today."""
    key: LoomKey | None = None
    """The loom, where it is about one."""
