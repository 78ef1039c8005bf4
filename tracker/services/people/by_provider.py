"""Sign-in by the mill's identity provider: it says who it is and in which groups, the account here follows."""

from dataclasses import dataclass

from tracker.domain.people import Role, in_order
from tracker.errors import NotAllowed, UsageError
from tracker.services.context import Context
from tracker.services.people.accounts import name_of
from tracker.services.people.sessions import begin, new_token
from tracker.store import UnitOfWork
from tracker.store.models import PersonRow
from tracker.store.people import add_person, end_sessions, find_row, find_subject


@dataclass(frozen=True, slots=True)
class Vouched:
    """Whom the provider vouches for."""

    subject: str
    """Its address and its own name for the person, which never changes."""
    name: str
    roles: frozenset[Role]


def sign_in_vouched(context: Context, who: Vouched, address: str) -> str:
    """A new session's token. Somebody who comes for the first time gets an account; roles are those of today.

    NotAllowed for who has no role, an account that ended, or the name of somebody else's account; nothing is written then.
    """
    name, roles = _named(who.name), in_order(who.roles)
    if not roles:
        raise NotAllowed("provider-role", person=name)
    with context.signing("signed-in", name, address, by="provider", roles=list(roles)) as uow:
        row = _account(uow, who, name)
        if row.roles != list(roles):
            row.roles = list(roles)
            end_sessions(uow.session, row.id, uow.now())
        token = new_token()
        begin(context, uow, row, token, address)
        uow.commit()
    return token


def note_refusal(context: Context, why: str, person: str, address: str) -> None:
    """Keep in the account of who did what that nobody was signed in; `why` is the code of the refusal."""
    with context.signing("sign-in-refused", person, address, by="provider", why=why) as uow:
        uow.commit()


def _named(name: str) -> str:
    try:
        return name_of(name)
    except UsageError:
        raise NotAllowed("provider-token") from None


def _account(uow: UnitOfWork, who: Vouched, name: str) -> PersonRow:
    """Found by what the provider never changes; else by the name, where an account of it was left to the provider."""
    row = find_subject(uow.session, who.subject) or find_row(uow.session, name)
    if row is None:
        add_person(uow.session, name, in_order(who.roles), "", uow.now())
        row = find_row(uow.session, name)
    assert row
    if row.password_hash or row.subject not in (None, who.subject):
        raise NotAllowed("provider-name", person=name)
    if row.ended_at:
        raise NotAllowed("provider-ended", person=row.name)
    row.subject = who.subject
    return row
