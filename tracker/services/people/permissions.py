"""Who may do what: the one table of roles and what each may do. Every writing service asks it through its context."""

from collections.abc import Mapping
from enum import StrEnum

from tracker.domain.people import Role


class May(StrEnum):
    """What can be allowed beside seeing, which everybody may who has a role."""

    RECORD = "record-work"
    """Work, settings, checks, stops, and parts of a kit as they were used."""
    SIGN_ELECTRICAL = "sign-electrical-hold-points"
    WAIVE = "waive"
    STOCK = "book-stock"
    """Receipts, counts, issue, reserve, take from another kit; and load lists of receipts."""
    LOAD = "load-lists"
    PLAN = "plan"
    """Scenarios, rehearsals, publishing, releasing, putting off, who is away, terms."""
    UNDO = "undo"
    """What was loaded or recorded, also by others."""
    PEOPLE = "manage-people"
    BACK_UP = "back-up"


_WORK = frozenset({May.RECORD})
PERMISSIONS: Mapping[Role, frozenset[May]] = {
    Role.VIEWER: frozenset(),
    Role.FITTER: _WORK,
    Role.ELECTRICIAN: _WORK | {May.SIGN_ELECTRICAL},
    Role.PURCHASING: frozenset({May.STOCK}),
    Role.PLANNER: _WORK | {May.WAIVE, May.STOCK, May.LOAD, May.PLAN, May.UNDO},
    Role.ADMINISTRATOR: frozenset({May.PEOPLE, May.BACK_UP}),
}


def allowed(roles: frozenset[Role]) -> frozenset[May]:
    """What somebody may who has these roles."""
    return frozenset().union(*(PERMISSIONS[role] for role in roles))


def who_may(what: May) -> tuple[Role, ...]:
    """The roles that may do it."""
    return tuple(role for role, may in PERMISSIONS.items() if what in may)
