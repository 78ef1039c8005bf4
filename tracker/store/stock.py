"""The stock ledger and the reservations."""

from collections.abc import Iterable, Sequence
from datetime import datetime

from sqlalchemy import delete, insert, select
from sqlalchemy.orm import Session

from tracker.domain.mill import LoomKey
from tracker.domain.stock import Movement, MovementKind, Reservation
from tracker.errors import DataError
from tracker.store.models import MovementRow, ReservationRow, RowChangeRow
from tracker.store.rows import key_text, stock_on_hand


def read_movements(session: Session, part: str | None = None) -> list[Movement]:
    """Every movement in the order booked."""
    query = select(MovementRow).order_by(MovementRow.id)
    rows = session.scalars(query if part is None else query.where(MovementRow.part == part))
    return [_movement(row) for row in rows]


def _movement(row: MovementRow) -> Movement:
    key = LoomKey(row.hall, row.loom) if row.hall is not None and row.loom is not None else None
    return Movement(row.part, MovementKind(row.kind), row.quantity, row.at, row.who, row.why, key, row.order)


def add_movements(session: Session, movements: Sequence[Movement]) -> None:
    """Append movements; refused as a whole where one takes a part below zero."""
    on_hand = stock_on_hand(session)
    for movement in movements:
        left = on_hand.get(movement.part, 0.0) + movement.quantity
        if left < -1e-9:
            raise DataError(
                f"part {movement.part}: {-movement.quantity:g} asked for, {on_hand.get(movement.part, 0.0):g} on hand; "
                "count the stock or book the receipt first"
            )
        on_hand[movement.part] = left
    session.add_all(
        MovementRow(part=m.part, kind=m.kind.value, quantity=m.quantity, at=m.at, who=m.who, why=m.why,
                    hall=m.key.hall if m.key else None, loom=m.key.loom if m.key else None, order=m.order)
        for m in movements
    )  # fmt: skip
    session.flush()


def read_reservations(session: Session) -> list[Reservation]:
    rows = session.scalars(select(ReservationRow).order_by(ReservationRow.id))
    return [Reservation(LoomKey(row.hall, row.loom), row.part, row.quantity) for row in rows]


def set_reservations(session: Session, reservations: Iterable[Reservation], at: datetime, who: str) -> None:
    """Replace all open reservations; what changes stands in the change log."""
    old = {(r.key, r.part): r.quantity for r in read_reservations(session)}
    new = {(r.key, r.part): r.quantity for r in reservations}
    session.execute(delete(ReservationRow))
    if new:
        session.execute(insert(ReservationRow), [
            {"hall": key.hall, "loom": key.loom, "part": part, "quantity": quantity}
            for (key, part), quantity in new.items()
        ])  # fmt: skip
    entries = [
        {"at": at, "who": who, "table": "reservations", "key": key_text((*key, part)), "kind": "changed",
         "values": {"quantity": [old.get((key, part)), new.get((key, part))]}}
        for key, part in old.keys() | new.keys() if old.get((key, part)) != new.get((key, part))
    ]  # fmt: skip
    if entries:
        session.execute(insert(RowChangeRow), sorted(entries, key=lambda entry: entry["key"]))
