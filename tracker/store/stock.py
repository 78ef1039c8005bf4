"""The stock ledger and the reservations."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime
from typing import Any, cast

from sqlalchemy import ColumnElement, Table, delete, func, insert, select, tuple_
from sqlalchemy.orm import Session

from tracker.domain.mill import LoomKey, Receipt
from tracker.domain.quantities import tidy
from tracker.domain.stock import BACK, TOLERANCE, Movement, MovementKind, Reservation, check_movement
from tracker.errors import DataError
from tracker.store.base import Base
from tracker.store.models import MovementRow, PartRow, ReceiptRow, ReservationRow, RowChangeRow
from tracker.store.rows import key_text, stock_on_hand

ReservationKey = tuple[LoomKey, str]
"""Loom and part."""


def read_movements(
    session: Session, part: str | None = None, which: ColumnElement[bool] | None = None
) -> list[Movement]:
    """Every movement in the order booked, or those of a part, or `which` are meant."""
    m = MovementRow
    query = select(
        m.id, m.part, m.kind, m.quantity, m.at, m.who, m.why, m.hall, m.loom, m.order, m.entered_at
    ).order_by(m.id)
    query = query if part is None else query.where(m.part == part)
    rows = session.execute(query if which is None else query.where(which))
    return [
        Movement(part, _kind(number, part, kind), quantity, at, who, why, _key(hall, loom), order, entered)
        for number, part, kind, quantity, at, who, why, hall, loom, order, entered in rows
    ]


def _kind(number: int, part: str, kind: str) -> MovementKind:
    """The kind as stored; DataError where a later version, or a hand in the database, wrote one that is not known."""
    try:
        return MovementKind(kind)
    except ValueError:
        raise DataError(
            "entry-kind-unknown", number=str(number), part=part, kind=kind, known=list(MovementKind)
        ) from None


def _key(hall: str | None, loom: str | None) -> LoomKey | None:
    return LoomKey(hall, loom) if hall is not None and loom is not None else None


def add_movements(session: Session, movements: Sequence[Movement]) -> None:
    """Append movements, in order; refused as a whole (`DataError`) where one is impossible: see `check_movement`."""
    on_hand, held = stock_on_hand(session), _held(session, movements)
    units = {part: unit for part, unit in session.execute(select(PartRow.part, PartRow.unit))}  # noqa: C416
    for movement in movements:
        if movement.part not in units:
            raise DataError("part-unlisted", part=movement.part, where="book")
        whose = (movement.key, movement.part)
        check_movement(movement, on_hand.get(movement.part, 0.0), held.get(whose, 0.0), units[movement.part])
        on_hand[movement.part] = on_hand.get(movement.part, 0.0) + movement.quantity
        if movement.kind in (MovementKind.ISSUE, *BACK):
            held[whose] = held.get(whose, 0.0) - movement.quantity
    _insert(session, MovementRow, [_movement_values(movement) for movement in movements])


def _held(session: Session, movements: Iterable[Movement]) -> dict[tuple[LoomKey | None, str], float]:
    """What every loom was issued of the parts that come back here, and has not given back."""
    parts = {movement.part for movement in movements if movement.kind in BACK}
    kinds = [kind.value for kind in (MovementKind.ISSUE, *BACK)]
    m = MovementRow
    query = (
        select(m.hall, m.loom, m.part, func.sum(m.quantity))
        .where(m.part.in_(parts), m.kind.in_(kinds))
        .group_by(m.hall, m.loom, m.part)
    )
    return {(_key(hall, loom), part): 0.0 - float(total) for hall, loom, part, total in session.execute(query)}


def at_loom(session: Session, key: LoomKey, part: str) -> float:
    """What a loom was issued of a part and has not given back."""
    m = MovementRow
    kinds = [kind.value for kind in (MovementKind.ISSUE, *BACK)]
    of_it = m.hall == key.hall, m.loom == key.loom, m.part == part, m.kind.in_(kinds)
    return tidy(0.0 - float(session.scalar(select(func.sum(m.quantity)).where(*of_it)) or 0.0))


def _movement_values(m: Movement) -> dict[str, object]:
    hall, loom = m.key or (None, None)
    return {"part": m.part, "kind": m.kind.value, "quantity": tidy(m.quantity), "at": m.at, "who": m.who, "why": m.why,
            "hall": hall, "loom": loom, "order": m.order, "entered_at": m.entered_at}  # fmt: skip


def read_reservations(session: Session, part: str | None = None) -> list[Reservation]:
    """Open reservations in the order made."""
    r = ReservationRow
    query = select(r.hall, r.loom, r.part, r.quantity).order_by(r.id)
    rows = session.execute(query if part is None else query.where(r.part == part))
    return [Reservation(LoomKey(hall, loom), part, quantity) for hall, loom, part, quantity in rows]


def set_reservations(session: Session, reservations: Iterable[Reservation], at: datetime, who: str) -> None:
    """Replace all open reservations; what changes stands in the change log."""
    wanted = {(r.key, r.part): 0.0 for r in read_reservations(session)}
    change_reservations(session, wanted | {(r.key, r.part): r.quantity for r in reservations}, at, who)


def change_reservations(
    session: Session, quantities: Mapping[ReservationKey, float], at: datetime, who: str, why: str = ""
) -> None:
    """Set some reservations to new quantities (0 = none) and leave the others; what changes stands in the change log.

    Raises `DataError` where more of a part would be reserved than is on hand; then nothing was changed.
    """
    all_now = {(r.key, r.part): r.quantity for r in read_reservations(session)}
    new = {key: quantity for key, quantity in quantities.items() if abs(quantity - all_now.get(key, 0.0)) > TOLERANCE}
    _refuse_beyond_stock(session, all_now, new)
    r = ReservationRow
    gone = [(*key, part) for key, part in new if (key, part) in all_now]
    for i in range(0, len(gone), 300):
        session.execute(delete(r).where(tuple_(r.hall, r.loom, r.part).in_(gone[i : i + 300])))
    _insert(session, r, [
        {"hall": key.hall, "loom": key.loom, "part": part, "quantity": q} for (key, part), q in new.items() if q > 0
    ])  # fmt: skip
    by_loom: dict[LoomKey, dict[str, list[float | None]]] = defaultdict(dict)
    for (key, part), quantity in new.items():
        by_loom[key][part] = [all_now.get((key, part)), quantity or None]
    _log(session, "reservations", by_loom, at, who, why or "changed")


def _insert(session: Session, model: type[Base], rows: Sequence[Mapping[str, object]]) -> None:
    """Rows straight into the table: a published plan brings tens of thousands."""
    if rows:
        session.execute(insert(cast(Table, model.__table__)), rows)


def _refuse_beyond_stock(
    session: Session, now: Mapping[ReservationKey, float], new: Mapping[ReservationKey, float]
) -> None:
    on_hand, reserved = stock_on_hand(session), dict[str, float]()
    for (key, part), quantity in {**now, **new}.items():
        if quantity < 0:
            raise DataError("reservation-below-zero", part=part, quantity=quantity, loom=key)
        reserved[part] = reserved.get(part, 0.0) + quantity
    for part in {part for _, part in new}:
        if reserved[part] > on_hand.get(part, 0.0) + TOLERANCE:
            raise DataError(
                "reservations-above-stock", part=part, reserved=reserved[part], on_hand=on_hand.get(part, 0.0)
            )


def _log(
    session: Session,
    table: str,
    changes: Mapping[Any, Mapping[str, list[Any]]],
    at: datetime,
    who: str,
    kind: str,
) -> None:
    """One entry in the change log for each key: field (of reservations: part) → [old, new]; `kind` says why."""
    _insert(session, RowChangeRow, [
        {"at": at, "who": who, "table": table, "key": key_text(key), "kind": kind, "values": values}
        for key, values in changes.items()
    ])  # fmt: skip


def add_line(session: Session, line: Receipt, at: datetime, who: str, why: str) -> None:
    """Add an open order line."""
    values = {name: getattr(line, name) for name in ("quantity", "due", "supplier", "unit")}
    session.add(ReceiptRow(order=line.order, part=line.part, **values))
    session.flush()
    _log_line(session, line, {name: [None, value] for name, value in values.items() if value is not None}, at, who, why)


def set_open(session: Session, line: Receipt, quantity: float, at: datetime, who: str, why: str) -> None:
    """Set what is still open of an order line; at 0 the line leaves the open order lines and stays in the log."""
    row = session.get_one(ReceiptRow, (line.order, line.part))
    values = {"quantity": [row.quantity, quantity if quantity > TOLERANCE else None]}
    if quantity > TOLERANCE:
        row.quantity = quantity
    else:
        session.delete(row)
    session.flush()
    _log_line(session, line, values, at, who, why)


def set_due(session: Session, line: Receipt, due: date, at: datetime, who: str, why: str) -> None:
    """Set the day on which an open order line is due."""
    row = session.get_one(ReceiptRow, (line.order, line.part))
    before, row.due = row.due, due
    session.flush()
    _log_line(session, line, {"due": [before, due]}, at, who, why)


def _log_line(
    session: Session, line: Receipt, values: Mapping[str, list[Any]], at: datetime, who: str, why: str
) -> None:
    plain = {name: [v.isoformat() if isinstance(v, date) else v for v in pair] for name, pair in values.items()}
    _log(session, "receipts", {(line.order, line.part): plain}, at, who, why)
