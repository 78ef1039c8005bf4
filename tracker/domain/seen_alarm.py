"""An alarm of a setting that somebody has seen, and what they said to it."""

from dataclasses import dataclass
from datetime import datetime

from tracker.domain.mill import LoomKey


@dataclass(frozen=True, slots=True)
class SeenAlarm:
    key: LoomKey
    setting: str
    side: str | None
    kind: str
    """As `AlarmKind` says it."""
    value: float | str
    """The reading that it rested on."""
    why: str
    at: datetime
    who: str
