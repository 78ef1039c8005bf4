"""Tokens for programs and for the calendars of phones: give one, list them, withdraw one, and who shows one.

A token is random, 256 bits; the database holds only its hash. It is shown once, when it is given.
"""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import timedelta
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import select

from tracker.domain.people import Role
from tracker.domain.tokens import Token, TokenMay
from tracker.domain.words import fold, natural_key
from tracker.errors import DataError, Message, UsageError, message
from tracker.services.context import Actor, Context
from tracker.services.people.accounts import name_of
from tracker.services.people.permissions import May
from tracker.services.people.sessions import hash_of, machine_moment, new_token
from tracker.store import UnitOfWork
from tracker.store.models import TokenRow

LONGEST_DAYS, USUAL_DAYS = 3660, 365
ROLES = {TokenMay.READ: frozenset({Role.VIEWER}), TokenMay.POST: frozenset({Role.FITTER, Role.PLANNER}),
         TokenMay.CALENDAR: frozenset({Role.VIEWER})}  # fmt: skip
"""What a token may do is what these roles may, by the paths that there are for it."""


@dataclass(frozen=True, slots=True)
class GivenToken:
    token: Token
    text: str
    """The token itself, which nobody can see again."""

    @property
    def path(self) -> str:
        """Where it is shown: the address of the calendar, or of the interface, below that of the screens."""
        return f"/calendar/{self.text}/crew.ics" if self.token.may is TokenMay.CALENDAR else "/api/"

    def record(self) -> dict[str, Any]:
        """As `--json` writes it."""
        return token_record(self.token) | {"token": self.text, "path": self.path}

    def messages(self) -> list[Message]:
        said = message("token-given", name=self.token.name, may=self.token.may, until=self.token.expires_at.date())
        where = "token-calendar-at" if self.token.may is TokenMay.CALENDAR else "token-shown-so"
        return [said, message(where, token=self.text, path=self.path)]


@dataclass(frozen=True, slots=True)
class TokensReport:
    tokens: tuple[Token, ...]
    """In the order in which they were given, also those that ended."""
    zone: ZoneInfo

    def record(self) -> list[dict[str, Any]]:
        """As `--json` writes it."""
        return [token_record(token) for token in self.tokens]


def token_record(token: Token) -> dict[str, Any]:
    ended = token.ended_at.isoformat(timespec="seconds") if token.ended_at else None
    made, until = (at.isoformat(timespec="seconds") for at in (token.made_at, token.expires_at))
    return {
        "number": token.number, "name": token.name, "may": token.may.value, "crew": token.crew, "made_at": made,
        "made_by": token.made_by, "expires_at": until, "ended_at": ended,
    }  # fmt: skip


def give_token(context: Context, name: str, may: str, crew: str | None = None, days: int = USUAL_DAYS) -> GivenToken:
    """A new token that lasts so many days. UsageError for what cannot be, DataError for a crew that there is not."""
    context.require(May.PEOPLE)
    written, kind = name_of(name), _kind(may)
    if not 1 <= days <= LONGEST_DAYS:
        raise UsageError("token-days", days=days, most=LONGEST_DAYS)
    if (kind is TokenMay.CALENDAR) != (crew is not None):
        raise UsageError("token-crew", may=kind)
    told = {"how": "token", "person": written, "roles": [kind.value]}
    with context.unit_of_work(May.PEOPLE, told) as uow:
        known = _crews(uow)
        found = next((one for one in known if fold(one) == fold(crew)), None) if crew else None
        if crew and found is None:
            raise DataError("token-crew-unknown", crew=crew, crews=known)
        text, at = new_token(), machine_moment(context)
        row = TokenRow(
            name=written, may=kind.value, crew=found, token_hash=hash_of(text), made_at=at, made_by=context.actor.name,
            expires_at=at + timedelta(days=days),
        )  # fmt: skip
        uow.session.add(row)
        uow.session.flush()
        done = GivenToken(_token(row), text)
        uow.commit()
    return done


def crews(context: Context) -> list[str]:
    """The crews whose calendars a token may open."""
    context.require(May.PEOPLE)
    with context.reading() as uow:
        return _crews(uow)


def tokens(context: Context) -> TokensReport:
    """Every token that was given."""
    context.require(May.PEOPLE)
    with context.reading() as uow:
        rows = uow.session.scalars(select(TokenRow).order_by(TokenRow.id))
        return TokensReport(tuple(map(_token, rows)), uow.zone)


def withdraw_token(context: Context, number: int) -> Token:
    """A token opens nothing any more, from now on. DataError where there is none of that number, or it has ended."""
    with context.unit_of_work(May.PEOPLE, {"how": "token-ended", "person": str(number)}) as uow:
        row = uow.session.get(TokenRow, number) if 0 < number < 1 << 31 else None
        if row is None or row.ended_at:
            raise DataError("token-unknown", number=str(number))
        row.ended_at = machine_moment(context)
        done = _token(row)
        uow.commit()
    return done


def says_withdrawn(token: Token) -> Message:
    return message("token-ended", number=str(token.number), name=token.name)


def shown(context: Context, text: str, kinds: Collection[TokenMay]) -> Token | None:
    """The token as long as it lasts, where it is of one of these kinds; else None."""
    with context.reading() as uow:
        row = uow.session.scalar(select(TokenRow).where(TokenRow.token_hash == hash_of(text)))
        found = _token(row) if row else None
    lasts = found and not found.ended_at and found.expires_at > machine_moment(context)
    return found if found and lasts and found.may in kinds else None


def actor_of(token: Token) -> Actor:
    """Who acts by it."""
    return Actor(token.name, ROLES[token.may], "interface")


def _crews(uow: UnitOfWork) -> list[str]:
    return sorted({row.crew for row in uow.mill().crews}, key=natural_key)


def _kind(may: str) -> TokenMay:
    if may not in list(TokenMay):
        raise UsageError("token-may", may=may, known=list(TokenMay))
    return TokenMay(may)


def _token(row: TokenRow) -> Token:
    return Token(row.id, row.name, TokenMay(row.may), row.crew, row.made_at, row.made_by, row.expires_at, row.ended_at)
