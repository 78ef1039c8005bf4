"""Keep accounts and what people did, and read them back."""

from collections.abc import Sequence
from datetime import datetime

from sqlalchemy import Connection, select, update
from sqlalchemy.orm import Session

from tracker.domain.people import Act, Person, Role
from tracker.domain.words import fold
from tracker.store.models import ActRow, PersonRow, SessionRow


def any_account(session: Session) -> bool:
    """Whether somebody has an account; one that ended counts too, so that ending the last one opens nothing."""
    return session.scalar(select(PersonRow.id).limit(1)) is not None


def read_people(session: Session) -> list[Person]:
    """All accounts in the order in which they were added."""
    return [person_of(row) for row in session.scalars(select(PersonRow).order_by(PersonRow.id))]


def find_row(session: Session, name: str) -> PersonRow | None:
    """The account of a name, whatever its case and accents; None where there is none."""
    return session.scalar(select(PersonRow).where(PersonRow.folded == fold(name)))


def find_subject(session: Session, subject: str) -> PersonRow | None:
    """The account that the identity provider knows by `subject`; None where there is none."""
    return session.scalar(select(PersonRow).where(PersonRow.subject == subject))


def add_person(session: Session, name: str, roles: Sequence[Role], password_hash: str, at: datetime) -> Person:
    row = PersonRow(name=name, folded=fold(name), roles=list(roles), password_hash=password_hash, added_at=at)
    session.add(row)
    session.flush()
    return person_of(row)


def add_act(session: Session, act: Act, at: datetime) -> int:
    """Gives its number."""
    details = dict(act.details)
    row = ActRow(at=at, who=act.who, roles=list(act.roles), through=act.through, what=act.what, details=details)
    session.add(row)
    session.flush()
    return row.id


def last_act(session: Session, what: str) -> Act | None:
    """The newest of what took this permission and says more of itself."""
    for row in session.scalars(select(ActRow).where(ActRow.what == what).order_by(ActRow.id.desc())):
        if row.details:
            return Act(row.who, tuple(map(Role, row.roles)), row.through, row.what, row.details)
    return None


def own_passwords_refused(session: Session, number: int) -> int:
    """How often the password before was wrong in the session of that number until now."""
    said = session.scalars(select(ActRow.details).where(ActRow.what == "own-password-refused"))
    return sum(details.get("session") == number for details in said)


def person_of(row: PersonRow) -> Person:
    return Person(row.id, row.name, tuple(map(Role, row.roles)), row.added_at, row.ended_at, not row.password_hash)


def end_sessions(session: Session, person: int, at: datetime) -> None:
    """Sign somebody out everywhere."""
    of_theirs = SessionRow.person_id == person, SessionRow.ended_at.is_(None)
    session.execute(update(SessionRow).where(*of_theirs).values(ended_at=at))


def end_every_session(connection: Connection, at: datetime) -> None:
    """As when a backup is restored: who was signed in when it was made may have signed out since."""
    connection.execute(update(SessionRow).where(SessionRow.ended_at.is_(None)).values(ended_at=at))
