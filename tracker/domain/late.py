"""Something that should have been by now."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from tracker.domain.mill import LoomKey
from tracker.errors import Message, message


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


MOST_WARPS = 5
"""Warps that should have run out and are told by themselves where many are: until readings are loaded that may be most looms."""


def shortened(found: Sequence[Late]) -> tuple[list[Late], Message | None]:
    """All that is late but for most of the warps, which stand last, and how many those are; None where none is left out."""
    warps = [one for one in found if one.what.code == "late-beam-out"]
    more = warps[MOST_WARPS:]
    return [one for one in found if one not in more], message("late-warps-more", more=len(more)) if more else None
