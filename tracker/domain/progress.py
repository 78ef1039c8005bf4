"""Where a loom stands in the programme, and what was recorded of its conversion."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum

from tracker.domain.mill import LoomKey
from tracker.domain.windows import WindowKind
from tracker.domain.work import Choices


class Stage(StrEnum):
    SURVEYED = "surveyed"
    SCOPED = "scoped"
    BOOKED = "booked"
    KITTED = "kitted"
    IN_WORK = "in work"
    RUN_IN = "run-in"
    SIGNED_OFF = "signed off"
    STOPPED = "stopped"
    """A conversion that was broken off; the loom is to be planned again, less what was done."""
    PUT_OFF = "put off"
    LEFT_OUT = "left out"


BEFORE_BOOKING = (Stage.SURVEYED, Stage.SCOPED)
"""What a loom is while no plan books it."""
NOT_BEGUN = (None, *BEFORE_BOOKING, Stage.BOOKED, Stage.KITTED)
"""Nobody has touched the loom; None where nothing is recorded."""
UNDER_WAY = (Stage.IN_WORK, Stage.RUN_IN)
CONVERTED = (Stage.RUN_IN, Stage.SIGNED_OFF)
"""The conversion is over: these are recorded with what it took."""
BESIDE = (Stage.PUT_OFF, Stage.LEFT_OUT)
"""Stages beside the order of work; they end with `scoped`."""
NOT_TO_COME = (Stage.SIGNED_OFF, *BESIDE)
"""Nothing more is to be done at the loom, and it gets no parts."""


@dataclass(frozen=True, slots=True)
class StageChange:
    """An entry of the append-only stage history; the last one is the loom's stage. Surveyed to kitted follow from the
    data and the published plan, so only the later stages and the two side stages are recorded."""

    key: LoomKey
    stage: Stage
    at: datetime
    who: str
    reason: str | None = None


@dataclass(frozen=True, slots=True)
class Withdrawal:
    """That a row of what was recorded counts no more: `row` of `table`, as the database numbers them."""

    table: str
    row: int
    at: datetime
    who: str
    why: str


@dataclass(frozen=True, slots=True)
class Conversion:
    """A recorded conversion, for learning: which method version, which crew, and the minutes taken."""

    key: LoomKey
    machine_type: str
    crew: str
    method_version: int
    started_at: datetime
    ended_at: datetime | None
    operation_minutes: Mapping[str, float] = field(default_factory=dict)
    """Operation → elapsed minutes, recorded or worked out."""
    total_min: float | None = None
    """Elapsed on-loom minutes recorded for the whole conversion; None where nobody took them, never a sum of operations."""
    kind: WindowKind | None = None
    """The kind of window it was done in, as are the choices taken; None where not recorded."""
    choices: Choices = ()
    worked_out: frozenset[str] = frozenset()
    """Operations whose minutes nobody took: the time of the whole was shared over them. `WHOLE` for the whole itself, worked
    out from the six times."""


WHOLE = ""


def not_taken_back(conversions: Iterable[Conversion], history: Iterable[StageChange]) -> list[Conversion]:
    """The conversions of looms that were neither taken back (`scoped`) nor stopped since; `history` oldest first."""
    taken_back = {change.key: change.at for change in history if change.stage in (Stage.SCOPED, Stage.STOPPED)}
    return [
        done
        for done in conversions
        if done.key not in taken_back or (done.ended_at or done.started_at) > taken_back[done.key]
    ]
