"""Who is signed in: a session from the right password to its end.

The browser holds a random token of 256 bits, the database only its hash. A session ends after 12 hours without a touch, after 7
days at the latest, and at once when somebody signs out or an account is changed. These times go by the computer's clock, also
where the programme has its own.
"""

import secrets
from dataclasses import dataclass
from datetime import datetime, timedelta
from hashlib import sha256

from sqlalchemy import select
from sqlalchemy.orm import Session

from tracker.domain.clock import now as machine_now
from tracker.domain.people import Person, Role
from tracker.errors import NotAllowed
from tracker.services.context import Actor, Context, at_the_keyboard
from tracker.services.people.passwords import is_right
from tracker.store import UnitOfWork
from tracker.store.models import PersonRow, SessionRow
from tracker.store.people import any_account, find_row

IDLE, LONGEST = timedelta(hours=12), timedelta(days=7)
STEP = timedelta(minutes=1)
"""A touch is written down at most so often."""
TOKEN_BYTES = 32


@dataclass(frozen=True, slots=True)
class SignedIn:
    number: int
    """Of the session."""
    person: Person
    seen_at: datetime
    """When somebody last did something in it, as far as it was written down."""

    def actor(self) -> Actor:
        return Actor(self.person.name, frozenset(self.person.roles), "screen", session=self.number)


@dataclass(frozen=True, slots=True)
class Door:
    """Whether anybody must sign in, and who has."""

    accounts: bool
    signed_in: SignedIn | None = None

    @property
    def is_open(self) -> bool:
        return self.signed_in is not None or not self.accounts


def sign_in(context: Context, name: str, password: str, address: str) -> str | None:
    """A new session's token; None where name or password is wrong, which takes as long whether the name is known or not.

    `address`: from where, as the account of who did what keeps it.
    """
    with context.reading() as uow:
        row = find_row(uow.session, name)
        kept = row.password_hash or None if row and not row.ended_at else None
        known = row.name if row else ""  # what else was typed may be a password in the wrong field
    right = is_right(kept, password)
    with context.signing("signed-in" if right else "sign-in-refused", known, address) as uow:
        token = new_token()
        found = find_row(uow.session, name)
        if right and (found is None or found.password_hash != kept or found.ended_at):
            return None  # changed while the password was looked at
        if right and found:
            begin(context, uow, found, token, address)
        uow.commit()
    return token if right else None


def new_token() -> str:
    return secrets.token_urlsafe(TOKEN_BYTES)


def begin(context: Context, uow: UnitOfWork, person: PersonRow, token: str, address: str) -> None:
    """A session of somebody who has shown who it is."""
    at = machine_moment(context)
    row = SessionRow(person_id=person.id, token_hash=hash_of(token), since=at, seen_at=at, address=address)
    uow.session.add(row)


def door(context: Context, token: str | None) -> Door:
    """Whether there are accounts, and the session of a token as long as it lasts."""
    with context.reading() as uow:
        found = (
            _living(uow.session, SessionRow.token_hash == hash_of(token), machine_moment(context)) if token else None
        )
        return Door(found is not None or any_account(uow.session), found)


def screen_actor(context: Context, number: int | None) -> Actor:
    """Who acts on a screen of the session of that number: with every role where there are no accounts. NotAllowed where the
    session is over."""
    with context.reading() as uow:
        found = None if number is None else _living(uow.session, SessionRow.id == number, machine_moment(context))
        if found:
            return found.actor()
        if any_account(uow.session):
            raise NotAllowed("signed-out")
    return at_the_keyboard("screen")


def is_due(context: Context, signed_in: SignedIn) -> bool:
    """Whether a touch is to be written down, the last one being some time ago."""
    return machine_moment(context) - signed_in.seen_at >= STEP


def touch(context: Context, number: int) -> None:
    """Somebody did something in a session."""
    with context.noting() as uow:
        if row := uow.session.get(SessionRow, number):
            row.seen_at = max(row.seen_at, machine_moment(context))
        uow.commit()


def sign_out(context: Context, token: str, address: str) -> None:
    """End the session of a token; nothing where it has none."""
    found = door(context, token).signed_in
    if found is None:
        return
    with context.signing("signed-out", found.person.name, address) as uow:
        if row := uow.session.get(SessionRow, found.number):
            row.ended_at = machine_moment(context)
        uow.commit()


def _living(session: Session, which: object, at: datetime) -> SignedIn | None:
    found = session.execute(_SESSION.where(which)).first()  # type: ignore[arg-type]
    if found is None or found.ended_at or found.person_ended_at:
        return None
    if at - found.seen_at > IDLE or at - found.since > LONGEST:
        return None
    person = Person(found.person_id, found.name, tuple(map(Role, found.roles)), found.added_at)
    return SignedIn(found.id, person, found.seen_at)


_SESSION = select(
    SessionRow.id, SessionRow.person_id, SessionRow.since, SessionRow.seen_at, SessionRow.ended_at, PersonRow.name,
    PersonRow.roles, PersonRow.added_at, PersonRow.ended_at.label("person_ended_at"),
).join(PersonRow, PersonRow.id == SessionRow.person_id)  # fmt: skip
"""Columns and no objects: it is asked with every request."""


def hash_of(token: str) -> str:
    return sha256(token.encode()).hexdigest()


def machine_moment(context: Context) -> datetime:
    """This moment by the computer's clock, also where the programme has its own."""
    return context.clock() if context.clock else machine_now()
