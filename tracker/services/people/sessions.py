"""Who is signed in: a session from the right password to its end.

The browser holds a random token of 256 bits, the database only its hash. A session ends after 12 hours without a touch, after 7
days at the latest, and at once when somebody signs out or an account is changed. These times go by the computer's clock, also
where the programme has its own.
"""

import secrets
from dataclasses import dataclass
from datetime import datetime, timedelta
from hashlib import sha256
from zoneinfo import ZoneInfo

from tracker.domain.clock import now as machine_now
from tracker.domain.people import Person
from tracker.errors import DataError, Message, NotAllowed, message
from tracker.services.context import Actor, Context, at_the_keyboard
from tracker.services.people.passwords import is_right
from tracker.services.people.permissions import May
from tracker.store import UnitOfWork
from tracker.store.models import PersonRow
from tracker.store.people import any_account, find_row
from tracker.store.sessions import (
    KeptSession,
    add_session,
    end_one_session,
    kept_sessions,
    session_of_number,
    session_of_token,
    touch_session,
)
from tracker.store.written import WhileUnwritten

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
    add_session(uow.session, person.id, hash_of(token), machine_moment(context), address)


def door(context: Context, token: str | None) -> Door:
    """Whether there are accounts, and the session of a token as long as it lasts."""
    with context.reading() as uow:
        kept = session_of_token(uow.session, hash_of(token)) if token else None
        found = _living(kept, machine_moment(context))
        return Door(found is not None or any_account(uow.session), found)


def screen_actor(context: Context, number: int | None) -> Actor:
    """Who acts on a screen of the session of that number: with every role where there are no accounts. NotAllowed where the
    session is over."""
    if context.clock:
        return _screen_actor(context, number)
    return _ACTORS.of(context.database, number, lambda: _screen_actor(context, number))


_ACTORS: WhileUnwritten[Actor] = WhileUnwritten()


def _screen_actor(context: Context, number: int | None) -> Actor:
    with context.reading() as uow:
        kept = None if number is None else session_of_number(uow.session, number)
        if found := _living(kept, machine_moment(context)):
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
        touch_session(uow.session, number, machine_moment(context))
        uow.commit()


def sign_out(context: Context, token: str, address: str) -> None:
    """End the session of a token; nothing where it has none."""
    found = door(context, token).signed_in
    if found is None:
        return
    with context.signing("signed-out", found.person.name, address) as uow:
        end_one_session(uow.session, found.number, machine_moment(context))
        uow.commit()


@dataclass(frozen=True, slots=True)
class OpenSessions:
    sessions: tuple[KeptSession, ...]
    """Those last seen first."""
    zone: ZoneInfo


def open_sessions(context: Context) -> OpenSessions:
    """Who is signed in now, and from where."""
    context.require(May.PEOPLE)
    with context.reading() as uow:
        at = machine_moment(context)
        return OpenSessions(tuple(one for one in kept_sessions(uow.session) if _living(one, at)), uow.zone)


def end_session(context: Context, number: int) -> Message:
    """End somebody's session: its pages close, and its cookie opens nothing any more. DataError where it is over already."""
    context.require(May.PEOPLE)
    with context.reading() as uow:
        kept = session_of_number(uow.session, number)
    said = {"how": "session-ended", "person": kept.person.name if kept else ""}
    with context.unit_of_work(May.PEOPLE, said) as uow:
        if kept is None or session_of_number(uow.session, number) is None:
            raise DataError("session-over-already")
        end_one_session(uow.session, number, machine_moment(context))
        uow.commit()
    return message("session-ended", person=kept.person.name)


def _living(found: KeptSession | None, at: datetime) -> SignedIn | None:
    if found is None or at - found.seen_at > IDLE or at - found.since > LONGEST:
        return None
    return SignedIn(found.number, found.person, found.seen_at)


def hash_of(token: str) -> str:
    return sha256(token.encode()).hexdigest()


def machine_moment(context: Context) -> datetime:
    """This moment by the computer's clock, also where the programme has its own."""
    return context.clock() if context.clock else machine_now()
