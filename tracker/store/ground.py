"""Who changed something last, and when: asked where a save is refused because of it."""

from datetime import datetime
from typing import Any

from sqlalchemy import select
from sqlalchemy.orm import Session

from tracker.domain.words import fold
from tracker.store.models import ActRow, MovementRow, RowChangeRow

WhoAndWhen = tuple[str | None, datetime | None]
NOBODY: WhoAndWhen = (None, None)


def last_change(session: Session, table: str, key: str, field: str) -> WhoAndWhen:
    """Of a value of a row, by the key that the change log has; of the row where it has ended."""
    log = RowChangeRow
    query = select(log.who, log.at, log.values).where(log.table == table, log.key == key).order_by(log.id.desc())
    return next(((who, at) for who, at, values in session.execute(query) if field in values), NOBODY)


def last_entry(session: Session, part: str) -> WhoAndWhen:
    """Of what is on hand of a part."""
    m = MovementRow
    query = select(m.who, m.entered_at, m.at).where(m.part == part).order_by(m.id.desc()).limit(1)
    return next(((who, entered or at) for who, entered, at in session.execute(query)), NOBODY)


def last_change_of_account(session: Session, name: str) -> WhoAndWhen:
    acts = session.scalars(select(ActRow).where(ActRow.what == "manage-people").order_by(ActRow.id.desc()))
    return next(((act.who, act.at) for act in acts if _is_of(act.details, name)), NOBODY)


def _is_of(details: dict[str, Any], name: str) -> bool:
    return fold(str(details.get("person", ""))) == fold(name)
