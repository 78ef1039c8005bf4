"""What a job of any kind is to the process that does it and to the server that follows it."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any, Protocol

from tracker.errors import Message
from tracker.store import UnitOfWork

Arguments = Mapping[str, Any]
"""In JSON's types, so that they are kept and a job can be started again by them; moments as ISO 8601 with their offset."""

Progress = Callable[[Message, float], None]
"""What it is at, and how much of it is done, 0 to 1."""
Stop = Callable[[], bool]


@dataclass(frozen=True, slots=True)
class Kept:
    """What came of it."""

    message: Message
    result: Mapping[str, Any] = field(default_factory=dict)
    """`plan` or `rehearsal` → the number under which it was kept."""


class JobWork(Protocol):
    """A snapshot and what is to be done with it; it travels to the process that does it."""

    def run(self, progress: Progress, stop: Stop) -> Any:
        """Do it, without any database; `stop` ends it with the best so far. TrackerError for what cannot be done."""
        ...

    def keep(self, uow: UnitOfWork, found: Any, stopped: bool) -> Kept:
        """Write what `run` gave; the caller commits. TrackerError where it no longer holds."""
        ...
