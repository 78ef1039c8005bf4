"""The stock ledger: every movement with who, when and why; stock on hand is their sum."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum
from math import isfinite

from tracker.domain.mill import LoomKey
from tracker.domain.quantities import MOST, fault
from tracker.errors import DataError

TOLERANCE = 1e-9
"""Quantities closer than this are equal; it keeps sums of tenths of a metre from looking like a shortage."""


class MovementKind(StrEnum):
    OPENING = "opening"
    RECEIPT = "receipt"
    ISSUE = "issue"
    RETURN = "return"
    """Issued and not used after all: the kit needs it again."""
    RECOVERED = "recovered"
    """Used and back in stock, where the method says that the part comes back."""
    ADJUSTMENT = "adjustment"
    COUNT = "count"


def received(quantity: float) -> str:
    """How the change log calls it that an order line was left open for the rest, once so much of it had come."""
    return f"{quantity:g} received"


@dataclass(frozen=True, slots=True)
class Movement:
    """`quantity` is signed: + into stock, − out. A count stores the difference that it found."""

    part: str
    kind: MovementKind
    quantity: float
    at: datetime
    who: str
    why: str = ""
    key: LoomKey | None = None
    """The loom whose kit it was for."""
    order: str | None = None
    entered_at: datetime | None = None
    """When it was written down, which may be long after `at`; None for an entry of before this was kept."""


@dataclass(frozen=True, slots=True)
class Reservation:
    """Quantity of a part held for a named loom; released when issued or given to another kit."""

    key: LoomKey
    part: str
    quantity: float


BACK = (MovementKind.RETURN, MovementKind.RECOVERED)
INTO_STOCK = (MovementKind.OPENING, MovementKind.RECEIPT, *BACK)
MAY_BE_ZERO = (MovementKind.OPENING, MovementKind.COUNT)


def check_movement(movement: Movement, on_hand: float, held: float = 0.0, unit: str | None = None) -> None:
    """Refuse what no stockroom can do; `held` is what the movement's loom was issued of the part and has not given back,
    `unit` the part's.

    Raises `DataError`: a quantity that is no number, is 0 or has the wrong sign for its kind; an adjustment without a
    reason; a return without a loom or of more than was issued to it; stock below zero.
    """
    part, quantity, kind = movement.part, movement.quantity, movement.kind
    if not isfinite(quantity) or (quantity == 0 and kind not in MAY_BE_ZERO):
        raise DataError("entry-quantity", part=part, quantity=quantity, kind=kind)
    if (kind in INTO_STOCK and quantity < 0) or (kind is MovementKind.ISSUE and quantity > 0):
        raise DataError("entry-quantity", part=part, quantity=quantity if kind in INTO_STOCK else -quantity, kind=kind)
    if kind is MovementKind.ADJUSTMENT and not movement.why.strip():
        raise DataError("reason-needed", how="adjustment", part=part, quantity=quantity)
    counted = on_hand + quantity if kind is MovementKind.COUNT else quantity
    check_quantity(part, counted, unit)
    if kind in BACK:
        _check_return(movement, held)
    if on_hand + quantity > MOST:
        raise DataError("stock-above-most", part=part, quantity=quantity, most=MOST, unit=unit or None)
    if on_hand + quantity < -TOLERANCE:
        raise DataError("stock-too-little", part=part, asked=-quantity, on_hand=on_hand)


def check_quantity(part: str, quantity: float, unit: str | None) -> None:
    """Refuse a quantity that the unit does not have; DataError."""
    if wrong := fault(quantity, unit):
        raise DataError("quantity-wrong", part=part, quantity=quantity, wrong=wrong)


def _check_return(movement: Movement, held: float) -> None:
    if movement.key is None:
        raise DataError("return-without-loom", part=movement.part)
    if movement.quantity > held + TOLERANCE:
        raise DataError(
            "return-above-issued", part=movement.part, quantity=movement.quantity, loom=movement.key, held=held
        )
