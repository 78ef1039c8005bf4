"""What one run through the programme came to."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple

from tracker.domain.mill import LoomKey
from tracker.domain.plan import CostTerms

CAUSES = (
    "crew-busy", "crew-away", "other-trades", "tools", "beam-out", "parts", "pilot", "protected", "looms-stopped", "hours",
    "failed", "horizon",
)  # fmt: skip
"""What may keep a loom that is due from beginning or going on."""


class Done(NamedTuple):
    """A conversion as it went. Slots of 30 min count from the midnight before today."""

    key: LoomKey
    start: int
    """When it was first begun."""
    end: int
    cost: CostTerms
    cause: str
    """What held it up most; empty where nothing did."""


class Lost(NamedTuple):
    """A loom that was to be converted and was not before the horizon."""

    key: LoomKey
    cost: float
    cause: str


@dataclass(frozen=True, slots=True)
class Course:
    """One run."""

    done: tuple[Done, ...]
    lost: tuple[Lost, ...]
    left_over: float
    """Currency: what the looms cost that were never to be converted."""
    waited_h: float
    """Crew hours spent waiting for beams."""
    idle_h: float
    """Crew hours on shift without a conversion, up to the last end."""
    finish: int | None
    """The slot past the last conversion; None where nothing was converted."""
    stock: Mapping[str, float]
    """Part → what is left at the end, without safety stock."""

    @property
    def of_lost(self) -> float:
        """Currency: what the looms cost that were to be converted and were not."""
        return sum(one.cost for one in self.lost)

    @property
    def cost(self) -> float:
        return sum(done.cost.total for done in self.done) + self.of_lost + self.left_over
