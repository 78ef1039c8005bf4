"""One loom on its way through a played programme, and a conversion that goes on at it."""

from dataclasses import dataclass, field
from datetime import datetime

from tracker.domain.mill import LoomKey
from tracker.domain.plan import Booking
from tracker.domain.windows import Window
from tracker.domain.work import WorkContent
from tracker.rehearsal.hall import Shape

FAR = 1 << 40
"""A slot that never comes."""


@dataclass(slots=True)
class PlayedLoom:
    """A loom that is still to be converted. Slots count from the midnight before today."""

    key: LoomKey
    hall: int
    booking: Booking | None
    """As the plan has it; None without a plan."""
    window: Window
    """The chance that is waited for."""
    content: WorkContent
    due: int
    """No crew comes before."""
    out_at: datetime | None
    """When its beam is out; None where none has to be."""
    out: int
    """The first slot from then on; 0 where none has to be."""
    order: tuple
    """Whose turn is first."""
    next_chance: int = 0
    """The place of the next one among the hall's chances of the loom."""
    closes: int = FAR
    """From this slot on it is passed over; worked out once its beam is out."""
    waits_from: datetime | None = None
    """Since when a crew waits for its beam, or waited."""
    cut_at: datetime | None = None
    gave_up: bool = False
    """Whether a crew has waited its patience for nothing."""
    later_h: float = 0.0
    """Running hours that it stood without being converted: its later beams come so much later."""
    tries: int = 0
    lost: float = 0.0
    """Currency that standing and failing have cost before the conversion that succeeds."""
    late: float = 0.0
    labour: float = 0.0
    moves: float = 0.0
    """Currency that moving its booking has cost."""
    kit: bool = False
    """Whether its kit was handed out."""
    held_up: dict[str, int] = field(default_factory=dict)
    """Cause → slots for which it kept a loom that was due from beginning or going on."""
    failed: bool = False
    first_start: int | None = None

    def hold_up(self, cause: str) -> None:
        self.held_up[cause] = self.held_up.get(cause, 0) + 1

    @property
    def main_cause(self) -> str:
        """A failure before all, else what held it up longest; empty where nothing did."""
        if self.failed or not self.held_up:
            return "failed" if self.failed else ""
        return max(self.held_up, key=lambda cause: self.held_up[cause])

    @property
    def spent(self) -> float:
        """What it has cost so far, currency."""
        return self.lost + self.late + self.labour + self.moves

    @property
    def is_held(self) -> bool:
        """Whether a crew waits at it, or its warp was cut."""
        return self.cut_at is not None or (self.waits_from is not None and not self.gave_up)

    def stands_at(self, t: int) -> bool:
        """Whether it stands in a slot for want of a crew: its beam is out, and nothing was begun."""
        return self.out_at is not None and self.out <= t

    def begun_at(self, work: "Work") -> int:
        """The slot in which its first conversion was begun."""
        return work.start if self.first_start is None else self.first_start


@dataclass(slots=True)
class Work:
    """A conversion that goes on."""

    loom: PlayedLoom | None
    """None = it was in work before the first day; nothing of it is counted."""
    key: LoomKey
    hall: int
    window: Window | None
    shape: Shape
    planned: Shape
    """As long as people expect it to be."""
    start: int
    total: int
    """Slots that it will take; half of them where it fails."""
    fails: bool = False
    done: int = 0
    resume: int = 0
    """The slot in which the second part may begin."""
    pilot: bool = False
