"""The clock of a programme that has its own: it stands where it was set, and is only set forward."""

from datetime import datetime

from sqlalchemy.orm import Session

from tracker.store.models import AboutRow

CLOCK = "clock"


def own_clock(session: Session) -> datetime | None:
    """The moment at which the programme's own clock stands, UTC; None where the computer's counts."""
    row = session.get(AboutRow, CLOCK)
    return datetime.fromisoformat(row.value) if row else None


def set_own_clock(session: Session, at: datetime) -> None:
    """Give the programme a clock of its own, or set it."""
    session.merge(AboutRow(what=CLOCK, value=at.isoformat()))
