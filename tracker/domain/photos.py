"""A photo that was told with a remark at a loom; its picture stays in the database until it is asked for."""

from dataclasses import dataclass
from datetime import datetime

from tracker.domain.mill import LoomKey


@dataclass(frozen=True, slots=True)
class Photo:
    key: LoomKey
    card: str | None
    """Under which the records of its conversion stand."""
    begun_at: datetime
    """When that conversion began, UTC."""
    operation: str | None
    """What it is about; None = the whole conversion."""
    remark: str
    """What was said with it."""
    at: datetime
    who: str
    number: int = 0
    """As the database counts them; 0 = not kept yet."""
