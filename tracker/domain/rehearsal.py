"""A rehearsal as it is kept with its plan."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any


@dataclass(frozen=True, slots=True)
class KeptRehearsal:
    number: int
    plan: int
    """Number of the plan that was played."""
    made_at: datetime
    who: str
    result: Mapping[str, Any]
    """What came of it, as `beamslot rehearse --json` writes it."""
