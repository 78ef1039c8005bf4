"""Long work that goes on by itself while its screen is left."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum
from typing import Any

from tracker.errors import Message


class JobKind(StrEnum):
    PLAN = "plan"
    SCENARIO = "scenario"
    REHEARSAL = "rehearsal"
    TUNING = "tuning"
    READING = "reading"
    """Of lists that are to be loaded; nothing of the mill is written by it."""


class JobState(StrEnum):
    RUNNING = "running"
    DONE = "done"
    STOPPED = "stopped"
    """By somebody; the best so far was kept."""
    REFUSED = "refused"
    """It cannot be done, and says why; nothing was written."""
    BROKEN = "broken off"
    """Its process or the server died; nothing was written, and it can be started again."""


@dataclass(frozen=True, slots=True)
class LongJob:
    number: int
    kind: JobKind
    arguments: Mapping[str, Any]
    """As it was started, in JSON's types: it can be started again by them."""
    who: str
    began_at: datetime
    """UTC, by the programme's clock, as `ended_at`."""
    server: str = ""
    """The process that looks after it, as `HOST/PID/moment`."""
    state: JobState = JobState.RUNNING
    message: Message | None = None
    """While it runs, what it is at; then what came of it."""
    fraction: float = 0.0
    """0 to 1."""
    gaps: tuple[tuple[float, float], ...] = ()
    """Of a plan that is being made: (seconds since it began, gap to the bound in percent), whenever it had fallen."""
    stopped_by: str | None = None
    """Who asked for its end."""
    ended_at: datetime | None = None
    result: Mapping[str, Any] = field(default_factory=dict)
    """What was kept: `plan` or `rehearsal` → its number."""

    @property
    def runs(self) -> bool:
        return self.state is JobState.RUNNING


@dataclass(frozen=True, slots=True)
class JobEnd:
    state: JobState
    message: Message
    at: datetime
    stopped_by: str | None = None
    result: Mapping[str, Any] = field(default_factory=dict)
