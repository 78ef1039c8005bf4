"""Keep rehearsals with their plan and read them back."""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from sqlalchemy import func, select
from sqlalchemy.orm import Session

from tracker.domain.rehearsal import KeptRehearsal
from tracker.store.models import PlanRow, RehearsalRow


def published_number(session: Session) -> int | None:
    """The number of the plan in force; None where none was published."""
    return session.scalar(select(func.max(PlanRow.id)).where(PlanRow.published))


def add_rehearsal(session: Session, plan: int, at: datetime, who: str, result: Mapping[str, Any]) -> int:
    """Append what came of a rehearsal of a plan; gives its number."""
    row = RehearsalRow(plan_id=plan, made_at=at, who=who, result=dict(result))
    session.add(row)
    session.flush()
    return row.id


def last_rehearsal(session: Session, plan: int) -> KeptRehearsal | None:
    """The newest of a plan; None where it was never rehearsed."""
    return _newest(session, plan, tuning=False)


def last_tuning(session: Session, plan: int) -> KeptRehearsal | None:
    """The newest tuning of a plan; None where it was never tuned."""
    return _newest(session, plan, tuning=True)


def _newest(session: Session, plan: int, tuning: bool) -> KeptRehearsal | None:
    rows = session.scalars(select(RehearsalRow).where(RehearsalRow.plan_id == plan).order_by(RehearsalRow.id.desc()))
    row = next((row for row in rows if (row.result.get("kind") == "tuning") == tuning), None)
    return None if row is None else KeptRehearsal(row.id, row.plan_id, row.made_at, row.who, row.result)
