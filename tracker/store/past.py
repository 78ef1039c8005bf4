"""How order lines, absences and protected looms went, from the change log and the stockroom's book."""

from collections import defaultdict
from collections.abc import Iterator
from datetime import date, datetime
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import Text, cast, func, select
from sqlalchemy.orm import Session

from tracker.domain.past import Notice, Past, PastAbsence, PastLine
from tracker.domain.stock import TOLERANCE, Movement, MovementKind, received
from tracker.store.models import AbsenceRow, MovementRow, PartRow, ReceiptRow, RowChangeRow
from tracker.store.rows import key_text
from tracker.store.since import order_and_part
from tracker.store.stock import read_movements

Entry = tuple[datetime, str, dict[str, Any]]
"""Moment, kind of change, field → [old, new]."""


def read_past(session: Session, zone: ZoneInfo) -> Past:
    """Everything that was written down so far."""
    log = RowChangeRow
    listed = session.scalar(select(func.min(log.at)).where(log.table == "looms", log.kind == "added"))
    return Past(
        tuple(_lines(session, zone)), tuple(_absences(session, zone)), tuple(_notices(session, zone)),
        listed.astimezone(zone).date() if listed else None,
    )  # fmt: skip


def _log(session: Session, table: str) -> dict[str, list[Entry]]:
    """By key of the row, in the order written."""
    log, found = RowChangeRow, defaultdict(list)
    query = select(log.key, log.at, log.kind, log.values).where(log.table == table).order_by(log.id)
    for key, at, kind, values in session.execute(query):
        found[key].append((at, kind, values))
    return found


# ---- order lines


def _lines(session: Session, zone: ZoneInfo) -> Iterator[PastLine]:
    """A line is told once it has a day; what is told of it later changes neither that day nor when it was told."""
    m, came = MovementRow, defaultdict(list)
    for movement in read_movements(session, which=m.order.is_not(None)):
        came[movement.order, movement.part].append(movement)
    suppliers = {part: supplier for part, supplier in session.execute(select(PartRow.part, PartRow.supplier))}  # noqa: C416
    still = {(order, part) for order, part in session.execute(select(ReceiptRow.order, ReceiptRow.part))}
    for key, entries in _log(session, "receipts").items():
        order, part = order_and_part(key)
        told = next((each for each in entries if each[2].get("due", [None, None])[1]), None)
        if told is None:
            continue
        says = [values["supplier"][1] for _, _, values in entries if values.get("supplier")]
        first = _first(came[order, part])
        yield PastLine(
            part, next((name for name in reversed(says) if name), suppliers.get(part)), date.fromisoformat(told[2]["due"][1]),
            told[0].astimezone(zone).date(), first.at.astimezone(zone).date() if first else None,
            first is not None and _is_short(first, entries), (order, part) in still,
        )  # fmt: skip


def _first(movements: list[Movement]) -> Movement | None:
    """The first receipt that was not booked back."""
    receipts = [one for one in movements if one.kind is MovementKind.RECEIPT]
    for back in (one for one in movements if one.kind is MovementKind.ADJUSTMENT):
        undone = next((one for one in receipts if abs(one.quantity + back.quantity) <= TOLERANCE), None)
        receipts = [one for one in receipts if one is not undone]
    return receipts[0] if receipts else None


def _is_short(first: Movement, entries: list[Entry]) -> bool:
    """Whether it brought less than was open of its line, as the log of the line has it."""
    said = received(first.quantity)
    open_ = next(
        (values["quantity"][0] for at, kind, values in entries if kind == said and at == first.entered_at), None
    )
    return open_ is not None and first.quantity < open_ - TOLERANCE


# ---- absences and protected looms


def _absences(session: Session, zone: ZoneInfo) -> Iterator[PastAbsence]:
    told = {key: entries[0][0] for key, entries in _log(session, "absences").items()}
    row = AbsenceRow
    query = select(row.crew, row.from_on, row.to_on, row.heads).order_by(row.from_on, row.crew)
    for crew, from_on, to_on, heads in session.execute(query):
        at = told.get(key_text((crew, from_on)))
        if heads != 0 and at is not None:
            yield PastAbsence(crew, from_on, to_on, heads, at.astimezone(zone).date())


def _notices(session: Session, zone: ZoneInfo) -> Iterator[Notice]:
    """Looms that were listed as not protected any more, or never, and then were; one protected for longer is no new one."""
    log = RowChangeRow
    named = cast(log.values, Text).contains("protected_until")
    query = select(log.at, log.values).where(log.table == "looms", log.kind == "changed", named)
    for at, values in session.execute(query.order_by(log.id)):
        old, new = (date.fromisoformat(each) if each else None for each in values["protected_until"])
        on = at.astimezone(zone).date()
        if new and new >= on and (old is None or old < on):
            yield Notice(on, new)
