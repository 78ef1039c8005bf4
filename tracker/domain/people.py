"""Who works with the programme, in which roles, and what is kept of each thing that somebody did."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum
from typing import Any

from tracker.errors import Message


class Role(StrEnum):
    VIEWER = "viewer"
    FITTER = "fitter"
    ELECTRICIAN = "electrician"
    PURCHASING = "purchasing"
    PLANNER = "planner"
    ADMINISTRATOR = "administrator"


EVERY_ROLE = frozenset(Role)


@dataclass(frozen=True, slots=True)
class Person:
    """An account."""

    number: int
    name: str
    """As it was first written; of two that differ only by case or accents there is one."""
    roles: tuple[Role, ...]
    """In the order of the roles."""
    added_at: datetime
    ended_at: datetime | None = None
    """From then on nobody can sign in with it; the account stays, since the history names it."""
    by_provider: bool = False
    """Whether the mill's identity provider looks after the sign-in and the roles; else there is a password."""


@dataclass(frozen=True, slots=True)
class Act:
    """What somebody did in one unit of work, for the account of who did what."""

    who: str
    roles: tuple[Role, ...]
    through: str
    """By what: `command`, `screen` or `interface`."""
    what: str
    """The permission that it took, or what happened at the sign-in."""
    details: Mapping[str, Any] = field(default_factory=dict)


def in_order(roles: frozenset[Role]) -> tuple[Role, ...]:
    """Roles in the order in which they are declared."""
    return tuple(role for role in Role if role in roles)


@dataclass(frozen=True, slots=True)
class Deed:
    """One line of the account of who did what."""

    at: datetime
    """UTC, when it was written down."""
    who: str
    """Who wrote it down; for what is older than that account, who is told to have done it."""
    told: str
    """Who is told to have done it, where that is somebody else; else empty."""
    roles: tuple[str, ...]
    through: str
    """`command`, `screen` or `interface`; empty for what is older than that account."""
    what: Message
    table: str
    """Of history, in which it stands, with its number there."""
    number: int
    act: int | None = None
    """The number of the unit of work that wrote it, by which it can be undone; None for what is older than that account."""
