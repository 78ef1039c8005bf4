"""The terms in force, for those who type a moment."""

from datetime import datetime
from zoneinfo import ZoneInfo

from tracker.domain import clock
from tracker.services.context import Context


def mill_zone(context: Context) -> ZoneInfo:
    """The zone in which the mill's moments are told."""
    with context.reading() as uow:
        return uow.zone


def local_moment(context: Context, text: str) -> datetime:
    """A moment as typed in the mill's local time; UTC. Raises ValueError where it is none."""
    with context.reading() as uow:
        return clock.local_moment(text, uow.terms())
