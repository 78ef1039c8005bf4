"""Accounts: add somebody, change roles or password, end an account. Each ends the sessions that it concerns."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from zoneinfo import ZoneInfo

from tracker.domain.people import Person, Role, in_order
from tracker.domain.words import fold
from tracker.errors import DataError, Message, UsageError, message
from tracker.services.context import Context
from tracker.services.people.passwords import hashed
from tracker.services.people.permissions import May
from tracker.store import UnitOfWork
from tracker.store.models import PersonRow
from tracker.store.people import add_person as put
from tracker.store.people import end_sessions, find_row, person_of, read_people

LONGEST_NAME = 60


@dataclass(frozen=True, slots=True)
class Changed:
    person: Person
    how: str
    """`added`, `again` (an ended account opened again), `roles`, `password`, `provider` or `ended`."""

    @property
    def message(self) -> Message:
        return message("person-changed", how=self.how, person=self.person.name, roles=list(self.person.roles))

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        return person_record(self.person) | {"changed": self.how}


def person_record(person: Person) -> dict[str, Any]:
    """As `--json` writes it."""
    return {
        "name": person.name, "roles": [role.value for role in person.roles], "added_at": _text(person.added_at),
        "ended_at": _text(person.ended_at), "by": "provider" if person.by_provider else "password",
    }  # fmt: skip


def _text(at: datetime | None) -> str | None:
    return at.isoformat(timespec="seconds") if at else None


@dataclass(frozen=True, slots=True)
class PeopleReport:
    people: tuple[Person, ...]
    """In the order in which they were added, also those that ended."""
    zone: ZoneInfo

    def record(self) -> list[dict[str, Any]]:
        """As `--json` writes it."""
        return [person_record(person) for person in self.people]


def people(context: Context) -> PeopleReport:
    """Every account."""
    context.require(May.PEOPLE)
    with context.reading() as uow:
        return PeopleReport(tuple(read_people(uow.session)), uow.zone)


def add_person(context: Context, name: str, password: str, roles: Iterable[str]) -> Changed:
    """Give somebody an account, or open one again that ended. UsageError for a name or roles that cannot be, DataError for a
    name that is in use or a password that is refused."""
    context.require(May.PEOPLE)
    written, taken = name_of(name), _roles(roles)
    kept = hashed(password, written)
    with context.unit_of_work(May.PEOPLE, {"how": "added", "person": written, "roles": list(taken)}) as uow:
        known = find_row(uow.session, written)
        if known is None:
            done = Changed(put(uow.session, written, taken, kept, uow.now()), "added")
        elif known.ended_at is None:
            raise DataError("person-known", person=known.name)
        else:
            known.roles, known.password_hash, known.subject, known.ended_at = list(taken), kept, None, None
            done = Changed(person_of(known), "again")
        uow.commit()
    return done


def change_roles(context: Context, name: str, roles: Iterable[str]) -> Changed:
    """Give somebody these roles in place of those before. DataError where they come from the identity provider."""
    taken = _roles(roles)
    with context.unit_of_work(May.PEOPLE, {"how": "roles", "person": name.strip(), "roles": list(taken)}) as uow:
        row = _known(uow, name)
        if not row.password_hash:
            raise DataError("roles-by-provider", person=row.name)
        row.roles = list(taken)
        return _done(uow, row, "roles")


def change_password(context: Context, name: str, password: str) -> Changed:
    """Set a new password, also for who came by the identity provider until now. DataError for one that is refused."""
    context.require(May.PEOPLE)
    kept = hashed(password, name)
    with context.unit_of_work(May.PEOPLE, {"how": "password", "person": name.strip()}) as uow:
        row = _known(uow, name)
        row.password_hash, row.subject = kept, None
        return _done(uow, row, "password")


def leave_to_provider(context: Context, name: str) -> Changed:
    """Somebody signs in by the mill's identity provider from now on, in the roles that it gives; also an account that ended."""
    with context.unit_of_work(May.PEOPLE, {"how": "provider", "person": name.strip()}) as uow:
        row = find_row(uow.session, name)
        if row is None:
            raise DataError("person-unknown", person=name.strip())
        row.password_hash, row.subject, row.ended_at = "", None, None
        return _done(uow, row, "provider")


def end_person(context: Context, name: str) -> Changed:
    """Nobody can sign in with this account any more; what was done with it stays in the history."""
    with context.unit_of_work(May.PEOPLE, {"how": "ended", "person": name.strip()}) as uow:
        row = _known(uow, name)
        row.ended_at = uow.now()
        return _done(uow, row, "ended")


def _done(uow: UnitOfWork, row: PersonRow, how: str) -> Changed:
    end_sessions(uow.session, row.id, uow.now())
    done = Changed(person_of(row), how)
    uow.commit()
    return done


def _known(uow: UnitOfWork, name: str) -> PersonRow:
    row = find_row(uow.session, name)
    if row is None or row.ended_at:
        raise DataError("person-unknown", person=name.strip())
    return row


def name_of(name: str) -> str:
    """The name of an account as it is kept. UsageError for one that cannot be."""
    written = " ".join(name.split())
    if not fold(written) or len(written) > LONGEST_NAME or not written.isprintable():
        raise UsageError("person-name", most=LONGEST_NAME)
    return written


def _roles(roles: Iterable[str]) -> Sequence[Role]:
    asked = [fold(role) for role in roles]
    unknown = [role for role in asked if role not in list(Role)]
    if unknown or not asked:
        raise UsageError("role-unknown", role=unknown[0] if unknown else None, roles=list(Role))
    return in_order(frozenset(map(Role, asked)))
