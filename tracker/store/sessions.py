"""Keep who is signed in, and read it back. Of the token in a browser only its hash is here."""

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Row, select
from sqlalchemy.orm import Session

from tracker.domain.people import Person, Role
from tracker.store.models import PersonRow, SessionRow


@dataclass(frozen=True, slots=True)
class KeptSession:
    """A session that nobody has ended, of an account that has not ended."""

    number: int
    person: Person
    since: datetime
    seen_at: datetime
    """When somebody last did something in it, as far as it was written down."""
    address: str
    """From where somebody signed in."""


_KEPT = (
    select(
        SessionRow.id, SessionRow.since, SessionRow.seen_at, SessionRow.address, SessionRow.person_id, PersonRow.name,
        PersonRow.roles, PersonRow.added_at,
    )
    .join(PersonRow, PersonRow.id == SessionRow.person_id)
    .where(SessionRow.ended_at.is_(None), PersonRow.ended_at.is_(None))
)  # fmt: skip
"""Columns and no objects: it is asked with every request."""


def session_of_token(session: Session, token_hash: str) -> KeptSession | None:
    return _kept(session.execute(_KEPT.where(SessionRow.token_hash == token_hash)).first())


def session_of_number(session: Session, number: int) -> KeptSession | None:
    return _kept(session.execute(_KEPT.where(SessionRow.id == number)).first())


def kept_sessions(session: Session) -> list[KeptSession]:
    """Those last seen first."""
    rows = session.execute(_KEPT.order_by(SessionRow.seen_at.desc(), SessionRow.id.desc()))
    return [kept for row in rows if (kept := _kept(row))]


def _kept(row: Row | None) -> KeptSession | None:
    if row is None:
        return None
    person = Person(row.person_id, row.name, tuple(map(Role, row.roles)), row.added_at)
    return KeptSession(row.id, person, row.since, row.seen_at, row.address)


def add_session(session: Session, person: int, token_hash: str, at: datetime, address: str) -> None:
    session.add(SessionRow(person_id=person, token_hash=token_hash, since=at, seen_at=at, address=address))


def touch_session(session: Session, number: int, at: datetime) -> None:
    if row := session.get(SessionRow, number):
        row.seen_at = max(row.seen_at, at)


def end_one_session(session: Session, number: int, at: datetime) -> None:
    if row := session.get(SessionRow, number):
        row.ended_at = at
