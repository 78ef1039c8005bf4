"""Who may start and stop which kind of job."""

from tracker.domain.jobs import JobKind
from tracker.services.context import Actor
from tracker.services.people.permissions import May

LOADERS = (May.LOAD, May.STOCK, May.RECORD)
"""Who may load something may have it read."""


def needed_for(kind: JobKind, actor: Actor) -> May:
    """What it takes to start a job of a kind, to stop it and to keep what came of it."""
    if kind is JobKind.READING:
        return next((may for may in LOADERS if actor.may(may)), May.LOAD)
    return May.PLAN
