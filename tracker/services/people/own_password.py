"""Somebody's own password, changed by whoever knows the one before."""

from tracker.domain.people import Person
from tracker.errors import DataError, NotAllowed
from tracker.services.context import Context
from tracker.services.people.accounts import Changed
from tracker.services.people.passwords import hashed, is_right
from tracker.services.people.sessions import machine_moment
from tracker.store.people import end_sessions, find_row, own_passwords_refused, person_of
from tracker.store.sessions import end_one_session, session_of_number

TRIES = 5
"""Wrong passwords after which the session ends, since its page may have been left open to somebody else."""


def change_own_password(context: Context, before: str, after: str) -> Changed:
    """Set the password of whoever is signed in; every session of theirs ends, also this one. NotAllowed where nobody is, DataError
    for a password before that is wrong and for a new one that is refused."""
    person, kept = _signed_in(context)
    if not kept:
        raise DataError("own-password-by-provider")
    if not is_right(kept, before):
        _refuse(context, person)
    new = hashed(after, person.name)
    with context.signing("own-password", person.name, "") as uow:
        row = find_row(uow.session, person.name)
        if row is None or row.password_hash != kept:
            raise DataError("own-password-wrong")  # changed by somebody else while this one was looked at
        row.password_hash = new
        end_sessions(uow.session, row.id, machine_moment(context))
        done = Changed(person_of(row), "password")
        uow.commit()
    return done


def _signed_in(context: Context) -> tuple[Person, str]:
    """Who acts, and what is kept of the password: nothing where the identity provider keeps it."""
    with context.reading() as uow:
        number = context.actor.session
        found = None if number is None else session_of_number(uow.session, number)
        row = find_row(uow.session, found.person.name) if found else None
        if found is None or row is None:
            raise NotAllowed("signed-out")
        return found.person, row.password_hash


def _refuse(context: Context, person: Person) -> None:
    number = context.actor.session
    assert number is not None
    with context.signing("own-password-refused", person.name, "", session=number) as uow:
        if own_passwords_refused(uow.session, number) + 1 >= TRIES:
            end_one_session(uow.session, number, machine_moment(context))
        uow.commit()
    raise DataError("own-password-wrong")
