"""What can be undone, and what is kept as it is."""

from collections.abc import Collection

from tracker.store.models import ActRow, JobEndRow, JobRow, PlanRow, RehearsalRow

DOES = "undoes"
"""Under which name an act keeps the number of what it undid."""
JOBS = frozenset({JobRow.__tablename__, JobEndRow.__tablename__})
"""That work began and ended is only told there; what came of it was written apart."""


def kept_kind(act: ActRow, tables: Collection[str]) -> str | None:
    """As what kind of thing something is not undone; None for what can be. `tables`: of history, to which it added."""
    if "how" in act.details:
        return "person"
    if act.details and DOES not in act.details:
        return "door"
    if PlanRow.__tablename__ in tables:
        return "plan"
    if RehearsalRow.__tablename__ in tables:
        return "rehearsal"
    return "nothing" if JOBS.issuperset(tables) else None
